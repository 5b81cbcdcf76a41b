package handreach.propagation.march;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;

/**
 * {@link FieldMarchColumn} for {@link LaneMath#LANES} radials at once: the field of all lanes on columns of one and the same height and
 * spacing. The absorber takes from all what a step of middle length takes.
 */
final class LaneColumn {
    private static final int LANES = LaneMath.LANES;
    /** Taps of the interpolation between two nodes on either side. */
    private static final double[] BETWEEN = FieldMarchColumn.BETWEEN;

    /**
     * Share of the longest motion of the top in one step by which the wide-angle rest of the turns may lag behind the ground: rough ground
     * turns to and fro, and most of it never comes due. Seen on the radials of docs/full-wave.md.
     */
    private static final double REST_SHARE = 0.2;

    private static final int STEPS_KEPT = 4000;

    private final FieldMarchGrid grid;
    private final LaneMath math;
    private final double k;
    private final Complex g;
    private final Complex groundRow;
    private final int most;
    private int n;
    private LaneField field;
    private LaneField other;
    private final LaneWork work;
    /** From the foot of the absorber up: 1/m. */
    private final double[] extinction;

    private final float[] fade;
    private double fadedForM = -1;
    /** What layers do to each lane on the lowest nodes, of which there are so many. */
    private float[] passRe = new float[0];

    private float[] passIm = new float[0];
    private int passed;
    /** Terms of the square root of a turn while rays are level, and while they are wide. */
    private final LaneTerm[] levelTerms;

    private final LaneTerm[] wideTerms;
    private LaneTerm[] terms;
    private final Map<LaneNodes, Map<Long, LanePole.Settled[]>> settledOf = new HashMap<>();
    private Map<Long, LanePole.Settled[]> settled = new HashMap<>();
    private final LanePole[] pole = new LanePole[FieldMarchPace.HIGHEST_ORDER];
    private final float[] cosine = new float[LANES];
    private final float[] sine = new float[LANES];
    private final double[] restRad = new double[LANES];
    private LaneNodes nodes = LaneNodes.LEVEL;
    private final Map<LaneNodes, LanePole.Settled[]> calming = new HashMap<>();
    private int stepsSinceCalm;

    /**
     * @param terms of the square root of a turn, 1 or 2: two where rays are steeper than those that nodes
     *     of the grid carry
     */
    LaneColumn(FieldMarchGrid grid, FieldMarchWave wave, LaneMath math, int terms) {
        this.grid = grid;
        this.math = math;
        this.k = wave.waveNumber();
        this.g = wave.impedance().multiply(new Complex(0, k));
        this.groundRow = g.multiply(2 * grid.spacingM()).add(2);
        this.most = grid.nodes();
        this.n = most;
        this.field = LaneField.of(n);
        this.other = LaneField.of(n);
        this.work = new LaneWork(n);
        double[] all = FieldMarchColumn.extinction(grid);
        int from = n;
        while (from > 0 && all[from - 1] > 0) from--;
        this.extinction = Arrays.copyOfRange(all, from, n);
        this.fade = new float[n - from];
        this.levelTerms = terms(terms);
        this.wideTerms = terms == 2 ? levelTerms : terms(2);
        this.terms = levelTerms;
        for (int i = 0; i < pole.length; i++) pole[i] = new LanePole();
        settledOf.put(nodes, settled);
    }

    /** Ends the column at a height, the absorber below it. What was above is gone; what comes to it is empty. */
    void end(double topM) {
        int nodes = Math.min(most, Math.max(fade.length + 16, (int) Math.ceil(topM / grid.spacingM())));
        field.empty(Math.min(n, nodes), nodes);
        other.empty(nodes, nodes);
        n = nodes;
    }

    /** Puts the field of a line source on the column of a lane. */
    void start(int lane, FieldMarchWave wave, double alongM, double sourceM, double raysRad, FieldMarchLayer layer) {
        float[] re = field.re();
        float[] im = field.im();
        for (int i = 0; i < n; i++) {
            Complex psi = wave.starter(alongM, sourceM, i * grid.spacingM(), raysRad, layer);
            re[i * LANES + lane] = (float) psi.getReal();
            im[i * LANES + lane] = (float) psi.getImaginary();
        }
    }

