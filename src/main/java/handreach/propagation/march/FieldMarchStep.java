package handreach.propagation.march;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;

/**
 * A range step made ready: for each pole the factors of its tridiagonal matrix M + qD/k², M the fourth-order compact mass.
 *
 * <p>Away from the ground the matrix has constant rows, and the pivots settle to a constant within some forty nodes; only those
 * before are stored.
 */
final class FieldMarchStep {
    private static final double SETTLED = 1e-15;
    /** The slowest pole of any step settles within 80 nodes. */
    private static final int SETTLES_BEFORE = 400;

    private final Pole[] pole;

    FieldMarchStep(PadeStep step, double spacingM, double k, double gRe, double gIm, int n) {
        this.pole = new Pole[step.order()];
        double s = 1 / (k * k * spacingM * spacingM);
        Complex ground = new Complex(gRe, gIm).multiply(2 * spacingM).add(2);
        for (int i = 0; i < pole.length; i++) pole[i] = new Pole(step.pole(i).multiply(s), step.weight(i), ground, n);
    }

    /** Factors of one pole: l the multipliers of the way up, v the weighted inverse pivots of the way down. */
    private static final class Pole {
        final double[] lRe;
        final double[] lIm;
        final double[] vRe;
        final double[] vIm;
        final double firstRe;
        final double firstIm;
        final int settled;

        Pole(Complex pole, Complex weight, Complex ground, int n) {
            double qr = pole.getReal();
            double qi = pole.getImaginary();
            double cr = weight.getReal();
            double ci = weight.getImaginary();
            double[] lr = new double[SETTLES_BEFORE + 1];
            double[] li = new double[SETTLES_BEFORE + 1];
            double[] vr = new double[SETTLES_BEFORE];
            double[] vi = new double[SETTLES_BEFORE];
            double offRe = qr + 1.0 / 12;
            double pr = 2.0 / 3 - (qr * ground.getReal() - qi * ground.getImaginary());
            double pi = -(qr * ground.getImaginary() + qi * ground.getReal());
            double ur = 2 * qr + 1.0 / 3;
            double ui = 2 * qi;
            double norm = pr * pr + pi * pi;
            firstRe = (ur * pr + ui * pi) / norm;
            firstIm = (ui * pr - ur * pi) / norm;
            int i = 0;
            while (true) {
                double inv = 1 / (pr * pr + pi * pi);
                double ir = pr * inv;
                double ii = -pi * inv;
                vr[i] = ir * cr - ii * ci;
                vi[i] = ir * ci + ii * cr;
                lr[i + 1] = ir * offRe - ii * qi;
                li[i + 1] = ir * qi + ii * offRe;
                double nextRe = 10.0 / 12 - 2 * qr - (lr[i + 1] * ur - li[i + 1] * ui);
                double nextIm = -2 * qi - (lr[i + 1] * ui + li[i + 1] * ur);
                double change = Math.abs(nextRe - pr) + Math.abs(nextIm - pi);
                boolean isSettled = i > 1 && change <= SETTLED * (Math.abs(pr) + Math.abs(pi));
                if (isSettled || i == n - 1 || i == SETTLES_BEFORE - 1) break;
                ur = offRe;
                ui = qi;
                pr = nextRe;
                pi = nextIm;
                i++;
            }
            settled = i;
            lRe = Arrays.copyOf(lr, i + 2);
            lIm = Arrays.copyOf(li, i + 2);
            vRe = Arrays.copyOf(vr, i + 1);
            vIm = Arrays.copyOf(vi, i + 1);
        }
    }

    /** ψ += Σ c (M + qD/k²)⁻¹ b on the lowest n nodes. Poles are taken in pairs, so that one recurrence runs while the other waits. */
    void solve(int n, double[] re, double[] im, double[] bRe, double[] bIm, double[][] work) {
        for (int i = 0; i < pole.length; i += 2) {
            up(n, pole[i], pole[i + 1], bRe, bIm, work);
            down(n, pole[i], pole[i + 1], re, im, work);
        }
    }

