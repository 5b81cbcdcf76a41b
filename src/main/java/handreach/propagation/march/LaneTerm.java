package handreach.propagation.march;

/** A term of the square root of a turn in every lane: {@link FieldMarchTurn}. */
final class LaneTerm {
    float off;
    float diagonal;
    final float[] growth = new float[LaneMath.LANES];
    final float[] scale = new float[LaneMath.LANES];
    /** Multiplier of the first row over the ground times the element over its diagonal. */
    final float[] firstRe = new float[LaneMath.LANES];

    final float[] firstIm = new float[LaneMath.LANES];
    final float[] vRe;
    final float[] vIm;
    private final int j;
    private final int terms;
    private final double a;
    private double share;
    private double p;
    private final double k;
    private final double spacingM;
    private final double groundRe;
    private final double groundIm;

    LaneTerm(int j, int terms, int n, double spacingM, double k, double groundRe, double groundIm) {
        this.k = k;
        this.spacingM = spacingM;
        this.groundRe = groundRe;
        this.groundIm = groundIm;
        this.a = FieldMarchTurn.strength(j, terms);
        this.j = j;
        this.terms = terms;
        this.vRe = new float[n * LaneMath.LANES];
        this.vIm = new float[n * LaneMath.LANES];
        nodes(LaneNodes.LEVEL);
    }

    /** What the nodes stand for from now on. */
    void nodes(LaneNodes nodes) {
        share = nodes.share();
        p = FieldMarchTurn.spread(j, terms, k * spacingM);
        off = (float) (share + p);
        diagonal = (float) (1 - 2 * share - 2 * p);
    }

    /** The ground row for a turn by this angle. */
    void start(int lane, double angleRad) {
        double turned = angleRad * a / (k * spacingM * spacingM);
        double grown = -0.5 * turned * spacingM;
        scale[lane] = (float) turned;
        growth[lane] = (float) grown;
        double pr = 2.0 / 3 - p * groundRe;
        double pi = -p * groundIm;
        double inverse = 1 / (pr * pr + pi * pi);
        double vr = pr * inverse;
        double vi = -pi * inverse;
        vRe[lane] = (float) vr;
        vIm[lane] = (float) vi;
        double lr = (share + p) * vr;
        double li = (share + p) * vi;
        double upRe = 1.0 / 3 + 2 * p;
        double upIm = 2 * grown;
        firstRe[lane] = (float) (upRe * lr - upIm * li);
        firstIm[lane] = (float) (upRe * li + upIm * lr);
    }

    /** The right side on the ground. */
    void ground(float[] re, float[] im, LaneWork work) {
        int up = LaneMath.LANES;
        for (int lane = 0; lane < up; lane++) {
            double x = re[lane];
            double y = im[lane];
            work.yRe[lane] = (float) (-scale[lane] * (2.0 * im[up + lane] - groundRe * y - groundIm * x));
            work.yIm[lane] = (float) (scale[lane] * (2.0 * re[up + lane] - groundRe * x + groundIm * y));
        }
    }
}
