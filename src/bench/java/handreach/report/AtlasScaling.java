package handreach.report;

import handreach.atlas.AtlasBlock;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.study.AtlasOptions;
import handreach.study.AtlasStudy;
import handreach.study.Scene;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Positions of an atlas by grid, loadouts and cores, and the engine against plain threads turn about in one process. Processor time of the
 * whole process, so that a busy machine matters less; see docs/atlas.md.
 */
public final class AtlasScaling {
    private static final int BLOCKS = 3;
    private static final int TAKEN = 9;
    private static final int WARM = 2;
    private static final int TURNS = 15;

    private AtlasScaling() {}

    /** Takes a plan and a number of turns; prints rows of a table and the turns. Any third word leaves the table out. */
    public static void main(String[] args) throws IOException {
        PlanFile plan = PlanFile.open(Path.of(args.length > 0 ? args[0] : "elevation-samples/high-mountains"));
        int turns = args.length > 1 ? Integer.parseInt(args[1]) : TURNS;
        if (args.length < 3) table(plan);
        engine(plan, turns);
    }

    private static void table(PlanFile plan) {
        System.out.println("| grid | loadouts | cores | positions | ms of processor a position | positions/s of clock |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        threads(plan, 300, 6, 1, false);
        for (int gridM : new int[] {300, 600, 1200})
            for (int loadouts : new int[] {1, 2, 6}) threads(plan, gridM, loadouts, 1, true);
        threads(plan, 300, 2, 2, true);
    }

    private static AtlasStudy study(PlanFile plan, int gridM, int loadouts) {
        return AtlasStudy.of(
                Scene.open(with(plan, loadouts)),
                new AtlasOptions(gridM, OptionalDouble.empty(), Optional.empty(), Set.of(), 0, OptionalDouble.empty()));
    }

    /** The plan with its first loadouts alone. */
    private static PlanFile with(PlanFile plan, int loadouts) {
        List<String> kept = new ArrayList<>();
        int seen = 0;
        for (String part : plan.text().split("\n\n")) {
            if (part.strip().startsWith("[[loadout]]") && ++seen > loadouts) continue;
            kept.add(part.strip().startsWith("[[position]]")
                    ? part.replaceFirst("loadout = \"[^\"]*\"", "loadout = \"factory at face\"")
                    : part);
        }
        return plan.withText(String.join("\n\n", kept) + "\n");
    }

    private static List<AtlasBlock> middle(AtlasStudy study) {
        List<AtlasBlock> all = study.positions().blocks();
        int from = Math.max(0, all.size() / 2 - BLOCKS / 2);
        return all.subList(from, Math.min(all.size(), from + BLOCKS));
    }

    private static int positions(AtlasStudy study, List<AtlasBlock> blocks) {
        return blocks.stream()
                .mapToInt(block -> study.positions().cellsOf(block).size())
                .sum();
    }

    private static void threads(PlanFile plan, int gridM, int loadouts, int cores, boolean isTold) {
        AtlasStudy study = study(plan, gridM, loadouts);
        List<AtlasBlock> blocks = middle(study);
        int count = positions(study, blocks);
        long cpu = cpuNanos();
        long clock = System.nanoTime();
        study.run(blocks, cores, (block, rows) -> {}, Progress.SILENT);
        double ms = (cpuNanos() - cpu) / 1e6 / count;
        double seconds = (System.nanoTime() - clock) / 1e9;
        if (isTold)
            System.out.printf(
                    Locale.ROOT,
                    "| %d m | %d | %d | %d | %.1f | %.1f |%n",
                    gridM,
                    loadouts,
                    cores,
                    count,
                    ms,
                    count / seconds);
    }

    /**
     * Turns of one process, both ways warm, one thread: the same blocks by threads and by the engine, who begins changing from turn to turn.
     * From the first block that is done to the last, which leaves out start and end of the engine, and then whole rows with their digests and,
     * by the engine, columns. The median of the turns' ratios, since
     * other programs disturb one turn and not another.
     */
    private static void engine(PlanFile plan, int turns) throws IOException {
        AtlasStudy study = study(plan, 300, 2);
        List<AtlasBlock> all = study.positions().blocks();
        List<AtlasBlock> many = all.subList(all.size() / 2, Math.min(all.size(), all.size() / 2 + TAKEN));
        int counted = positions(study, many.subList(1, many.size()));
        double[] ratios = new double[turns];
        double[] starts = new double[turns];
        for (int turn = -WARM; turn < turns; turn++) {
            boolean isEngineFirst = Math.floorMod(turn, 2) == 1;
            Stamps before = isEngineFirst ? run(study, many, true) : null;
            Stamps plain = run(study, many, false);
            Stamps spread = isEngineFirst ? before : run(study, many, true);
            if (turn < 0) continue;
            ratios[turn] = spread.furtherMs() / plain.furtherMs();
            starts[turn] = spread.firstMs() - plain.firstMs();
            System.out.printf(
                    Locale.ROOT,
                    "turn %d: a further position %.1f ms by threads, %.1f by the engine, ratio %.3f; start of the engine %.0f ms%n",
                    turn + 1,
                    plain.furtherMs() / counted,
                    spread.furtherMs() / counted,
                    ratios[turn],
                    starts[turn]);
        }
        System.out.printf(
                Locale.ROOT,
                "engine over threads, median of %d turns (quartiles): %s; start %s ms%n",
                turns,
                quartiles(ratios, "%.3f"),
                quartiles(starts, "%.0f"));
    }

    /** Processor time of the process when a run began and as its blocks were done. */
    private static final class Stamps implements Progress {
        private final long beginNanos = cpuNanos();
        private long firstNanos;
        private long lastNanos;
        private long laidOverNanos;

        @Override
        public synchronized void done(String what, double share) {
            if (!what.equals("blocks of the atlas")) return;
            lastNanos = cpuNanos();
            if (firstNanos == 0) firstNanos = lastNanos;
        }

        @Override
        public boolean isCancelled() {
            return false;
        }

        /** Times what follows from the blocks too. */
        void layOver(Runnable work) {
            long before = cpuNanos();
            work.run();
            laidOverNanos = cpuNanos() - before;
        }

        double firstMs() {
            return (firstNanos - beginNanos) / 1e6;
        }

        double furtherMs() {
            return (lastNanos - firstNanos + laidOverNanos) / 1e6;
        }
    }

    /** Median, and the quartiles in brackets. */
    private static String quartiles(double[] values, String form) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int last = sorted.length - 1;
        return String.format(
                Locale.ROOT,
                form + " (" + form + " to " + form + ")",
                (sorted[last / 2] + sorted[(last + 1) / 2]) / 2,
                sorted[last / 4],
                sorted[last - last / 4]);
    }

    private static Stamps run(AtlasStudy study, List<AtlasBlock> blocks, boolean isEngine) throws IOException {
        Path out = Files.createTempDirectory("handreach-scaling");
        try (AtlasFolder folder = AtlasFolder.open(study, out)) {
            Stamps stamps = new Stamps();
            AtlasSpread spread = AtlasSpread.of("local[1]", OptionalInt.empty(), 1);
            if (isEngine) spread.run(folder, blocks, stamps);
            else study.run(blocks, 1, folder::put, stamps);
            stamps.layOver(() -> {
                folder.answer(List.of());
                if (isEngine) spread.addColumns(folder, Progress.SILENT);
            });
            return stamps;
        }
    }

    private static long cpuNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
