package handreach.cartography;

import java.util.List;

/**
 * Colour for odds of copy: one darkening sequence from pale (seldom) to deep blue (nearly always), so that a grey print still
 * ranks the places, and colour-blind eyes see the same order.
 *
 * <p>Colours are the perceptually uniform map <em>mako</em>, read from its light end: every fifteenth of the 256 entries of its
 * table in the plotting library seaborn 0.12 (licence BSD-3-Clause, notice kept in docs), linear between them. The breaks are
 * ours.
 */
public final class OddsRamp {
    /** Breaks between classes of odds; below the first nothing is painted. */
    public static final List<Double> BREAKS = List.of(0.1, 0.3, 0.5, 0.7, 0.9);

    private static final int[] MAKO = {
        0x0B0405, 0x1B0F1A, 0x291A31, 0x35254A, 0x3D3164, 0x413E7F, 0x3E4F94, 0x38619D, 0x3572A1, 0x3483A5, 0x3493A8,
        0x36A4AB, 0x3FB5AD, 0x4FC5AD, 0x70D4AD, 0x9CDEB7, 0xC0E9CC, 0xDEF5E5
    };
    /** Part of the map that is used: its last step would vanish on paper, its first would swallow the relief. */
    private static final double PALEST = 0.90;

    private static final double DEEPEST = 0.33;
    /** On dark ground the order is turned round, so that the best odds shine: deeper than this would sink into the relief. */
    private static final double DIMMEST_BY_NIGHT = 0.50;

    private static final double BRIGHTEST_BY_NIGHT = 0.98;
    /** Light of level ground under the usual many-sided light; anything brighter is white paper. */
    private static final double LEVEL_SHADE = 128;

    private OddsRamp() {}

    /** Class of odds, 0 (below the first break, unpainted) to 5. */
    public static int classOf(double odds) {
        int k = 0;
        while (k < BREAKS.size() && odds >= BREAKS.get(k)) k++;
        return k;
    }

    /** Words for a class, such as {@code 70 to 90 %}. */
    public static String label(int oddsClass) {
        if (oddsClass == 0) return "under " + percent(0) + " %";
        if (oddsClass == BREAKS.size()) return percent(oddsClass - 1) + " % and more";
        return percent(oddsClass - 1) + " to " + percent(oddsClass) + " %";
    }

    private static long percent(int k) {
        return Math.round(100 * BREAKS.get(k));
    }

    /** Plain sRGB of a class, 0xRRGGBB, on white; class 0 is white. */
    public static int rgb(int oddsClass) {
        if (oddsClass == 0) return 0xFFFFFF;
        return along(PALEST + (DEEPEST - PALEST) * (oddsClass - 1) / (BREAKS.size() - 1));
    }

    /** Plain sRGB of a class, 1 to 5, on dark ground: nearly always is the brightest there, as by day it is the deepest. */
    public static int nightRgb(int oddsClass) {
        return along(
                DIMMEST_BY_NIGHT + (BRIGHTEST_BY_NIGHT - DIMMEST_BY_NIGHT) * (oddsClass - 1) / (BREAKS.size() - 1));
    }

    /** sRGB of a pixel: the tint of the odds lying on the light of a hillshade (0 to 255), which stays visible through it. */
    public static int overShade(double odds, int shade) {
        int paper = Srgb.grey(lightened(shade));
        int oddsClass = classOf(odds);
        if (oddsClass == 0) return paper;
        return Srgb.darkened(rgb(oddsClass), lightened(shade) / 255.0);
    }

    /** A hillshade for paper: level ground nearly white, so that lines and words on it stay readable. */
    public static int lightened(int shade) {
        double light = Math.min(1, shade / (LEVEL_SHADE * 1.25));
        return (int) Math.round(255 * (0.55 + 0.45 * light));
    }

    /** The map itself, 0 nearly black to 1 palest. */
    static int along(double share) {
        double at = Math.max(0, Math.min(1, share)) * (MAKO.length - 1);
        int i = (int) Math.min(MAKO.length - 2, Math.floor(at));
        return Srgb.mix(MAKO[i], MAKO[i + 1], at - i);
    }
}
