package handreach.bench.match;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;

/**
 * Reflection between the measured frequencies: a cubic through four neighbours, of impedance, admittance or reflection,
 * whichever foretells left-out points best. A whip on its own is smooth in impedance, one behind a matching network in
 * admittance, one behind a cable in reflection; SWR is smooth in none of them.
 */
final class ReflectionCurve {
    private static final int POINTS = 4;
    private static final double TOTAL = 0.999_999_9;

    /** Quantity that is interpolated. */
    enum Domain {
        IMPEDANCE,
        ADMITTANCE,
        REFLECTION;

        private Complex from(Complex gamma) {
            return switch (this) {
                case IMPEDANCE -> gamma.add(1).divide(Complex.ONE.subtract(gamma));
                case ADMITTANCE -> Complex.ONE.subtract(gamma).divide(gamma.add(1));
                case REFLECTION -> gamma;
            };
        }

        private Complex back(Complex value) {
            return switch (this) {
                case IMPEDANCE -> value.subtract(1).divide(value.add(1));
                case ADMITTANCE -> Complex.ONE.subtract(value).divide(value.add(1));
                case REFLECTION -> value;
            };
        }
    }

    private final double[] mhz;
    private final Complex[] gamma;
    private final Complex[] values;
    private final Domain domain;

    private ReflectionCurve(double[] mhz, Complex[] gamma, Domain domain) {
        this.mhz = mhz;
        this.gamma = gamma;
        this.domain = domain;
        values = new Complex[gamma.length];
        for (int i = 0; i < values.length; i++) values[i] = domain.from(gamma[i]);
    }

    /** Curve of a file, its reflection restated over the wanted impedance. */
    static ReflectionCurve of(Touchstone file, double systemOhm) {
        double[] mhz = new double[file.count()];
        Complex[] gamma = new Complex[file.count()];
        for (int i = 0; i < mhz.length; i++) {
            mhz[i] = file.frequencyMhz(i);
            gamma[i] = restated(limited(file.reflection(i)), file.referenceOhm(), systemOhm);
        }
        ReflectionCurve best = null;
        double least = Double.POSITIVE_INFINITY;
        for (Domain domain : Domain.values()) {
            ReflectionCurve curve = new ReflectionCurve(mhz, gamma, domain);
            double misses = curve.misses();
            if (best == null || misses < least) {
                best = curve;
                least = misses;
            }
        }
        return best;
    }

    private static Complex limited(Complex reflection) {
        double size = reflection.abs();
        return size > TOTAL ? reflection.multiply(TOTAL / size) : reflection;
    }

    private static Complex restated(Complex reflection, double fromOhm, double toOhm) {
        if (fromOhm == toOhm) return reflection;
        double step = (toOhm - fromOhm) / (toOhm + fromOhm);
        return reflection.subtract(step).divide(Complex.ONE.subtract(reflection.multiply(step)));
    }

    /** How badly each point is foretold by its neighbours, those where power is taken weighing most. */
    private double misses() {
        double sum = 0;
        for (int i = 2; i + 2 < mhz.length; i++) {
            Complex foretold = domain.back(through(mhz[i], i - 2, i - 1, i + 1, i + 2));
            double off = foretold.subtract(gamma[i]).abs();
            double taken = 1 - gamma[i].abs() * gamma[i].abs() + 0.01;
            sum += Double.isFinite(off) ? taken * off * off : 1;
        }
        return sum;
    }

    int count() {
        return mhz.length;
    }

    double mhz(int point) {
        return mhz[point];
    }

    double lowestMhz() {
        return mhz[0];
    }

    double highestMhz() {
        return mhz[mhz.length - 1];
    }

    boolean covers(double frequencyMhz) {
        return frequencyMhz >= lowestMhz() && frequencyMhz <= highestMhz();
    }

    /** Reflection at a frequency within the measured ones. */
    Complex at(double frequencyMhz) {
        if (!covers(frequencyMhz)) throw new IllegalArgumentException(frequencyMhz + " MHz is outside the sweep");
        int found = Arrays.binarySearch(mhz, frequencyMhz);
        if (found >= 0) return gamma[found];
        int above = -found - 1;
        int points = Math.min(POINTS, mhz.length);
        int first = Math.max(0, Math.min(mhz.length - points, above - points / 2));
        int[] indices = new int[points];
        for (int i = 0; i < points; i++) indices[i] = first + i;
        Complex value = domain.back(through(frequencyMhz, indices));
        return value.isNaN() || value.isInfinite() ? gamma[above] : limited(value);
    }

    Match match(double frequencyMhz) {
        return Match.ofReflection(
                Math.min(Match.MOST_REFLECTION, at(frequencyMhz).abs()));
    }

    /** Impedance in units of the system impedance. */
    Complex impedance(double frequencyMhz) {
        return Domain.IMPEDANCE.from(at(frequencyMhz));
    }

    /** Lagrange's polynomial. */
    private Complex through(double x, int... indices) {
        Complex sum = Complex.ZERO;
        for (int i : indices) {
            double weight = 1;
            for (int j : indices) if (j != i) weight *= (x - mhz[j]) / (mhz[i] - mhz[j]);
            sum = sum.add(values[i].multiply(weight));
        }
        return sum;
    }
}
