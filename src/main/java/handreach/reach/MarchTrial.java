package handreach.reach;

import handreach.propagation.Terminals;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * How a march is tried before its time is told, if it is tried at all: short paths of the very area, frequency and heights, on as many threads as the
 * march will have, since threads hinder each other.
 *
 * <p>What counts is processor time, not the time of day, so that whatever else the machine does at that moment is not taken for
 * its speed; and of all rounds the quickest, since the first run on code not yet compiled.
 *
 * @param threads the caller's among them
 * @param threadNanos processor time of the thread that asks, ns; the core has no clock of its own, and without one nothing is tried
 */
public record MarchTrial(int threads, Optional<LongSupplier> threadNanos) {
    /** A trial ends after a twentieth of what it is to foretell, but neither before nor after this, s of each thread. */
    private static final double SHORTEST_S = 0.5;

    private static final double LONGEST_S = 2;
    private static final double SHARE = 0.05;
    /** Whole marches took so much longer than the quickest round of their trial made one expect: measured, docs/performance.md. */
    private static final double OVER_QUICKEST = 1.08;

    private static final int MOST_ROUNDS = 200;
    private static final int PATHS_OF_A_THREAD = 8;
    /** A path of a trial is halved until it counts no more than this, s. */
    private static final double PATH_S = 0.01;

    public MarchTrial {
        if (threads < 1) throw new IllegalArgumentException(threads + " threads");
    }

    /** Whether short paths are marched at all; else counts have the word. */
    boolean isMade() {
        return threadNanos.isPresent();
    }

    /**
     * How long the march will take when all its threads have nothing else to do, s.
     *
     * @param together how many neighbouring radials are marched in lockstep
     * @param countedS counted seconds of one thread ({@code FieldMarchCost}) for all of it
     */
    double seconds(AreaSetting setting, List<Terminals> heights, int together, double countedS) {
        double lengthM = lengthM(new MarchProbe(setting, heights, 1));
        double spentS = 0;
        double quickest = Double.POSITIVE_INFINITY;
        double foretoldS = countedS / threads;
        for (int number = 0; number < MOST_ROUNDS && spentS < longestS(foretoldS); number++) {
            Round round = round(setting, heights, together, lengthM, number);
            if (!(round.countedS > 0)) break;
            spentS += round.tookS / threads;
            quickest = Math.min(quickest, round.tookS / round.countedS);
            foretoldS = OVER_QUICKEST * countedS * quickest / threads;
        }
        return foretoldS;
    }

    private static double longestS(double foretoldS) {
        return Math.min(LONGEST_S, Math.max(SHORTEST_S, SHARE * foretoldS));
    }

    private static double lengthM(MarchProbe probe) {
        double lengthM = probe.radiusM();
        while (lengthM > 2 * CellsByRadial.NEAREST_M && probe.meanS(lengthM) > PATH_S) lengthM /= 2;
        return lengthM;
    }

    private Round round(AreaSetting setting, List<Terminals> heights, int together, double lengthM, int number) {
        int paths = PATHS_OF_A_THREAD * threads;
        LongSupplier clock = threadNanos.orElseThrow();
        double[] countedS = new double[paths];
        double[] tookS = new double[paths];
        new Workers(threads)
                .run(
                        paths,
                        () -> new MarchProbe(setting, heights, together),
                        (probe, i) -> {
                            // The golden section spreads the azimuths of any number of rounds evenly.
                            if (!probe.cut(2 * Math.PI * 0.6180339887498949 * (number * paths + i), lengthM)) return;
                            countedS[i] = probe.countedS();
                            long start = clock.getAsLong();
                            probe.march();
                            tookS[i] = Math.max(1, clock.getAsLong() - start) / 1e9;
                        },
                        new SubProgress(Progress.SILENT, "trial", 0, 1));
        return new Round(Arrays.stream(countedS).sum(), Arrays.stream(tookS).sum());
    }

    /** Counted and measured seconds of the paths of one round, all threads together. */
    private record Round(double countedS, double tookS) {}
}
