package handreach.terrain;

import handreach.input.Memory;
import handreach.input.Unseen;
import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Path;

/** A map in a GeoTIFF file. */
final class TiffPicture implements GroundPicture {
    private static final int RGB = 2;
    private static final int PALETTE = 3;
    private static final int YCBCR = 6;
    /** Places are worked out this often, in pixels of the window. */
    private static final int NODE_PX = 16;
    /** Of the file, unpacked for one window. */
    private static final long MOST_PIXELS = 24L << 20;
    /** A pixel as the library hands it on and as it is kept. */
    private static final double MEMORY_PER_PIXEL = 12;

    private final String name;
    private final String attribution;
    private final TiffImage image;
    private final GridFit fit;
    private final TileBounds bounds;
    private Part held;

    /** What was last unpacked: every so many pixels of a part of the image. */
    private record Part(Rectangle of, int every, PicturePixels pixels) {}

    private TiffPicture(String name, String attribution, TiffImage image, GridFit fit) {
        this.name = name;
        this.attribution = attribution;
        this.image = image;
        this.fit = fit;
        this.bounds = TiffGrid.bounds(name, fit, image.height(), image.width());
    }

    static TiffPicture open(Path file) throws IOException {
        TiffHeader header = TiffHeader.read(file);
        TiffImage image = TiffImage.picture(file, header);
        GridFit fit = TiffGrid.of(file, header, new GeoKeys(header)).fit(0, 0);
        return new TiffPicture(
                header.name(), Unseen.oneLine(header.text(TiffHeader.COPYRIGHT)).strip(), image, fit);
    }

    /** Colours of its own, which heights never have. */
    static boolean hasColours(TiffHeader header) {
        int kind = (int) header.number(TiffHeader.PHOTOMETRIC, 1);
        return kind == RGB || kind == PALETTE || kind == YCBCR;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public String attribution() {
        return attribution;
    }

    @Override
    public TileBounds bounds() {
        return bounds;
    }

    @Override
    public int[] argb(PictureWindow window, Runnable goOn) {
        int[] argb = new int[window.columns() * window.rows()];
        Places places = new Places(window);
        Rectangle wanted = places.inside();
        if (wanted.isEmpty()) return argb;
        Part part = part(wanted, places.pixelsAPixel());
        goOn.run();
        double[] xy = new double[2];
        for (int row = 0; row < window.rows(); row++) {
            if (row % NODE_PX == 0) goOn.run();
            for (int column = 0; column < window.columns(); column++) {
                places.at(column + 0.5, row + 0.5, xy);
                boolean isInside = xy[0] >= 0 && xy[1] >= 0 && xy[0] < image.width() && xy[1] < image.height();
                if (isInside)
                    argb[row * window.columns() + column] = part.pixels()
                            .at((xy[0] - part.of().x) / part.every(), (xy[1] - part.of().y) / part.every());
            }
        }
        return argb;
    }

    private synchronized Part part(Rectangle wanted, double pixelsAPixel) {
        int every = (int) Math.max(1, Math.floor(pixelsAPixel / 2));
        long most = Memory.most(MOST_PIXELS, MEMORY_PER_PIXEL);
        while ((long) wanted.width / every * (wanted.height / every) > most) every++;
        boolean isHeld = held != null && held.every() == every && held.of().contains(wanted);
        if (!isHeld) {
            held = null;
            held = new Part(wanted, every, PicturePixels.of(image.unpacked(wanted, every)));
        }
        return held;
    }

    /** Where the pixels of a window lie in the image, whole numbers being the corners of pixels. */
    private final class Places {
        private final int columns;
        private final double[] x;
        private final double[] y;

        Places(PictureWindow window) {
            this.columns = window.columns() / NODE_PX + 2;
            int rows = window.rows() / NODE_PX + 2;
            this.x = new double[columns * rows];
            this.y = new double[columns * rows];
            double[] xy = new double[2];
            double middleDeg = bounds.centreLongitudeDeg();
            for (int i = 0; i < x.length; i++) {
                double latitude = window.latitudeDeg(i / columns * NODE_PX);
                double longitude = window.longitudeDeg(i % columns * NODE_PX);
                fit.frame()
                        .toPlane(
                                Math.max(-90, Math.min(90, latitude)),
                                middleDeg + Math.IEEEremainder(longitude - middleDeg, 360),
                                xy);
                x[i] = (xy[0] - fit.westX()) * fit.postsPerX() + 0.5;
                y[i] = (fit.northY() - xy[1]) * fit.postsPerY() + 0.5;
            }
        }

        void at(double column, double row, double[] xy) {
            int first = (int) (row / NODE_PX) * columns + (int) (column / NODE_PX);
            double right = column / NODE_PX - (int) (column / NODE_PX);
            double down = row / NODE_PX - (int) (row / NODE_PX);
            xy[0] = between(x, first, right, down);
            xy[1] = between(y, first, right, down);
        }

        private double between(double[] of, int first, double right, double down) {
            double upper = of[first] + right * (of[first + 1] - of[first]);
            double lower = of[first + columns] + right * (of[first + columns + 1] - of[first + columns]);
            return upper + down * (lower - upper);
        }

        /** Pixels of the image on one of the window, the lesser of across and down. */
        double pixelsAPixel() {
            int last = x.length - 1;
            double across = Math.abs(x[last] - x[last - columns + 1]) / ((columns - 1) * NODE_PX);
            double down = Math.abs(y[last] - y[columns - 1]) / ((x.length / columns - 1) * NODE_PX);
            return Math.min(across, down);
        }

        /** The part of the image that the window shows; empty where it shows none. */
        Rectangle inside() {
            double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
            for (int i = 0; i < x.length; i++) {
                box[0] = Math.min(box[0], x[i]);
                box[1] = Math.min(box[1], y[i]);
                box[2] = Math.max(box[2], x[i]);
                box[3] = Math.max(box[3], y[i]);
            }
            if (Double.isNaN(box[0] + box[1] + box[2] + box[3])) return new Rectangle();
            int left = (int) Math.max(0, Math.floor(box[0]) - 1);
            int top = (int) Math.max(0, Math.floor(box[1]) - 1);
            int right = (int) Math.min(image.width(), Math.ceil(box[2]) + 1);
            int bottom = (int) Math.min(image.height(), Math.ceil(box[3]) + 1);
            return new Rectangle(left, top, Math.max(0, right - left), Math.max(0, bottom - top));
        }
    }
}
