package handreach.propagation;

import handreach.input.Range;

/**
 * The two antennas of a path, above the ground at its first and last sample.
 *
 * @param txHeightM height of the antenna at the first sample above ground, m, above 0
 * @param rxHeightM height of the antenna at the last sample above ground, m, above 0
 */
public record Terminals(double txHeightM, double rxHeightM) {
    /** Heights that are answered for: from a rod on the ground to the mast or slope that Rec. ITU-R P.1812 ends at; our suggestion. */
    public static final Range HEIGHT = new Range("height_m", 0.1, 3000, "m");

    public Terminals {
        if (!(txHeightM > 0) || !(rxHeightM > 0) || txHeightM > 10_000 || rxHeightM > 10_000)
            throw new IllegalArgumentException("antenna heights " + txHeightM + " and " + rxHeightM + " m");
    }

    /** Written out, as its hash is: linking the generated pair costs a cold start some 20 ms. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Terminals that
                && Double.compare(txHeightM, that.txHeightM) == 0
                && Double.compare(rxHeightM, that.rxHeightM) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(txHeightM) + Double.hashCode(rxHeightM);
    }
}
