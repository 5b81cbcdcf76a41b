package handreach.propagation.march;

/**
 * How finely the march goes, facet by facet: length and order of the range steps, nodes of the column, steps of the turn at each
 * corner. All follows from the angle to the facet of the steepest ray that ground before it can send to ground behind it
 * ({@link FieldMarchGround#raysRad}), and from the corners: on gentle ground nothing is refined, on a steep facet as much as its
 * rays ask for.
 */
final class FieldMarchPace {
    static final int MOST_HALVINGS = 2;
    /** A range step may put a ray wrong by so much for each wavelength it goes: 0.1 rad in a hundred wavelengths. */
    static final double STEP_ERROR = 1e-3;

    static final int HIGHEST_ORDER = 8;
    private static final int[] ORDERS = {4, 6, HIGHEST_ORDER};
    private static final double[] STEP_WAVELENGTHS = {0.5, 0.75, 1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15};
    /**
     * Angle from the facet, degrees, up to which the fraction of an order (row) carries a ray over a step (column) within
     * {@link #STEP_ERROR}: computed from the fraction itself, and held against it by a test.
     */
    private static final double[][] CARRIED_DEG = {
        {54.5, 51.25, 47.75, 42, 37.75, 32, 28.25, 25.75, 23.75, 21, 19, 17.5, 16},
        {67, 64.75, 62.25, 57, 52.25, 44.5, 39.5, 35.75, 33, 29, 26, 24, 21.75},
        {73.5, 72, 70.25, 66.5, 62.25, 54.5, 48.5, 44, 40.5, 35.5, 32, 29.5, 26.5}
    };
    /**
     * Angle of a ray, or of a crest, up to which the nodes of the grid suffice, and those of half the spacing, degrees. The second
     * difference of fourth order puts the phase of a ray at 20° wrong by 0.0014 rad a wavelength on nodes of λ/2.25, at 24° by 0.004,
     * at 45° by 0.009 rad on λ/4.5; that goes with the fourth power of the spacing.
     */
    private static final double NODES_TO_DEG = 24;

    private static final double HALVED_TO_DEG = 45;
    /**
     * Ground that falls by more than the first of these at one corner is a crest, whose edge has waves of every angle. Nodes of half
     * the spacing put it wrong by 0.2 to 0.9 dB at 20 to 40° (uniform theory of diffraction over hard faces), since the two terms of
     * the root of a turn do not carry evanescent waves; those of the grid and the closest by 0.1 to 0.4 dB. So a crest never has the
     * middle ones, and beyond the second angle always the closest.
     */
    private static final double CREST_DEG = 20;

    private static final double SHARP_CREST_DEG = 45;
    /** Phase that one step of a turn may give the rest kη(√(1+X) − 1) of the highest ray: beyond, Crank and Nicolson bend it. */
    private static final double TURN_RAD = 2;
    /** More steps of one turn are not taken: what they would gain is lost in rounding and in calming. */
    private static final int MOST_TURN_STEPS = 3000;
    /** Crests less sharp than this need no shorter steps to be read behind: 15°. */
    private static final double BLUNT_RAD = 0.262;
    /** A crest is what the ground falls by within the stretch of the local mean, m. */
    private static final double CREST_M = 60;

    private static final double SHORTEST_WAVELENGTHS = 0.5;

    /**
     * Longest step among trees, whose part of the step is split off: with it halving every step moves the local mean by 0.4 dB rms at most
     * (50 to 900 MHz, docs/full-wave.md).
     */
    private static final double WOODS_WAVELENGTHS = 3;

    private final double[] stepM;
    private final int[] order;
    private final int[] halvings;
    private final int[] turnSteps;
    private final double[] turnStepsOfARadian;
    private final double refinement;

    private FieldMarchPace(
            FieldMarchGround ground,
            FieldMarchGrid grid,
            double wavelengthM,
            FieldMarchCover cover,
            double refinement) {
        int n = ground.facets();
        double[] topM = grid.tops(ground);
        this.refinement = refinement;
        this.stepM = new double[n];
        this.order = new int[n];
        this.halvings = new int[n];
        this.turnSteps = new int[n];
        this.turnStepsOfARadian = new double[n];
        for (int f = 0; f < n; f++) {
            double raysDeg = Math.toDegrees(ground.raysRad(f));
            boolean isInWoods = cover.layer(ground, f).isThere();
            choose(f, raysDeg, grid, wavelengthM, isInWoods);
            stepM[f] = Math.min(stepM[f], behindCrestM(ground, f, wavelengthM));
            int own = raysDeg <= NODES_TO_DEG ? 0 : raysDeg <= HALVED_TO_DEG ? 1 : MOST_HALVINGS;
            for (int g = Math.max(0, f - 1); g <= Math.min(n - 1, f + 1); g++) halvings[g] = Math.max(halvings[g], own);
            if (f > 0) {
                turnSteps[f] = turnSteps(ground, f, grid, topM, wavelengthM);
                turnStepsOfARadian[f] = turnStepsOfARadian(ground, f, wavelengthM);
            }
        }
        for (int f = 0; f < n; f++) {
            double crestDeg = Math.toDegrees(sharpestRad(ground, f));
            if (crestDeg > (halvings[f] == 0 ? SHARP_CREST_DEG : CREST_DEG)) halvings[f] = MOST_HALVINGS;
        }
    }

    static FieldMarchPace of(FieldMarchGround ground, FieldMarchGrid grid, double wavelengthM, FieldMarchCover cover) {
        return new FieldMarchPace(ground, grid, wavelengthM, cover, 1);
    }

