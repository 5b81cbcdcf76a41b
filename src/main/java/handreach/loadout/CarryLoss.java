package handreach.loadout;

import handreach.uncertainty.Doubt;
import handreach.units.Dbd;

/**
 * What the control antenna is worth in one carry position: antenna efficiency and body together.
 *
 * @param carry the position
 * @param band the band it holds for
 * @param mean gain of the control over a half-wave dipole, mean over azimuth, if the control is the usual one
 *     ({@link ControlAnchor#standard})
 * @param doubt doubt of the mean, common to all places, and spread between persons, models and headings
 * @param frontBackDb difference between the best and the worst heading of the wearer, dB
 * @param origin where the figure comes from, to be printed with it
 */
public record CarryLoss(Carry carry, Band band, Dbd mean, Doubt doubt, double frontBackDb, String origin) {
    public static final String BRACKETED = "bracketing of ours, not a published table";

    public CarryLoss {
        if (!(Math.abs(mean.dbd()) <= 60)) throw new IllegalArgumentException("gain in a carry position " + mean);
        if (!(frontBackDb >= 0 && frontBackDb <= 40))
            throw new IllegalArgumentException("front to back " + frontBackDb);
    }

    /**
     * The default figure of a position.
     *
     * @shape  a row of a table of 7 positions by 3 bands; pure
     * @unit   dB over a half-wave dipole; doubt and spread dB
     * @valid  every position and band; inside a vehicle the vehicle's loss is added to that of the head position
     * @error  as its own doubt says: 2 to 4.5 dB in common, 3 to 6 dB between persons, on a mast 0.5 and 1 dB
     * @source our bracketing of published single measurements (among them Hill and Kneisel, IEEE Trans. VT 40(4), 1991, for the
     *     positions; Seybold, Introduction to RF Propagation, 2005, for 3 dB and 10 dB; Tanghe et al., IEEE Trans. VT, 2008, for
     *     vehicles); not a published table
     */
    public static CarryLoss standard(Carry carry, Band band) {
        int b = band.ordinal();
        return switch (carry) {
            case FACE -> row(carry, band, pick(b, -7, -4, -3), pick(b, 2, 1.5, 1.5), 3);
            case CHEST -> row(carry, band, pick(b, -10, -7, -6), pick(b, 3, 2.5, 2.5), 4);
            case SHOULDER_MIC -> row(carry, band, pick(b, -12, -8, -7), pick(b, 3, 3, 2.5), 4);
            case HIP_SWIVEL -> row(carry, band, pick(b, -15, -11, -9), pick(b, 3.5, 3, 3), pick(b, 4.5, 4, 4));
            case HIP_TIGHT -> row(carry, band, pick(b, -18, -13, -11), pick(b, 4, 3, 3), pick(b, 5, 4.5, 4.5));
            case VEHICLE -> {
                CarryLoss held = standard(Carry.FACE, band);
                Doubt both = held.doubt.plus(new Doubt(4, 5));
                yield row(carry, band, held.mean.dbd() + pick(b, -10, -9, -9), both.commonDb(), both.spreadDb());
            }
            case MAST -> row(carry, band, -0.5, 0.5, 1);
        };
    }

    private static double pick(int band, double vhf, double uhf, double upper) {
        return band == 0 ? vhf : band == 1 ? uhf : upper;
    }

    private static CarryLoss row(Carry carry, Band band, double dbd, double commonDb, double spreadDb) {
        double frontBackDb = switch (carry) {
            case FACE, CHEST, SHOULDER_MIC, VEHICLE -> pick(band.ordinal(), 4, 5, 8);
            case HIP_SWIVEL, HIP_TIGHT -> 12.5;
            case MAST -> 0;
        };
        return new CarryLoss(carry, band, new Dbd(dbd), new Doubt(commonDb, spreadDb), frontBackDb, BRACKETED);
    }

    /** Whether this is a row of the default table. */
    public boolean isStandard() {
        return origin.equals(BRACKETED);
    }

    /** What the body does: this position over the control on the bare chassis box, dB, negative where it weakens. */
    public double bodyDb() {
        return carry.isAtBody()
                ? mean.minus(ControlAnchor.standard(band).onBox()).db()
                : 0;
    }

    /**
     * Gain of a heading over the mean of all headings.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   bearing of the path clockwise from the wearer's front, side the radio is worn on likewise, degrees; result dB,
     *     positive where the radio's side faces the path
     * @valid  every finite angle; zero without a person
     * @error  3 dB or so, as the front-to-back figures are our suggestion
     * @source half the front-to-back ratio times the cosine of the angle from the radio's side; our suggestion, its size and sign
     *     agree with a published shadow of 14 dB at 184 MHz
     */
    public double headingDb(double pathFromFrontDeg, double wornSideDeg) {
        return frontBackDb / 2 * Math.cos(Math.toRadians(pathFromFrontDeg - wornSideDeg));
    }

    /**
     * Spread that is left when the heading is known: the variance of {@link #headingDb} over all headings, FB²/8, is taken out,
     * down to 1 dB.
     */
    public double spreadAtKnownHeadingDb() {
        double rest = doubt.spreadDb() * doubt.spreadDb() - frontBackDb * frontBackDb / 8;
        return Math.min(doubt.spreadDb(), Math.sqrt(Math.max(1, rest)));
    }
}
