package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.PlaceForm;
import handreach.plan.PlanHeader;
import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.profile.Zone;
import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.report.draw.Figure;
import handreach.report.draw.Svg;
import handreach.report.file.Json;
import handreach.report.page.PlainText;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
import handreach.terrain.Cover;
import handreach.units.Bearings;
import handreach.units.Frequency;
import handreach.units.Lengths;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** One path, every face of it: they read the same figures. */
class PathFacesTest {
    private static final Pattern CLEARANCE =
            Pattern.compile("least clearance .*?([\u2212-]?[0-9]+\\.[0-9]{2}) of the first Fresnel .*?at ([0-9.]+) km");
    /** Half of the last digit written. */
    private static final double ROUNDING = 0.005;

    /** 4 km between two people in 20 m high woods, a hill of bare rock between them at 1.5 km. */
    private static PathAnswer inTheWoods() {
        int n = 81;
        double[] d = new double[n];
        double[] h = new double[n];
        double[] trees = new double[n];
        Cover[] cover = new Cover[n];
        Zone[] zone = new Zone[n];
        Arrays.fill(zone, Zone.INLAND);
        for (int i = 0; i < n; i++) {
            d[i] = 0.05 * i;
            h[i] = 100 + Math.max(0, 12 - 60 * Math.abs(d[i] - 1.5));
            boolean isWood = i < 12 || i > 68;
            trees[i] = isWood ? 20 : 0;
            cover[i] = isWood ? Cover.WOODLAND : Cover.OPEN;
        }
        return PathStudy.over(
                Profile.of(d, h, trees, cover, zone),
                new Terminals(1.5, 1.5),
                UsualConditions.at(new Frequency(155)),
                List.of(LossModels.HANDHELD));
    }

    private static String text(PathAnswer answer) {
        return PlainText.of(PathComposer.page(answer, PlanHeader.NONE, false), PlainText.USUAL_WIDTH)
                .replaceAll("\\s+", " ");
    }

    @Test
    void chartCaptionTextAndJsonNameOneLeastClearance() {
        PathAnswer answer = inTheWoods();
        double share = answer.geometry().worstClearance().orElseThrow().inFresnelRadii();
        double atKm = answer.geometry().worstClearance().orElseThrow().distanceKm();
        Figure chart = PathComposer.profile(answer, "A", "B", Lengths.METRIC);
        for (String face : List.of(
                text(answer),
                PathComposer.groundSentence(answer, Lengths.METRIC),
                chart.description(),
                Svg.text(chart, "f").replaceAll("<desc>.*?</desc>", "").replaceAll("<[^>]*>", " "))) {
            Matcher said = CLEARANCE.matcher(face);
            assertTrue(said.find(), face);
            assertEquals(share, Double.parseDouble(said.group(1).replace('\u2212', '-')), ROUNDING, face);
            assertEquals(atKm, Double.parseDouble(said.group(2)), ROUNDING, face);
        }
        var json = Json.tree(PathJson.of(answer, false)).get("geometry").get("worst_clearance");
        assertEquals(share, json.get("in_fresnel_radii").asDouble());
        assertEquals(atKm, json.get("distance_km").asDouble());
    }

    /** The loss of trees over an end is a term of that end: as an obstacle they would make every path in woods a blocked one. */
    @Test
    void treesOverTheWalkersOwnHeadBlockNothing() {
        PathAnswer answer = inTheWoods();
        assertEquals(1.5, answer.geometry().worstClearance().orElseThrow().distanceKm(), ROUNDING);
    }

    @Test
    void noAngleAndNoClearanceIsANegativeNought() {
        int n = 21;
        double[] d = new double[n];
        for (int i = 0; i < n; i++) d[i] = 0.01 * i;
        PathAnswer level = PathStudy.over(
                Profiles.of(d, new double[n]),
                new Terminals(1.5, 1.5),
                UsualConditions.at(new Frequency(155)),
                List.of(LossModels.KEYWORD.find("free-space").orElseThrow()));
        String text = text(level);
        assertTrue(
                Pattern.compile("[-\u2212]0\\.0+(?![0-9])")
                        .matcher(text)
                        .results()
                        .findAny()
                        .isEmpty(),
                text);
    }

    /** Miles in the table of reach and metres in the path of the same plan were two units in one hand. */
    @Test
    void aPlanInMilesHasItsPathInMilesAndFeet() {
        PathAnswer answer = inTheWoods();
        PlanHeader inMiles = new PlanHeader("", "", PlaceForm.DECIMAL, Lengths.IMPERIAL, Bearings.TRUE);
        String text = PlainText.of(PathComposer.page(answer, inMiles, false), PlainText.USUAL_WIDTH)
                .replaceAll("\\s+", " ");
        // by hand: 4 km are 2.485 mi, 1.5 m are 4.92 ft, the rise at 1.5 km lies at 0.93 mi
        assertTrue(text.startsWith("2.485 mi, 155.000 MHz, antennas 4.92 and 4.92 ft above ground"), text);
        assertTrue(text.contains(" at 0.93 mi"), text);
        assertFalse(Pattern.compile("[0-9] (k?m)\\b").matcher(text).find(), text);
    }
}
