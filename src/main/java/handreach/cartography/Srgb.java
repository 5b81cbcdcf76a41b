package handreach.cartography;

/** Colours as 0xRRGGBB in sRGB (IEC 61966-2-1). */
public final class Srgb {
    private Srgb() {}

    /** Between two colours, channel by channel: share 0 the first, 1 the second. */
    public static int mix(int first, int second, double share) {
        return channel(first, second, share, 16) << 16
                | channel(first, second, share, 8) << 8
                | channel(first, second, share, 0);
    }

    private static int channel(int first, int second, double share, int shift) {
        int a = first >> shift & 0xFF;
        int b = second >> shift & 0xFF;
        return (int) Math.round(a + (b - a) * share);
    }

    public static int grey(int level) {
        return level << 16 | level << 8 | level;
    }

    /** Every channel times a factor of 0 to 1. */
    public static int darkened(int rgb, double factor) {
        return mix(0, rgb, factor);
    }

    /** Light of a channel of 0 to 255, as a share of the brightest. */
    static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.03928 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    /** The channel, 0 to 255, that gives this share of the brightest light; outside 0 to 255 where no screen can show it. */
    static int channel(double linear) {
        double c = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
        return (int) Math.round(255 * c);
    }

    /** {@code #rrggbb}. */
    public static String hex(int rgb) {
        return String.format(java.util.Locale.ROOT, "#%06x", rgb & 0xFFFFFF);
    }
}
