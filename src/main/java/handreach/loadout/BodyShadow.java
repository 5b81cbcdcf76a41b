package handreach.loadout;

/**
 * Gain of a heading over the mean of all: an amplitude times the cosine of the angle from the best heading.
 *
 * @param amplitudeDb half of what the best heading gains over the worst
 * @param bestDeg bearing of the path that is best, clockwise from the wearer's front, with the radio on the right; on the left it is
 *     its mirror image
 * @param restDb spread that is left where the heading is known: persons, and what the cosine misses
 */
record BodyShadow(double amplitudeDb, double bestDeg, double restDb) {
    static final BodyShadow NONE = new BodyShadow(0, 0, 0);

    double gainDb(double pathFromFrontDeg) {
        return amplitudeDb * Math.cos(Math.toRadians(pathFromFrontDeg - bestDeg));
    }
}
