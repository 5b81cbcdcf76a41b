package handreach.loadout;

import handreach.uncertainty.Doubt;
import handreach.units.Dbd;
import handreach.units.Frequency;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What the control antenna is worth in one carry position: antenna efficiency and body together.
 *
 * @param carry the position
 * @param band the band it holds for
 * @param mean gain of the control over a half-wave dipole, mean over azimuth, if the control is the usual one
 *     ({@link ControlAnchor#standard})
 * @param doubt doubt of the mean, common to all places, and spread between persons and headings
 * @param shadow what a known heading adds
 * @param origin where the figure comes from, to be printed with it
 */
public record CarryLoss(Carry carry, Band band, Dbd mean, Doubt doubt, BodyShadow shadow, String origin) {
    private static final String VEHICLE = "; the vehicle: bracketing of ours";
    private static final Set<String> OURS = Set.of(
            BodyRow.COMPUTED,
            BodyRow.BETWEEN,
            BodyRow.BRACKETED,
            BodyRow.COMPUTED + VEHICLE,
            BodyRow.BETWEEN + VEHICLE,
            BodyRow.BRACKETED + VEHICLE);
    /** Gain on the mast, dBd; bracketing of ours. */
    private static final double MAST_DBD = -0.5;

    public CarryLoss {
        if (!(Math.abs(mean.dbd()) <= 60)) throw new IllegalArgumentException("gain in a carry position " + mean);
    }

    /**
     * The default figure of a position in a band.
     *
     * @shape  a row of a table of 8 positions by 3 bands; pure
     * @unit   dB over a half-wave dipole; doubt and spread dB
     * @valid  every position and band; inside a vehicle the vehicle's loss is added to that of the head position, on its
     *     roof, outside, the figures of the mast are taken
     * @error  as its own doubt says: 1.4 to 3.5 dB in common, 2 to 6 dB between persons and headings, on a mast 0.5 and 1 dB; no
     *     measurement stands behind the rows at the body
     * @source at the body {@link BodyTable#row} with {@link ControlAnchor#standard}; vehicle and mast our bracketing of published single
     *     measurements (for vehicles Tanghe et al., IEEE Trans. VT, 2008), not a published table
     */
    public static CarryLoss standard(Carry carry, Band band) {
        return switch (carry) {
            case MAST, ROOF ->
                new CarryLoss(carry, band, new Dbd(MAST_DBD), new Doubt(0.5, 1), BodyShadow.NONE, BodyRow.BRACKETED);
            case VEHICLE -> inVehicle(standard(Carry.FACE, band));
            default -> row(carry, band, BodyTable.row(carry, band));
        };
    }

    /**
     * The default figure of a position at a frequency.
     *
     * @shape  scalars in, one value out; pure
     * @unit   as {@link #standard(Carry, Band)}
     * @valid  every position; inside VHF and UHF the row of the band, between the bands and from 700 to 860 MHz the loss is interpolated
     *     ({@link BodyTable#lossDb}) with doubt and spread of the nearest band; under 100 MHz our earlier bracketing for VHF
     * @error  as {@link #standard(Carry, Band)}
     * @source as {@link #standard(Carry, Band)}
     */
    public static CarryLoss standard(Carry carry, Frequency frequency) {
        Band band = Band.of(frequency);
        if (!carry.isAtBody()) return standard(carry, band);
        if (carry == Carry.VEHICLE) return inVehicle(standard(Carry.FACE, frequency));
        if (frequency.mhz() < BodyTable.LOWEST_MHZ) return bracketed(carry);
        BodyRow row = BodyTable.row(carry, band);
        return row(
                carry,
                band,
                new BodyRow(
                        BodyTable.lossDb(carry, frequency),
                        row.commonDb(),
                        row.personsDb(),
                        row.headingsDb(),
                        row.shadow(),
                        row.origin()));
    }

    private static CarryLoss row(Carry carry, Band band, BodyRow row) {
        ControlAnchor anchor = ControlAnchor.standard(band);
        return new CarryLoss(
                carry,
                band,
                new Dbd(anchor.onBox().dbd() - row.lossDb()),
                new Doubt(Math.hypot(row.commonDb(), anchor.commonDb()), row.spreadDb()),
                row.shadow(),
                row.origin());
    }

    /** The figures of before the computation, kept where that cannot be used: VHF, half the front-to-back ratio with a cosine. */
    private static CarryLoss bracketed(Carry carry) {
        return switch (carry) {
            case FACE -> bracketed(carry, -7, new Doubt(2, 3), 2, 0);
            case CHEST -> bracketed(carry, -10, new Doubt(3, 4), 2, 0);
            case SHOULDER_MIC -> bracketed(carry, -12, new Doubt(3, 4), 2, 0);
            case HIP_SWIVEL -> bracketed(carry, -15, new Doubt(3.5, 4.5), 6.25, 90);
            case HIP_TIGHT -> bracketed(carry, -18, new Doubt(4, 5), 6.25, 90);
            case VEHICLE, MAST, ROOF -> throw new IllegalArgumentException("no row of its own: " + carry);
        };
    }

    private static CarryLoss bracketed(Carry carry, double dbd, Doubt doubt, double amplitudeDb, double bestDeg) {
        BodyShadow shadow = new BodyShadow(amplitudeDb, bestDeg, restDb(doubt.spreadDb(), amplitudeDb));
        return new CarryLoss(carry, Band.VHF, new Dbd(dbd), doubt, shadow, BodyRow.BRACKETED);
    }

    private static CarryLoss inVehicle(CarryLoss held) {
        double lossDb = held.band == Band.VHF ? 10 : 9;
        Doubt both = held.doubt.plus(new Doubt(4, 5));
        BodyShadow shadow =
                new BodyShadow(held.shadow.amplitudeDb(), held.shadow.bestDeg(), Math.hypot(held.shadow.restDb(), 5));
        return new CarryLoss(
                Carry.VEHICLE, held.band, new Dbd(held.mean.dbd() - lossDb), both, shadow, held.origin + VEHICLE);
    }

    /**
     * The same for another kind of antenna than the short helical: what the body does to it, with the anchor of the control, so that
     * the loss against its own box is right. Where the default stands between computation and bracketing, this is the computation: the
     * bracketing was one of helicals.
     *
     * @shape  scalars in, one value out; pure
     * @unit   dB
     * @valid  default rows at the body, kinds and frequencies with columns; elsewhere the figure of the helical
     * @error  doubt of the row, and a quarter of what the kinds differ by, our suggestion
     * @source {@link WhipGain#overHelicalDb}, body less box
     */
    public CarryLoss of(Antenna antenna, Frequency frequency) {
        if (!isStandard() || !carry.isAtBody() || antenna.kind(frequency).isEmpty()) return this;
        Radiator kind = antenna.kind(frequency).get();
        if (kind == Radiator.SHORT_HELICAL && !antenna.counterpoise()) return this;
        OptionalDouble there =
                WhipGain.overHelicalDb(kind, antenna.counterpoise(), WhipGain.Place.of(carry), frequency);
        OptionalDouble box = WhipGain.overHelicalDb(kind, antenna.counterpoise(), WhipGain.Place.BOX, frequency);
        if (there.isEmpty() || box.isEmpty()) return this;
        double lessDb = there.getAsDouble() - box.getAsDouble();
        double helicalDb = BodyTable.moreAsComputedDb(carry, band) - bodyDb();
        return new CarryLoss(
                carry,
                band,
                new Dbd(ControlAnchor.standard(band).onBox().dbd() - Math.max(0, helicalDb - lessDb)),
                new Doubt(Math.hypot(doubt.commonDb(), DeltaMove.KIND_SHARE * lessDb), doubt.spreadDb()),
                shadow,
                carry == Carry.VEHICLE ? BodyRow.COMPUTED + VEHICLE : BodyRow.COMPUTED);
    }

    /** The user's own figure of a position, which stands alone: nothing of the default is laid over it but what a known heading adds. */
    public static CarryLoss stated(Carry carry, Frequency frequency, Dbd mean, Doubt doubt, String origin) {
        CarryLoss usual = standard(carry, frequency);
        double amplitudeDb = usual.shadow.amplitudeDb();
        BodyShadow shadow = new BodyShadow(amplitudeDb, usual.shadow.bestDeg(), restDb(doubt.spreadDb(), amplitudeDb));
        return new CarryLoss(carry, usual.band, mean, doubt, shadow, origin);
    }

    /** Spread without what a cosine over the headings has in it, down to 1 dB. */
    private static double restDb(double spreadDb, double amplitudeDb) {
        double rest = spreadDb * spreadDb - amplitudeDb * amplitudeDb / 2;
        return Math.min(spreadDb, Math.sqrt(Math.max(1, rest)));
    }

    /** Whether this is a row of the default table. */
    public boolean isStandard() {
        return OURS.contains(origin);
    }

    /** Whether it is a default on which our computation and our earlier bracketing disagree beyond their doubts. */
    public boolean isDisputed() {
        return origin.startsWith(BodyRow.BETWEEN);
    }

    /** What the body does: this position over the control on the bare chassis box, dB, negative where it weakens. */
    public double bodyDb() {
        return carry.isAtBody()
                ? mean.minus(ControlAnchor.standard(band).onBox()).db()
                : 0;
    }

    /**
     * Gain of a heading over the mean of all headings, of the mean of many persons.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   bearing of the path clockwise from the wearer's front, degrees; result dB, positive where the radio's side faces the path
     * @valid  every finite angle; a radio on the right side, or in the right hand; zero without a person
     * @error  {@link #spreadAtKnownHeadingDb} for one person; the bearing of the best heading is that of the standard posture
     * @source cosine fitted to our computation with a fifth of the power diffuse ({@link BodyTable#row}); under 100 MHz half the front-to-back
     *     ratio of our bracketing
     */
    public double headingDb(double pathFromFrontDeg) {
        return shadow.gainDb(pathFromFrontDeg);
    }

    /** Bearing of the path from the wearer's front at which {@link #headingDb} is greatest, degrees. */
    public double bestHeadingDeg() {
        return shadow.bestDeg();
    }

    /** Spread that is left when the heading is known. */
    public double spreadAtKnownHeadingDb() {
        return shadow.restDb();
    }
}
