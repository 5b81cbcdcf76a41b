package handreach.propagation.march;

import java.util.Arrays;
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
    static final double TURN_REST_SHARE = 0.002;

    /** Steps of one turn after which evanescent waves are let die. */
    static final int STEPS_TO_CALM = 16;

    private static final int STEPS_KEPT = 400;
    /** More than any order of a step. */
    static final int ORDERS = 16;

    private final FieldMarchGrid grid;
    private final double k;
    private final double gRe;
    private final double gIm;
    private final int most;
    private int n;
    private final double h2;
    private final double[] re;
    private final double[] im;
    private final double[] sideRe;
    private final double[] sideIm;
    private final double[][] work;
    /** From the foot of the absorber up: 1/m. */
    private final double[] extinction;

    private int absorberFrom;
    private final FieldMarchTurn turn;
    private final Map<Long, FieldMarchStep> steps = new HashMap<>();
    private FieldMarchLayer passed = FieldMarchLayer.NONE;
    private double passedM;
    private Complex[] passing = new Complex[0];
    private double restRad;
    private FieldMarchStep calming;
    private int stepsSinceCalm;

    FieldMarchColumn(FieldMarchGrid grid, FieldMarchWave wave) {
        this.grid = grid;
        this.k = wave.waveNumber();
        Complex g = wave.impedance().multiply(new Complex(0, k));
        this.gRe = g.getReal();
        this.gIm = g.getImaginary();
        this.most = grid.nodes();
        this.n = most;
        this.h2 = 1 / (grid.spacingM() * grid.spacingM());
        this.re = new double[n];
        this.im = new double[n];
        this.sideRe = new double[n];
        this.sideIm = new double[n];
        this.work = new double[8][n];
        double[] all = extinction(grid);
        int from = n;
        while (from > 0 && all[from - 1] > 0) from--;
        this.extinction = Arrays.copyOfRange(all, from, n);
        this.absorberFrom = from;
        this.turn = new FieldMarchTurn(n, grid.spacingM(), k, g);
    }

    /** Ends the column at a height, the absorber below it. What was above is gone; what comes to it is empty. */
    void end(double topM) {
        int nodes = Math.min(most, Math.max(extinction.length + 16, (int) Math.ceil(topM / grid.spacingM())));
        if (nodes < n) {
            Arrays.fill(re, nodes, n, 0);
            Arrays.fill(im, nodes, n, 0);
        }
        n = nodes;
        absorberFrom = n - extinction.length;
    }

    /** What the absorber takes at each node, 1/m; nothing below it. */
    static double[] extinction(FieldMarchGrid grid) {
        double[] extinction = new double[grid.nodes()];
        for (int i = extinction.length - 1; i >= 0; i--) {
            double ramp = (i * grid.spacingM() - grid.topM() + grid.absorberM()) / grid.absorberM();
            if (ramp <= 0) break;
            extinction[i] = (ABSORB_SHALLOW * Math.pow(ramp, 4) + ABSORB_STEEP * Math.pow(ramp, 8)) / grid.absorberM();
        }
        return extinction;
    }

    /** Takes over the field of a column whose nodes stand twice as close. */
    void takeEverySecond(FieldMarchColumn finer) {
        end(finer.n * finer.grid.spacingM());
        for (int i = 0; i < n; i++) {
            boolean isIn = 2 * i < finer.n;
            re[i] = isIn ? finer.re[2 * i] : 0;
            im[i] = isIn ? finer.im[2 * i] : 0;
        }
        restRad = finer.restRad;
    }

    /** Takes over the field of a column whose nodes stand twice as far apart, and finds the values between them. */
    void takeBetween(FieldMarchColumn coarser) {
        end(coarser.n * coarser.grid.spacingM());
        int taps = BETWEEN.length;
        Complex[] below = coarser.belowGround(taps);
        for (int i = 0; i < n; i++) {
            int from = i / 2;
            if (i % 2 == 0) {
                re[i] = from < coarser.n ? coarser.re[from] : 0;
                im[i] = from < coarser.n ? coarser.im[from] : 0;
                continue;
            }
            double a = 0;
            double b = 0;
            for (int t = 0; t < taps; t++) {
                int up = from + 1 + t;
                int down = from - t;
                double w = BETWEEN[t];
                if (up < coarser.n) {
                    a += w * coarser.re[up];
                    b += w * coarser.im[up];
                }
                if (down < 0) {
                    a += w * below[-down].getReal();
                    b += w * below[-down].getImaginary();
                } else if (down < coarser.n) {
                    a += w * coarser.re[down];
                    b += w * coarser.im[down];
                }
            }
            re[i] = a;
            im[i] = b;
        }
        restRad = coarser.restRad;
    }

    private Complex[] belowGround(int count) {
        Complex[] psi = new Complex[count + 1];
        for (int i = 0; i <= count; i++) psi[i] = i < n ? new Complex(re[i], im[i]) : Complex.ZERO;
        return belowGround(psi, new Complex(gRe, gIm), grid.spacingM());
    }

    /**
     * The field carried on below the ground as its condition ∂ψ/∂η = gψ asks: with e and o its even and odd parts, ∂o/∂η = ge. The
     * integral goes by Simpson's rule from node to node.
     */
    static Complex[] belowGround(Complex[] psi, Complex g, double spacingM) {
        Complex step = g.multiply(spacingM / 3);
        Complex[] even = new Complex[psi.length];
        Complex[] odd = new Complex[psi.length];
        Complex[] below = new Complex[psi.length];
        for (int i = 0; i < psi.length; i++) {
            if (i == 0) {
                odd[0] = Complex.ZERO;
            } else {
                Complex before =
                        i == 1 ? even[0].multiply(2) : even[i - 1].multiply(4).add(even[i - 2]);
                Complex rest = i == 1 ? Complex.ZERO : odd[i - 2];
                Complex known = rest.add(step.multiply(before.add(psi[i])));
                odd[i] = known.divide(step.add(1));
            }
            even[i] = psi[i].subtract(odd[i]);
            below[i] = even[i].subtract(odd[i]);
        }
        return below;
    }

    /** Weights of the nodes on either side of a point half way between two: sinc under Kaiser's window. */
    static final double[] BETWEEN = between(10, 6);

    private static double[] between(int taps, double beta) {
        double[] weight = new double[taps];
        double sum = 0;
        for (int t = 0; t < taps; t++) {
            double x = t + 0.5;
            double window = bessel(beta * Math.sqrt(1 - x * x / (taps * (double) taps))) / bessel(beta);
            weight[t] = Math.sin(Math.PI * x) / (Math.PI * x) * window;
            sum += 2 * weight[t];
        }
        for (int t = 0; t < taps; t++) weight[t] /= sum;
        return weight;
    }

    /** I0, the modified Bessel function, by its series. */
    private static double bessel(double x) {
        double term = 1;
        double sum = 1;
        for (int i = 1; i < 40; i++) {
            term *= x * x / (4.0 * i * i);
            sum += term;
        }
        return sum;
    }

    /** Puts the field of a line source on the column. */
    void start(FieldMarchWave wave, double alongM, double sourceM, double raysRad, FieldMarchLayer layer) {
        for (int i = 0; i < n; i++) {
            Complex psi = wave.starter(alongM, sourceM, i * grid.spacingM(), raysRad, layer);
            re[i] = psi.getReal();
            im[i] = psi.getImaginary();
        }
    }

    /** Height below the absorber, m. */
    double usableM() {
        return n * grid.spacingM() - grid.absorberM();
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

    /** Carries the field along the facet by a fraction of an order. Lengths are whole multiples of a quantum, so that steps are used again. */
    void advance(long quanta, double quantumM, int order) {
        long kept = quanta * ORDERS + order;
        FieldMarchStep step = steps.get(kept);
        if (step == null) {
            if (steps.size() >= STEPS_KEPT) steps.clear();
            step = new FieldMarchStep(stepOf(quanta, quantumM, order), grid.spacingM(), k, gRe, gIm, most);
            steps.put(kept, step);
        }
        differentiate();
        step.solve(n, re, im, sideRe, sideIm, work);
        fade(quanta * quantumM);
    }

    private PadeStep stepOf(long quanta, double quantumM, int order) {
        double phaseRad = k * quanta * quantumM;
        boolean isUsual = Math.abs(phaseRad - PadeStep.phaseRad(quanta)) <= 1e-12 * phaseRad;
        return isUsual ? PadeStep.ofQuanta(quanta, order) : PadeStep.of(phaseRad, order);
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
        if (fade.length == 0) fade = new double[extinction.length];
        if (alongM != fadedFor) {
            for (int i = 0; i < fade.length; i++) fade[i] = Math.exp(-extinction[i] * alongM);
            fadedFor = alongM;
        }
        for (int i = absorberFrom; i < n; i++) {
            re[i] *= fade[i - absorberFrom];
            im[i] *= fade[i - absorberFrom];
        }
    }

    /** Gives the lowest nodes what a layer on the facet does to them over so far along it. */
    void pass(FieldMarchLayer layer, double alongM) {
        if (!layer.equals(passed) || alongM != passedM) {
            int nodes = layer.nodes(grid.spacingM(), most);
            passing = new Complex[nodes];
            for (int i = 0; i < nodes; i++) passing[i] = layer.onNode(i, grid.spacingM(), alongM);
            passed = layer;
            passedM = alongM;
        }
        for (int i = 0; i < Math.min(n, passing.length); i++) {
            double c = passing[i].getReal();
            double s = passing[i].getImaginary();
            double t = c * re[i] - s * im[i];
            im[i] = c * im[i] + s * re[i];
            re[i] = t;
        }
    }

    /** Turns the column to the next facet, whose slope is greater by the angle. */
    void turn(double angleRad, int leastSteps) {
        restRad += angleRad;
        double topM = n * grid.spacingM();
        boolean isRestDue = Math.abs(restRad) * topM > TURN_REST_SHARE * grid.turnM();
        if (!isRestDue) {
            turn.phase(n, re, im, angleRad);
            return;
        }
        int m = Math.max(leastSteps, grid.turnStepsFor(Math.max(Math.abs(angleRad), Math.abs(restRad)), topM));
        turn.prepare(n, restRad / m);
        restRad = 0;
        double half = 0.5 * angleRad / m;
        turn.phase(n, re, im, half);
        for (int i = 0; i < m; i++) {
            turn.rest(n, re, im);
            if (++stepsSinceCalm >= STEPS_TO_CALM) calm();
            fadeByTurn(Math.abs(angleRad) / m);
            turn.phase(n, re, im, i < m - 1 ? 2 * half : half);
        }
    }

    /**
     * Lets evanescent waves die, which the square root of a turn takes for steep ones: hundreds of its steps on end, with no range
     * step between, would make them grow.
     */
    private void calm() {
        if (calming == null) calming = new FieldMarchStep(PadeStep.calming(), grid.spacingM(), k, gRe, gIm, most);
        differentiate();
        calming.solve(n, re, im, sideRe, sideIm, work);
        stepsSinceCalm = 0;
    }

    /** The top moves on by height times angle, and the absorber takes its share. */
    private void fadeByTurn(double angleRad) {
        for (int i = absorberFrom; i < n; i++) {
            double f = Math.exp(-extinction[i - absorberFrom] * i * grid.spacingM() * angleRad);
            re[i] *= f;
            im[i] *= f;
        }
    }
}
