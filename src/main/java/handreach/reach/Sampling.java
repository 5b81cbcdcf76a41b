package handreach.reach;

/**
 * How finely a sweep reads the ground.
 *
 * @param stepM distance of samples along a radial, m
 * @param radials number of radials
 */
record Sampling(double stepM, int radials) {
    private static final int FEWEST_RADIALS = 16;
    /** Up to this many, radials lie a quarter of a cell apart at the rim, beyond half a cell: it costs little, and sight gains. */
    private static final int AFFORDABLE_RADIALS = 4200;

    static Sampling of(AreaSetting setting, double cellM) {
        double perCell = 2 * Math.PI * setting.radiusM() / cellM;
        double radials = Math.ceil(Math.min(4 * perCell, Math.max(2 * perCell, AFFORDABLE_RADIALS)));
        return new Sampling(setting.sweepStepM(), (int) Math.max(FEWEST_RADIALS, radials));
    }
}
