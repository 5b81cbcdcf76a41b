package handreach.report.draw;

import handreach.cartography.Hatch;
import handreach.cartography.Hillshade;
import handreach.cartography.LoadoutMark;
import handreach.cartography.MapFrame;
import handreach.cartography.OddsRamp;
import handreach.cartography.Srgb;
import handreach.reach.CellGrid;
import handreach.report.figure.UnknownGround;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** A raster in colour, and its PNG. Immutable once made. */
public final class Picture {
    private static final int UNKNOWN_PAPER = 0xFFFFFF;
    private static final int NONE_REACHES = -1;
    private static final double AREA_TINT = 0.3;
    private static final double HATCH_TINT = 0.85;
    private static final int OVERLAY_OPACITY = 0xB0;

    private final BufferedImage image;
    private final boolean isGrey;
    private final boolean showsUnknown;

    private Picture(BufferedImage image) {
        this(image, false);
    }

    private Picture(BufferedImage image, boolean showsUnknown) {
        this.image = image;
        this.showsUnknown = showsUnknown;
        this.isGrey = image.getType() == BufferedImage.TYPE_INT_RGB && isGrey(image);
    }

    private static boolean isGrey(BufferedImage image) {
        int[] row = new int[image.getWidth()];
        for (int y = 0; y < image.getHeight(); y++) {
            image.getRGB(0, y, row.length, 1, row, 0, row.length);
            for (int rgb : row)
                if ((rgb & 0xFF) != (rgb >> 8 & 0xFF) || (rgb & 0xFF) != (rgb >> 16 & 0xFF)) return false;
        }
        return true;
    }

    /** Whether no pixel has a colour and none is see-through. */
    boolean isGrey() {
        return isGrey;
    }

    /** Whether some of it is ground without heights, which a key must explain. */
    public boolean showsUnknown() {
        return showsUnknown;
    }

    /** What is known of a place, to be tinted over the relief. */
    @FunctionalInterface
    public interface Tint {
        /** Colour 0xRRGGBB of a pixel whose relief has this light, 0 to 255; asked from several threads at once. */
        int rgb(int xPx, int yPx, int shade);
    }

    /** Odds at a place: 0 to 1, negative where nothing is known or wanted. */
    @FunctionalInterface
    public interface OddsAt {
        double odds(double latitudeDeg, double longitudeDeg);
    }

    /** Number of the least loadout that does the job at a place, from 0; −1 where none does, less where nothing is known. */
    @FunctionalInterface
    public interface LeastAt {
        int number(double latitudeDeg, double longitudeDeg);
    }

    /** Relief alone, light enough to write on; ground without heights is hatched. */
    public static Picture relief(Hillshade hillshade) {
        return tinted(hillshade, (x, y, shade) -> Srgb.grey(OddsRamp.lightened(shade)));
    }

    /** Which pixels are beyond what is known, though they may have a height. */
    @FunctionalInterface
    public interface Beyond {
        boolean known(int xPx, int yPx);
    }

    /** Relief alone; hatched where there are no heights, and over the relief where it is beyond what is known. */
    public static Picture relief(Hillshade hillshade, Beyond beyond, double scale) {
        int width = hillshade.frame().widthPx();
        int height = hillshade.frame().heightPx();
        int[] rgb = new int[width * height];
        boolean showsUnknown = false;
        for (int y = 0; y < height; y++)
            for (int x = 0; x < width; x++) {
                boolean isVoid = hillshade.isVoid(x, y);
                boolean isBeyond = isVoid || beyond.known(x, y);
                showsUnknown |= isBeyond;
                if (isBeyond && UnknownGround.inks(x, y, scale)) rgb[y * width + x] = UnknownGround.LINE_RGB;
                else rgb[y * width + x] = isVoid ? UNKNOWN_PAPER : Srgb.grey(OddsRamp.lightened(hillshade.shade(x, y)));
            }
        return new Picture(image(width, height, rgb), showsUnknown);
    }

    /** Relief tinted by odds of copy. */
    public static Picture odds(Hillshade hillshade, OddsAt odds) {
        double[] latitudeDeg = latitudesDeg(hillshade.frame());
        double[] longitudeDeg = longitudesDeg(hillshade.frame());
        return tinted(hillshade, (x, y, shade) -> {
            double share = odds.odds(latitudeDeg[y], longitudeDeg[x]);
            return share < 0 ? faded(shade) : OddsRamp.overShade(share, shade);
        });
    }

