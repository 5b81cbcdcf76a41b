package handreach.desktop;

import handreach.cartography.Contour;
import handreach.cartography.Contours;
import handreach.cartography.HeightLattice;
import handreach.cartography.Hillshade;
import handreach.cartography.MapFrame;
import handreach.cartography.Srgb;
import handreach.cartography.Summits;
import handreach.geodesy.Position;
import handreach.reach.Progress;
import handreach.report.figure.ContourLabels;
import handreach.terrain.Elevation;
import handreach.units.Lengths;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;

/** Hillshade and contours of a piece of ground as one picture. Painted away from the screen thread, then never changed. */
final class Relief {
    private static final int NODE_PX = 4;
    private static final int WANTED_CONTOURS = 22;
    private static final int LEVEL_LIGHT = 128;
    private static final int MOST_HEIGHTS = 24;
    /** Steps of strength. */
    private static final int FULL = 256;

    private final MapFrame frame;
    private final int[] argb;
    private final double contourIntervalM;

    private final List<Height> heights;
    private final List<Spot> spots;
    private final Optional<int[]> backdrop;
    private final double backdropLight;

    /** A summit worth a number, in the user's unit. */
    record Spot(Position at, String words) {}

    /**
     * A number on a line of equal height.
     *
     * @param words the height in the user's unit
     * @param turnDeg how the line runs there, counter-clockwise from east
     */
    record Height(Position at, double turnDeg, String words) {}

    private Relief(
            MapFrame frame,
            int[] argb,
            double contourIntervalM,
            List<Height> heights,
            List<Spot> spots,
            Optional<int[]> backdrop,
            double backdropLight) {
        this.frame = frame;
        this.argb = argb;
        this.contourIntervalM = contourIntervalM;
        this.heights = heights;
        this.spots = spots;
        this.backdrop = backdrop;
        this.backdropLight = backdropLight;
    }

    /** The same with a map picture on it, in its own pixels. */
    Relief over(Optional<int[]> picture) {
        return new Relief(frame, argb, contourIntervalM, heights, spots, picture, backdropLight);
    }

    /**
     * Paper and ink of the ground.
     *
     * @param voidRgb where no height is known
     * @param shadowRgb darkest slope
     * @param lightRgb brightest slope
     * @param contourRgb lines of equal height
     * @param backdropLight share of its light that a map picture keeps
     */
    record Paper(int voidRgb, int shadowRgb, int lightRgb, int contourRgb, double backdropLight) {
        static final Paper DAY = new Paper(0xE4E0D6, 0x8E8878, 0xFBFAF5, 0x7A6647, 1);
        static final Paper NIGHT = new Paper(0x22272A, 0x14191C, 0x545E61, 0xA9A08A, 0.42);

        /** Level ground under the usual many-sided light. */
        int levelRgb() {
            return tone(LEVEL_LIGHT);
        }

        /** Ground under a light of 0 to 255. Level ground has 128 under many suns; most slopes lie between 60 and 200. */
        int tone(int light) {
            return Srgb.mix(shadowRgb, lightRgb, Math.max(0, Math.min(1, (light - 25) / 150.0)));
        }
    }

    static Relief paint(Elevation elevation, MapFrame frame, Paper paper, Lengths lengths, Progress progress) {
        try (RasterPen pen = new RasterPen(frame)) {
            shade(elevation, frame, paper, pen.argb());
            progress.goOn();
            HeightLattice lattice = HeightLattice.over(elevation, frame, NODE_PX, 1);
            progress.goOn();
            double intervalM = intervalM(lattice, lengths);
            List<Contour> contours = intervalM > 0 ? Contours.of(lattice, intervalM) : List.of();
            draw(pen, contours, false, paper.contourRgb() | 0x58000000, 0.7f);
            draw(pen, contours, true, paper.contourRgb() | 0xA0000000, 1.1f);
            progress.goOn();
            List<Spot> spots = Summits.of(elevation, lattice).stream()
                    .map(summit -> new Spot(summit.at(), inUnit(summit.heightM(), lengths)))
                    .toList();
            return new Relief(
                    frame,
                    pen.argb(),
                    intervalM,
                    heights(contours, frame, lengths),
                    spots,
                    Optional.empty(),
                    paper.backdropLight());
        }
    }