    /** The field of another lane. */
    void copy(int from, int to) {
        float[] re = field.re();
        float[] im = field.im();
        for (int i = 0; i < n; i++) {
            re[i * LANES + to] = re[i * LANES + from];
            im[i * LANES + to] = im[i * LANES + from];
        }
    }

    /** |ψ|² at a height above the facet of a lane, by the cubic through the four nearest nodes. */
    double power(int lane, double heightM) {
        float[] re = field.re();
        float[] im = field.im();
        double at = heightM / grid.spacingM();
        int first = Math.max(0, Math.min(n - 4, (int) at - 1));
        double t = at - first;
        double w0 = -(t - 1) * (t - 2) * (t - 3) / 6;
        double w1 = t * (t - 2) * (t - 3) / 2;
        double w2 = -t * (t - 1) * (t - 3) / 2;
        double w3 = t * (t - 1) * (t - 2) / 6;
        int of = first * LANES + lane;
        double a = w0 * re[of] + w1 * re[of + LANES] + w2 * re[of + 2 * LANES] + w3 * re[of + 3 * LANES];
        double b = w0 * im[of] + w1 * im[of + LANES] + w2 * im[of + 2 * LANES] + w3 * im[of + 3 * LANES];
        return a * a + b * b;
    }

    /** Makes ready the step of a lane: so many quanta, a fraction of this order. */
    void step(int lane, long quanta, int order) {
        long key = quanta * FieldMarchColumn.ORDERS + order;
        LanePole.Settled[] of = settled.get(key);
        if (of == null) {
            if (settled.size() >= STEPS_KEPT) settled.clear();
            of = settled(PadeStep.ofQuanta(quanta, order));
            settled.put(key, of);
        }
        for (int i = 0; i < of.length; i++) pole[i].put(lane, of[i]);
    }

    /** What the nodes stand for from now on. */
    void nodes(LaneNodes next) {
        if (next.equals(nodes)) return;
        nodes = next;
        settled = settledOf.computeIfAbsent(nodes, of -> new HashMap<>());
        terms = next.equals(LaneNodes.WIDE) ? wideTerms : levelTerms;
        for (LaneTerm term : terms) term.nodes(next);
    }

    private LaneTerm[] terms(int count) {
        LaneTerm[] made = new LaneTerm[count];
        for (int j = 0; j < count; j++)
            made[j] =
                    new LaneTerm(j + 1, count, most, grid.spacingM(), k, groundRow.getReal(), groundRow.getImaginary());
        return made;
    }

    private double scale() {
        return 1 / (k * k * grid.spacingM() * grid.spacingM());
    }

    private LanePole.Settled[] settled(PadeStep step) {
        double s = scale();
        LanePole.Settled[] of = new LanePole.Settled[groups(step.order()) * LaneMath.POLES];
        for (int i = 0; i < of.length; i++)
            of[i] = i < step.order()
                    ? LanePole.Settled.of(step.pole(i).multiply(s), step.weight(i), groundRow, nodes)
                    : LanePole.Settled.NONE;
        return of;
    }

    private static int groups(int order) {
        return (order + LaneMath.POLES - 1) / LaneMath.POLES;
    }

    /** Carries all lanes along their facets by the steps made ready, whose middle length is given. */
    void advance(int order, double meanM) {
        solve(order);
        if (meanM != fadedForM) {
            for (int i = 0; i < fade.length; i++) fade[i] = (float) Math.exp(-extinction[i] * meanM);
            fadedForM = meanM;
        }
        math.fade(n - fade.length, n, fade, field.re(), field.im());
    }

    /** ψ += Σ c (M + qD/k²)⁻¹ Dψ/k². */
    private void solve(int order) {
        float scale = (float) scale();
        bendGround();
        for (int g = 0; g < groups(order); g++) {
            int at = g * LaneMath.POLES;
            math.down(n, scale, pole, at, field, g == 0 ? field : other, other, work);
            for (int i = 0; i < LaneMath.POLES; i++) pole[at + i].start(i, work);
            math.up(n, scale, pole, at, field, other, work);
        }
        LaneField before = field;
        field = other;
        other = before;
    }

