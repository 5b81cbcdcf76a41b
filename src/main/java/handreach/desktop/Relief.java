package handreach.desktop;

import handreach.cartography.Contour;
import handreach.cartography.Contours;
import handreach.cartography.HeightLattice;
import handreach.cartography.Hillshade;
import handreach.cartography.MapFrame;
import handreach.cartography.Srgb;
import handreach.reach.Progress;
import handreach.terrain.Elevation;
import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;

/** Hillshade and contours of a piece of ground as one picture. Painted away from the screen thread, then never changed. */
final class Relief {
    private static final int NODE_PX = 4;
    private static final int WANTED_CONTOURS = 22;

    private final MapFrame frame;
    private final int[] argb;
    private final double contourIntervalM;

    private Relief(MapFrame frame, int[] argb, double contourIntervalM) {
        this.frame = frame;
        this.argb = argb;
        this.contourIntervalM = contourIntervalM;
    }

    /**
     * Paper and ink of the ground.
     *
     * @param voidRgb where no height is known
     * @param shadowRgb darkest slope
     * @param lightRgb brightest slope
     * @param contourRgb lines of equal height
     */
    record Paper(int voidRgb, int shadowRgb, int lightRgb, int contourRgb) {
        static final Paper DAY = new Paper(0xE4E0D6, 0x8E8878, 0xFBFAF5, 0x7A6647);
        static final Paper NIGHT = new Paper(0x22272A, 0x1A1F22, 0x6C7678, 0xA9A08A);
    }

    static Relief paint(Elevation elevation, MapFrame frame, Paper paper, Progress progress) {
        try (RasterPen pen = new RasterPen(frame)) {
            shade(elevation, frame, paper, pen.argb());
            progress.goOn();
            HeightLattice lattice = HeightLattice.over(elevation, frame, NODE_PX, 1);
            progress.goOn();
            double interval = drawContours(pen, lattice, paper);
            progress.goOn();
            return new Relief(frame, pen.argb(), interval);
        }
    }

    private static void shade(Elevation elevation, MapFrame frame, Paper paper, int[] argb) {
        int[] tone = new int[256];
        // Level ground has light 128 under many suns; most slopes lie between 60 and 200.
        for (int s = 0; s < tone.length; s++)
            tone[s] = 0xFF000000
                    | Srgb.mix(paper.shadowRgb(), paper.lightRgb(), Math.max(0, Math.min(1, (s - 25) / 150.0)));
        Hillshade hillshade = Hillshade.fromManySides(elevation, frame, 1.2);
        for (int y = 0; y < frame.heightPx(); y++)
            for (int x = 0; x < frame.widthPx(); x++)
                argb[y * frame.widthPx() + x] =
                        hillshade.isVoid(x, y) ? 0xFF000000 | paper.voidRgb() : tone[hillshade.shade(x, y)];
    }

    private static double drawContours(RasterPen pen, HeightLattice lattice, Paper paper) {
        OptionalDouble low = lattice.lowestM();
        OptionalDouble high = lattice.highestM();
        if (low.isEmpty() || high.isEmpty()) return 0;
        double interval = Contours.intervalM(low.getAsDouble(), high.getAsDouble(), WANTED_CONTOURS);
        List<Contour> contours = Contours.of(lattice, interval);
        draw(pen, contours, false, paper.contourRgb() | 0x58000000, 0.7f);
        draw(pen, contours, true, paper.contourRgb() | 0xA0000000, 1.1f);
        return interval;
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

    /** Lays its pixels into those of another picture of the same size. */
    void copyTo(int[] pixels) {
        System.arraycopy(argb, 0, pixels, 0, argb.length);
    }
}
