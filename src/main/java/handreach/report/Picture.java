package handreach.report;

import handreach.cartography.Hillshade;
import handreach.cartography.MapFrame;
import handreach.cartography.OddsRamp;
import handreach.cartography.Srgb;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** A raster in colour, and its PNG. Immutable once made. */
public final class Picture {
    private static final int UNKNOWN_PAPER = 0xFFFFFF;
    private static final int UNKNOWN_LINE = 0xA8B0B5;

    private final BufferedImage image;

    private Picture(BufferedImage image) {
        this.image = image;
    }

    /** What is known of a place, to be tinted over the relief. */
    @FunctionalInterface
    public interface Tint {
        /** Colour 0xRRGGBB of a pixel whose relief has this light, 0 to 255. */
        int rgb(int xPx, int yPx, int shade);
    }

    /** Odds at a place: 0 to 1, negative where nothing is known or wanted. */
    @FunctionalInterface
    public interface OddsAt {
        double odds(double latitudeDeg, double longitudeDeg);
    }

    /** Relief alone, light enough to write on; ground without heights is hatched. */
    public static Picture relief(Hillshade hillshade) {
        return tinted(hillshade, (x, y, shade) -> Srgb.grey(OddsRamp.lightened(shade)));
    }

    /** Relief tinted by odds of copy. */
    public static Picture odds(Hillshade hillshade, OddsAt odds) {
        MapFrame frame = hillshade.frame();
        return tinted(hillshade, (x, y, shade) -> {
            double share = odds.odds(frame.latitudeDeg(y + 0.5), frame.longitudeDeg(x + 0.5));
            return share < 0 ? Srgb.grey(OddsRamp.lightened(shade)) : OddsRamp.overShade(share, shade);
        });
    }

    /** Relief with a colour of the caller's choice in every pixel that has a height. */
    public static Picture tinted(Hillshade hillshade, Tint tint) {
        int width = hillshade.frame().widthPx();
        int height = hillshade.frame().heightPx();
        int[] rgb = new int[width * height];
        for (int y = 0; y < height; y++)
            for (int x = 0; x < width; x++)
                rgb[y * width + x] = hillshade.isVoid(x, y) ? unknown(x, y) : tint.rgb(x, y, hillshade.shade(x, y));
        return of(width, height, rgb);
    }

    /** A picture of the given pixels, 0xRRGGBB, row by row from the north. */
    public static Picture of(int width, int height, int[] rgb) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        image.setRGB(0, 0, width, height, rgb, 0, width);
        return new Picture(image);
    }

    /** A picture with see-through pixels, 0xAARRGGBB, row by row from the north. */
    public static Picture transparent(int width, int height, int[] argb) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        image.setRGB(0, 0, width, height, argb, 0, width);
        return new Picture(image);
    }

    /** A figure drawn at a number of pixels to each px of its own. */
    public static Picture of(Figure figure, double scale) {
        return new Picture(ImagePen.image(figure, scale));
    }

    private static int unknown(int x, int y) {
        return Math.floorMod(x + y, 8) < 1 ? UNKNOWN_LINE : UNKNOWN_PAPER;
    }

    public int widthPx() {
        return image.getWidth();
    }

    public int heightPx() {
        return image.getHeight();
    }

    public int rgb(int xPx, int yPx) {
        return image.getRGB(xPx, yPx) & 0xFFFFFF;
    }

    BufferedImage image() {
        return image;
    }

    /** The picture as a PNG file. */
    public byte[] png() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageWriter writer = ImageFormat.writer("png");
        try (ImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
            writer.setOutput(stream);
            writer.write(image);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }
}