    /** D ψ/k² on the ground, where ∂ψ/∂η = gψ. */
    private void bendGround() {
        double s = scale();
        double gr = groundRow.getReal();
        double gi = groundRow.getImaginary();
        float[] re = field.re();
        float[] im = field.im();
        for (int lane = 0; lane < LANES; lane++) {
            double x = re[lane];
            double y = im[lane];
            work.groundRe[lane] = (float) (s * (2.0 * re[LANES + lane] - gr * x + gi * y));
            work.groundIm[lane] = (float) (s * (2.0 * im[LANES + lane] - gr * y - gi * x));
        }
    }

    /** Makes ready what layers on the facets do to each lane over so far along them. */
    void layers(FieldMarchLayer[] layers, double[] alongM) {
        passed = 0;
        for (FieldMarchLayer layer : layers) passed = Math.max(passed, layer.nodes(grid.spacingM(), n));
        if (passRe.length < passed * LANES) {
            passRe = new float[2 * passed * LANES];
            passIm = new float[2 * passed * LANES];
        }
        Arrays.fill(passRe, 0, passed * LANES, 1);
        Arrays.fill(passIm, 0, passed * LANES, 0);
        for (int lane = 0; lane < LANES; lane++) {
            int nodes = layers[lane].isThere() ? layers[lane].nodes(grid.spacingM(), n) : 0;
            for (int i = 0; i < nodes; i++) {
                Complex factor = layers[lane].onNode(i, grid.spacingM(), alongM[lane]);
                passRe[i * LANES + lane] = (float) factor.getReal();
                passIm[i * LANES + lane] = (float) factor.getImaginary();
            }
        }
    }

    /** Gives the lowest nodes what was made ready. */
    void pass() {
        multiply(passed * LANES, passRe, passIm, field.re(), field.im());
    }

    private static void multiply(int count, float[] byRe, float[] byIm, float[] re, float[] im) {
        for (int i = 0; i < count; i++) {
            float t = byRe[i] * re[i] - byIm[i] * im[i];
            im[i] = byRe[i] * im[i] + byIm[i] * re[i];
            re[i] = t;
        }
    }

    /** Turns every lane to its next facet, whose slope is greater by its angle; its rays ask for so many steps of a radian. */
    void turn(double[] angleRad, double[] stepsOfARadian) {
        double topM = n * grid.spacingM();
        double largest = 0;
        double steps = 0;
        double meanRad = 0;
        for (int lane = 0; lane < LANES; lane++) {
            restRad[lane] += angleRad[lane];
            double rest = Math.abs(restRad[lane]);
            largest = Math.max(largest, rest);
            steps = Math.max(steps, rest * Math.max(stepsOfARadian[lane], grid.turnStepsOfARadian(topM)));
            meanRad += Math.abs(angleRad[lane]) / LANES;
        }
        if (!(largest * topM > REST_SHARE * grid.turnM())) {
            phase(angleRad, 1);
            return;
        }
        int m = (int) Math.ceil(steps);
        for (int lane = 0; lane < LANES; lane++) {
            for (LaneTerm term : terms) term.start(lane, restRad[lane] / m);
            restRad[lane] = 0;
        }
        if (terms.length == 2) math.pivots(n, terms[0], terms[1]);
        phase(angleRad, 0.5 / m);
        for (int i = 0; i < m; i++) {
            for (LaneTerm term : terms) rest(term, i == 0 && terms.length == 1);
            if (++stepsSinceCalm >= FieldMarchColumn.STEPS_TO_CALM) calm();
            fadeByTurn(meanRad / m);
            phase(angleRad, (i < m - 1 ? 1.0 : 0.5) / m);
        }
    }

    private void rest(LaneTerm term, boolean wantsPivots) {
        float spacingM = (float) grid.spacingM();
        term.ground(field.re(), field.im(), work);
        if (wantsPivots) math.firstTurn(n, term, spacingM, field.re(), field.im(), work);
        else math.turn(n, term, spacingM, field.re(), field.im(), work);
    }

