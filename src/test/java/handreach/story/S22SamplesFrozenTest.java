package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A plan that names nothing new answers as it did before there was anything new to name. One sample has no woods, no steep ground and one channel: since a
 * plan that names no model is marched over such ground it has other figures, and by {@code handheld} those of before. Frozen figures, no proof of truth.
 */
class S22SamplesFrozenTest {
    private static final Path FROZEN = Path.of("src/test/resources/handreach/story/reach-samples-frozen.csv");
    /** Powers and logarithms may differ in their last digit between machines. */
    private static final double LAST_DIGITS = 1e-11;
    /** A march sums thousands of steps. */
    private static final double LAST_DIGITS_OF_A_MARCH = 1e-7;

    @ParameterizedTest
    @ValueSource(strings = {"forest-hills", "invented-valley", "urban-coast"})
    void aSampleAnswersAsBefore(String sample) throws IOException {
        assertFrozen(sample, LAST_DIGITS, reach(sample));
    }

    @Test
    void bareGroundAnswersAsBeforeByTheClosedForm() throws IOException {
        assertFrozen("high-mountains by handheld", LAST_DIGITS, reach("high-mountains", "--model", "handheld"));
    }

    @Test
    void bareGroundIsMarchedUnasked() throws IOException {
        assertFrozen("high-mountains", LAST_DIGITS_OF_A_MARCH, reach("high-mountains"));
    }

    private static String[] reach(String sample, String... more) {
        List<String> words =
                new ArrayList<>(List.of("reach", "elevation-samples/" + sample + "/plan.toml", "--no-area", "--json"));
        words.addAll(List.of(more));
        return words.toArray(new String[0]);
    }

    private static void assertFrozen(String sample, double digits, String... words) throws IOException {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        JsonNode answer = new ObjectMapper().readTree(run.out());
        List<String[]> rows = Files.readAllLines(FROZEN).stream()
                .filter(line -> line.startsWith(sample + ","))
                .map(line -> line.split(","))
                .toList();
        assertFalse(rows.isEmpty());
        for (String[] row : rows) {
            List<Double> now = now(answer, row[1], row[2]);
            String[] frozen = row[3].split(" ");
            assertEquals(frozen.length, now.size(), row[1] + " " + row[2]);
            for (int i = 0; i < frozen.length; i++) {
                double before = Double.parseDouble(frozen[i]);
                assertEquals(
                        before,
                        now.get(i),
                        digits * Math.abs(before) + Double.MIN_NORMAL,
                        row[1] + " " + row[2] + " " + i);
            }
        }
    }

    private static List<Double> now(JsonNode answer, String who, String what) {
        boolean isPair = who.contains(" | ");
        for (JsonNode one : isPair ? answer.at("/who_reaches_whom/pairs") : answer.get("loadouts")) {
            String name = isPair
                    ? one.get("a").asText() + " | " + one.get("b").asText()
                    : one.get("loadout").asText();
            if (!name.equals(who)) continue;
            List<Double> values = new ArrayList<>();
            if (what.startsWith("bearings."))
                for (JsonNode bearing : one.get("bearings"))
                    values.add(bearing.get(what.substring("bearings.".length())).asDouble());
            else {
                JsonNode found = one.at("/" + what.replace('.', '/'));
                if (found.isArray()) found.forEach(value -> values.add(value.asDouble()));
                else values.add(found.asDouble());
            }
            return values;
        }
        throw new AssertionError(who + " is not in the answer");
    }
}