    private static void up(int n, Pole a, Pole b, double[] bRe, double[] bIm, double[][] work) {
        double[] yaRe = work[0];
        double[] yaIm = work[1];
        double[] ybRe = work[2];
        double[] ybIm = work[3];
        double ar = 0;
        double ai = 0;
        double br = 0;
        double bi = 0;
        int settled = Math.min(n - 1, Math.max(a.settled, b.settled) + 1);
        for (int i = 0; i <= settled; i++) {
            int ia = Math.min(i, a.settled + 1);
            int ib = Math.min(i, b.settled + 1);
            double tr = bRe[i] - a.lRe[ia] * ar + a.lIm[ia] * ai;
            ai = bIm[i] - a.lRe[ia] * ai - a.lIm[ia] * ar;
            ar = tr;
            yaRe[i] = ar;
            yaIm[i] = ai;
            double sr = bRe[i] - b.lRe[ib] * br + b.lIm[ib] * bi;
            bi = bIm[i] - b.lRe[ib] * bi - b.lIm[ib] * br;
            br = sr;
            ybRe[i] = br;
            ybIm[i] = bi;
        }
        double alr = a.lRe[a.settled + 1];
        double ali = a.lIm[a.settled + 1];
        double blr = b.lRe[b.settled + 1];
        double bli = b.lIm[b.settled + 1];
        for (int i = settled + 1; i < n; i++) {
            double xr = bRe[i];
            double xi = bIm[i];
            double tr = xr - alr * ar + ali * ai;
            ai = xi - alr * ai - ali * ar;
            ar = tr;
            double sr = xr - blr * br + bli * bi;
            bi = xi - blr * bi - bli * br;
            br = sr;
            yaRe[i] = ar;
            yaIm[i] = ai;
            ybRe[i] = br;
            ybIm[i] = bi;
        }
    }

    private static void down(int n, Pole a, Pole b, double[] re, double[] im, double[][] work) {
        double[] yaRe = work[0];
        double[] yaIm = work[1];
        double[] ybRe = work[2];
        double[] ybIm = work[3];
        double alr = a.lRe[a.settled + 1];
        double ali = a.lIm[a.settled + 1];
        double blr = b.lRe[b.settled + 1];
        double bli = b.lIm[b.settled + 1];
        double avr = a.vRe[a.settled];
        double avi = a.vIm[a.settled];
        double bvr = b.vRe[b.settled];
        double bvi = b.vIm[b.settled];
        double ar = 0;
        double ai = 0;
        double br = 0;
        double bi = 0;
        int settled = Math.min(n - 1, Math.max(a.settled, b.settled));
        for (int i = n - 1; i > settled; i--) {
            double yr = yaRe[i];
            double yi = yaIm[i];
            double zr = ybRe[i];
            double zi = ybIm[i];
            double tr = avr * yr - avi * yi - alr * ar + ali * ai;
            ai = avr * yi + avi * yr - alr * ai - ali * ar;
            ar = tr;
            double sr = bvr * zr - bvi * zi - blr * br + bli * bi;
            bi = bvr * zi + bvi * zr - blr * bi - bli * br;
            br = sr;
            re[i] += ar + br;
            im[i] += ai + bi;
        }
        for (int i = settled; i >= 0; i--) {
            int va = Math.min(i, a.settled);
            int vb = Math.min(i, b.settled);
            double plr = i == 0 ? a.firstRe : a.lRe[va + 1];
            double pli = i == 0 ? a.firstIm : a.lIm[va + 1];
            double qlr = i == 0 ? b.firstRe : b.lRe[vb + 1];
            double qli = i == 0 ? b.firstIm : b.lIm[vb + 1];
            double tr = a.vRe[va] * yaRe[i] - a.vIm[va] * yaIm[i] - plr * ar + pli * ai;
            ai = a.vRe[va] * yaIm[i] + a.vIm[va] * yaRe[i] - plr * ai - pli * ar;
            ar = tr;
            double sr = b.vRe[vb] * ybRe[i] - b.vIm[vb] * ybIm[i] - qlr * br + qli * bi;
            bi = b.vRe[vb] * ybIm[i] + b.vIm[vb] * ybRe[i] - qlr * bi - qli * br;
            br = sr;
            re[i] += ar + br;
            im[i] += ai + bi;
        }
    }
}
