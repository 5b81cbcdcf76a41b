package handreach.atlas.spread;

import handreach.input.InputFault;
import java.io.Serializable;
import java.lang.management.ManagementFactory;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import org.apache.spark.SparkFiles;
import scala.collection.Iterator;
import scala.runtime.AbstractFunction1;

/** One task: its blocks out of the files that were shipped. A block that cannot be reckoned comes back as words, so that the others go on. */
final class BlockTask extends AbstractFunction1<Iterator<Integer>, BlockOutcome[]> implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Work that is open in this virtual machine, by the run it belongs to. */
    private static final ConcurrentMap<String, BlockWork> OPEN = new ConcurrentHashMap<>();

    private final String run;
    private final Errand errand;

    /**
     * A task.
     *
     * @param run a name that no other run has; the files travel under it
     */
    BlockTask(String run, Errand errand) {
        this.run = run;
        this.errand = errand;
    }

    @Override
    public BlockOutcome[] apply(Iterator<Integer> blocks) {
        List<BlockOutcome> all = new ArrayList<>();
        while (blocks.hasNext()) all.add(outcome(blocks.next()));
        return all.toArray(new BlockOutcome[0]);
    }

    private BlockOutcome outcome(int block) {
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        try {
            byte[] rows = OPEN.computeIfAbsent(run, name -> opened()).rows(block);
            return new BlockOutcome(
                    block, rows, "", ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before);
        } catch (InputFault bad) {
            return new BlockOutcome(block, new byte[0], machine() + ": " + bad.getMessage(), 0);
        } catch (RuntimeException defect) {
            return new BlockOutcome(
                    block, new byte[0], machine() + ": " + defect + " (a defect of the program, not of your input)", 0);
        }
    }

    private BlockWork opened() {
        Path shipped = Path.of(SparkFiles.getRootDirectory()).resolve(run);
        if (!Files.isDirectory(shipped))
            throw new InputFault(
                    "the plan, its tiles and what else it names",
                    0,
                    "did not arrive on this worker. Look at its free space and its log, then start the same command again.");
        return errand.open(shipped);
    }

    /** Forgets the work of a run in this virtual machine. */
    static void forget(String run) {
        OPEN.remove(run);
    }

    private static String machine() {
        try {
            return "worker " + InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException nameless) {
            return "a worker";
        }
    }
}
