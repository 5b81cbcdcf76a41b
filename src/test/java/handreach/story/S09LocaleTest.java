package handreach.story;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where and in which language the machine stands changes no byte of what is printed or written: decimal commas, the Turkish i,
 * Arabic and Devanagari digits, zones far from Greenwich and by half hours.
 */
class S09LocaleTest {
    private static final Locale LOCALE = Locale.getDefault();
    private static final TimeZone ZONE = TimeZone.getDefault();
    private static final String SAMPLES = "elevation-samples/";
    private static final List<List<String>> COMMANDS = List.of(
            List.of("--help"),
            List.of("relay", "--help"),
            List.of("reach", SAMPLES + "no-such-plan"),
            List.of("walk", SAMPLES + "forest-hills", "--decision", "LOADOUTT", "--next"),
            List.of("bench", SAMPLES + "invented-bench/bench.csv"),
            List.of("match", SAMPLES + "invented-bench/quarter-wave-whip.s1p", "--channel-mhz", "155.16"),
            List.of("pattern", "--radiator", "five-eighths", "--frequency-mhz", "155.16", "--step-deg", "30"),
            List.of("tiles", SAMPLES + "forest-hills/tiles"),
            List.of("tiles", SAMPLES + "high-mountains/tiles", "--at", "37\u00b030.5'N 105\u00b00.5'W"),
            List.of(
                    "path",
                    "--plan",
                    SAMPLES + "forest-hills",
                    "--from",
                    "spike camp",
                    "--to",
                    "north spur",
                    "--explain"),
            List.of("relay", SAMPLES + "urban-coast", "--json"));

    private static List<CommandRun> usual;
    private static Map<String, byte[]> usualFiles;

    @TempDir
    static Path folder;

    @BeforeAll
    static void asUsual() throws IOException {
        Locale.setDefault(Locale.ROOT);
        TimeZone.setDefault(TimeZone.getTimeZone("UTC"));
        usual = answers();
        usualFiles = files("usual");
        back();
    }

    private static void back() {
        Locale.setDefault(LOCALE);
        TimeZone.setDefault(ZONE);
    }

    @AfterEach
    void restore() {
        back();
    }

    private static List<CommandRun> answers() {
        List<CommandRun> runs = new ArrayList<>();
        for (List<String> words : COMMANDS) runs.add(CommandRun.of(words.toArray(new String[0])));
        return runs;
    }

    /** What walk and reach write, by name; the report holds the moment of its making and is left out. */
    private static Map<String, byte[]> files(String name) throws IOException {
        Path out = folder.resolve(name);
        for (List<String> words : List.of(
                List.of("walk", SAMPLES + "forest-hills"),
                List.of(
                        "reach",
                        SAMPLES + "urban-coast",
                        "--cell-m",
                        "100",
                        "--only",
                        "numbers,outlines,places,overlay"))) {
            List<String> all = new ArrayList<>(words);
            all.addAll(List.of("--out", out.toString()));
            CommandRun run = CommandRun.of(all.toArray(new String[0]));
            assertEquals(0, run.code(), run.err());
        }
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> written = Files.list(out)) {
            for (Path file :
                    written.filter(f -> !f.toString().endsWith(".html")).toList())
                files.put(String.valueOf(file.getFileName()), Files.readAllBytes(file));
        }
        assertTrue(files.size() > 6, files.keySet().toString());
        return files;
    }

    @ParameterizedTest
    @CsvSource({
        "de-DE, America/St_Johns",
        "tr-TR, Asia/Kolkata",
        "ar-EG-u-nu-arab, Pacific/Kiritimati",
        "hi-IN-u-nu-deva, Asia/Kathmandu"
    })
    void nothingChanges(String language, String zone) throws IOException {
        Locale.setDefault(Locale.forLanguageTag(language));
        TimeZone.setDefault(TimeZone.getTimeZone(zone));
        assertNotEquals(0, TimeZone.getDefault().getRawOffset());
        List<CommandRun> here = answers();
        for (int i = 0; i < COMMANDS.size(); i++)
            assertEquals(usual.get(i), here.get(i), COMMANDS.get(i).toString());
        Map<String, byte[]> files = files(language);
        assertEquals(usualFiles.keySet(), files.keySet());
        for (String name : files.keySet()) assertArrayEquals(usualFiles.get(name), files.get(name), name);
    }

    /** The locales do write numbers and letters otherwise where a program leaves it to them. */
    @Test
    void theLocalesWouldBite() {
        Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
        assertNotEquals("1.5", NumberFormat.getInstance().format(1.5));
        assertNotEquals("1.5", String.format(Locale.getDefault(), "%.1f", 1.5));
        assertNotEquals("title", "TITLE".toLowerCase(Locale.forLanguageTag("tr-TR")));
    }
}
