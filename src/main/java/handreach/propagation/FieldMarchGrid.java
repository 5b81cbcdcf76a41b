package handreach.propagation;

/**
 * Grid and steps of one field march.
 *
 * @param spacingM height between nodes, m
 * @param stepM longest range step, m
 * @param topM top of the column, absorber included, m above the facet
 * @param absorberM depth of the absorber under the top, m
 * @param order order of the range step, even
 * @param turnShare longest forward motion of the top within one step of a turn, in range steps
 */
record FieldMarchGrid(double spacingM, double stepM, double topM, double absorberM, int order, double turnShare) {
    FieldMarchGrid {
        if (!(spacingM > 0) || !(stepM > 0) || !(topM > absorberM) || !(absorberM > 0) || order % 2 != 0 || order < 2)
            throw new IllegalArgumentException("grid of the field march");
    }

    /** The grid of the product: coarse nodes and long steps under a high-order step. */
    static FieldMarchGrid fast(FieldMarchGround ground, double wavelengthM, double antennasM) {
        return of(ground, wavelengthM, antennasM, 0.8, new double[] {2.5, 15, 4, 0.5});
    }

    /** Twice as fine and as high: to see what the product's grid costs in accuracy. */
    static FieldMarchGrid fine(FieldMarchGround ground, double wavelengthM, double antennasM) {
        return of(ground, wavelengthM, antennasM, 1.2, new double[] {6, 5, 4, 0.5});
    }

    private static FieldMarchGrid of(
            FieldMarchGround ground, double wavelengthM, double antennasM, double margin, double[] choice) {
        double fresnelM = Math.sqrt(wavelengthM * ground.lengthM() / 4);
        double absorberM = Math.max(80, 3 * fresnelM) * margin;
        double topM = ground.reliefM() + 60 + antennasM + 3 * fresnelM * margin + absorberM;
        return new FieldMarchGrid(
                wavelengthM / choice[0], choice[1] * wavelengthM, topM, absorberM, (int) choice[2], choice[3]);
    }

    /** Number of range steps over a facet. */
    int stepsFor(double facetM) {
        return Math.max(1, (int) Math.ceil(facetM / stepM - 1e-9));
    }

    /** Number of steps of a turn: the top must not run on too far at once. */
    int turnStepsFor(double angleRad) {
        return Math.max(1, (int) Math.ceil(Math.abs(angleRad) * topM / (turnShare * stepM)));
    }

    int nodes() {
        return (int) Math.ceil(topM / spacingM);
    }
}
