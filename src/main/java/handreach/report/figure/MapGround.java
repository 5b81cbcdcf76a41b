package handreach.report.figure;

import handreach.cartography.Contour;
import handreach.cartography.Contours;
import handreach.cartography.GridLine;
import handreach.cartography.HeightLattice;
import handreach.cartography.Hillshade;
import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.report.draw.Picture;
import handreach.terrain.Elevation;
import handreach.units.Lengths;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * The sheet that a map is drawn on.
 *
 * @param frame window and scale
 * @param picture relief, tinted or not, as large as the frame in its own pixels or finer
 * @param contours lines of equal height, may be none
 * @param contourIntervalM their interval, m; 0 where there are none
 * @param graticule coordinate lines, may be none
 */
public record MapGround(
        MapFrame frame, Picture picture, List<Contour> contours, double contourIntervalM, List<GridLine> graticule) {
    /** Side of a map: words on it can still be read where two share a printed page. */
    private static final int SIDE_PX = 560;

    private static final int CONTOUR_STEP_PX = 3;
    private static final int WANTED_CONTOURS = 14;

    public MapGround {
        contours = List.copyOf(contours);
        graticule = List.copyOf(graticule);
    }

    /** The frame of a map on a page. */
    public static MapFrame frame(Position centre, double radiusM) {
        return frame(centre, radiusM, SIDE_PX);
    }

    /** The frame round a radius; near a pole, where no map of this kind can be drawn, it is a fault of the plan. */
    static MapFrame frame(Position centre, double radiusM, int sidePx) {
        if (!MapFrame.canHold(centre, radiusM))
            throw new InputFault(
                    "plan",
                    0,
                    String.format(
                            Locale.ROOT,
                            "the map would reach from latitude %.2f over %.1f km, allowed is up to a degree from a pole. Take a"
                                    + " smaller radius_km under [area], or a place farther from the pole.",
                            centre.latitudeDeg(),
                            radiusM / 1000));
        return MapFrame.around(centre, radiusM, sidePx, sidePx);
    }

    /** Relief with contours at round heights of the user's unit; the picture may be tinted already, or {@link Picture#relief}. */
    public static MapGround of(
            Elevation elevation, MapFrame frame, Picture picture, List<GridLine> graticule, Lengths lengths) {
        HeightLattice lattice = HeightLattice.over(elevation, frame, CONTOUR_STEP_PX, 1);
        OptionalDouble low = lattice.lowestM();
        OptionalDouble high = lattice.highestM();
        if (low.isEmpty() || high.isEmpty()) return new MapGround(frame, picture, List.of(), 0, graticule);
        double unitM = lengths.shortUnitM();
        double interval =
                unitM * Contours.intervalM(low.getAsDouble() / unitM, high.getAsDouble() / unitM, WANTED_CONTOURS);
        return new MapGround(frame, picture, Contours.of(lattice, interval), interval, graticule);
    }

    /** The same ground under another picture. */
    public MapGround with(Picture other) {
        return new MapGround(frame, other, contours, contourIntervalM, graticule);
    }

    /** Light and shade of a frame as maps of this program show it. */
    public static Hillshade hillshade(Elevation elevation, MapFrame frame) {
        return Hillshade.fromManySides(elevation, frame, 1.6);
    }
}
