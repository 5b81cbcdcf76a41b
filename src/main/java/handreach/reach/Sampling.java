package handreach.reach;

/**
 * How finely a sweep reads the ground.
 *
 * @param stepM distance of samples along a radial, m
 * @param radials number of radials
 */
record Sampling(double stepM, int radials) {
    private static final int FEWEST_RADIALS = 16;

    static Sampling of(AreaSetting setting, double cellM) {
        double radials = Math.ceil(2 * Math.PI * setting.radiusM() / (cellM / 2));
        return new Sampling(setting.sweepStepM(cellM), (int) Math.max(FEWEST_RADIALS, radials));
    }
}
