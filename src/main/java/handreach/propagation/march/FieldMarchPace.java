package handreach.propagation.march;

/**
 * How finely the march goes, facet by facet: length and order of the range steps, nodes of the column, steps of the turn at each
 * corner. All follows from the angle to the facet of the steepest ray that ground before it can send to ground behind it
 * ({@link FieldMarchGround#raysRad}), and from the corners: on gentle ground nothing is refined, on a steep facet as much as its
 * rays ask for.
 */
final class FieldMarchPace {
    static final int MOST_HALVINGS = 2;
    static final int HIGHEST_ORDER = 8;
    private static final int[] ORDERS = {4, 6, HIGHEST_ORDER};
    /**
     * A range step of an order may put the steepest ray of a facet wrong by so much for each wavelength it goes, rad. The lower the order, the
     * less it gains on the rays below the steepest, which are many and stay longer.
     */
    private static final double[] STEP_ERROR = {1e-4, 3e-4, 1e-3};

    private static final double[] STEP_WAVELENGTHS = {0.5, 0.75, 1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 30};
    /**
     * Angle from the facet, degrees, up to which the fraction of an order (row) carries a ray over a step (column) within
     * {@link #stepError}: computed from the fraction itself, and held against it by a test.
     */
    private static final double[][] CARRIED_DEG = {
        {47.25, 44, 41, 36, 32.25, 27.25, 24.25, 22, 20.25, 18, 16.25, 15, 13.5, 12, 10},
        {63.75, 61.5, 59, 53.75, 49.25, 42, 37.25, 33.75, 31, 27.25, 24.5, 22.5, 20.5, 18, 15},
        {73.5, 72, 70.25, 66.5, 62.25, 54.5, 48.5, 44, 40.5, 35.5, 32, 29.5, 26.5, 23.25, 19.25}
    };
    /**
     * Angle of a ray, or of a crest, up to which the nodes of the grid suffice, and those of half the spacing, degrees. The second
     * difference of fourth order puts the phase of a ray at 20° wrong by 0.0014 rad a wavelength on nodes of λ/2.25, at 24° by 0.004,
     * at 45° by 0.009 rad on λ/4.5; that goes with the fourth power of the spacing.
     */
    private static final double NODES_TO_DEG = 24;

    private static final double HALVED_TO_DEG = 45;
    /** In lockstep {@link LaneNodes#WIDE} serve up to here, at half the nodes. */
    private static final double WIDE_TO_DEG = 33;
    /**
     * And only where the ground has fallen by no more than this within so many metres: what came up a slope goes on at such an angle to the
     * facet over the air behind the crest, and the coarse steps of turns in lockstep threw some of it down into the shadow, which then read up to
     * 35 dB too well.
     */
    private static final double FALLEN_DEG = 45;

    private static final double FALLEN_M = 200;
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
    /** So many times the longest step of the grid may the longest of several radials take: the last column of the table. */
    private static final double MOST_UNEVEN = 1.5;

    /**
     * Longest step among trees, whose part of the step is split off: with it halving every step moves the local mean by 0.4 dB rms at most
     * (50 to 900 MHz, docs/full-wave.md).
     */
    private static final double WOODS_WAVELENGTHS = 3;

    /** Range steps over a facet: their order and number. */
    record Steps(int order, int number) {}

    private final double[] raysDeg;
    private final double[] facetM;
    /** What edges and trees allow. */
    private final double[] longestM;