    private static void shade(Elevation elevation, MapFrame frame, Paper paper, int[] argb) {
        int[] tone = new int[256];
        for (int s = 0; s < tone.length; s++) tone[s] = 0xFF000000 | paper.tone(s);
        Hillshade hillshade = Hillshade.fromManySides(elevation, frame, 1.2);
        for (int y = 0; y < frame.heightPx(); y++)
            for (int x = 0; x < frame.widthPx(); x++)
                argb[y * frame.widthPx() + x] =
                        hillshade.isVoid(x, y) ? 0xFF000000 | paper.voidRgb() : tone[hillshade.shade(x, y)];
    }

    /** A round number of the user's own unit; 0 where nothing is known. */
    private static double intervalM(HeightLattice lattice, Lengths lengths) {
        OptionalDouble low = lattice.lowestM();
        OptionalDouble high = lattice.highestM();
        if (low.isEmpty() || high.isEmpty()) return 0;
        double unitM = lengths.shortUnitM();
        return unitM * Contours.intervalM(low.getAsDouble() / unitM, high.getAsDouble() / unitM, WANTED_CONTOURS);
    }

    private static List<Height> heights(List<Contour> contours, MapFrame frame, Lengths lengths) {
        ContourLabels labels = new ContourLabels(new Rectangle2D.Double(0, 0, frame.widthPx(), frame.heightPx()));
        List<Height> heights = new ArrayList<>();
        for (Contour contour : contours) {
            if (!contour.isIndex() || heights.size() >= MOST_HEIGHTS) continue;
            labels.place(contour, frame, 0, 0)
                    .ifPresent(spot -> heights.add(new Height(
                            new Position(frame.latitudeDeg(spot.y()), frame.longitudeDeg(spot.x())),
                            spot.turnDeg(),
                            inUnit(contour.levelM(), lengths))));
        }
        return List.copyOf(heights);
    }

    private static String inUnit(double heightM, Lengths lengths) {
        return Long.toString(Math.round(heightM / lengths.shortUnitM()));
    }

    private static void draw(RasterPen pen, List<Contour> contours, boolean isIndex, int argb, float widthPx) {
        List<Coordinate[]> lines = contours.stream()
                .filter(contour -> contour.isIndex() == isIndex)
                .map(contour -> contour.line().getCoordinates())
                .toList();
        pen.lines(lines, argb, widthPx);
    }

    MapFrame frame() {
        return frame;
    }

    /** Height between two contours, m; 0 where nothing is known. */
    double contourIntervalM() {
        return contourIntervalM;
    }

    /** Numbers on the heavier of the lines. */
    List<Height> heights() {
        return heights;
    }

    /** Tops that stand out, each with its height. */
    List<Spot> spots() {
        return spots;
    }

    /** Lays its pixels into those of another picture of the same size; a map picture with so much strength against the relief. */
    void copyTo(int[] pixels, double backdropStrength) {
        System.arraycopy(argb, 0, pixels, 0, argb.length);
        int share = (int) Math.round(FULL * backdropStrength);
        int lit = (int) Math.round(share * backdropLight);
        backdrop.ifPresent(picture -> mix(pixels, picture, share, lit));
    }

    private static void mix(int[] pixels, int[] picture, int share, int lit) {
        for (int i = 0; i < pixels.length; i++) {
            if (picture[i] == 0) continue;
            int mixed = 0xFF000000;
            for (int shift = 0; shift <= 16; shift += 8) {
                int ground = pixels[i] >> shift & 0xFF;
                int drawn = picture[i] >> shift & 0xFF;
                mixed |= (ground * (FULL - share) + drawn * lit) / FULL << shift;
            }
            pixels[i] = mixed;
        }
    }
}
