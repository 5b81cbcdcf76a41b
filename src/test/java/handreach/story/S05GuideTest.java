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
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every command of the guide works as written; what it writes goes to the build folder. */
class S05GuideTest {
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TestFactory
    Stream<DynamicTest> everyCommandOfTheGuideWorks() throws IOException {
        List<String> commands = commands(Path.of("docs/guide.md"));
        assertTrue(commands.size() >= 8, "the guide lost its commands: " + commands);
        return commands.stream()
                .map(command -> DynamicTest.dynamicTest(command, () -> {
                    CommandRun run = CommandRun.of(words(command).toArray(new String[0]));
                    assertEquals(0, run.code(), run.err());
                    assertFalse(run.out().isBlank());
                    assertFalse(run.out().contains("NaN") || run.out().contains("Infinity"), run.out());
                }));
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
