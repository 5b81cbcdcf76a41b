package handreach.cartography;

import handreach.units.Lengths;
import java.util.Locale;

/**
 * A scale bar of a round length.
 *
 * @param lengthM length on the ground, m
 * @param parts number of equal parts to be drawn
 * @param label length with its unit
 */
public record ScaleBar(double lengthM, int parts, String label) {
    private static final double[] ROUND = {5, 2, 1};

    /**
     * The longest round bar that fits.
     *
     * @shape  scalars in, one bar out; pure
     * @unit   longest allowed length m
     * @valid  above 0
     * @error  none; the length is 1, 2 or 5 times a power of ten of the unit
     * @source common practice, no source
     */
    public static ScaleBar fitting(double longestM, Lengths style) {
        if (!(longestM > 0) || Double.isInfinite(longestM)) throw new IllegalArgumentException("length " + longestM);
        boolean isLong = longestM >= style.longUnitM();
        double unitM = isLong ? style.longUnitM() : style.shortUnitM();
        double power = Math.pow(10, Math.floor(Math.log10(longestM / unitM)));
        for (double round : ROUND) {
            double units = round * power;
            if (units * unitM <= longestM * (1 + 1e-9))
                return new ScaleBar(
                        units * unitM,
                        round == 2 ? 4 : 5,
                        text(units) + " " + (isLong ? style.longUnit() : style.shortUnit()));
        }
        throw new IllegalStateException("no round length within " + longestM);
    }

    private static String text(double units) {
        return units >= 1 ? String.format(Locale.ROOT, "%.0f", units) : String.format(Locale.ROOT, "%.3g", units);
    }
}
