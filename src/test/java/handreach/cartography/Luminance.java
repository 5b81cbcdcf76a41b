package handreach.cartography;

/** Relative luminance of a colour, 0 black to 1 white: W3C, Web Content Accessibility Guidelines 2.1. */
public final class Luminance {
    private Luminance() {}

    public static double of(int rgb) {
        return 0.2126 * Srgb.linear(rgb >> 16 & 0xFF)
                + 0.7152 * Srgb.linear(rgb >> 8 & 0xFF)
                + 0.0722 * Srgb.linear(rgb & 0xFF);
    }
}
