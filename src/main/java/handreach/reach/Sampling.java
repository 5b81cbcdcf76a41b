package handreach.reach;

/**
 * How finely an engine reads the ground.
 *
 * @param stepM distance of samples along a path, m
 * @param radials number of radials
 * @param radiusM length of a radial, m
 */
record Sampling(double stepM, int radials, double radiusM) {
    /** Spacing taken for posts where no tile says better, m. */
    private static final double DEFAULT_POST_M = 30;

    private static final int MOST_SAMPLES = 40_000;

    static Sampling ofSweep(AreaRequest request, AreaGround ground) {
        double cellM = request.grid().cellM();
        double finest = Math.min(cellM, postM(request, ground));
        double step = Math.max(finest / 2, request.radiusM() / MOST_SAMPLES);
        double radials = Math.ceil(2 * Math.PI * request.radiusM() / (cellM / 2));
        return new Sampling(step, (int) Math.max(16, radials), request.radiusM());
    }

    /** Half the post spacing, as a path is cut. */
    static double exactStepM(AreaRequest request, AreaGround ground) {
        return Math.max(postM(request, ground) / 2, request.radiusM() / MOST_SAMPLES);
    }

    private static double postM(AreaRequest request, AreaGround ground) {
        return ground.elevation()
                .postSpacingM(request.source().latitudeDeg(), request.source().longitudeDeg(), DEFAULT_POST_M);
    }

    /** Samples of a radial, the one at the source included. */
    int samples() {
        return (int) Math.ceil(radiusM / stepM) + 1;
    }
}
