package handreach.loadout;

import handreach.units.Frequency;

/**
 * The default table of what a body does to the control: our own full-wave computation of a radio at a standing person (adult of
 * 1.75 m, one homogeneous body, free space, short helical with a coil of quality 100), a fifth of the power arriving diffusely. No
 * measurement stands behind it. Where it disagrees with our earlier bracketing of published single measurements by more than the
 * doubts of both, or where its limits speak against a row, the default stands between, with a doubt that covers both.
 */
final class BodyTable {
    /** Under this the computation, which has no ground, cannot be used; the earlier bracketing stays, MHz. */
    static final double LOWEST_MHZ = 100;

    /** Ends of the three bands and what lies between them, MHz; {@link #between} has the losses at them. */
    private static final double[] NODES_MHZ = {174, 220, 400, 512, 700, 860};

    private BodyTable() {}

    /**
     * The row of a position at the body in a band: computed loss, its doubt, spread between persons and over headings; the cosine of
     * the headings with its best bearing and what it misses.
     *
     * @shape  a table of 5 positions by 3 bands; pure
     * @unit   dB, loss positive; bearings degrees clockwise from the front
     * @valid  the five positions at the body; others: IllegalArgumentException
     * @error  its own doubt, 1 to 3.2 dB; no measurement stands behind any row
     * @source computed for this project by finite differences in time (FDTD), 234 bodies drawn at random; between it and our bracketing: face
     *     on all bands, chest on VHF (the two differ by more than their doubts) and the hip on 700/800 (the bodies computed keep the arm
     *     clear and wear no belt, which would err towards hope)
     */
    static BodyRow row(Carry carry, Band band) {
        return switch (carry) {
            case FACE ->
                switch (band) {
                    case VHF -> between(8, 3.2, 1.6, 2.6, 3.0, 5, 1.4);
                    case UHF -> between(4.5, 1.75, 1.0, 2.6, 3.3, 10, 1.3);
                    case UPPER_UHF -> between(3.5, 1.75, 0.9, 3.1, 4.1, -12, 1.1);
                };
            case CHEST ->
                switch (band) {
                    case VHF -> between(10, 2.6, 2.2, 2.2, 2.4, 25, 1.5);
                    case UHF -> computed(6.5, 1.5, 2.0, 3.7, 5.1, 15, 0.6);
                    case UPPER_UHF -> computed(4, 1, 1.4, 4.3, 5.9, 14, 0.7);
                };
            case SHOULDER_MIC ->
                switch (band) {
                    case VHF -> computed(11.5, 2.5, 2.8, 1.5, 0.7, 62, 1.5);
                    case UHF -> computed(7.5, 2, 2.9, 2.9, 3.9, 47, 1.0);
                    case UPPER_UHF -> computed(4.5, 1.5, 2.3, 3.1, 4.1, 28, 1.2);
                };
            case HIP_SWIVEL ->
                switch (band) {
                    case VHF -> computed(10.5, 2, 1.5, 1.6, 2.0, 116, 0.8);
                    case UHF -> computed(7, 1.5, 2.0, 4.0, 5.4, 42, 1.1);
                    case UPPER_UHF -> between(5.5, 2.3, 0.7, 4.1, 5.2, 46, 1.6);
                };
            case HIP_TIGHT ->
                switch (band) {
                    case VHF -> computed(12.5, 2, 1.3, 1.6, 2.0, 94, 0.8);
                    case UHF -> computed(9.5, 1.5, 3.5, 3.7, 4.3, 40, 2.3);
                    case UPPER_UHF -> between(7, 2.8, 1.5, 4.0, 4.7, 49, 2.1);
                };
            case VEHICLE, MAST, ROOF -> throw new IllegalArgumentException("no row of its own: " + carry);
        };
    }

    /** How much more loss the computation alone has than a row that stands between, dB; where kinds of whips have columns. */
    static double moreAsComputedDb(Carry carry, Band band) {
        return switch (carry) {
            case FACE, VEHICLE -> band == Band.VHF ? 3 : band == Band.UHF ? 1.5 : 0;
            case CHEST -> band == Band.VHF ? 2 : 0;
            default -> 0;
        };
    }

    private static BodyRow computed(double loss, double u, double s1, double s2, double a, double best, double rms) {
        return new BodyRow(loss, u, s1, s2, new BodyShadow(a, best, Math.hypot(s1, rms)), BodyRow.COMPUTED);
    }

    private static BodyRow between(double loss, double u, double s1, double s2, double a, double best, double rms) {
        return new BodyRow(loss, u, s1, s2, new BodyShadow(a, best, Math.hypot(s1, rms)), BodyRow.BETWEEN);
    }

    /** Loss at the nodes: the rows at the edges of their bands, 220 MHz and 700 MHz from runs of their own there. */
    private static double[] nodesDb(Carry carry) {
        double vhf = row(carry, Band.VHF).lossDb();
        double uhf = row(carry, Band.UHF).lossDb();
        double upper = row(carry, Band.UPPER_UHF).lossDb();
        double at220 = switch (carry) {
            case FACE -> 6;
            case CHEST -> 8;
            case SHOULDER_MIC -> 7.5;
            case HIP_SWIVEL -> 11;
            default -> 14.5;
        };
        double moreAt700 = switch (carry) {
            case FACE, CHEST -> 0.7;
            case HIP_SWIVEL -> 0.5;
            case HIP_TIGHT -> 1.1;
            default -> 0;
        };
        return new double[] {vhf, at220, uhf, uhf, upper + moreAt700, upper};
    }

    /**
     * Loss of the mean in decibels at a frequency.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   dB, positive weakens
     * @valid  from 100 MHz up; the row of the band inside VHF and UHF, beyond 860 MHz that of 860 MHz
     * @error  as the row of the nearest band
     * @source linear in the logarithm of frequency over 174, 220, 400, 512, 700 and 860 MHz, our suggestion; at 220 and 700 MHz computed, at the face
     *     and on the chest at 220 MHz between it and our bracketing as on VHF
     */
    static double lossDb(Carry carry, Frequency frequency) {
        double[] lossDb = nodesDb(carry);
        double mhz = Math.min(Math.max(frequency.mhz(), NODES_MHZ[0]), NODES_MHZ[NODES_MHZ.length - 1]);
        int above = 1;
        while (NODES_MHZ[above] < mhz) above++;
        double share = Math.log(mhz / NODES_MHZ[above - 1]) / Math.log(NODES_MHZ[above] / NODES_MHZ[above - 1]);
        return lossDb[above - 1] + share * (lossDb[above] - lossDb[above - 1]);
    }
}
