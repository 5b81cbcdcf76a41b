package handreach.report.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.LoadoutMark;
import handreach.cartography.PaperGround;
import handreach.geodesy.Position;
import handreach.report.SampleFigures;
import handreach.report.figure.DeltaRow;
import handreach.report.figure.MapPlace;
import handreach.report.figure.RoseFigure;
import handreach.report.figure.RosePoint;
import handreach.report.figure.RosePoints;
import handreach.report.figure.RoseTrace;
import handreach.report.figure.UnknownGround;
import handreach.uncertainty.Interval;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class FiguresTest {
    private static List<RosePoint> circle(double km) {
        List<RosePoint> points = new ArrayList<>();
        for (int b = 0; b < 360; b += 5) points.add(RosePoints.known(b, km, km, km));
        return points;
    }

    /** Grey in the key beside a tint of 0.17 over grey relief: the band could not be found. */
    @Test
    void theBandOfARoseHasTheColourAndTheEdgeThatItsKeyShows() {
        RoseTrace trace = SampleFigures.trace(0, true);
        String svg = Svg.text(RoseFigure.of("r", List.of(trace), Lengths.METRIC), "f");
        String rgb = String.format(Locale.ROOT, "%06x", trace.mark().rgb());
        assertEquals(
                2,
                Pattern.compile("(?i)fill=\"#" + rgb + "\"[^>]*opacity=\"0\\.3\"")
                        .matcher(svg)
                        .results()
                        .count());
    }

    @Test
    void theRoseDescribesFarthestAndShortest() {
        List<RosePoint> points = circle(2);
        points.set(6, RosePoints.known(30, 3.5, 3, 4));
        points.set(36, RosePoints.known(180, 0.4, 0.3, 0.5));
        RoseFigure rose =
                RoseFigure.of("r", List.of(new RoseTrace(LoadoutMark.of(0), "whip", points, false)), Lengths.METRIC);
        assertTrue(rose.description().contains("farthest 3.5 km towards 030°, shortest 400 m towards 180°"));
    }

    @Test
    void aRoundReachIsDrawnAsACircleToScale() { // by hand: 2 km of 2 km outer ring at 262 px, east point 262 px
        // right of the middle
        RoseFigure rose =
                RoseFigure.of("r", List.of(new RoseTrace(LoadoutMark.of(0), "whip", circle(2), false)), Lengths.METRIC);
        String svg = Svg.text(rose, "f1");
        double middle = rose.widthPx() / 2;
        assertTrue(svg.contains("L" + Svg.n(middle + 262) + " " + Svg.n(262 + 34)), "east point of the trace");
    }

    @Test
    void groundWithoutHeightsIsHatchedAndExplainedAndTheLineGoesOnUpToIt() {
        List<RosePoint> points = circle(2);
        points.set(20, RosePoints.endedByUnknown(100, 1.2));
        RoseTrace broken = new RoseTrace(LoadoutMark.of(0), "whip", points, true);
        RoseFigure rose = RoseFigure.of("r", List.of(broken), Lengths.METRIC);
        String svg = Svg.text(rose, "f1");
        assertTrue(svg.contains("no heights known"));
        // by hand: 1.2 km of 2 km at 262 px, 10° below due east
        double px = 262 * 1.2 / 2;
        String corner = "L" + Svg.n(rose.widthPx() / 2 + px * Math.cos(Math.toRadians(10))) + " "
                + Svg.n(262 + 34 + px * Math.sin(Math.toRadians(10)));
        assertTrue(svg.contains(corner), "the line runs through " + corner);
        String whole = Svg.text(
                RoseFigure.of("r", List.of(new RoseTrace(LoadoutMark.of(0), "w", circle(2), true)), Lengths.METRIC),
                "f1");
        assertTrue(!whole.contains("no heights known"));
    }

    @Test
    void knownGroundBeforeTheEndOfHeightsIsNotHatched() { // by hand: heights end 1.5 km east of the middle
        RoseTrace trace = new RoseTrace(LoadoutMark.of(0), "whip", edgeInTheEast(1.5), false);
        UnknownGround unknown = UnknownGround.of(trace);
        assertEquals(1.5, unknown.beyondKm(90), 1e-9);
        assertEquals(1.5 / Math.cos(Math.toRadians(2.5)), unknown.beyondKm(92.5), 1e-9);
        assertEquals(1.5 / Math.cos(Math.toRadians(33)), unknown.beyondKm(57), 1e-9);
        assertEquals(Double.POSITIVE_INFINITY, unknown.beyondKm(270));
        assertEquals(Double.POSITIVE_INFINITY, unknown.beyondKm(359.9));
    }

    /** Reach of 2 km on ground whose heights end along a straight line so far east of the middle. */
    /** Four short lines in a wide rose: each letter keeps clear of the others and of the middle, and the rings have room for figures. */
    @Test
    void lettersOfShortLinesStandApart() {
        List<RoseTrace> traces = new ArrayList<>();
        for (int i = 0; i < 4; i++)
            traces.add(new RoseTrace(LoadoutMark.of(i), "whip " + i, circle(0.3 + 0.05 * i), false));
        RoseFigure rose =
                RoseFigure.of("r", traces, Lengths.METRIC).beside().outTo(5).sized(104);
        String svg = Svg.text(rose, "f1");
        Matcher found = Pattern.compile("<text[^>]*x=\"([-0-9.]+)\" y=\"([-0-9.]+)\"[^>]*>([A-D])</text>")
                .matcher(svg);
        List<double[]> letters = new ArrayList<>();
        letters.add(new double[] {rose.widthPx() / 2, 104 + 34 + 4.4});
        while (found.find())
            letters.add(new double[] {Double.parseDouble(found.group(1)), Double.parseDouble(found.group(2))});
        assertEquals(5, letters.size(), svg);
        for (int i = 0; i < letters.size(); i++)
            for (int j = 0; j < i; j++)
                assertTrue(
                        Math.hypot(letters.get(i)[0] - letters.get(j)[0], letters.get(i)[1] - letters.get(j)[1]) > 17,
                        i + " and " + j);
        assertEquals(3, svg.split(">[1-9](?: km)?</text>", -1).length - 1, svg);
    }

    private static List<RosePoint> edgeInTheEast(double km) {
        List<RosePoint> points = circle(2);
        for (int i = 0; i < points.size(); i++) {
            double end = km / Math.sin(Math.toRadians(points.get(i).bearingDeg()));
            if (end > 0 && end < 2)
                points.set(i, RosePoints.endedByUnknown(points.get(i).bearingDeg(), end));
        }
        return points;
    }

    @Test
    void onReliefTheSameHatchCoversVoidsAndWhatLiesBehindThem() {
        // heights end 1.5 km east of the middle, and come back for nobody to reckon with at 1.7 km
        PaperGround gap = new PaperGround((lat, lon) -> isBetween(lon, 1.5, 1.7) ? Double.NaN : 500, 30);
        RoseFigure rose = RoseFigure.of(
                        "r",
                        List.of(new RoseTrace(LoadoutMark.of(0), "whip", edgeInTheEast(1.5), false)),
                        Lengths.METRIC)
                .over(gap, EQUATOR, List.of(), List.of());
        Picture picture = Picture.of(rose, 2);
        double middle = rose.widthPx() / 2;
        assertTrue(isHatched(picture, middle + 262 * 0.8, MIDDLE_Y), "in the gap");
        assertTrue(isHatched(picture, middle + 262 * 0.93, MIDDLE_Y), "behind the gap");
        assertTrue(!isHatched(picture, middle + 262 * 0.68, MIDDLE_Y), "before the gap");
        assertTrue(!isHatched(picture, middle - 262 * 0.8, MIDDLE_Y), "on the other side");
        assertTrue(Svg.text(rose, "f1").contains("no heights known"));
    }

    @Test
    void aPlaceBeyondTheLastRingStandsOnItWithItsName() { // by hand: 4 km east, the last ring is 2 km
        PaperGround flat = new PaperGround((lat, lon) -> 500, 30);
        MapPlace far = new MapPlace(new Position(0, 10 + 4 / 111.32), MapPlace.Kind.PERSON, "far crew");
        RoseFigure rose = RoseFigure.of(
                        "r", List.of(new RoseTrace(LoadoutMark.of(0), "whip", circle(2), false)), Lengths.METRIC)
                .over(flat, EQUATOR, List.of(far), List.of());
        String svg = Svg.text(rose, "f1");
        assertTrue(svg.contains("far crew"));
        assertTrue(svg.contains("M" + Svg.n(rose.widthPx() / 2 + 260) + " "), "the tip of its arrow");
        RoseFigure wider = RoseFigure.of(
                        "r", List.of(new RoseTrace(LoadoutMark.of(0), "whip", circle(2), false)), Lengths.METRIC)
                .outTo(4.2)
                .over(flat, EQUATOR, List.of(far), List.of());
        assertTrue(!Svg.text(wider, "f1").contains("M" + Svg.n(rose.widthPx() / 2 + 260) + " "), "now it has a symbol");
    }

    private static final Position EQUATOR = new Position(0, 10);
    /** A little below the line to the east, where no ring, spoke or word stands, px. */
    private static final double MIDDLE_Y = 262 + 34 + 14;

    private static boolean isBetween(double longitudeDeg, double fromKm, double toKm) {
        double km = (longitudeDeg - 10) * 111.32;
        return km > fromKm && km < toKm;
    }

    /** The ground is flat and so of one grey: what varies is the hatch. */
    private static boolean isHatched(Picture picture, double xPx, double yPx) {
        int least = 255;
        int most = 0;
        for (int dx = -8; dx <= 8; dx++) {
            int grey = picture.rgb((int) (2 * xPx) + dx, (int) (2 * yPx)) & 0xFF;
            least = Math.min(least, grey);
            most = Math.max(most, grey);
        }
        return most - least > 30;
    }

    @Test
    void theKeyOfAMapTellsTheZoneOfItsGrid() {
        assertTrue(SampleFigures.svg(SampleFigures.all().get(0)).contains("grid: UTM zone 32T, km"));
    }

    @Test
    void bearingsMustRiseAndReachMustLieInItsInterval() {
        assertThrows(IllegalArgumentException.class, () -> RosePoints.known(0, 2, 2.1, 3));
        List<RosePoint> same =
                List.of(circle(1).get(0), circle(1).get(0), circle(1).get(1));
        assertThrows(IllegalArgumentException.class, () -> new RoseTrace(LoadoutMark.of(0), "x", same, false));
    }

    @Test
    void theProfileNamesItsClearance() { // by hand: an edge 160 m above ground, antennas 1.5 and 10 m up: blocked at
        // 4 km
        String words = SampleFigures.profile().description();
        assertTrue(words.contains("blocked"), words);
        assertTrue(words.contains("at 4.00 km"), words);
    }

    @Test
    void aFigureThatHoldsAPictureSaysSo() {
        for (Figure figure : SampleFigures.all())
            assertEquals(SampleFigures.svg(figure).contains("<image"), figure.holdsPicture(), figure.description());
    }

    @Test
    void axesCarryTheirUnits() {
        assertTrue(Svg.text(SampleFigures.profile(), "f").contains("height above sea level, m"));
        assertTrue(Svg.text(SampleFigures.delta(), "f").contains("received level over the control, dB"));
        assertTrue(Svg.text(SampleFigures.swr(), "f").contains("frequency, MHz"));
        assertTrue(Svg.text(SampleFigures.pattern(), "f").contains("gain, dBi"));
    }

    @Test
    void aDifferenceOutsideItsIntervalIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new DeltaRow("m", "a", 4, new Interval(1, 3), true, ""));
    }

    @Test
    void theSameFigureIsTheSameText() { // law: no clock, no random names
        assertEquals(Svg.file(SampleFigures.map()), Svg.file(SampleFigures.map()));
    }

    @Test
    void aPictureShowsWhatWasDrawn() {
        Picture picture = Picture.of(SampleFigures.pairs(), 2);
        assertEquals((int) Math.ceil(2 * SampleFigures.pairs().widthPx()), picture.widthPx());
        long dark = 0;
        for (int y = 0; y < picture.heightPx(); y++)
            for (int x = 0; x < picture.widthPx(); x++) if (picture.rgb(x, y) == 0x0B4F7A) dark++;
        // by hand: two squares of 55 px at scale 2, less the words on them, and the sample of 26 by 16 px
        double squares = 2 * 110.0 * 110.0 + 52 * 32;
        assertTrue(dark > 0.85 * squares && dark <= squares + 500, dark + " of " + squares);
    }
}
