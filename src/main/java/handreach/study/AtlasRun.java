package handreach.study;

import handreach.atlas.AtlasBlock;
import handreach.atlas.PositionFigures;
import handreach.input.InputFault;
import handreach.reach.Progress;
import handreach.reach.SubProgress;
import handreach.reach.Workers;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BiConsumer;
import java.util.function.Function;

/** Blocks on several threads, each handed over when it is done. One that fails is told, and the others go on. */
final class AtlasRun {
    private AtlasRun() {}

    /**
     * Runs the blocks; what {@code done} throws ends the run, since then no block can be kept.
     *
     * @return the blocks that could not be reckoned, by number
     */
    static List<BlockFault> run(
            List<AtlasBlock> blocks,
            int threads,
            Function<AtlasBlock, List<PositionFigures>> work,
            BiConsumer<AtlasBlock, List<PositionFigures>> done,
            Progress progress) {
        List<BlockFault> faults = Collections.synchronizedList(new ArrayList<>());
        new Workers(threads)
                .run(
                        blocks.size(),
                        number -> {
                            AtlasBlock block = blocks.get(number);
                            List<PositionFigures> rows;
                            try {
                                rows = work.apply(block);
                            } catch (CancellationException stopped) {
                                throw stopped;
                            } catch (RuntimeException failed) {
                                faults.add(new BlockFault(block.number(), words(failed)));
                                return;
                            }
                            done.accept(block, rows);
                        },
                        new SubProgress(progress, "blocks of the atlas", 0, 1));
        List<BlockFault> ordered = new ArrayList<>(faults);
        ordered.sort(Comparator.comparingInt(BlockFault::block));
        return ordered;
    }

    private static String words(RuntimeException failed) {
        if (failed instanceof InputFault) return failed.getMessage();
        String said = failed.getMessage() == null ? "no reason given" : failed.getMessage();
        return said + " (a defect of the program, not of your input)";
    }
}
