package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.report.draw.Figure;
import handreach.report.draw.Pen;
import handreach.report.draw.Svg;
import handreach.report.figure.WalkMark;
import handreach.report.figure.WalkRangeFigure;
import handreach.report.figure.WalkReliabilityFigure;
import handreach.terrain.Cover;
import handreach.units.Lengths;
import handreach.walk.BlockedCheck;
import handreach.walk.BlockedCheck.Verdict;
import handreach.walk.Comparison;
import handreach.walk.Direction;
import handreach.walk.Reception;
import handreach.walk.WalkPair;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WalkFiguresTest {
    private static WalkPair pair(double marginDb, Reception heard, boolean copied) {
        WalkPair.Spot spot = new WalkPair.Spot(2, new Position(45, 7), 0, 90, 1000, Cover.OPEN);
        return new WalkPair(
                spot, new WalkPair.Link("l", Direction.BOTH, "face", "face", -110, 8), marginDb, heard, copied);
    }

    /** Margins against a spread of 8 dB: 8 dB is odds of 84 %, 3 dB 65 %. */
    @ParameterizedTest
    @CsvSource({
        "8, false, FAR_WORSE",
        "3, false, WORSE",
        "3, true, AS_TOLD_COPY",
        "-3, false, AS_TOLD_NONE",
        "-3, true, BETTER",
        "-8, true, FAR_BETTER"
    })
    void aCopyIsMarkedByPromiseAndOutcome(double marginDb, boolean copied, WalkMark mark) {
        assertEquals(mark, WalkMark.of(pair(marginDb, Reception.copy(copied), copied)));
    }

    /** Predicted −100 dBm (needed −110, margin 10); error is predicted minus walked. */
    @ParameterizedTest
    @CsvSource({"-113, FAR_WORSE", "-107, WORSE", "-103, AS_TOLD_COPY", "-93, BETTER", "-87, FAR_BETTER"})
    void aLevelIsMarkedByItsError(double walkedDbm, WalkMark mark) {
        Reception level = new Reception(Reception.Kind.LEVEL, walkedDbm);
        assertEquals(mark, WalkMark.of(pair(10, level, walkedDbm >= -110)));
    }

    @Test
    void helpIsClaimedOnlyWhereNothingBecameWorse() {
        OptionalDouble none = OptionalDouble.empty();
        OptionalDouble six = OptionalDouble.of(6);
        OptionalDouble eight = OptionalDouble.of(8);
        assertEquals(Verdict.HELPS, new BlockedCheck(5, 40, none, none, 0.2, 0.1).verdict());
        assertEquals(Verdict.DOES_NOT_HELP, new BlockedCheck(5, 40, none, none, 0.1, 0.1).verdict());
        assertEquals(Verdict.HELPS, new BlockedCheck(5, 40, eight, six, 0.2, 0.1).verdict());
        assertEquals(Verdict.DOES_NOT_HELP, new BlockedCheck(5, 40, six, eight, 0.1, 0.2).verdict());
        assertEquals(Verdict.HELPS_ODDS, new BlockedCheck(5, 40, six, eight, 0.2, 0.1).verdict());
        assertEquals(Verdict.HELPS_LEVELS, new BlockedCheck(5, 40, eight, six, 0.1, 0.2).verdict());
    }

    @Test
    void theReliabilityFigureTellsEveryBinInWords() {
        WalkReliabilityFigure figure = WalkReliabilityFigure.of(
                List.of(
                        new Comparison.Reliability(0, 0.2, 71, 0.05, 0.01),
                        new Comparison.Reliability(0.8, 1, 25, 0.95, 1)),
                0.0824);
        assertTrue(figure.description().contains("Brier score 0.082."));
        assertTrue(figure.description().contains("found 100 % of 25 reports"));
        String svg = Svg.file(figure);
        assertTrue(svg.contains("n = 71") && svg.contains("n = 25"));
        assertFalse(svg.contains("NaN"));
    }

    @Test
    void theRangeFigureHoldsSectorsWithNothingFound() {
        OptionalDouble none = OptionalDouble.empty();
        for (Lengths lengths : Lengths.values()) {
            WalkRangeFigure figure = WalkRangeFigure.of(
                    List.of(
                            new Comparison.Sector(0, 3, OptionalDouble.of(900), none, OptionalDouble.of(1200)),
                            new Comparison.Sector(315, 2, none, OptionalDouble.of(400), none)),
                    lengths);
            String svg = Svg.file(figure);
            assertTrue(svg.contains("no copy, n = 2"));
            assertTrue(figure.description().contains("north-west: farthest copy none"));
            assertTrue(svg.contains("base, " + lengths.longUnit()));
        }
    }

    /** Shape and lightness tell the marks apart: no two marks are drawn alike once colour is taken away. */
    @Test
    void marksStayApartInGrey() {
        List<String> drawn = IntStream.range(0, WalkMark.values().length)
                .mapToObj(i -> {
                    Figure one = new Figure() {
                        @Override
                        public String title() {
                            return "mark";
                        }

                        @Override
                        public String description() {
                            return "mark";
                        }

                        @Override
                        public double widthPx() {
                            return 30;
                        }

                        @Override
                        public double heightPx() {
                            return 30;
                        }

                        @Override
                        public void draw(Pen pen) {
                            WalkMark.values()[i].draw(pen, 15, 15);
                        }
                    };
                    return Svg.text(one, "m").toLowerCase(Locale.ROOT).replaceAll("#[0-9a-f]{6}", "grey");
                })
                .distinct()
                .toList();
        assertEquals(WalkMark.values().length, drawn.size());
    }
}
