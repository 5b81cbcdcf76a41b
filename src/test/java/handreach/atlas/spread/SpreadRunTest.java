package handreach.atlas.spread;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.reach.Progress;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Work that fails on a worker comes back in words. */
class SpreadRunTest {
    @TempDir
    Path folder;

    private Path archive() throws IOException {
        Path archive = folder.resolve("plan.zip");
        try (OutputStream out = Files.newOutputStream(archive);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("plan.toml"));
            zip.write("title = \"without its tiles\"\n".getBytes(java.nio.charset.StandardCharsets.UTF_8));
            zip.closeEntry();
        }
        return archive;
    }

    private static BlockWork open(Path shipped) {
        if (!Files.isDirectory(shipped.resolve("tiles")))
            throw new InputFault("plan.toml", 7, "names the tiles \"tiles\", but there is no such folder.");
        return block -> new byte[0];
    }

    @Test
    void aWorkerWithoutTheTilesSaysSoForEachBlockAndTheRunEnds() throws IOException {
        Map<Integer, BlockOutcome> outcomes = new TreeMap<>();
        SpreadRun.run(
                ClusterAddress.of("local[1]", 1),
                OptionalInt.empty(),
                archive(),
                SpreadRunTest::open,
                List.of(3, 4),
                outcome -> outcomes.put(outcome.block(), outcome),
                Progress.SILENT);
        assertEquals(List.of(3, 4), List.copyOf(outcomes.keySet()));
        for (BlockOutcome outcome : outcomes.values()) {
            assertTrue(outcome.isFaulty());
            assertTrue(outcome.fault().matches("worker \\S+: plan\\.toml line 7: names the tiles .*"), outcome.fault());
        }
    }
}
