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
    private static final int MANY = 7;
    private static final int TURNS = 3;

    private AtlasScaling() {}

    /** Takes a plan; prints rows of a table. */
    public static void main(String[] args) throws IOException {
        PlanFile plan = PlanFile.open(Path.of(args.length > 0 ? args[0] : "elevation-samples/high-mountains"));
        System.out.println("| grid | loadouts | cores | positions | ms of processor a position | positions/s of clock |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        threads(plan, 300, 6, 1, false);
        for (int gridM : new int[] {300, 600, 1200})
            for (int loadouts : new int[] {1, 2, 6}) threads(plan, gridM, loadouts, 1, true);
        threads(plan, 300, 2, 2, true);
        engine(plan);
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

    /** Few blocks and many: the difference is what a further position costs, without the start of the engine. */
    private static void engine(PlanFile plan) throws IOException {
        AtlasStudy study = study(plan, 300, 2);
        List<AtlasBlock> all = study.positions().blocks();
        List<AtlasBlock> many = all.subList(all.size() / 2, Math.min(all.size(), all.size() / 2 + MANY));
        List<AtlasBlock> few = many.subList(0, 1);
        double further = positions(study, many) - positions(study, few);
        double[] ratios = new double[TURNS];
        run(study, few, true);
        for (int turn = 0; turn < TURNS; turn++) {
            double plainFew = run(study, few, false);
            double spreadFew = run(study, few, true);
            double plain = (run(study, many, false) - plainFew) / further;
            double spread = (run(study, many, true) - spreadFew) / further;
            ratios[turn] = spread / plain;
            System.out.printf(
                    Locale.ROOT,
                    "turn %d: a further position %.1f ms by threads, %.1f by the engine, ratio %.3f; start of the engine %.1f s%n",
                    turn + 1,
                    plain,
                    spread,
                    ratios[turn],
                    (spreadFew - plainFew) / 1e3);
        }
        Arrays.sort(ratios);
        System.out.printf(Locale.ROOT, "engine over threads, median of turns: %.3f%n", ratios[TURNS / 2]);
    }

    /** Processor time of one run, ms. */
    private static double run(AtlasStudy study, List<AtlasBlock> blocks, boolean isEngine)
            throws IOException {
        Path out = Files.createTempDirectory("handreach-scaling");
        try (AtlasFolder folder = AtlasFolder.open(study, out)) {
            long cpu = cpuNanos();
            if (isEngine) AtlasSpread.of("local[2]", OptionalInt.empty(), 2).run(folder, blocks, Progress.SILENT);
            else study.run(blocks, 2, folder::put, Progress.SILENT);
            return (cpuNanos() - cpu) / 1e6;
        }
    }

    private static long cpuNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
