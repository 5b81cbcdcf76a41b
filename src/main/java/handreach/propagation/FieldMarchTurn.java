package handreach.propagation;

import org.apache.commons.math3.complex.Complex;

/**
 * Turning the column round a corner of the ground: dψ/dθ = jkη√(1+X) ψ.
 *
 * <p>Split into the phase exp(jkηθ) and, for the wide-angle rest, Crank–Nicolson over √(1+X) − 1 ≈ Σ aX/(1+bX) of two terms.
 * Each step keeps the norm of |ψ|²/η, so that turning to and fro is stable.
 */
final class FieldMarchTurn {
    private static final double[] A = {
        0.4 * Math.pow(Math.sin(Math.PI / 5), 2), 0.4 * Math.pow(Math.sin(2 * Math.PI / 5), 2)
    };
    private static final double[] B = {Math.pow(Math.cos(Math.PI / 5), 2), Math.pow(Math.cos(2 * Math.PI / 5), 2)};

    private final int n;
    private final double spacingM;
    private final double k;
    private final double groundRe;
    private final double groundIm;
    /** For each term: multipliers l up (re, im), inverse pivots v, multipliers e down. */
    private final double[][][] factor;

    private final double[] scale = new double[2];
    private final double[] yRe;
    private final double[] yIm;

    FieldMarchTurn(int n, double spacingM, double k, Complex g) {
        this.n = n;
        this.spacingM = spacingM;
        this.k = k;
        this.groundRe = 2 + 2 * spacingM * g.getReal();
        this.groundIm = 2 * spacingM * g.getImaginary();
        this.factor = new double[2][6][n];
        this.yRe = new double[n];
        this.yIm = new double[n];
    }

    /** ψ times exp(jkηθ). */
    void phase(double[] re, double[] im, double angleRad) {
        double step = k * spacingM * angleRad;
        double c = Math.cos(step);
        double s = Math.sin(step);
        double pr = 1;
        double pi = 0;
        for (int i = 0; i < n; i++) {
            double t = re[i] * pr - im[i] * pi;
            im[i] = re[i] * pi + im[i] * pr;
            re[i] = t;
            double q = pr * c - pi * s;
            pi = pr * s + pi * c;
            pr = q;
        }
    }

    /** Makes the factors of the wide-angle rest of a turn by this angle. */
    void prepare(double angleRad) {
        double h2 = 1 / (spacingM * spacingM);
        for (int term = 0; term < 2; term++) {
            double p = B[term] / (k * k) * h2;
            double s = -0.5 * angleRad * A[term] / k * h2 * spacingM;
            scale[term] = angleRad * A[term] / k * h2;
            prepare(factor[term], p, s);
        }
    }

    private void prepare(double[][] f, double p, double s) {
        double[] lRe = f[0];
        double[] lIm = f[1];
        double[] vRe = f[2];
        double[] vIm = f[3];
        double[] eRe = f[4];
        double[] eIm = f[5];
        double off = 1.0 / 12 + p;
        double diagonal = 10.0 / 12 - 2 * p;
        double pivotRe = 2.0 / 3 - p * groundRe;
        double pivotIm = -p * groundIm;
        double upRe = 1.0 / 3 + 2 * p;
        double upIm = 2 * s;
        for (int i = 0; i < n; i++) {
            double norm = 1 / (pivotRe * pivotRe + pivotIm * pivotIm);
            double vr = pivotRe * norm;
            double vi = -pivotIm * norm;
            vRe[i] = vr;
            vIm[i] = vi;
            double er = upRe * vr - upIm * vi;
            double ei = upRe * vi + upIm * vr;
            eRe[i] = er;
            eIm[i] = ei;
            if (i == n - 1) break;
            double lowIm = s * i;
            lRe[i + 1] = off * vr - lowIm * vi;
            lIm[i + 1] = off * vi + lowIm * vr;
            pivotRe = diagonal - (off * er - lowIm * ei);
            pivotIm = -2 * s * (i + 1) - (off * ei + lowIm * er);
            upRe = off;
            upIm = s * (i + 2);
        }
    }

    /** One step of the wide-angle rest, term after term. */
    void rest(double[] re, double[] im) {
        rest(re, im, factor[0], scale[0]);
        rest(re, im, factor[1], scale[1]);
    }

    private void rest(double[] re, double[] im, double[][] f, double t) {
        double[] lRe = f[0];
        double[] lIm = f[1];
        double[] vRe = f[2];
        double[] vIm = f[3];
        double[] eRe = f[4];
        double[] eIm = f[5];
        // the right side is jt times the second difference
        double dRe = 2 * re[1] - (groundRe * re[0] - groundIm * im[0]);
        double dIm = 2 * im[1] - (groundRe * im[0] + groundIm * re[0]);
        double ar = -t * dIm;
        double ai = t * dRe;
        yRe[0] = ar;
        yIm[0] = ai;
        for (int i = 1; i < n; i++) {
            double nextRe = i + 1 < n ? re[i + 1] : 0;
            double nextIm = i + 1 < n ? im[i + 1] : 0;
            double xr = -t * (im[i - 1] - 2 * im[i] + nextIm);
            double xi = t * (re[i - 1] - 2 * re[i] + nextRe);
            double q = xr - lRe[i] * ar + lIm[i] * ai;
            ai = xi - lRe[i] * ai - lIm[i] * ar;
            ar = q;
            yRe[i] = ar;
            yIm[i] = ai;
        }
        ar = 0;
        ai = 0;
        for (int i = n - 1; i >= 0; i--) {
            double q = vRe[i] * yRe[i] - vIm[i] * yIm[i] - eRe[i] * ar + eIm[i] * ai;
            ai = vRe[i] * yIm[i] + vIm[i] * yRe[i] - eRe[i] * ai - eIm[i] * ar;
            ar = q;
            double eta = i * spacingM;
            re[i] += eta * ar;
            im[i] += eta * ai;
        }
    }
}
