package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Keeps docs/bench.md true. */
class BenchPageTest {
    private static List<String> page() throws IOException {
        return Files.readAllLines(Path.of("docs", "bench.md"));
    }

    @Test
    void everyDeclarationIsDescribed() throws IOException {
        String text = String.join("\n", page());
        for (String key : DeclarationReader.keys()) assertTrue(text.contains("`" + key + "`"), key);
        for (String column : BenchHeads.of(List.of()).needed())
            assertTrue(text.contains("| `" + column + "` |"), column);
        for (Quantity quantity : Quantity.values()) {
            assertTrue(text.contains("`" + quantity.key() + "`"), quantity.key());
            for (String word : quantity.alsoCalled()) assertTrue(text.contains(word.replace('_', ' ')), word);
        }
    }

    @Test
    void theTableOfMountingsIsThatOfTheProgram() throws IOException {
        for (MountKind kind : MountKind.values()) {
            String row = page().stream()
                    .filter(line -> line.startsWith("| `" + kind.name().toLowerCase(Locale.ROOT) + "` |"))
                    .findFirst()
                    .orElseThrow();
            String[] cells = row.split("\\|");
            assertEquals(kind.words(), Arrays.asList(cells[2].strip().split(", ")));
            for (Effect effect : Effect.values())
                assertEquals(kind.effects().contains(effect) ? "yes" : "no", cells[3 + effect.ordinal()].strip(), row);
        }
    }
}
