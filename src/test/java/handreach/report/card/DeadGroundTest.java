package handreach.report.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.LoadoutMark;
import handreach.cartography.PaperGround;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.report.figure.RosePoint;
import handreach.report.figure.RosePoints;
import handreach.report.figure.RoseTrace;
import handreach.units.Bearings;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class DeadGroundTest {
    private static final Position MIDDLE = new Position(46, 8);
    /** Flat at 500 m with a wall of 640 m, 900 m to 1000 m from the middle. */
    private static final PaperGround WALLED = new PaperGround(
            (lat, lon) -> {
                double m = GeodesicLine.between(MIDDLE, new Position(lat, lon)).lengthM();
                return m > 900 && m < 1000 ? 640 : 500;
            },
            30);

    private static RoseTrace trace(double deadFromDeg, double deadToDeg, double unknownDeg) {
        List<RosePoint> points = new ArrayList<>();
        for (int b = 0; b < 360; b += 5) {
            boolean isDead =
                    deadFromDeg <= deadToDeg ? b >= deadFromDeg && b <= deadToDeg : b >= deadFromDeg || b <= deadToDeg;
            double km = isDead ? 0.9 : 3;
            points.add(b == unknownDeg ? RosePoints.endedByUnknown(b, km) : RosePoints.known(b, km, km, km));
        }
        return new RoseTrace(LoadoutMark.of(0), "whip", points, false);
    }

    @Test
    void aSectorIsNamedWithWhatStandsThere() {
        List<CardLine> lines = DeadGround.lines(trace(35, 85, -1), WALLED, MIDDLE, Lengths.METRIC, Bearings.TRUE);
        assertEquals(
                List.of(new CardLine(
                        "NE to E (035° to 085° true):",
                        "nothing sure beyond 900 m, behind the rise of 640 m at 900 m.")),
                lines);
    }

    /** A far slope beyond the gap is reached: the card must not say that nothing there is. */
    @Test
    void groundThatIsReachedAgainIsNotCalledDead() {
        List<RosePoint> points = new ArrayList<>(trace(35, 85, -1).points());
        points.set(9, RosePoints.reachedAgain(45, 0.9, 4.2));
        RoseTrace trace = new RoseTrace(LoadoutMark.of(0), "whip", points, false);
        assertEquals(
                "a gap from 900 m on, behind the rise of 640 m at 900 m; some ground beyond it is reached again, as far as"
                        + " 4.2 km.",
                DeadGround.lines(trace, WALLED, MIDDLE, Lengths.METRIC, Bearings.TRUE)
                        .get(0)
                        .words());
    }

    @Test
    void aSectorOverNorthIsOneSector() {
        List<CardLine> lines = DeadGround.lines(trace(340, 20, -1), WALLED, MIDDLE, Lengths.METRIC, Bearings.TRUE);
        assertEquals(1, lines.size());
        assertEquals("NNW to NNE (340° to 020° true):", lines.get(0).strong());
    }

    @Test
    void unknownIsToldApartFromDead() {
        List<CardLine> lines = DeadGround.lines(trace(500, 510, 90), WALLED, MIDDLE, Lengths.METRIC, Bearings.TRUE);
        assertTrue(lines.get(0).words().startsWith("No bearing falls far behind"));
        assertEquals("Unknown:", lines.get(1).strong());
        assertEquals(
                "on 1 of 72 bearings heights end before copy does, the nearest 3.0 km from the middle. Nothing is claimed beyond.",
                lines.get(1).words());
    }

    /** The steepest of all is the bank of 6 m at one's feet; what stands in the way is the wall. */
    @Test
    void theBankAtOnesFeetIsNotTheRise() {
        PaperGround bank = new PaperGround(
                (lat, lon) -> {
                    double m = GeodesicLine.distanceM(MIDDLE, new Position(lat, lon));
                    return m > 900 && m < 1000 ? 640 : m > 5 ? 506 : 500;
                },
                30);
        String words = DeadGround.lines(trace(35, 85, -1), bank, MIDDLE, Lengths.IMPERIAL, Bearings.TRUE)
                .get(0)
                .words();
        assertEquals("nothing sure beyond 0.56 mi, behind the rise of 2100 ft at 0.56 mi.", words);
    }

    @Test
    void shortLengthsOfOneUnitAreSaidOnce() {
        assertEquals("480 to 900 ft", Lengths.IMPERIAL.range(146.3, 274.3));
        assertEquals("900 m to 1.2 km", Lengths.METRIC.range(900, 1200));
        assertEquals("900 m", Lengths.METRIC.range(899, 901));
    }

    @Test
    void withoutHeightsNoRiseIsInvented() {
        PaperGround none = new PaperGround((lat, lon) -> Double.NaN, 30);
        List<CardLine> lines = DeadGround.lines(trace(35, 85, -1), none, MIDDLE, Lengths.METRIC, Bearings.TRUE);
        assertEquals("nothing sure beyond 900 m.", lines.get(0).words());
    }
}
