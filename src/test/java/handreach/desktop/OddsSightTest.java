package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.function.IntUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * The least odds that are painted against the bare ground beside them, on every slope, at the usual strength: as a grey print shows them,
 * and as eyes without the long or the middle cones see them. Differences in L* and in ΔE of CIE 1976 (CIE 15:2004, formulas from memory);
 * 2.3 is what an eye just tells apart side by side (common practice, no source).
 */
class OddsSightTest {
    private static final double USUAL_STRENGTH = 0.85;
    private static final double LEAST_L = 5;
    private static final double LEAST_E = 9;
    /** Machado, Oliveira, Fernandes 2009, severity 1; matrices from memory. */
    private static final double[][] PROTANOPIA = {
        {0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}
    };

    private static final double[][] DEUTERANOPIA = {
        {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
    };

    @Test
    void theLeastOddsAreToldFromTheBareGroundInGreyAndByColourBlindEyes() {
        for (Palette palette : Palette.values()) {
            double grey = least(palette, rgb -> rgb, true);
            double protan = least(palette, rgb -> seen(rgb, PROTANOPIA), false);
            double deuteran = least(palette, rgb -> seen(rgb, DEUTERANOPIA), false);
            String told = String.format(
                    Locale.ROOT,
                    "%s: 10 to 30 %% against bare ground, least of all slopes: grey %.1f L*, without long cones %.1f,"
                            + " without middle cones %.1f",
                    palette,
                    grey,
                    protan,
                    deuteran);
            System.out.println(told);
            assertTrue(grey >= LEAST_L, told);
            assertTrue(Math.min(protan, deuteran) >= LEAST_E, told);
        }
    }

    /** The smallest difference over the lights of nearly all slopes. */
    private static double least(Palette palette, IntUnaryOperator eyes, boolean isGrey) {
        MapRaster.Manner manner = new MapRaster.Manner(USUAL_STRENGTH, palette.layerDarkens(), palette.edgeArgb(), 0);
        double least = Double.MAX_VALUE;
        for (int light = 60; light <= 200; light += 5) {
            int bare = palette.paper().tone(light);
            double[] one = lab(eyes.applyAsInt(bare));
            double[] other = lab(eyes.applyAsInt(manner.laid(bare, 0xFF000000 | palette.odds(1)) & 0xFFFFFF));
            double far = isGrey
                    ? Math.abs(one[0] - other[0])
                    : Math.sqrt(Math.pow(one[0] - other[0], 2)
                            + Math.pow(one[1] - other[1], 2)
                            + Math.pow(one[2] - other[2], 2));
            least = Math.min(least, far);
        }
        return least;
    }

    private static int seen(int rgb, double[][] eyes) {
        double[] linear = {linear(rgb >> 16 & 0xFF), linear(rgb >> 8 & 0xFF), linear(rgb & 0xFF)};
        int seen = 0;
        for (double[] row : eyes) {
            double light = Math.max(0, Math.min(1, row[0] * linear[0] + row[1] * linear[1] + row[2] * linear[2]));
            double c = light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
            seen = seen << 8 | (int) Math.round(255 * c);
        }
        return seen;
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    /** CIE 1976 L*a*b* of an sRGB colour under D65. */
    private static double[] lab(int rgb) {
        double r = linear(rgb >> 16 & 0xFF);
        double g = linear(rgb >> 8 & 0xFF);
        double b = linear(rgb & 0xFF);
        double x = root((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
        double y = root(0.2126 * r + 0.7152 * g + 0.0722 * b);
        double z = root((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double root(double t) {
        return t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16.0 / 116;
    }
}
