package handreach.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Odds and shares in words. Odds are never 0 or 100 %: those would be promises. A share, of ground or of talks, is 0 or 100 % only
 * where it is exactly so.
 */
public final class Shares {
    private static final String NEARLY_ALL = "over 99 %";
    private static final String NEARLY_NONE = "under 1 %";
    private static final String JUST_UNDER = "just under ";
    /** A share added up from weights may miss a whole by their rounding. */
    private static final double ROUNDING = 1e-9;

    private Shares() {}

    /** Odds of copy, or a chance: {@code 54 %}, {@code over 99 %}, {@code under 1 %}. */
    public static String odds(double odds) {
        if (odds >= 0.995) return NEARLY_ALL;
        return odds < 0.005 ? NEARLY_NONE : whole(odds) + " %";
    }

    /**
     * Odds beside the odds that somebody asked for: what rounds to the wanted figure and does not reach it must not read as if it
     * did, {@code just under 80 %}.
     */
    public static String odds(double odds, double wanted) {
        boolean isShort = odds < wanted - ROUNDING && odds(odds).equals(wanted(wanted));
        return (isShort ? JUST_UNDER : "") + odds(odds);
    }

    /** A share of something counted: as {@link #odds}, but {@code 0 %} and {@code 100 %} where it is exactly so. */
    public static String share(double share) {
        if (share <= ROUNDING) return "0 %";
        return share >= 1 - ROUNDING ? "100 %" : odds(share);
    }

    /** How many of something counted, for {@code … of the talks}: {@code none}, {@code 17 %}, {@code all}. */
    public static String part(double share) {
        if (share <= ROUNDING) return "none";
        return share >= 1 - ROUNDING ? "all" : odds(share);
    }

    /** Odds with their interval: {@code 45 % (40 to 51 %)}. */
    public static String odds(double odds, double low, double high) {
        return odds(odds) + " (" + range(odds(low), odds(high)) + ")";
    }

    /** From the lowest odds to the highest, beside the odds that somebody asked for: {@code 40 to just under 80 %}. */
    public static String oddsRange(double low, double high, double wanted) {
        return range(odds(low, wanted), odds(high, wanted));
    }

    /** From the lowest share to the highest: {@code 40 to 51 %}. */
    public static String shareRange(double low, double high) {
        return range(share(low), share(high));
    }

    /** Odds that somebody asked for, as asked, to a hundredth of a per cent: {@code 80 %}, {@code 99.5 %}. */
    public static String wanted(double odds) {
        return BigDecimal.valueOf(100 * odds)
                        .setScale(2, RoundingMode.HALF_UP)
                        .stripTrailingZeros()
                        .toPlainString()
                + " %";
    }

    private static String range(String low, String high) {
        if (low.equals(high)) return low;
        boolean isPlain = Character.isDigit(low.charAt(0)) && !high.equals(NEARLY_ALL);
        return (isPlain ? low.substring(0, low.length() - 2) : low) + " to " + high;
    }

    private static long whole(double share) {
        return Math.round(100 * share);
    }
}
