package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every command of the guide works as written; what it writes goes to the build folder. The guide's own ground, {@code my-ground}, is
 * made as the guide says: its tiles copied into an empty folder, its plan taken from the page.
 */
class S05GuideTest {
    private static final String OWN = "my-ground";
    private static final Pattern OWN_PLAN = Pattern.compile("(?s)```toml\\R(.*?)```");

    @TempDir
    static Path folder;

    @BeforeAll
    static void ownGround() throws IOException {
        Path tiles = Files.createDirectories(folder.resolve(OWN).resolve("tiles"));
        try (Stream<Path> files = Files.list(Path.of("elevation-samples/high-mountains/tiles"))) {
            for (Path file : files.toList()) Files.copy(file, tiles.resolve(file.getFileName()));
        }
        Matcher plan = OWN_PLAN.matcher(Files.readString(Path.of("docs/guide.md")));
        assertTrue(plan.find(), "the guide lost its plan");
        Files.writeString(folder.resolve(OWN).resolve("plan.toml"), plan.group(1));
    }

    @AfterAll
    static void theCardIsThere() throws IOException {
        for (String name : List.of("card.pdf", "card-folded.pdf", "reach/report.html"))
            assertTrue(Files.size(folder.resolve(OWN).resolve(name)) > 10_000, name);
    }

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TestFactory
    Stream<DynamicTest> everyCommandOfTheGuideWorks() throws IOException {
        List<String> commands = commands(Path.of("docs/guide.md"));
        assertTrue(commands.size() >= 8, "the guide lost its commands: " + commands);
        return commands.stream()
                .map(command -> DynamicTest.dynamicTest(command, () -> {
                    CommandRun run = CommandRun.of(
                            words(command).stream().map(S05GuideTest::placed).toArray(String[]::new));
                    assertEquals(0, run.code(), run.err());
                    assertFalse(run.out().isBlank());
                    assertFalse(run.out().contains("NaN") || run.out().contains("Infinity"), run.out());
                }));
    }

    private static String placed(String word) {
        return word.startsWith(OWN) ? folder.resolve(word).toString() : word;
    }

    private static List<String> commands(Path guide) throws IOException {
        List<String> commands = new ArrayList<>();
        boolean inBlock = false;
        for (String line : Files.readAllLines(guide)) {
            if (line.strip().startsWith("```")) inBlock = !inBlock;
            else if (inBlock && line.strip().startsWith("handreach "))
                commands.add(line.strip().substring(10));
        }
        return commands;
    }

    private static List<String> words(String command) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(command);
        while (word.find()) words.add(word.group(1) != null ? word.group(1) : word.group(2));
        return words;
    }
}
