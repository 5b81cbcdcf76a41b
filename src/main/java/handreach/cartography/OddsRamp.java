package handreach.cartography;

import java.util.List;

/**
 * Colour for odds of copy: one dark-going sequence from pale (seldom) to deep blue (nearly always), so that a grey print still
 * ranks the places, and colour-blind eyes see the same order.
 *
 * <p>Colours are the perceptually uniform map cividis, read backwards: Nuñez, Anderton and Renslow, Optimizing colormaps with
 * consideration for color vision deficiency to enable accurate interpretation of scientific data, PLoS ONE 13 (2018) e0199239;
 * every fifteenth of its 256 entries as published under CC0, linear between them. The breaks are ours.
 */
public final class OddsRamp {
    /** Breaks between classes of odds; below the first nothing is painted. */
    public static final List<Double> BREAKS = List.of(0.1, 0.3, 0.5, 0.7, 0.9);

    private static final int[] CIVIDIS = {
        0x00224E, 0x002D68, 0x163770, 0x2E416D, 0x3F4C6C, 0x4E566C, 0x5C616E, 0x696B71, 0x767676, 0x838179, 0x928C78,
        0xA09875, 0xAFA471, 0xBFB06B, 0xCFBD62, 0xDFCA57, 0xF0D846, 0xFEE838
    };
    private static final double WEAKEST_TINT = 0.45;
    private static final double STRONGEST_TINT = 0.85;

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
        double share = (oddsClass - 1.0) / (BREAKS.size() - 1);
        double tint = tint(oddsClass);
        return Srgb.mix(0xFFFFFF, along(1 - 0.97 * share), tint);
    }

    /** sRGB of a pixel: the tint of the odds lying on the light of a hillshade (0 to 255), which stays visible through it. */
    public static int overShade(double odds, int shade) {
        int paper = Srgb.grey(lightened(shade));
        int oddsClass = classOf(odds);
        if (oddsClass == 0) return paper;
        double relief = 0.72 + 0.28 * lightened(shade) / 255.0;
        return Srgb.darkened(rgb(oddsClass), relief);
    }

    /** A hillshade for paper: lifted towards white so that lines and words on it stay readable. */
    public static int lightened(int shade) {
        return 110 + shade * 145 / 255;
    }

    private static double tint(int oddsClass) {
        return WEAKEST_TINT + (STRONGEST_TINT - WEAKEST_TINT) * (oddsClass - 1) / (BREAKS.size() - 1);
    }

    /** The map itself, 0 dark blue to 1 yellow. */
    static int along(double share) {
        double at = Math.max(0, Math.min(1, share)) * (CIVIDIS.length - 1);
        int i = (int) Math.min(CIVIDIS.length - 2, Math.floor(at));
        return Srgb.mix(CIVIDIS[i], CIVIDIS[i + 1], at - i);
    }
}
