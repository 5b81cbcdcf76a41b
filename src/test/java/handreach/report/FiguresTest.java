package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.LoadoutMark;
import handreach.uncertainty.Interval;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FiguresTest {
    private static List<RosePoint> circle(double km) {
        List<RosePoint> points = new ArrayList<>();
        for (int b = 0; b < 360; b += 5) points.add(new RosePoint(b, km, km, km, true));
        return points;
    }

    @Test
    void theRoseDescribesFarthestAndShortest() {
        List<RosePoint> points = circle(2);
        points.set(6, new RosePoint(30, 3.5, 3, 4, true));
        points.set(36, new RosePoint(180, 0.4, 0.3, 0.5, true));
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
    void unknownBearingsBreakTheLine() {
        List<RosePoint> points = circle(2);
        points.set(20, new RosePoint(100, 0, 0, 0, false));
        RoseTrace broken = new RoseTrace(LoadoutMark.of(0), "whip", points, true);
        String svg = Svg.text(RoseFigure.of("r", List.of(broken), Lengths.METRIC), "f1");
        assertTrue(svg.contains("no heights known"));
        String whole = Svg.text(
                RoseFigure.of("r", List.of(new RoseTrace(LoadoutMark.of(0), "w", circle(2), true)), Lengths.METRIC),
                "f1");
        assertTrue(!whole.contains("no heights known"));
    }

    @Test
    void bearingsMustRiseAndReachMustLieInItsInterval() {
        assertThrows(IllegalArgumentException.class, () -> new RosePoint(0, 2, 2.1, 3, true));
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
    void ticksAreRoundAndInsideTheAxis() {
        Axis axis = Axis.rounded(-3.2, 7.9, 6, 0, 100);
        assertEquals(-4, axis.low(), 1e-12);
        assertEquals(8, axis.high(), 1e-12);
        assertEquals(List.of(-4.0, -2.0, 0.0, 2.0, 4.0, 6.0, 8.0), axis.ticks(6));
        assertEquals("\u22122", axis.text(-2, 6));
        assertEquals("0.0", Axis.number(-0.04, 1));
        assertEquals("+0.3", Axis.signed(0.3, 1));
        assertEquals("0.0", Axis.signed(-0.01, 1));
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
