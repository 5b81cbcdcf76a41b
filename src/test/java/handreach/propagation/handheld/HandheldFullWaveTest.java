package handreach.propagation.handheld;

import static handreach.propagation.FullWaveRows.number;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.propagation.FullWaveRows;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.units.Polarization;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The default model against full-wave losses along 24 profiles that had no part in fitting it (fullwave/README.md). */
class HandheldFullWaveTest {
    /** What a handheld and a good receiver can lose; beyond it nothing is heard. */
    private static final double OUT_OF_REACH_DB = 165;

    private static final double LARGEST_MEAN_DB = 1;
    private static final double LARGEST_SPREAD_DB = 4;

    private record Point(String family, double mhz, double txM, double trueDb, Map<String, Double> errorDb) {}

    private static final List<Point> POINTS = new ArrayList<>();

    @BeforeAll
    static void reckonEveryPoint() {
        Map<String, Map<String, String>> ground = new HashMap<>();
        for (Map<String, String> row : FullWaveRows.read("fullwave/index.csv")) ground.put(row.get("id"), row);
        Map<String, Profile> whole = new HashMap<>();
        for (Map<String, String> row : FullWaveRows.read("fullwave/along.csv")) {
            String id = row.get("id");
            Map<String, String> run = ground.get(id);
            Profile profile = whole.computeIfAbsent(id, FullWaveRows::profile);
            int last = (int) Math.round(number(row, "distance_km") / 0.03);
            Profile cut = profile.upTo(last);
            assertEquals(number(row, "distance_km"), cut.lengthKm(), 1e-6);
            PathConditions conditions = FullWaveRows.conditions(
                    number(row, "frequency_mhz"),
                    Polarization.VERTICAL,
                    number(run, "permittivity"),
                    number(run, "conductivity"),
                    number(run, "k"));
            double tx = number(row, "tx_height_m");
            double rx = number(row, "rx_height_m");
            double truth = number(row, "pe_local_mean_db");
            Terminals terminals = new Terminals(tx, rx);
            Map<String, Double> error = new HashMap<>();
            for (String model : List.of("handheld", "delta-bullington"))
                error.put(
                        model,
                        LossModels.KEYWORD
                                        .find(model)
                                        .orElseThrow()
                                        .loss(cut, terminals, conditions)
                                        .lossDb()
                                - truth);
            error.put("plane-earth", 40 * Math.log10(1000 * cut.lengthKm()) - 20 * Math.log10(tx * rx) - truth);
            POINTS.add(new Point(run.get("family"), number(row, "frequency_mhz"), tx, truth, error));
        }
    }

    @Test
    void meetsTheWaveOnTheWholeWithinReach() {
        assertEquals(1748, POINTS.size());
        double[] handheld = moments(withinReach(), "handheld");
        assertTrue(Math.abs(handheld[0]) <= LARGEST_MEAN_DB, table());
        assertTrue(handheld[1] <= LARGEST_SPREAD_DB, table());
    }

    @Test
    void isBetterThanOneEdgeAndThanPlaneEarthInEveryFamily() {
        assertAll(List.of("rolling", "hills", "ridges", "real").stream().map(family -> () -> {
            List<Point> points = withinReach().stream()
                    .filter(p -> p.family().equals(family))
                    .toList();
            assertTrue(points.size() > 250);
            double handheld = moments(points, "handheld")[2];
            assertTrue(handheld < moments(points, "delta-bullington")[2], table());
            assertTrue(handheld < moments(points, "plane-earth")[2], table());
        }));
    }

    private static List<Point> withinReach() {
        return POINTS.stream().filter(p -> p.trueDb() <= OUT_OF_REACH_DB).toList();
    }

    /** Mean, standard deviation and root mean square of a model's error, dB. */
    private static double[] moments(List<Point> points, String model) {
        double sum = 0;
        double squares = 0;
        for (Point p : points) {
            double e = p.errorDb().get(model);
            sum += e;
            squares += e * e;
        }
        double mean = sum / points.size();
        double square = squares / points.size();
        return new double[] {mean, Math.sqrt(square - mean * mean), Math.sqrt(square)};
    }

    private static String table() {
        Map<String, List<Point>> groups = new TreeMap<>();
        for (Point p : withinReach()) {
            for (String group : List.of("all", p.family(), p.mhz() + " MHz", "tx " + p.txM() + " m"))
                groups.computeIfAbsent(group, g -> new ArrayList<>()).add(p);
        }
        StringBuilder out = new StringBuilder("group | n | handheld | delta-bullington | plane earth (mean, sd)\n");
        groups.forEach((group, points) -> {
            out.append(String.format(Locale.ROOT, "%s | %d", group, points.size()));
            for (String model : List.of("handheld", "delta-bullington", "plane-earth")) {
                double[] m = moments(points, model);
                out.append(String.format(Locale.ROOT, " | %+.1f, %.1f", m[0], m[1]));
            }
            out.append('\n');
        });
        return out.toString();
    }
}
