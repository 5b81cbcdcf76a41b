package handreach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Scientific Javadoc is whole or absent: whoever states one of shape, unit, validity, error and source states all five. And no
 * public function that turns plain numbers into a number goes without, in the rooms that compute.
 */
class JavadocTagTest {
    private static final List<String> TAGS = List.of("@shape", "@unit", "@valid", "@error", "@source");
    private static final List<String> ROOMS =
            List.of("propagation", "uncertainty", "budget", "loadout", "bench", "reach");
    private static final Pattern JAVADOC = Pattern.compile("/\\*\\*.*?\\*/", Pattern.DOTALL);
    /** A public static function of two or more numbers with a number as its result: a formula. */
    private static final Pattern FORMULA = Pattern.compile(
            "(/\\*\\*(?:(?!\\*/).)*\\*/)?\\s*\\n    public static double (\\w+)\\(\\s*double \\w+, double \\w+[^)]*\\)",
            Pattern.DOTALL);

    @Test
    void whoeverStatesOneTagStatesAllFive() throws IOException {
        List<String> found = new ArrayList<>();
        int whole = 0;
        for (Path file : sources()) {
            Matcher block = JAVADOC.matcher(Files.readString(file));
            while (block.find()) {
                List<String> missing = TAGS.stream()
                        .filter(tag -> !block.group().contains(tag))
                        .toList();
                if (missing.isEmpty()) whole++;
                else if (missing.size() < TAGS.size())
                    found.add(file.getFileName() + ": " + missing + " in "
                            + block.group().lines().skip(1).findFirst().orElse(""));
            }
        }
        assertEquals(List.of(), found);
        assertTrue(whole > 100, "only " + whole + " blocks were seen");
    }

    @Test
    void noFormulaGoesWithout() throws IOException {
        List<String> found = new ArrayList<>();
        for (Path file : sources()) {
            Matcher formula = FORMULA.matcher(Files.readString(file));
            while (formula.find())
                if (formula.group(1) == null || !formula.group(1).contains("@source"))
                    found.add(file.getFileName() + ": " + formula.group(2));
        }
        assertEquals(List.of(), found);
    }

    private static List<Path> sources() throws IOException {
        List<Path> sources = new ArrayList<>();
        for (String room : ROOMS)
            try (Stream<Path> files = Files.walk(Path.of("src/main/java/handreach", room))) {
                files.filter(file -> file.toString().endsWith(".java")).sorted().forEach(sources::add);
            }
        return sources;
    }
}
