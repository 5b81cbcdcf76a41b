package handreach.propagation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The default model written down once more, plain and slow, from docs/handheld-model.md: the string by trying every sample for
 * each next vertex, integrals as sums of many thin slices, pairs of bends by a double loop. Only the smooth-earth term and the
 * knife edge are taken from the product; both have tests of their own.
 */
public final class HandheldByHand {
    private static final int SLICES = 40_000;

    private final double[] x;
    private final double[] h;
    private final Terminals terminals;
    private final PathConditions conditions;
    private final double earthM;
    private final double lambda;
    private final double d;
    private final List<double[]> string = new ArrayList<>();

    public HandheldByHand(double[] x, double[] h, Terminals terminals, PathConditions conditions) {
        this.x = x;
        this.h = h;
        this.terminals = terminals;
        this.conditions = conditions;
        earthM = 1000 * conditions.atmosphere().effectiveRadiusKm();
        lambda = conditions.frequency().wavelengthM();
        d = x[x.length - 1];
        stretch();
    }

    private double flat(double at, double height) {
        return height - at * at / (2 * earthM);
    }

    private void stretch() {
        int last = x.length - 1;
        double farTip = flat(d, h[last] + terminals.rxHeightM());
        string.add(new double[] {0, h[0] + terminals.txHeightM()});
        for (int from = 0; from < last; ) {
            double[] here = string.get(string.size() - 1);
            int next = last;
            double steepest = (farTip - here[1]) / (d - here[0]);
            for (int i = from + 1; i < last; i++) {
                double slope = (flat(x[i], h[i]) - here[1]) / (x[i] - here[0]);
                if (slope > steepest) {
                    steepest = slope;
                    next = i;
                }
            }
            string.add(new double[] {x[next], next == last ? farTip : flat(x[next], h[next])});
            from = next;
        }
    }

    public double excessDb() {
        double edges = edgesDb(nu(), splitM());
        double roughness = roughnessM() / Math.sqrt(lambda);
        double t = Math.min(1, roughness / 2.5);
        double q = t * t * (3 - 2 * t);
        SmoothGround smooth =
                new SmoothGround(conditions.frequency(), conditions.polarization(), conditions.ground(), earthM);
        double h1 = terminals.txHeightM();
        double h2 = terminals.rxHeightM();
        double k = 2 * Math.PI / lambda;
        double y1 = 2 * k * smooth.waveHeightM(h1) * angle(false);
        double y2 = 2 * k * smooth.waveHeightM(h2) * angle(true);
        double rough = -6.9
                + 8.5 * roughness / (roughness + 5)
                + 5.5 * Math.log10(1 / (y1 * y1) + 1)
                + 5.5 * Math.log10(1 / (y2 * y2) + 1)
                - 3.3 * fallsAway(Math.min(120, d), smooth.waveHeightM(h1))
                - 3.3 * fallsAway(Math.max(0, d - 120), smooth.waveHeightM(h2));
        double even = smooth.lossDb(d, h1, h2) - edgesDb(smooth.nu(d, h1, h2), smooth.splitM(d, h1, h2));
        return Math.max(-20 * Math.log10(2), edges + q * rough + (1 - q) * even);
    }

    private double edgesDb(double nu, double splitM) {
        double j = KnifeEdge.lossDb(nu);
        return j + 7 * Math.min(1, j / KnifeEdge.lossDb(0)) + 17 * Math.log10(1 + 10 * splitM / lambda);
    }

    private double bend(int vertex) {
        double[] a = string.get(vertex - 1);
        double[] b = string.get(vertex);
        double[] c = string.get(vertex + 1);
        return (b[1] - a[1]) / (b[0] - a[0]) - (c[1] - b[1]) / (c[0] - b[0]);
    }

    private double totalBend() {
        double sum = 0;
        for (int v = 1; v < string.size() - 1; v++) sum += bend(v);
        return sum;
    }

    private double liftM() {
        double sum = 0;
        for (int v = 1; v < string.size() - 1; v++) sum += bend(v) * string.get(v)[0] * (d - string.get(v)[0]) / d;
        return sum;
    }

    private double splitM() {
        double sum = 0;
        for (int v = 1; v < string.size() - 1; v++)
            for (int w = v + 1; w < string.size() - 1; w++) {
                double a = string.get(v)[0];
                double b = string.get(w)[0] - a;
                double c = d - string.get(w)[0];
                sum += bend(v) * bend(w) * a * b * c / d;
            }
        return sum == 0 ? 0 : totalBend() * sum / liftM();
    }

    private double nu() {
        if (string.size() > 2) return Math.sqrt(2 * totalBend() * liftM() / lambda);
        double worst = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < SLICES; i++) {
            double at = d * i / SLICES;
            double above = groundAt(at, true) - stringAt(at);
            worst = Math.max(worst, above * Math.sqrt(2 * d / (lambda * at * (d - at))));
        }
        for (int i = 1; i < x.length - 1; i++) {
            double above = flat(x[i], h[i]) - stringAt(x[i]);
            worst = Math.max(worst, above * Math.sqrt(2 * d / (lambda * x[i] * (d - x[i]))));
        }
        return Math.min(0, worst);
    }

    private double stringAt(double at) {
        int v = 1;
        while (v < string.size() - 1 && string.get(v)[0] < at) v++;
        double[] a = string.get(v - 1);
        double[] b = string.get(v);
        return a[1] + (b[1] - a[1]) * (at - a[0]) / (b[0] - a[0]);
    }

    /** Ground between samples: straight as it is, or straight after flattening. */
    private double groundAt(double at, boolean flattenSamples) {
        int found = Arrays.binarySearch(x, at);
        int i = Math.max(1, found < 0 ? -found - 1 : found);
        double share = (at - x[i - 1]) / (x[i] - x[i - 1]);
        if (flattenSamples) return flat(x[i - 1], h[i - 1]) * (1 - share) + flat(x[i], h[i]) * share;
        return h[i - 1] * (1 - share) + h[i] * share;
    }

    private double angle(boolean fromFarEnd) {
        double sum = 0;
        for (int i = 0; i < SLICES; i++) {
            double at = d * (i + 0.5) / SLICES;
            double u = fromFarEnd ? 1 - at / d : at / d;
            sum += (stringAt(at) - flat(at, groundAt(at, false))) * Math.pow(1 - u, 3) * d / SLICES;
        }
        return 20 * sum / (d * d);
    }

    private double fallsAway(double at, double waveHeightM) {
        double gap = stringAt(at) - flat(at, groundAt(at, false));
        double clear = gap / (gap + Math.sqrt(lambda * Math.min(120, d)) / 4);
        double over = 7.8 * (clear - 0.64 - 0.2 * Math.log10(waveHeightM));
        return over / Math.sqrt(1 + over * over);
    }

    private double roughnessM() {
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (int i = 0; i < SLICES; i++) {
            double u = (i + 0.5) / SLICES - 0.5;
            double y = groundAt(d * (u + 0.5), false) - h[0];
            sx += u;
            sy += y;
            sxx += u * u;
            sxy += u * y;
            syy += y * y;
        }
        double n = SLICES;
        double tilt = (sxy - sx * sy / n) / (sxx - sx * sx / n);
        double variance = (syy - sy * sy / n - tilt * (sxy - sx * sy / n)) / n;
        return Math.sqrt(Math.max(0, variance));
    }
}
