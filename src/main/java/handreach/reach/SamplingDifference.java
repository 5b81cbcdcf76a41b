package handreach.reach;

import java.util.Locale;

/**
 * Loss off radials, by a sweep or a march, minus loss by one exact path per cell, over a sample of cells.
 *
 * @param cells cells compared
 * @param lost cells left out, since their own march says that they are lost: beyond that excess neither of the two means anything
 * @param meanDb mean difference, dB
 * @param rmsDb root of the mean square difference, dB
 * @param p99Db 99th percentile of its size, dB
 * @param largestDb largest size, dB
 */
public record SamplingDifference(int cells, int lost, double meanDb, double rmsDb, double p99Db, double largestDb) {
    static SamplingDifference of(double[] differenceDb, int lost) {
        int n = differenceDb.length;
        if (n == 0) throw new IllegalArgumentException("no cells to compare");
        double[] size = new double[n];
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            sum += differenceDb[i];
            squares += differenceDb[i] * differenceDb[i];
            size[i] = Math.abs(differenceDb[i]);
        }
        java.util.Arrays.sort(size);
        return new SamplingDifference(
                n,
                lost,
                sum / n,
                Math.sqrt(squares / n),
                size[Math.min(n - 1, (int) Math.ceil(0.99 * n) - 1)],
                size[n - 1]);
    }

    /** One line for people about an engine. */
    public String sentence(MapEngine engine) {
        return String.format(
                Locale.ROOT,
                "%s against one exact path per cell, %d cells: mean %s%.2f dB, RMS %.2f dB, %s%s",
                engine.word(),
                cells,
                meanDb < 0 ? "\u2212" : "+",
                Math.abs(meanDb),
                rmsDb,
                bound(),
                lost == 0 ? "" : "; " + lost + " more are lost in shadow");
    }

    /** How far nearly all of the cells differ at most, in words; of fewer than a hundred, all of them. */
    public String bound() {
        return cells < 100
                ? String.format(Locale.ROOT, "all within %.1f dB", largestDb)
                : String.format(Locale.ROOT, "99 %% within %.1f dB", p99Db);
    }
}