    /**
     * All steps half as long, for a grid with nodes half as far apart: to see what the pace costs in accuracy. Nodes are never closer
     * than those of this class, for beyond them the factors of a short step overflow.
     */
    static FieldMarchPace halved(
            FieldMarchGround ground, FieldMarchGrid grid, double wavelengthM, FieldMarchCover cover) {
        FieldMarchPace pace = new FieldMarchPace(ground, grid, wavelengthM, cover, 2);
        for (int f = 0; f < pace.halvings.length; f++) pace.halvings[f] = Math.min(pace.halvings[f], MOST_HALVINGS - 1);
        return pace;
    }

    /** The cheapest order and step that carry rays of an angle: the grid's own where that does. */
    private void choose(int facet, double deg, FieldMarchGrid grid, double wavelengthM, boolean isInWoods) {
        double longestM = isInWoods ? Math.min(grid.stepM(), WOODS_WAVELENGTHS * wavelengthM) : grid.stepM();
        stepM[facet] = longestM;
        order[facet] = isInWoods ? ORDERS[0] : grid.order();
        if (carriedDeg(order[facet], longestM / wavelengthM) >= deg) return;
        double least = Double.POSITIVE_INFINITY;
        for (int o : ORDERS) {
            double step = Math.min(longestM, longestWavelengths(o, deg) * wavelengthM);
            if (o / step < least * (1 - 1e-9)) {
                least = o / step;
                stepM[facet] = step;
                order[facet] = o;
            }
        }
    }

    /**
     * Behind a crest by which the ground falls through an angle θ, the field changes within λ/θ²: there the march looks at it as
     * often.
     */
    private static double behindCrestM(FieldMarchGround ground, int facet, double wavelengthM) {
        double most = 0;
        double from = ground.startM(facet);
        for (int g = facet - 1; g >= 0 && from - ground.startM(g + 1) < CREST_M; g--)
            most = Math.max(most, ground.slopeRad(g) - ground.slopeRad(facet));
        double over = most * most - BLUNT_RAD * BLUNT_RAD;
        return over > 0 ? Math.max(SHORTEST_WAVELENGTHS, 1 / over) * wavelengthM : Double.POSITIVE_INFINITY;
    }

    /** Sharpest crest at either end of a facet. */
    private static double sharpestRad(FieldMarchGround ground, int facet) {
        double slope = ground.slopeRad(facet);
        double before = facet > 0 ? ground.slopeRad(facet - 1) - slope : 0;
        double behind = facet < ground.facets() - 1 ? slope - ground.slopeRad(facet + 1) : 0;
        return Math.max(before, behind);
    }

    private static int turnSteps(
            FieldMarchGround ground, int facet, FieldMarchGrid grid, double[] topM, double wavelengthM) {
        double angle = Math.abs(ground.slopeRad(facet) - ground.slopeRad(facet - 1));
        int asked = (int) Math.min(MOST_TURN_STEPS, Math.ceil(turnStepsOfARadian(ground, facet, wavelengthM) * angle));
        return Math.max(grid.turnStepsFor(angle, Math.max(topM[facet - 1], topM[facet])), asked);
    }

    private static double turnStepsOfARadian(FieldMarchGround ground, int facet, double wavelengthM) {
        double steepest = Math.max(ground.raysRad(facet - 1), ground.raysRad(facet));
        return 2 * Math.PI / wavelengthM * ground.overM(facet) * (1 - Math.cos(steepest)) / TURN_RAD;
    }

    /** Angle in degrees to which a step carries rays; between the columns of the table by the logarithm of the step. */
    static double carriedDeg(int order, double wavelengths) {
        double[] row = CARRIED_DEG[order / 2 - 2];
        if (wavelengths <= STEP_WAVELENGTHS[0]) return row[0];
        int i = 1;
        while (i < row.length - 1 && wavelengths > STEP_WAVELENGTHS[i]) i++;
        double share = Math.log(wavelengths / STEP_WAVELENGTHS[i - 1])
                / Math.log(STEP_WAVELENGTHS[i] / STEP_WAVELENGTHS[i - 1]);
        return row[i - 1] + share * (row[i] - row[i - 1]);
    }

    /** The inverse: longest step in wavelengths, never less than the shortest of the table nor more than its longest. */
    static double longestWavelengths(int order, double deg) {
        double[] row = CARRIED_DEG[order / 2 - 2];
        int last = row.length - 1;
        if (deg >= row[0]) return STEP_WAVELENGTHS[0];
        if (deg <= row[last]) return STEP_WAVELENGTHS[last];
        int i = 1;
        while (deg < row[i]) i++;
        double share = (deg - row[i - 1]) / (row[i] - row[i - 1]);
        return STEP_WAVELENGTHS[i - 1] * Math.pow(STEP_WAVELENGTHS[i] / STEP_WAVELENGTHS[i - 1], share);
    }

    int order(int facet) {
        return order[facet];
    }

    /** Number of range steps over a length of a facet. */
    int steps(int facet, double lengthM) {
        return Math.max(1, (int) Math.ceil(refinement * lengthM / stepM[facet] - 1e-9));
    }

    /** Least number of steps of the turn at the corner where a facet begins. */
    int turnSteps(int facet) {
        return (int) Math.ceil(refinement * turnSteps[facet]);
    }

    /** What the rays over that corner ask for in steps of its turn, for each radian of it. */
    double turnStepsOfARadian(int facet) {
        return refinement * turnStepsOfARadian[facet];
    }

    /** How often the spacing of the grid's nodes is halved on a facet. */
    int halvings(int facet) {
        return halvings[facet];
    }
}
