package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder is one result: what a command writes into it is named with digests, and nothing of a former answer stays among it. */
class S17FolderTest {
    @TempDir
    Path folder;

    private Path out() {
        return folder.resolve("out");
    }

    private Path plan() throws IOException {
        Path sample = Path.of("elevation-samples/forest-hills").toAbsolutePath();
        Path plan = folder.resolve("plan.toml");
        Files.writeString(
                plan,
                Files.readString(sample.resolve("plan.toml"))
                        .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                        .replace("../invented-bench/", sample.resolveSibling("invented-bench") + "/")
                        .replace("radius_km = 5", "radius_km = 1")
                        .replace("bearing_step_deg = 5", "bearing_step_deg = 45"));
        for (String name : List.of("walk-reports.csv", "walk-track.gpx"))
            if (!Files.exists(folder.resolve(name))) Files.copy(sample.resolve(name), folder.resolve(name));
        return plan;
    }

    private Set<String> names() throws IOException {
        try (Stream<Path> files = Files.list(out())) {
            return files.map(file -> file.getFileName().toString()).collect(Collectors.toCollection(TreeSet::new));
        }
    }

    private JsonNode manifest(String what) throws Exception {
        JsonNode manifest = new ObjectMapper().readTree(Files.readString(out().resolve(what + "-files.json")));
        assertTrue(manifest.get("complete").asBoolean());
        assertEquals(what, manifest.get("what").asText());
        for (JsonNode file : manifest.get("files")) {
            byte[] bytes = Files.readAllBytes(out().resolve(file.get("name").asText()));
            assertEquals(bytes.length, file.get("bytes").asLong());
            assertEquals(
                    HexFormat.of()
                            .formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)),
                    file.get("sha_256").asText());
        }
        return manifest;
    }

    private CommandRun run(String... words) {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return run;
    }

    @Test
    void everyFileOfARunIsNamedAndThoseOfADroppedLoadoutGo() throws Exception {
        String plan = plan().toString();
        CommandRun first = run("reach", plan, "--out", out().toString());
        JsonNode before = manifest("reach");
        Set<String> all = names();
        assertEquals(all.size(), before.get("files").size() + 1);
        assertEquals(
                all.size(),
                first.out().lines().filter(line -> line.startsWith("Written: ")).count());
        assertTrue(all.contains("odds-half-wave-at-face.tif"), all.toString());
        Files.writeString(out().resolve("odds-of-mine.tif"), "not of this program");

        CommandRun second = run("reach", plan, "--loadout", "factory at hip", "--out", out().toString());
        assertFalse(names().contains("odds-half-wave-at-face.tif"), names().toString());
        assertTrue(names().contains("odds-of-mine.tif"));
        assertTrue(second.err().contains("Removed, since the answer no longer has it: "), second.err());
        JsonNode after = manifest("reach");
        assertEquals(names().size(), after.get("files").size() + 2);
        for (JsonNode file : after.get("files")) assertEquals(after.get("run"), file.get("run"));

        run("reach", plan, "--only", "numbers", "--out", out().toString());
        JsonNode numbers = manifest("reach");
        assertEquals(after.get("files").size(), numbers.get("files").size());
        for (JsonNode file : numbers.get("files"))
            assertEquals(
                    file.get("name").asText().matches("reach\\.json|reach-by-bearing\\.csv")
                            ? numbers.get("run")
                            : after.get("run"),
                    file.get("run"));
    }

    @Test
    void oneFolderHoldsTheResultsOfSeveralCommands() throws Exception {
        String plan = plan().toString();
        run("reach", plan, "--no-area", "--out", out().toString());
        run("relay", plan, "--out", out().toString());
        run("walk", plan, "--out", out().toString());
        run("walk", plan, "--next", "--reports", "2", "--out", out().toString());
        Set<String> named = new TreeSet<>();
        for (String what : List.of("reach", "relay", "walk", "walk-next")) {
            named.add(what + "-files.json");
            manifest(what)
                    .get("files")
                    .forEach(file -> named.add(file.get("name").asText()));
        }
        assertEquals(named, names());
    }
}
