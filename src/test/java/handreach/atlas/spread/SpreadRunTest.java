package handreach.atlas.spread;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
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
import java.util.concurrent.CountDownLatch;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.spark.SparkContext;
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

    /** Holds the second block back until the engine is gone. */
    private static final CountDownLatch GONE = new CountDownLatch(1);

    private static byte[] heldBack(int block) {
        try {
            if (block > 0) GONE.await();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
        return new byte[0];
    }

    /** So it is a minute after a master went, or where something else listens at its address. */
    @Test
    void anEngineThatShutsDownIsOneLine() throws IOException {
        Path archive = archive();
        try {
            InputFault fault = assertThrows(
                    InputFault.class,
                    () -> SpreadRun.run(
                            ClusterAddress.of("local[1]", 1),
                            OptionalInt.empty(),
                            archive,
                            shipped -> SpreadRunTest::heldBack,
                            List.of(0, 1),
                            outcome -> SparkContext.getOrCreate().stop(),
                            Progress.SILENT));
            assertEquals(
                    "--cluster: local[1,8] is gone, or is no master of this engine. Look at its log, or start it again."
                            + " What is done is kept: the same command goes on from there.",
                    fault.getMessage());
        } finally {
            GONE.countDown();
        }
    }
}
