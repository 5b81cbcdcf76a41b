package handreach.propagation;

import handreach.input.Keyword;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.List;
import java.util.Locale;

/**
 * State of the trees, as a factor on the loss of a wood in leaf, in decibels. Each state is a range at the top of VHF and one at 900 MHz; the
 * middle counts, half the width is doubt. Below and above, the range at the end is held; between, it goes with the logarithm of the frequency (ours).
 */
public enum Foliage {
    /** What the Recommendation's curve means and what was measured: nothing is changed. */
    IN_LEAF(1, 1, 1, 1, "Rec. ITU-R P.833-9, average wood in leaf"),
    /** Trunks and branches rule at VHF, where no value is published; about 20 % less at 900 MHz. */
    OUT_OF_LEAF(
            1,
            1,
            0.7,
            0.9,
            "about 20 % less at 900 MHz, Rec. ITU-R P.833 (from memory); no published value at VHF, none counted; range ours"),
    /** Rain on leaves in full foliage. */
    WET(1, 1.1, 1, 1.4, "common practice, no source: up to 10 % more at VHF, up to 40 % more at 900 MHz"),
    /** From dry snow, which hardly counts, to wet snow and ice on the branches. */
    SNOW(
            1,
            1.1,
            1,
            1.3,
            "common practice, no source: dry snow hardly counts, wet snow and ice up to 10 % more at VHF, up to 30 % more at 900 MHz");

    /** How files name them. */
    public static final Keyword<Foliage> KEYWORD = Keyword.of(List.of(values()), Foliage::word);

    private static final double VHF_TO_MHZ = 300;
    private static final double UHF_FROM_MHZ = 900;
    private static final int ENDS = 2;

    private final double vhfLow;
    private final double vhfHigh;
    private final double uhfLow;
    private final double uhfHigh;
    private final String source;

    Foliage(double vhfLow, double vhfHigh, double uhfLow, double uhfHigh, String source) {
        this.vhfLow = vhfLow;
        this.vhfHigh = vhfHigh;
        this.uhfLow = uhfLow;
        this.uhfHigh = uhfHigh;
        this.source = source;
    }

    /** Where the range is from. */
    public String source() {
        return source;
    }

    /** Name as written in plans, such as {@code out-of-leaf}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * Factor on the decibels that a wood in leaf takes from one end.
     *
     * @shape  scalar in, scalar out; pure, continuous, goes one way with frequency
     * @unit   plain number; exactly 1 in leaf
     * @valid  every frequency
     * @error  {@link #halfWidth}; single woods differ by more
     * @source as {@link #source} says
     */
    public double factor(Frequency frequency) {
        return (low(frequency) + high(frequency)) / 2;
    }

    /**
     * Half the width of the range about that factor.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   plain number; exactly 0 in leaf
     * @valid  every frequency
     * @error  a range that is known roughly itself
     * @source as {@link #source} says
     */
    double halfWidth(Frequency frequency) {
        return (high(frequency) - low(frequency)) / 2;
    }

    /**
     * What this state adds to an end deep in a wood, from the least to the most of the range.
     *
     * @shape  scalars in, two numbers out; pure
     * @unit   dB, negative where less is lost
     * @valid  as {@link Woodland#ceilingDb(Frequency, Polarization)}
     * @error  as {@link #factor}
     * @source as {@link #source} says
     */
    public double[] deepEndDb(Frequency frequency, Polarization polarization) {
        double ceiling = Woodland.ceilingDb(frequency, polarization);
        return new double[] {ceiling * (low(frequency) - 1), ceiling * (high(frequency) - 1)};
    }

    /**
     * Standard uncertainty of a link whose two ends stand deep in one and the same kind of wood: the range taken as a rectangle.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   dB, 0 in leaf
     * @valid  the most that any path may doubt; paths with one end or none in woods doubt less
     * @error  as {@link #halfWidth}
     * @source GUM (JCGM 100), 4.3.7: half width over root 3
     */
    public double doubtDb(Frequency frequency, Polarization polarization) {
        return ENDS * Woodland.ceilingDb(frequency, polarization) * halfWidth(frequency) / Math.sqrt(3);
    }

    private double low(Frequency frequency) {
        return vhfLow + share(frequency) * (uhfLow - vhfLow);
    }

    private double high(Frequency frequency) {
        return vhfHigh + share(frequency) * (uhfHigh - vhfHigh);
    }

    private static double share(Frequency frequency) {
        double share = Math.log(frequency.mhz() / VHF_TO_MHZ) / Math.log(UHF_FROM_MHZ / VHF_TO_MHZ);
        return Math.max(0, Math.min(1, share));
    }
}
