package handreach.propagation.march;

import java.util.concurrent.atomic.AtomicReferenceArray;
import org.apache.commons.math3.complex.Complex;

/**
 * Rational form of one range step of the field march, as a sum over its poles.
 *
 * <p>exp(−jσ(√(1+X) − 1)) ≈ 1 + Σ c_i X/(1 + q_i X), where σ is the phase of the step and X the height operator. The [n/n]
 * fraction matches 2n − 1 derivatives at X = 0 and vanishes at X = −3, so that evanescent waves die. As a sum, its n solves do
 * not wait for each other.
 */
final class PadeStep {
    private static final double EVANESCENT_ZERO = -3;
    private static final double EVANESCENT_FROM = -1.8;

    /** Quanta of the longest step that is kept; longer ones are found anew. */
    private static final int QUANTA_KEPT = 2048;

    private static final int HIGHEST_ORDER = 8;
    /** What the roots move in a round once only rounding moves them, in shares of their radius: at most so much, and no less than before. */
    private static final double ROUNDING = 1e-8;
    /** Steps found once, by quanta and order: their fractions depend on nothing else. */
    private static final AtomicReferenceArray<PadeStep> KEPT =
            new AtomicReferenceArray<>(QUANTA_KEPT * (HIGHEST_ORDER + 1));

    private final Complex[] pole;
    private final Complex[] weight;

    private PadeStep(Complex[] pole, Complex[] weight) {
        this.pole = pole;
        this.weight = weight;
    }

    /**
     * The step of a given phase and order.
     *
     * @shape  phase and order in, n poles out; O(n³), pure
     * @unit   phase σ = wave number times step, radians
     * @valid  σ above 0, order 2 to 8
     * @error  order 4 over 15 wavelengths: 2e-10 at 5°, 1e-5 at 10°, 0.006 at 15°, 0.2 at 20° from the facet; over 5 wavelengths
     *         0.003 at 25°; order 8 over 5 wavelengths 3e-4 at 40°, 0.02 at 50°
     * @source Collins, J. Acoust. Soc. Am. 93 (1993) 1736, split-step Padé; the stability zero as in section I there (from memory)
     */
    static PadeStep of(double phaseRad, int order) {
        if (!(phaseRad > 0) || order < 2 || order > HIGHEST_ORDER)
            throw new IllegalArgumentException("step of phase " + phaseRad + " and order " + order);
        Complex[] taylor = taylor(phaseRad, 2 * order - 1);
        Complex[] denominator = denominator(taylor, order);
        Complex[] numerator = new Complex[order + 1];
        for (int r = 0; r <= order; r++) {
            numerator[r] = Complex.ZERO;
            for (int i = 0; i <= r; i++) numerator[r] = numerator[r].add(denominator[i].multiply(taylor[r - i]));
        }
        Complex[] pole = poles(denominator);
        Complex[] weight = new Complex[order];
        for (int i = 0; i < order; i++) {
            Complex x = pole[i].reciprocal().negate();
            Complex c = valueOf(numerator, x).multiply(pole[i].negate());
            for (int j = 0; j < order; j++)
                if (j != i) c = c.divide(pole[j].multiply(x).add(1));
            weight[i] = c;
        }
        return new PadeStep(pole, weight);
    }

    static double phaseRad(long quanta) {
        return 2 * Math.PI * FieldMarchWave.QUANTUM_SHARE * quanta;
    }

    /** The step of so many quanta ({@link FieldMarchWave#quantumM}): of one phase at whatever frequency, and found once. */
    static PadeStep ofQuanta(long quanta, int order) {
        double phaseRad = phaseRad(quanta);
        if (quanta >= QUANTA_KEPT || quanta < 1 || order < 2 || order > HIGHEST_ORDER) return of(phaseRad, order);
        int at = (int) quanta * (HIGHEST_ORDER + 1) + order;
        PadeStep kept = KEPT.get(at);
        if (kept == null) {
            kept = of(phaseRad, order);
            KEPT.set(at, kept);
        }
        return kept;
    }

    /**
     * A step that goes nowhere and lets evanescent waves die: 1/(1 + (X/X₀)⁸), X₀ = −1.8.
     *
     * @shape  8 poles out; pure
     * @unit   dimensionless
     * @valid  any X up to 0
     * @error  takes 3e-7 of a wave at 40° from the facet, 9e-4 at 60°, 0.9 % at 90°; leaves 1.6 % at X = −3
     * @source Butterworth's low pass, in partial fractions
     */
    static PadeStep calming() {
        int n = 8;
        Complex[] pole = new Complex[n];
        for (int i = 0; i < n; i++) {
            double angle = Math.PI * (2 * i + 1) / n;
            pole[i] = new Complex(Math.cos(angle), Math.sin(angle)).divide(-EVANESCENT_FROM);
        }
        Complex[] weight = new Complex[n];
        for (int i = 0; i < n; i++) {
            Complex c = pole[i].negate();
            for (int j = 0; j < n; j++) if (j != i) c = c.divide(Complex.ONE.subtract(pole[j].divide(pole[i])));
            weight[i] = c;
        }
        return new PadeStep(pole, weight);
    }

