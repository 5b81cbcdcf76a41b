package handreach.propagation;

import java.util.HashMap;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;

/**
 * The field on one column of nodes standing on a facet, and the two ways it moves: along the facet, and round a corner.
 *
 * <p>Mutable and of one thread: this is the inner loop of the march. Node 0 lies on the ground.
 */
final class FieldMarchColumn {
    /** Strength of the shallow and of the steep part of the absorber. */
    private static final double ABSORB_SHALLOW = 10;

    private static final double ABSORB_STEEP = 30;
    /** Wide-angle rest of turns smaller than this share of the longest waits until it adds up. */
    private static final double TURN_REST_SHARE = 0.002;

    private static final int STEPS_KEPT = 400;

    private final FieldMarchGrid grid;
    private final double k;
    private final double gRe;
    private final double gIm;
    private final int n;
    private final double h2;
    private final double[] re;
    private final double[] im;
    private final double[] sideRe;
    private final double[] sideIm;
    private final double[][] work;
    private final double[] extinction;
    private final int absorberFrom;
    private final FieldMarchTurn turn;
    private final Map<Long, FieldMarchStep> steps = new HashMap<>();
    private double restRad;

    FieldMarchColumn(FieldMarchGrid grid, FieldMarchWave wave) {
        this.grid = grid;
        this.k = wave.waveNumber();
        Complex g = wave.impedance().multiply(new Complex(0, k));
        this.gRe = g.getReal();
        this.gIm = g.getImaginary();
        this.n = grid.nodes();
        this.h2 = 1 / (grid.spacingM() * grid.spacingM());
        this.re = new double[n];
        this.im = new double[n];
        this.sideRe = new double[n];
        this.sideIm = new double[n];
        this.work = new double[8][n];
        this.extinction = new double[n];
        int from = n;
        for (int i = n - 1; i >= 0; i--) {
            double ramp = (i * grid.spacingM() - grid.topM() + grid.absorberM()) / grid.absorberM();
            if (ramp <= 0) break;
            extinction[i] = (ABSORB_SHALLOW * Math.pow(ramp, 4) + ABSORB_STEEP * Math.pow(ramp, 8)) / grid.absorberM();
            from = i;
        }
        this.absorberFrom = from;
        this.turn = new FieldMarchTurn(n, grid.spacingM(), k, g);
    }

    /** Puts the field of a line source on the column. */
    void start(FieldMarchWave wave, double alongM, double sourceM) {
        for (int i = 0; i < n; i++) {
            Complex psi = wave.starter(alongM, sourceM, i * grid.spacingM());
            re[i] = psi.getReal();
            im[i] = psi.getImaginary();
        }
    }

    /** Height below the absorber, m. */
    double usableM() {
        return grid.topM() - grid.absorberM();
    }

    /** Sets the field to nothing below a height: a thin absorbing screen. */
    void screen(double heightM) {
        for (int i = 0; i < n && i * grid.spacingM() < heightM; i++) {
            re[i] = 0;
            im[i] = 0;
        }
    }

    /** |ψ|² at a height above the facet, by the cubic through the four nearest nodes. */
    double power(double heightM) {
        double at = heightM / grid.spacingM();
        int first = Math.max(0, Math.min(n - 4, (int) at - 1));
        double t = at - first;
        double w0 = -(t - 1) * (t - 2) * (t - 3) / 6;
        double w1 = t * (t - 2) * (t - 3) / 2;
        double w2 = -t * (t - 1) * (t - 3) / 2;
        double w3 = t * (t - 1) * (t - 2) / 6;
        double a = w0 * re[first] + w1 * re[first + 1] + w2 * re[first + 2] + w3 * re[first + 3];
        double b = w0 * im[first] + w1 * im[first + 1] + w2 * im[first + 2] + w3 * im[first + 3];
        return a * a + b * b;
    }

    /** Carries the field along the facet. Lengths are whole multiples of a quantum, so that steps are used again. */
    void advance(long quanta, double quantumM) {
        FieldMarchStep step = steps.get(quanta);
        if (step == null) {
            if (steps.size() >= STEPS_KEPT) steps.clear();
            step = new FieldMarchStep(
                    PadeStep.of(k * quanta * quantumM, grid.order()), grid.spacingM(), k, gRe, gIm, n);
            steps.put(quanta, step);
        }
        differentiate();
        step.solve(re, im, sideRe, sideIm, work);
        fade(quanta * quantumM);
    }

    /** D ψ/k² into the side arrays, with the ground row of ∂ψ/∂η = gψ. */
    private void differentiate() {
        double s = h2 / (k * k);
        double ground = 2 * grid.spacingM();
        sideRe[0] = s * (2 * (re[1] - re[0]) - ground * (gRe * re[0] - gIm * im[0]));
        sideIm[0] = s * (2 * (im[1] - im[0]) - ground * (gRe * im[0] + gIm * re[0]));
        for (int i = 1; i < n - 1; i++) {
            sideRe[i] = s * (re[i - 1] - 2 * re[i] + re[i + 1]);
            sideIm[i] = s * (im[i - 1] - 2 * im[i] + im[i + 1]);
        }
        sideRe[n - 1] = s * (re[n - 2] - 2 * re[n - 1]);
        sideIm[n - 1] = s * (im[n - 2] - 2 * im[n - 1]);
    }

    private double fadedFor = -1;
    private double[] fade = new double[0];

    private void fade(double alongM) {
        if (fade.length == 0) fade = new double[n - absorberFrom];
        if (alongM != fadedFor) {
            for (int i = absorberFrom; i < n; i++) fade[i - absorberFrom] = Math.exp(-extinction[i] * alongM);
            fadedFor = alongM;
        }
        for (int i = absorberFrom; i < n; i++) {
            re[i] *= fade[i - absorberFrom];
            im[i] *= fade[i - absorberFrom];
        }
    }

    /** Turns the column to the next facet, whose slope is greater by the angle. */
    void turn(double angleRad) {
        restRad += angleRad;
        boolean isRestDue = Math.abs(restRad) * grid.topM() > TURN_REST_SHARE * grid.turnM();
        if (!isRestDue) {
            turn.phase(re, im, angleRad);
            return;
        }
        int m = grid.turnStepsFor(Math.max(Math.abs(angleRad), Math.abs(restRad)));
        turn.prepare(restRad / m);
        restRad = 0;
        double half = 0.5 * angleRad / m;
        turn.phase(re, im, half);
        for (int i = 0; i < m; i++) {
            turn.rest(re, im);
            fadeByTurn(Math.abs(angleRad) / m);
            turn.phase(re, im, i < m - 1 ? 2 * half : half);
        }
    }

    /** The top moves on by height times angle, and the absorber takes its share. */
    private void fadeByTurn(double angleRad) {
        for (int i = absorberFrom; i < n; i++) {
            double f = Math.exp(-extinction[i] * i * grid.spacingM() * angleRad);
            re[i] *= f;
            im[i] *= f;
        }
    }
}
