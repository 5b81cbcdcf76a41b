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
    /** Flat at 500 m with a wall of 640 m, 850 m to 1000 m from the middle. */
    private static final PaperGround WALLED = new PaperGround(
            (lat, lon) -> {
                double m = GeodesicLine.between(MIDDLE, new Position(lat, lon)).lengthM();
                return m > 850 && m < 1000 ? 640 : 500;
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
                        "nothing sure beyond 900 m, where a rise of 640 m at 850 m hides the ground behind it.")),
                lines);
    }

    /** Bearings 35 to 85 with a gap that begins between 340 and 750 m; beyond it a part is reached, on 60 nothing where asked. */
    private static RoseTrace gaps(boolean withDead) {
        List<RosePoint> points = new ArrayList<>(trace(500, 510, -1).points());
        for (int k = 7; k <= 17; k++)
            points.set(k, RosePoints.reachedAgain(5 * k, 0.34 + 0.041 * (k - 7), 4.7 - 0.03 * k, 0.25 + 0.02 * k));
        if (withDead) points.set(12, RosePoints.known(60, 1.5, 1.5, 1.5));
        return new RoseTrace(LoadoutMark.of(0), "whip", points, false);
    }

    /** A far slope beyond the gap is reached: the card must not say that nothing there is, nor a rise that is farther out than the gap. */
    @Test
    void aGapIsSaidAsItHoldsOnEveryBearing() {
        assertEquals(
                List.of(new CardLine(
                        "NE to E (035° to 085° true):",
                        "first gap begins 340 to 750 m out; beyond it 39 to 59 % of the ground is reached again, as far as"
                                + " 4.2 to 4.5 km.")),
                DeadGround.lines(gaps(false), WALLED, MIDDLE, Lengths.METRIC, Bearings.TRUE));
    }

    /** Nothing at all beyond 1.5 km is worse than gaps, though its sector is narrower and its continuous reach longer. */
    @Test
    void groundThatIsDeadStandsBeforeGaps() {
        List<CardLine> lines = DeadGround.lines(gaps(true), WALLED, MIDDLE, Lengths.METRIC, Bearings.TRUE);
        assertEquals("ENE 060° true:", lines.get(0).strong());
        assertEquals("nothing sure beyond 1.5 km.", lines.get(0).words());
        assertEquals(3, lines.size(), lines::toString);
        assertTrue(lines.get(1).words().startsWith("first gap begins "), lines::toString);
    }

    /** Where most bearings come back far out, the ones that end for good are dead although they have no gap before that. */
    @Test
    void deadIsMeasuredByTheFarthestPlaceNotByTheFirstGap() {
        List<RosePoint> points = new ArrayList<>();
        for (int b = 0; b < 360; b += 5)
            points.add(
                    b >= 220 && b <= 240
                            ? RosePoints.known(b, 1.3 + (b - 220) * 0.01, 1.3, 1.6)
                            : RosePoints.reachedAgain(b, 1.3, 4.5, 0.4));
        RoseTrace trace = new RoseTrace(LoadoutMark.of(0), "whip", points, false);
        assertEquals(
                List.of(new CardLine(
                        "SW to WSW (220° to 240° true):",
                        "nothing sure beyond 1.5 km, on some bearings beyond 1.3 km.")),
                DeadGround.lines(trace, WALLED, MIDDLE, Lengths.METRIC, Bearings.TRUE));
    }

    /** The rise is told only where on every bearing the ground behind it lies in its shadow. */
    @Test
    void aRiseOnOneBearingIsNotTheCauseOnAll() {
        PaperGround half = new PaperGround(
                (lat, lon) -> {
                    GeodesicLine line = GeodesicLine.between(MIDDLE, new Position(lat, lon));
                    return line.lengthM() > 850 && line.lengthM() < 1000 && line.azimuthDeg() < 60 ? 640 : 500;
                },
                30);
        assertEquals(
                "nothing sure beyond 900 m.",
                DeadGround.lines(trace(35, 85, -1), half, MIDDLE, Lengths.METRIC, Bearings.TRUE)
                        .get(0)
                        .words());
    }

    /** Behind unknown ground nothing is claimed. */
    @Test
    void deadGroundEndsWhereHeightsEnd() {
        List<RosePoint> points = new ArrayList<>(trace(35, 85, -1).points());
        points.set(9, RosePoints.deadBeforeUnknown(45, 0.9, 2.5));
        RoseTrace trace = new RoseTrace(LoadoutMark.of(0), "whip", points, false);
        assertEquals(
                "nothing sure beyond 900 m, as far as heights are known (2.5 km).",
                DeadGround.lines(trace, new PaperGround((lat, lon) -> 500, 30), MIDDLE, Lengths.METRIC, Bearings.TRUE)
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
                    return m > 850 && m < 1000 ? 640 : m > 5 ? 506 : 500;
                },
                30);
        String words = DeadGround.lines(trace(35, 85, -1), bank, MIDDLE, Lengths.IMPERIAL, Bearings.TRUE)
                .get(0)
                .words();
        assertEquals(
                "nothing sure beyond 0.56 mi, where a rise of 2100 ft at 0.53 mi hides the ground behind it.", words);
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
