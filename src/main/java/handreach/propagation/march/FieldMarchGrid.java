package handreach.propagation.march;

/**
 * Grid and steps of one field march.
 *
 * @param spacingM height between nodes, m
 * @param stepM longest range step, m
 * @param topM top of the column, absorber included, m above the facet
 * @param absorberM depth of the absorber under the top, m
 * @param order order of the range step, even
 * @param turnM longest motion of the top within one step of a turn, m
 * @param airM what is held between the highest ray and the absorber, m
 */
record FieldMarchGrid(
        double spacingM, double stepM, double topM, double absorberM, int order, double turnM, double airM) {
    FieldMarchGrid {
        if (!(spacingM > 0) || !(stepM > 0) || !(topM > absorberM) || !(absorberM > 0) || order % 2 != 0 || order < 2)
            throw new IllegalArgumentException("grid of the field march");
    }

    /**
     * The grid of the product: coarse nodes and long steps. Beyond 12 wavelengths a step needs the sixth order; beyond 20 m the
     * power along the ground would be sampled too thinly.
     */
    static FieldMarchGrid fast(FieldMarchGround ground, double wavelengthM, double antennasM) {
        double stepM = Math.min(15 * wavelengthM, 20);
        return of(ground, wavelengthM, antennasM, 0.85, wavelengthM / 2.25, stepM);
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
        double airM = 60 + antennasM + 3 * fresnelM * margin;
        double topM = ground.columnM(airM) + absorberM;
        return new FieldMarchGrid(
                spacingM, stepM, topM, absorberM, stepM > 12 * wavelengthM ? 6 : 4, 15 * wavelengthM, airM);
    }

    /** Number of steps of a turn: the top must not run on too far at once. */
    int turnStepsFor(double angleRad) {
        return turnStepsFor(angleRad, topM);
    }

    /** The same of a column that ends lower. */
    int turnStepsFor(double angleRad, double heightM) {
        return Math.max(1, (int) Math.ceil(Math.abs(angleRad) * heightM / turnM));
    }

    /** Top of a column on one facet, absorber included, m: no higher than its own rays ask for. */
    double topM(FieldMarchGround ground, int facet) {
        return Math.min(topM, ground.columnM(facet, airM) + absorberM);
    }

    /** A step of about this length as whole quanta, so that steps are used again. */
    static long quanta(double stepM, double quantumM) {
        return Math.max(1, Math.round(stepM / quantumM));
    }

    /** The same with nodes half as far apart, so many times over. */
    FieldMarchGrid halved(int times) {
        return times == 0
                ? this
                : new FieldMarchGrid(spacingM / (1 << times), stepM, topM, absorberM, order, turnM, airM);
    }

    int nodes() {
        return Math.max(16, (int) Math.ceil(topM / spacingM));
    }
}
