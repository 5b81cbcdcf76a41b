package handreach.loadout;

import handreach.units.Dbd;

/**
 * Gain of the control antenna on its radio's chassis, clear of any body: what ties levels over the control to absolute ones.
 *
 * @param band the band it holds for
 * @param onBox gain over a half-wave dipole, at the horizon, losses in
 * @param commonDb standard uncertainty, common to everything that stands on this anchor, dB
 * @param origin how it is known
 * @param source in words, to be printed
 */
public record ControlAnchor(Band band, Dbd onBox, double commonDb, Origin origin, String source) {
    /** How an anchor is known. */
    public enum Origin {
        MEASURED,
        DEFAULT,
        FITTED
    }

    public ControlAnchor {
        if (!(Math.abs(onBox.dbd()) <= 60)) throw new IllegalArgumentException("anchor " + onBox);
        if (!(commonDb >= 0 && commonDb <= 60)) throw new IllegalArgumentException("doubt of the anchor " + commonDb);
    }

    /**
     * The anchor when nobody measured the control.
     *
     * @shape  a table of 3 bands; pure
     * @unit   dB over a half-wave dipole
     * @valid  helical factory antennas of usual size
     * @error  1.5 dB at VHF, 1 dB above, as its own doubt says
     * @source our method-of-moments models of whips with coils of quality 100 on a 60 × 35 × 110 mm box, rounded down for rubber and
     *     joints, our suggestion: 150 mm at 146 MHz −1.96 dBi, 53 mm at 450 MHz 0.98 dBi, 37 mm at 800 MHz 1.7 dBi
     */
    public static ControlAnchor standard(Band band) {
        return switch (band) {
            case VHF -> new ControlAnchor(band, new Dbd(-4), 1.5, Origin.DEFAULT, "our default, not measured");
            case UHF -> new ControlAnchor(band, new Dbd(-2), 1, Origin.DEFAULT, "our default, not measured");
            case UPPER_UHF -> new ControlAnchor(band, new Dbd(-1.5), 1, Origin.DEFAULT, "our default, not measured");
        };
    }

    /** Measured against a reference antenna on the same range. */
    public static ControlAnchor measured(Band band, Dbd onBox, double commonDb, String source) {
        return new ControlAnchor(band, onBox, commonDb, Origin.MEASURED, source);
    }

    /** How much better this control is than the usual one, dB. */
    public double shiftDb() {
        return onBox.minus(standard(band).onBox).db();
    }
}