    /** Relief tinted and hatched by the least loadout that does the job; bare relief where none does. */
    public static Picture leastLoadout(Hillshade hillshade, LeastAt least, List<LoadoutMark> marks) {
        double[] latitudeDeg = latitudesDeg(hillshade.frame());
        double[] longitudeDeg = longitudesDeg(hillshade.frame());
        return tinted(hillshade, (x, y, shade) -> {
            int paper = OddsRamp.lightened(shade);
            int number = least.number(latitudeDeg[y], longitudeDeg[x]);
            if (number < NONE_REACHES) return faded(shade);
            if (number < 0) return Srgb.grey(paper);
            LoadoutMark mark = marks.get(number);
            double tint = mark.hatch().inks(x, y) ? HATCH_TINT : AREA_TINT;
            return Srgb.darkened(Srgb.mix(0xFFFFFF, mark.rgb(), tint), paper / 255.0);
        });
    }

    /** Of the middles of the rows; worked out once, since each costs a power. */
    private static double[] latitudesDeg(MapFrame frame) {
        double[] all = new double[frame.heightPx()];
        for (int y = 0; y < all.length; y++) all[y] = frame.latitudeDeg(y + 0.5);
        return all;
    }

    private static double[] longitudesDeg(MapFrame frame) {
        double[] all = new double[frame.widthPx()];
        for (int x = 0; x < all.length; x++) all[x] = frame.longitudeDeg(x + 0.5);
        return all;
    }

    /** The sample of a loadout's area as {@link #leastLoadout} paints it, for a legend. */
    public static LegendEntry leastLoadoutEntry(LoadoutMark mark, String label) {
        ShapeStyle ink = mark.hatch() == Hatch.NONE
                ? ShapeStyle.fill(Srgb.mix(0xFFFFFF, mark.rgb(), AREA_TINT))
                : ShapeStyle.hatch(mark.rgb(), mark.hatch());
        return new LegendEntry(ink.outlined(mark.rgb(), 1), true, mark.letter(), label);
    }

    /** Odds cell by cell, see-through where they are below the first class or the function gives a negative number. */
    public static Picture oddsOverlay(CellGrid grid, IntToDoubleFunction oddsOfCell) {
        int[] argb = new int[grid.count()];
        for (int cell = 0; cell < argb.length; cell++) {
            double odds = oddsOfCell.applyAsDouble(cell);
            int oddsClass = odds < 0 ? 0 : OddsRamp.classOf(odds);
            argb[cell] = oddsClass == 0 ? 0 : OVERLAY_OPACITY << 24 | OddsRamp.rgb(oddsClass);
        }
        return transparent(grid.columns(), grid.rows(), argb);
    }

    /** Relief with a colour of the caller's choice in every pixel that has a height. */
    public static Picture tinted(Hillshade hillshade, Tint tint) {
        int width = hillshade.frame().widthPx();
        int height = hillshade.frame().heightPx();
        int[] rgb = new int[width * height];
        IntStream.range(0, height).parallel().forEach(y -> {
            for (int x = 0; x < width; x++)
                rgb[y * width + x] = hillshade.isVoid(x, y) ? unknown(x, y) : tint.rgb(x, y, hillshade.shade(x, y));
        });
        boolean showsUnknown = IntStream.range(0, height)
                .parallel()
                .anyMatch(y -> IntStream.range(0, width).anyMatch(x -> hillshade.isVoid(x, y)));
        return new Picture(image(width, height, rgb), showsUnknown);
    }

    /** A picture of the given pixels, 0xRRGGBB, row by row from the north. */
    public static Picture of(int width, int height, int[] rgb) {
        return new Picture(image(width, height, rgb));
    }

    private static BufferedImage image(int width, int height, int[] rgb) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        image.setRGB(0, 0, width, height, rgb, 0, width);
        return image;
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

    /** Relief outside what was looked at, paler, so that the edge of the answer shows where odds are low as well. */
    private static int faded(int shade) {
        return Srgb.mix(Srgb.grey(OddsRamp.lightened(shade)), 0xFFFFFF, 0.55);
    }

    private static int unknown(int x, int y) {
        return UnknownGround.inks(x, y, 1) ? UnknownGround.LINE_RGB : UNKNOWN_PAPER;
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

    /** All pixels, 0xAARRGGBB, row by row from the north. */
    public int[] argb() {
        return image.getRGB(0, 0, widthPx(), heightPx(), null, 0, widthPx());
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
            writer.write(isGrey ? oneChannel() : image);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }

    /** The grey levels as they are: setting them through colours would apply another brightness curve. */
    private BufferedImage oneChannel() {
        BufferedImage grey = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
        byte[] row = new byte[image.getWidth()];
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < row.length; x++) row[x] = (byte) image.getRGB(x, y);
            grey.getRaster().setDataElements(0, y, row.length, 1, row);
        }
        return grey;
    }
}
