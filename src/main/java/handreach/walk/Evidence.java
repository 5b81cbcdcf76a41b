package handreach.walk;

/**
 * What one report says about the shift of the loss: logarithm of its likelihood with two derivatives. A small share of reports
 * is held to be wild and to say nothing, so that one of them cannot pull the rest.
 */
final class Evidence {
    /** Share of reports that are wrong for reasons of their own: another channel, a flat battery; our suggestion. */
    private static final double WILD = 0.02;
    /** A wild level lies anywhere within so many decibels. */
    private static final double WILD_RANGE_DB = 120;

    private static final double ROOT_2PI = Math.sqrt(2 * Math.PI);

    double log;
    double slope;
    double curvature;
    /** Curvature of a bowl that is always open upwards, for the direction of a step. */
    double bowl;

    /** On which side of its edge a report holds the shift of the loss: at it, or on either side. */
    enum Side {
        AT,
        ABOVE,
        BELOW
    }

    /**
     * All that the evidence of a report hangs on.
     *
     * @param side where the shift lies
     * @param againstDb minus the shift at which prediction and report agree, dB
     */
    record Edge(Side side, double againstDb) {
        static Edge of(WalkPair pair) {
            return switch (pair.heard().kind()) {
                case LEVEL -> new Edge(Side.AT, pair.heard().value() - pair.predictedDbm());
                case BELOW -> new Edge(Side.ABOVE, pair.heard().value() - pair.predictedDbm());
                default -> new Edge(pair.copied() ? Side.BELOW : Side.ABOVE, -pair.marginDb());
            };
        }
    }

    /** The report against its prediction, with this shift of the loss and this spread. */
    void set(Edge edge, double shiftDb, double spreadDb) {
        double z = (edge.againstDb + shiftDb) / spreadDb;
        switch (edge.side) {
            case AT -> level(z, spreadDb);
            case ABOVE -> tail(z, 1, spreadDb);
            case BELOW -> tail(-z, -1, spreadDb);
        }
    }

    private void level(double z, double spreadDb) {
        double f = (1 - WILD) * Math.exp(-z * z / 2) / (ROOT_2PI * spreadDb);
        double all = f + WILD / WILD_RANGE_DB;
        double share = f / all;
        log = Math.log(all);
        slope = -share * z / spreadDb;
        curvature = share * (z * z - 1) / (spreadDb * spreadDb) - slope * slope;
        bowl = share / (spreadDb * spreadDb);
    }

    /** Probability Φ(z), where z grows with the shift for sign 1 and falls for −1. */
    private void tail(double z, int sign, double spreadDb) {
        double bell = Math.exp(-z * z / 2);
        double p = (1 - WILD) * normal(z, bell);
        double density = (1 - WILD) * bell / ROOT_2PI;
        double all = p + WILD / 2;
        log = Math.log(all);
        slope = sign * density / all / spreadDb;
        curvature = -z * density / all / (spreadDb * spreadDb) - slope * slope;
        bowl = Math.max(slope * slope, -curvature);
    }

    /**
     * The normal law, to 1e-7, which the share of wild reports makes enough in either tail: Abramowitz and Stegun 7.1.26 (from
     * memory). The bell e^(−z²/2) is at hand already.
     */
    static double normal(double z, double bell) {
        double t = 1 / (1 + 0.3275911 / Math.sqrt(2) * Math.abs(z));
        double poly = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
        double beyond = 0.5 * poly * bell;
        return z < 0 ? beyond : 1 - beyond;
    }
}
