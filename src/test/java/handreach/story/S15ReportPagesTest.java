package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The report of a usual plan, with relay and walk, as far as it can be held without a browser: what makes it print on ten pages and
 * below 8 MB. Printed by a browser it had 10 pages and 2.1 MB.
 */
class S15ReportPagesTest {
    private static final int MOST_BYTES = 2_500_000;
    private static final int MOST_PICTURE_BYTES = 400_000;
    private static final Pattern PICTURE = Pattern.compile("data:image/png;base64,([^\"]+)\"");

    @TempDir
    Path folder;

    @Test
    void aUsualReportIsSmallFoldedAndFoundByQuestion() throws IOException {
        Path report = folder.resolve("report.html");
        CommandRun run =
                CommandRun.of("report", "elevation-samples/forest-hills", "--relay", "--out", report.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(Files.size(report) < MOST_BYTES, Files.size(report) + " bytes");
        String html = Files.readString(report);
        Matcher picture = PICTURE.matcher(html);
        int pictures = 0;
        for (; picture.find(); pictures++) {
            int bytes = Base64.getDecoder().decode(picture.group(1)).length;
            assertTrue(bytes < MOST_PICTURE_BYTES, "a picture of " + bytes + " bytes");
        }
        assertEquals(5, pictures, "three maps of reach, one of the relay, one of the walk");
        String index = html.substring(html.indexOf("<nav"), html.indexOf("</nav>"));
        for (String question : List.of(
                "How far does each loadout reach?",
                "Is the bigger antenna worth carrying?",
                "Is a relay needed?",
                "Was the prediction right where people walked?",
                "What must be heeded before going out?")) assertTrue(index.contains(question), index);
        String main = html.substring(0, html.indexOf("<details>"));
        assertTrue(main.contains("Cautions</h2>") && main.contains("Limits of this result</h2>"), "not folded");
        assertFalse(main.contains("Where the decibels go</h2>") || main.contains("What this assumes</h2>"), "folded");
        Matcher target = Pattern.compile("href=\"#(s[0-9A-Z]+)\"").matcher(index);
        while (target.find()) assertTrue(html.contains(" id=\"" + target.group(1) + "\""), target.group());
    }
}
