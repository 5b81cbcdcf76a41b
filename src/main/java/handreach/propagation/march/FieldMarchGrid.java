package handreach.propagation.march;

import java.util.List;

/**
 * Grid and steps of one field march.
 *
 * @param spacingM height between nodes, m
 * @param stepM longest range step, m
 * @param topM top of the column, absorber included, m above the facet
 * @param absorberM depth of the absorber under the top, m
 * @param turnM longest motion of the top within one step of a turn, m
 * @param airM what is held between the highest ray and the absorber, m
 * @param nearAirM the part of it that is asked for right at the ends, m
 */
record FieldMarchGrid(
        double spacingM, double stepM, double topM, double absorberM, double turnM, double airM, double nearAirM) {
    /** Air over the highest ray of a facet in lockstep, in radii of the first Fresnel zone there: seen on the radials of docs/full-wave.md. */
    private static final double AIR_FRESNELS = 1.2;

    /** Depth of the absorber in lockstep over that of a radial by itself: seen on the same radials, where less than this begins to tell. */
    private static final double TOGETHER_SHARE = 0.9;

    /** The top of a column moves by no more than this for each metre along the ground. */
    private static final double SINK = 0.25;

    /** Lengths of a step in lockstep from one to twice as much. */
    private static final long LENGTHS_KEPT = 32;

    FieldMarchGrid {
        if (!(spacingM > 0) || !(stepM > 0) || !(topM > absorberM) || !(absorberM > 0))
            throw new IllegalArgumentException("grid of the field march");
    }

    /** The grid of the product: coarse nodes and long steps. Beyond 20 m the power along the ground would be sampled too thinly. */
    static FieldMarchGrid fast(FieldMarchGround ground, double wavelengthM, double antennasM) {
        double stepM = Math.min(20 * wavelengthM, 20);
        return of(ground, wavelengthM, antennasM, 0.85, wavelengthM / 2.25, stepM);
    }

    /** The same in lockstep, under a thinner absorber. */
    static FieldMarchGrid together(FieldMarchGround ground, double wavelengthM, double antennasM) {
        FieldMarchGrid alone = fast(ground, wavelengthM, antennasM);
        double absorberM = TOGETHER_SHARE * alone.absorberM;
        return new FieldMarchGrid(
                alone.spacingM,
                alone.stepM,
                alone.topM - alone.absorberM + absorberM,
                absorberM,
                alone.turnM,
                alone.airM,
                alone.nearAirM);
    }

    /** Twice as fine and half as high again: to see what the product's grid costs in accuracy. */
    static FieldMarchGrid fine(FieldMarchGround ground, double wavelengthM, double antennasM) {
        return of(ground, wavelengthM, antennasM, 1.3, wavelengthM / 5, Math.min(7 * wavelengthM, 10));
    }

    private static FieldMarchGrid of(
            FieldMarchGround ground,
            double wavelengthM,
            double antennasM,
            double margin,
            double spacingM,
            double stepM) {
        double fresnelM = Math.sqrt(wavelengthM * ground.lengthM() / 4);
        double absorberM = Math.max(80, 3 * fresnelM) * margin;
        double nearAirM = 60 + antennasM;
        double airM = nearAirM + 3 * fresnelM * margin;
        double topM = ground.columnM(airM) + absorberM;
        return new FieldMarchGrid(spacingM, stepM, topM, absorberM, 15 * wavelengthM, airM, nearAirM);
    }

    /** Number of steps of a turn of a column of some height: the top must not run on too far at once. */
    int turnStepsFor(double angleRad, double heightM) {
        return Math.max(1, (int) Math.ceil(Math.abs(angleRad) * heightM / turnM));
    }

    /** The same of one radian on a column that ends lower: what reaches half of the absorber no longer counts. */
    double turnStepsOfARadian(double heightM) {
        return (heightM - 0.5 * absorberM) / turnM;
    }

    /**
     * Where the column ends on each facet, m: as high as the rays over it ask for, and never sinking or rising fast, so that the
     * absorber comes in softly.
     */
    double[] tops(FieldMarchGround ground) {
        double[] needed = new double[ground.facets()];
        for (int f = 0; f < needed.length; f++) needed[f] = Math.min(topM, ground.columnM(f, airM) + absorberM);
        return softened(needed, ground);
    }

    /** The same of radials in lockstep, whose facets lie at the same distances: as high as any of them asks for. */
    double[] tops(List<FieldMarchGround> grounds, double wavelengthM) {
        double[] needed = new double[grounds.get(0).facets()];
        for (FieldMarchGround ground : grounds)
            for (int f = 0; f < needed.length; f++) needed[f] = Math.max(needed[f], topM(ground, f, wavelengthM));
        return softened(needed, grounds.get(0));
    }

    private static double[] softened(double[] needed, FieldMarchGround ground) {
        double[] tops = needed.clone();
        for (int f = 1; f < tops.length; f++)
            tops[f] = Math.max(tops[f], tops[f - 1] - SINK * (ground.startM(f) - ground.startM(f - 1)));
        for (int f = tops.length - 2; f >= 0; f--)
            tops[f] = Math.max(tops[f], tops[f + 1] - SINK * (ground.startM(f + 1) - ground.startM(f)));
        return tops;
    }

    /**
     * Top of a column on one facet, absorber included, m: no higher than its own rays ask for, with so many radii of the first Fresnel
     * zone between the ends of the radial as are free there.
     */
    private double topM(FieldMarchGround ground, int facet, double wavelengthM) {
        double gone = Math.min(1, 0.5 * (ground.startM(facet) + ground.startM(facet + 1)) / ground.lengthM());
        double fresnelM = Math.sqrt(wavelengthM * ground.lengthM() * gone * (1 - gone));
        double air = Math.min(airM, nearAirM + AIR_FRESNELS * fresnelM);
        return Math.min(topM, ground.columnM(facet, air) + absorberM);
    }

    /** A step of about this length as whole quanta, so that steps are used again. */
    static long quanta(double stepM, double quantumM) {
        return Math.max(1, Math.round(stepM / quantumM));
    }

    /**
     * The same in lockstep, no more than {@link #LENGTHS_KEPT} lengths from one to twice as much: corners stand anywhere, and to find the
     * fractions of a new length costs as much as marching some hundred nodes. What a step is short or long is made up on the next facet.
     */
    static long fewQuanta(double stepM, double quantumM) {
        long quanta = quanta(stepM, quantumM);
        long apart = Math.max(1, Long.highestOneBit(quanta) / LENGTHS_KEPT);
        return Math.round((double) quanta / apart) * apart;
    }

    /** The same with nodes half as far apart, so many times over. */
    FieldMarchGrid halved(int times) {
        return times == 0
                ? this
                : new FieldMarchGrid(spacingM / (1 << times), stepM, topM, absorberM, turnM, airM, nearAirM);
    }

    int nodes() {
        return Math.max(16, (int) Math.ceil(topM / spacingM));
    }
}
