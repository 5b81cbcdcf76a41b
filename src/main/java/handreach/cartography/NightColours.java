package handreach.cartography;

/**
 * Inks made for white paper as they look on dark: what was dark is light, the hue stays, so that a colour keeps its meaning by
 * night. Lightness is turned round between a paper and an ink of the night.
 */
public final class NightColours {
    /** Lightness of the ink of figures on white paper, 0x1F262B. */
    private static final double INK_LIGHTNESS = 0.264;
    /** Steps in which a colour that no screen can show is made paler. */
    private static final double PALER = 0.95;

    private final double[] paper;
    private final double[] ink;

    public NightColours(int paperRgb, int inkRgb) {
        this.paper = oklab(paperRgb);
        this.ink = oklab(inkRgb);
    }

    /**
     * The colour on dark ground.
     *
     * @shape  one colour in, one out; pure
     * @unit   0xRRGGBB both
     * @valid  every colour; white becomes the paper, darker than the ink of figures becomes the ink
     * @error  lightness within 0.01 of the straight line between paper and ink: rounding to 8 bits
     * @source lightness, hue and chroma of Oklab as given in W3C, CSS Color Module Level 4, section 9 (matrices from memory, checked
     *     to bring every grey back); turning the lightness round is our suggestion
     */
    public int of(int rgb) {
        double[] lab = oklab(rgb);
        double share = Math.min(1, (1 - lab[0]) / (1 - INK_LIGHTNESS));
        double lightness = paper[0] + share * (ink[0] - paper[0]);
        double a = (1 - share) * paper[1] + share * ink[1];
        double b = (1 - share) * paper[2] + share * ink[2];
        double chroma = 1;
        int night = rgb(lightness, a + lab[1], b + lab[2]);
        while (night < 0) {
            chroma *= PALER;
            night = rgb(lightness, a + chroma * lab[1], b + chroma * lab[2]);
        }
        return night;
    }

    /** Lightness, green to red, blue to yellow. */
    static double[] oklab(int rgb) {
        double red = Srgb.linear(rgb >> 16 & 0xFF);
        double green = Srgb.linear(rgb >> 8 & 0xFF);
        double blue = Srgb.linear(rgb & 0xFF);
        double l = Math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue);
        double m = Math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue);
        double s = Math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue);
        return new double[] {
            0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
            1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
            0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s
        };
    }

    /** The colour, or −1 where no screen can show it. */
    private static int rgb(double lightness, double a, double b) {
        double l = cube(lightness + 0.3963377774 * a + 0.2158037573 * b);
        double m = cube(lightness - 0.1055613458 * a - 0.0638541728 * b);
        double s = cube(lightness - 0.0894841775 * a - 1.2914855480 * b);
        int red = Srgb.channel(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s);
        int green = Srgb.channel(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s);
        int blue = Srgb.channel(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s);
        boolean isShown = Math.min(red, Math.min(green, blue)) >= 0 && Math.max(red, Math.max(green, blue)) <= 0xFF;
        return isShown ? red << 16 | green << 8 | blue : -1;
    }

    private static double cube(double value) {
        return value * value * value;
    }
}
