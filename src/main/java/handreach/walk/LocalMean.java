package handreach.walk;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A level averaged over some tens of wavelengths, so that the fading of a few steps is out and what the ground does is left.
 *
 * @param alongM middle of the window on the walk, m
 * @param heard the mean level, or the floor where at least half of the samples were below it
 * @param samples how many readings went in
 * @param independent readings at least 0.38 wavelengths apart, at most one for each such step
 * @param halfWidth90Db half-width of the 90 % interval of the mean for Rayleigh fading, dB
 */
public record LocalMean(double alongM, Reception heard, int samples, int independent, double halfWidth90Db) {
    /** Wavelengths to average over, and readings in them, that give the local mean within 1 dB or so (Lee 1985, from memory). */
    public static final double WAVELENGTHS = 40;

    private static final int ENOUGH = 36;
    private static final double APART_WAVELENGTHS = 0.38;
    /** The median of Rayleigh fading lies 10 log ln 2 below its mean power. */
    private static final double MEDIAN_BELOW_MEAN_DB = -10 * Math.log10(Math.log(2));

    private static final double NORMAL_95 = 1.6449;

    /** Whether there were enough independent readings; if not, the value still fades by some decibels. */
    public boolean isAveraged() {
        return independent >= ENOUGH;
    }

    /** Windows of 40 wavelengths over one unbroken run of readings along a walk, each with its members. */
    public static List<List<Integer>> windows(double[] alongM, double wavelengthM) {
        List<List<Integer>> windows = new ArrayList<>();
        for (int i = 0; i < alongM.length; i++) {
            List<Integer> last = windows.isEmpty() ? List.of() : windows.get(windows.size() - 1);
            if (last.isEmpty() || alongM[i] - alongM[last.get(0)] > WAVELENGTHS * wavelengthM) {
                last = new ArrayList<>();
                windows.add(last);
            }
            last.add(i);
        }
        return windows;
    }

    /**
     * Mean power of the readings of one window; where some lie below the floor, their median raised to the mean of Rayleigh fading.
     *
     * @shape  n readings in, one mean out; O(n log n), pure
     * @unit   way m, levels dBm, result dBm
     * @valid  at least one reading, all of them levels or below a floor; outside: IllegalArgumentException
     * @error  half-width at 90 % 10 log(1 + 1.645/√n) dB for n independent readings of Rayleigh fading; 1.0 dB at n = 50
     * @source mean of an exponential law; Lee, IEEE Trans. VT 34(1), 1985 (from memory) for 36 to 50 readings over 20 to 40 λ
     */
    public static LocalMean of(double[] alongM, List<Reception> heard, double wavelengthM) {
        if (heard.isEmpty() || alongM.length != heard.size() || heard.stream().anyMatch(h -> !h.isLevel()))
            throw new IllegalArgumentException("a local mean is made of levels");
        int independent = 1;
        double last = alongM[0];
        for (double along : alongM)
            if (along - last >= APART_WAVELENGTHS * wavelengthM) {
                independent++;
                last = along;
            }
        double half = 10 * Math.log10(1 + NORMAL_95 / Math.sqrt(independent));
        double middle = (alongM[0] + alongM[alongM.length - 1]) / 2;
        return new LocalMean(middle, level(heard), heard.size(), independent, half);
    }

    private static Reception level(List<Reception> heard) {
        long below =
                heard.stream().filter(h -> h.kind() == Reception.Kind.BELOW).count();
        double[] sorted = heard.stream()
                .sorted((a, b) -> Double.compare(rank(a), rank(b)))
                .mapToDouble(Reception::value)
                .toArray();
        if (2 * below >= heard.size()) {
            double floor = heard.stream()
                    .filter(h -> h.kind() == Reception.Kind.BELOW)
                    .mapToDouble(Reception::value)
                    .max()
                    .orElseThrow();
            return new Reception(Reception.Kind.BELOW, floor);
        }
        if (below > 0) return new Reception(Reception.Kind.LEVEL, sorted[sorted.length / 2] + MEDIAN_BELOW_MEAN_DB);
        double power = Arrays.stream(sorted)
                .map(dbm -> Math.pow(10, dbm / 10))
                .average()
                .orElseThrow();
        return new Reception(Reception.Kind.LEVEL, 10 * Math.log10(power));
    }

    /** What is below a floor comes before every level. */
    private static double rank(Reception heard) {
        return heard.kind() == Reception.Kind.BELOW ? -1000 : heard.value();
    }
}