    private void phase(double[] angleRad, double share) {
        for (int lane = 0; lane < LANES; lane++) {
            double step = k * grid.spacingM() * angleRad[lane] * share;
            cosine[lane] = (float) Math.cos(step);
            sine[lane] = (float) Math.sin(step);
        }
        math.phase(n, cosine, sine, field.re(), field.im());
    }

    private void calm() {
        LanePole.Settled[] calm = calming.computeIfAbsent(nodes, of -> settled(PadeStep.calming()));
        for (int i = 0; i < calm.length; i++) for (int lane = 0; lane < LANES; lane++) pole[i].put(lane, calm[i]);
        solve(calm.length);
        stepsSinceCalm = 0;
    }

    private void fadeByTurn(double angleRad) {
        for (int i = 0; i < fade.length; i++) {
            int node = n - fade.length + i;
            fade[i] = (float) Math.exp(-extinction[i] * node * grid.spacingM() * angleRad);
        }
        fadedForM = -1;
        math.fade(n - fade.length, n, fade, field.re(), field.im());
    }

    /** Takes over the field of columns whose nodes stand twice as close. */
    void takeEverySecond(LaneColumn finer) {
        end(finer.n * finer.grid.spacingM());
        float[] re = field.re();
        float[] im = field.im();
        for (int i = 0; i < n; i++) {
            for (int lane = 0; lane < LANES; lane++) {
                boolean isIn = 2 * i < finer.n;
                re[i * LANES + lane] = isIn ? finer.field.re()[2 * i * LANES + lane] : 0;
                im[i * LANES + lane] = isIn ? finer.field.im()[2 * i * LANES + lane] : 0;
            }
        }
        System.arraycopy(finer.restRad, 0, restRad, 0, LANES);
    }

    /** Takes over the field of columns whose nodes stand twice as far apart, and finds the values between them. */
    void takeBetween(LaneColumn coarser) {
        end(coarser.n * coarser.grid.spacingM());
        float[] re = field.re();
        float[] im = field.im();
        int taps = BETWEEN.length;
        float[][] below = coarser.belowGround(taps);
        for (int i = 0; i < n; i++) {
            int from = i / 2;
            int to = i * LANES;
            if (i % 2 == 0) {
                boolean isIn = from < coarser.n;
                for (int lane = 0; lane < LANES; lane++) {
                    re[to + lane] = isIn ? coarser.field.re()[from * LANES + lane] : 0;
                    im[to + lane] = isIn ? coarser.field.im()[from * LANES + lane] : 0;
                }
                continue;
            }
            for (int lane = 0; lane < LANES; lane++) {
                re[to + lane] = 0;
                im[to + lane] = 0;
            }
            for (int t = 0; t < taps; t++) {
                float w = (float) BETWEEN[t];
                int up = from + 1 + t;
                int down = from - t;
                if (up < coarser.n) {
                    add(w, coarser.field.re(), up, re, to);
                    add(w, coarser.field.im(), up, im, to);
                }
                if (down < 0) {
                    add(w, below[0], -down, re, to);
                    add(w, below[1], -down, im, to);
                } else if (down < coarser.n) {
                    add(w, coarser.field.re(), down, re, to);
                    add(w, coarser.field.im(), down, im, to);
                }
            }
        }
        System.arraycopy(coarser.restRad, 0, restRad, 0, LANES);
    }

    private static void add(float w, float[] from, int node, float[] to, int at) {
        for (int lane = 0; lane < LANES; lane++) to[at + lane] += w * from[node * LANES + lane];
    }

    private float[][] belowGround(int count) {
        float[] re = field.re();
        float[] im = field.im();
        float[][] below = new float[2][(count + 1) * LANES];
        int known = Math.min(count, n - 1) + 1;
        for (int lane = 0; lane < LANES; lane++) {
            Complex[] psi = new Complex[known];
            for (int i = 0; i < known; i++) psi[i] = new Complex(re[i * LANES + lane], im[i * LANES + lane]);
            Complex[] mirrored = FieldMarchColumn.belowGround(psi, g, grid.spacingM());
            for (int i = 0; i < known; i++) {
                below[0][i * LANES + lane] = (float) mirrored[i].getReal();
                below[1][i * LANES + lane] = (float) mirrored[i].getImaginary();
            }
        }
        return below;
    }
}