    int order() {
        return pole.length;
    }

    /** q of one term. */
    Complex pole(int i) {
        return pole[i];
    }

    /** c of one term. */
    Complex weight(int i) {
        return weight[i];
    }

    /** Value of the fraction at a real X. */
    Complex at(double x) {
        Complex sum = Complex.ONE;
        for (int i = 0; i < pole.length; i++)
            sum = sum.add(weight[i].multiply(x).divide(pole[i].multiply(x).add(1)));
        return sum;
    }

    /** Taylor coefficients of exp(−jσ(√(1+X) − 1)). */
    private static Complex[] taylor(double sigma, int order) {
        double[] root = new double[order + 1];
        double c = 1;
        for (int i = 1; i <= order; i++) {
            c *= (1.5 - i) / i;
            root[i] = c;
        }
        Complex[] e = new Complex[order + 1];
        e[0] = Complex.ONE;
        for (int m = 1; m <= order; m++) {
            Complex sum = Complex.ZERO;
            for (int i = 1; i <= m; i++) sum = sum.add(e[m - i].multiply(i * root[i]));
            e[m] = sum.multiply(new Complex(0, -sigma / m));
        }
        return e;
    }

    /** Denominator 1 + b1 X + … from the n − 1 highest Taylor conditions and the zero of the numerator. */
    private static Complex[] denominator(Complex[] e, int n) {
        Complex[][] a = new Complex[n][n + 1];
        for (int row = 0; row < n - 1; row++) {
            int r = n + 1 + row;
            for (int i = 1; i <= n; i++) a[row][i - 1] = e[r - i];
            a[row][n] = e[r].negate();
        }
        for (int i = 0; i <= n; i++) {
            Complex sum = Complex.ZERO;
            for (int r = i; r <= n; r++) sum = sum.add(e[r - i].multiply(Math.pow(EVANESCENT_ZERO, r)));
            if (i == 0) a[n - 1][n] = sum.negate();
            else a[n - 1][i - 1] = sum;
        }
        Complex[] b = solve(a);
        Complex[] denominator = new Complex[n + 1];
        denominator[0] = Complex.ONE;
        System.arraycopy(b, 0, denominator, 1, n);
        return denominator;
    }

    /** Gaussian elimination with row exchange; the last column is the right side. */
    private static Complex[] solve(Complex[][] a) {
        int n = a.length;
        for (int c = 0; c < n; c++) {
            int best = c;
            for (int r = c + 1; r < n; r++) if (a[r][c].abs() > a[best][c].abs()) best = r;
            Complex[] row = a[best];
            a[best] = a[c];
            a[c] = row;
            for (int r = c + 1; r < n; r++) {
                Complex f = a[r][c].divide(row[c]);
                for (int i = c + 1; i <= n; i++) a[r][i] = a[r][i].subtract(f.multiply(row[i]));
            }
        }
        Complex[] x = new Complex[n];
        for (int r = n - 1; r >= 0; r--) {
            Complex sum = a[r][n];
            for (int i = r + 1; i < n; i++) sum = sum.subtract(a[r][i].multiply(x[i]));
            x[r] = sum.divide(a[r][r]);
        }
        return x;
    }

    /** The q of 1 + b1 X + … = Π(1 + q X): roots of qⁿ − b1 qⁿ⁻¹ + …, all at once by Durand and Kerner's iteration. */
    private static Complex[] poles(Complex[] b) {
        int n = b.length - 1;
        Complex[] monic = new Complex[n + 1];
        for (int i = 0; i <= n; i++) monic[n - i] = i % 2 == 0 ? b[i] : b[i].negate();
        double radius = Math.pow(b[n].abs(), 1.0 / n);
        Complex[] q = new Complex[n];
        for (int i = 0; i < n; i++) {
            double angle = 2 * Math.PI * i / n + 0.4;
            q[i] = new Complex(radius * Math.cos(angle), radius * Math.sin(angle));
        }
        double change = 1;
        double before = 2;
        // rounding moves the roots of the highest order by more than any bound that serves all: a round that gains
        // nothing is the last
        for (int round = 0; round < 200 && (change > ROUNDING || change < before); round++) {
            before = change;
            change = 0;
            for (int i = 0; i < n; i++) {
                Complex d = valueOf(monic, q[i]);
                for (int j = 0; j < n; j++) if (j != i) d = d.divide(q[i].subtract(q[j]));
                q[i] = q[i].subtract(d);
                change = Math.max(change, d.abs() / radius);
            }
        }
        return q;
    }

    private static Complex valueOf(Complex[] polynomial, Complex x) {
        Complex sum = Complex.ZERO;
        for (int i = polynomial.length - 1; i >= 0; i--) sum = sum.multiply(x).add(polynomial[i]);
        return sum;
    }
}