    private final double gridStepM;
    private final double wavelengthM;
    private final int[] halvings;
    private final int[] halvingsTogether;
    private final boolean[] isWide;
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
        this.wavelengthM = wavelengthM;
        this.raysDeg = new double[n];
        this.facetM = new double[n];
        this.longestM = new double[n];
        this.gridStepM = grid.stepM();
        this.halvings = new int[n];
        this.halvingsTogether = new int[n];
        this.isWide = new boolean[n];
        this.turnSteps = new int[n];
        this.turnStepsOfARadian = new double[n];
        for (int f = 0; f < n; f++) {
            raysDeg[f] = Math.toDegrees(ground.raysRad(f));
            facetM[f] = ground.facetM(f);
            longestM[f] = behindCrestM(ground, f, wavelengthM);
            if (cover.layer(ground, f).isThere()) longestM[f] = Math.min(longestM[f], WOODS_WAVELENGTHS * wavelengthM);
            int own = raysDeg[f] <= NODES_TO_DEG ? 0 : raysDeg[f] <= HALVED_TO_DEG ? 1 : MOST_HALVINGS;
            boolean isFallen = Math.toDegrees(fallenRad(ground, f, FALLEN_M)) > FALLEN_DEG;
            int together = raysDeg[f] <= WIDE_TO_DEG && !isFallen ? 0 : own;
            for (int g = Math.max(0, f - 1); g <= Math.min(n - 1, f + 1); g++) {
                halvings[g] = Math.max(halvings[g], own);
                halvingsTogether[g] = Math.max(halvingsTogether[g], together);
                isWide[g] |= own > together;
            }
            if (f > 0) {
                turnSteps[f] = turnSteps(ground, f, grid, topM, wavelengthM);
                turnStepsOfARadian[f] = turnStepsOfARadian(ground, f, wavelengthM);
            }
        }
        for (int f = 0; f < n; f++) {
            double crestDeg = Math.toDegrees(sharpestRad(ground, f));
            if (crestDeg > (halvings[f] == 0 ? SHARP_CREST_DEG : CREST_DEG)) halvings[f] = MOST_HALVINGS;
            if (crestDeg > (halvingsTogether[f] == 0 ? SHARP_CREST_DEG : CREST_DEG))
                halvingsTogether[f] = MOST_HALVINGS;
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

    /** Steps over a facet, of which the last so many metres are left: the cheapest over the whole of it that carry its rays. */
    Steps steps(int facet, double lengthM) {
        return steps(raysDeg[facet], facetM[facet], 1, longestM[facet], lengthM);
    }

    /**
     * The same for several radials together, of which the longest has so many metres left. Corners stand where each radial bends, so that its
     * facets are now longer, now shorter: the longest step of the grid is held by their mean, and by a single one only once and a half.
     */
    static Steps steps(FieldMarchPace[] paces, int facet, double lengthM) {
        double deg = 0;
        double facetM = 0;
        double meanM = 0;
        double longestM = Double.POSITIVE_INFINITY;
        for (FieldMarchPace pace : paces) {
            deg = Math.max(deg, pace.raysDeg[facet]);
            facetM = Math.max(facetM, pace.facetM[facet]);
            meanM += pace.facetM[facet] / paces.length;
            longestM = Math.min(longestM, pace.longestM[facet]);
        }
        double uneven = Math.min(MOST_UNEVEN, facetM / meanM);
        return paces[0].steps(deg, facetM, uneven, longestM, lengthM);
    }

    /** The order is what rays ask for. Edges and trees, which have waves of wider angles, shorten the steps and leave it as it is. */
    private Steps steps(double deg, double facetM, double uneven, double longestM, double lengthM) {
        int cheapest = 0;
        double stepM = 0;
        for (int order : ORDERS) {
            double ownM = Math.min(uneven * gridStepM, longestWavelengths(order, deg) * wavelengthM);
            if (cheapest == 0 || order * number(facetM, ownM) < cheapest * number(facetM, stepM)) {
                cheapest = order;
                stepM = ownM;
            }
        }
        return new Steps(cheapest, number(lengthM, Math.min(stepM, longestM)));
    }

    private int number(double lengthM, double stepM) {
        return Math.max(1, (int) Math.ceil(refinement * lengthM / stepM - 1e-9));
    }

    /**
     * Behind a crest by which the ground falls through an angle θ, the field changes within λ/θ²: there the march looks at it as
     * often.
     */
    private static double behindCrestM(FieldMarchGround ground, int facet, double wavelengthM) {
        double most = fallenRad(ground, facet, CREST_M);
        double over = most * most - BLUNT_RAD * BLUNT_RAD;
        return over > 0 ? Math.max(SHORTEST_WAVELENGTHS, 1 / over) * wavelengthM : Double.POSITIVE_INFINITY;
    }

    /** How much less steeply the ground rises, or more steeply falls, on a facet than anywhere within so many metres before it. */
    private static double fallenRad(FieldMarchGround ground, int facet, double withinM) {
        double most = 0;
        double from = ground.startM(facet);
        for (int g = facet - 1; g >= 0 && from - ground.startM(g + 1) < withinM; g--)
            most = Math.max(most, ground.slopeRad(g) - ground.slopeRad(facet));
        return most;
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

    /** What a step of an order may put the steepest ray wrong by, rad a wavelength. */
    static double stepError(int order) {
        return STEP_ERROR[order / 2 - 2];
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

    /** The same in lockstep, where {@link LaneNodes#WIDE} serve in place of the first halving. */
    int halvingsTogether(int facet) {
        return halvingsTogether[facet];
    }

    /** Whether nodes in lockstep stand for wide rays. */
    boolean isWide(int facet) {
        return isWide[facet];
    }
}
