package handreach.propagation.march;

import org.apache.commons.math3.complex.Complex;

/**
 * Turning the column round a corner of the ground: dψ/dθ = jkη√(1+X) ψ.
 *
 * <p>Split into the phase exp(jkηθ) and, for the wide-angle rest, Crank–Nicolson over √(1+X) − 1 ≈ Σ aX/(1+bX) of two terms.
 * Each step keeps the norm of |ψ|²/η, so that turning to and fro is stable.
 */
final class FieldMarchTurn {
    private static final int TERMS = 2;
    /**
     * b of a term alone, in place of the quarter of its series about the level ray: right for the level ray and the one at 26°, and
     * within 0.00005 of the root in between.
     */
    private static final double ALONE = 0.262;

    private final double spacingM;
    private final double k;
    private final double groundRe;
    private final double groundIm;
    private final Term first;
    private final Term second;
    private final double[] yRe;
    private final double[] yIm;

    FieldMarchTurn(int n, double spacingM, double k, Complex g) {
        this.spacingM = spacingM;
        this.k = k;
        this.groundRe = 2 + 2 * spacingM * g.getReal();
        this.groundIm = 2 * spacingM * g.getImaginary();
        this.first = new Term(1, n);
        this.second = new Term(2, n);
        this.yRe = new double[n];
        this.yIm = new double[n];
    }

    /** The a of a term of the square root, the first or last of so many. */
    static double strength(int term, int terms) {
        return 2.0 / (2 * terms + 1) * Math.pow(Math.sin(term * Math.PI / (2 * terms + 1)), 2);
    }

    /** Its b over the square of wave number times spacing. */
    static double spread(int term, int terms, double phaseOfSpacing) {
        double b = terms == 1 ? ALONE : Math.pow(Math.cos(term * Math.PI / (2 * terms + 1)), 2);
        return b / (phaseOfSpacing * phaseOfSpacing);
    }

    /**
     * One term of the square root, and the factors of its tridiagonal matrix M + D(b/k² − jqη), D the second difference: l the
     * multipliers on the way up, v the inverse pivots.
     */
    private final class Term {
        /** a and b of Bamberger et al., SIAM J. Appl. Math. 48 (1988) 129 (from memory): real, so that turning loses nothing. */
        final double a;

        final double off;
        final double diagonal;
        final double[] lRe;
        final double[] lIm;
        final double[] vRe;
        final double[] vIm;
        /** Off-diagonal elements grow by j times this from node to node. */
        double growth;
        /** The right side is j times this times the second difference. */
        double scale;
        /** Multiplier of the first row over the ground times the element over its diagonal. */
        double firstRe;

        double firstIm;

        Term(int j, int n) {
            this.lRe = new double[n + 1];
            this.lIm = new double[n + 1];
            this.vRe = new double[n];
            this.vIm = new double[n];
            this.a = strength(j, TERMS);
            double p = spread(j, TERMS, k * spacingM);
            this.off = 1.0 / 12 + p;
            this.diagonal = 10.0 / 12 - 2 * p;
        }

        /** The ground row. */
        void start(double angleRad) {
            scale = angleRad * a / (k * spacingM * spacingM);
            growth = -0.5 * scale * spacingM;
            double p = off - 1.0 / 12;
            double pr = 2.0 / 3 - p * groundRe;
            double pi = -p * groundIm;
            double inverse = 1 / (pr * pr + pi * pi);
            vRe[0] = pr * inverse;
            vIm[0] = -pi * inverse;
            lRe[1] = off * vRe[0];
            lIm[1] = off * vIm[0];
            double upRe = 1.0 / 3 + 2 * p;
            double upIm = 2 * growth;
            firstRe = upRe * lRe[1] - upIm * lIm[1];
            firstIm = upRe * lIm[1] + upIm * lRe[1];
        }
    }

    /** ψ times exp(jkηθ). */
    void phase(int n, double[] re, double[] im, double angleRad) {
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

    /**
     * Makes the factors of the wide-angle rest of a turn by this angle. Both terms go up together: each waits for a division at
     * every node, and the other runs meanwhile.
     */
    void prepare(int n, double angleRad) {
        first.start(angleRad);
        second.start(angleRad);
        // products of the multiplier of a row and the element over its diagonal
        double ar = first.firstRe;
        double ai = first.firstIm;
        double br = second.firstRe;
        double bi = second.firstIm;
        double[] alr = first.lRe;
        double[] ali = first.lIm;
        double[] avr = first.vRe;
        double[] avi = first.vIm;
        double[] blr = second.lRe;
        double[] bli = second.lIm;
        double[] bvr = second.vRe;
        double[] bvi = second.vIm;
        for (int i = 1; i < n; i++) {
            double lowA = first.growth * i;
            double lowB = second.growth * i;
            double dr = first.diagonal - ar;
            double di = -2 * lowA - ai;
            double er = second.diagonal - br;
            double ei = -2 * lowB - bi;
            double p = 1 / (dr * dr + di * di);
            double q = 1 / (er * er + ei * ei);
            dr *= p;
            di *= -p;
            er *= q;
            ei *= -q;
            avr[i] = dr;
            avi[i] = di;
            bvr[i] = er;
            bvi[i] = ei;
            double lr = first.off * dr - lowA * di;
            double li = first.off * di + lowA * dr;
            double mr = second.off * er - lowB * ei;
            double mi = second.off * ei + lowB * er;
            alr[i + 1] = lr;
            ali[i + 1] = li;
            blr[i + 1] = mr;
            bli[i + 1] = mi;
            double upA = lowA + first.growth;
            double upB = lowB + second.growth;
            ar = lr * first.off - li * upA;
            ai = lr * upA + li * first.off;
            br = mr * second.off - mi * upB;
            bi = mr * upB + mi * second.off;
        }
    }

    /** One step of the wide-angle rest, term after term. */
    void rest(int n, double[] re, double[] im) {
        rest(n, re, im, first);
        rest(n, re, im, second);
    }

    private void rest(int n, double[] re, double[] im, Term term) {
        double[] lRe = term.lRe;
        double[] lIm = term.lIm;
        double[] vRe = term.vRe;
        double[] vIm = term.vIm;
        double t = term.scale;
        double ar = -t * (2 * im[1] - groundRe * im[0] - groundIm * re[0]);
        double ai = t * (2 * re[1] - groundRe * re[0] + groundIm * im[0]);
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
        double growth = term.growth;
        ar = 0;
        ai = 0;
        for (int i = n - 1; i > 0; i--) {
            double eRe = lRe[i + 1] - growth * vIm[i];
            double eIm = lIm[i + 1] + growth * vRe[i];
            double q = vRe[i] * yRe[i] - vIm[i] * yIm[i] - eRe * ar + eIm * ai;
            ai = vRe[i] * yIm[i] + vIm[i] * yRe[i] - eRe * ai - eIm * ar;
            ar = q;
            double eta = i * spacingM;
            re[i] += eta * ar;
            im[i] += eta * ai;
        }
    }
}
