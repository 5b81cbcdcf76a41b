package handreach.walk;

import static handreach.propagation.FullWaveRows.number;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.profile.Profile;
import handreach.propagation.FullWaveRows;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import handreach.reach.Progress;
import handreach.terrain.Cover;
import handreach.units.Polarization;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * Full-wave losses along bare profiles taken for walks with levels, and what a calibration of their other stretches is worth:
 * printed, never asserted, for docs/field-comparison.md, which tells how to run it.
 */
@EnabledIfSystemProperty(named = "measured", matches = ".+")
class ProfilesAsWalks {
    private static final double OUT_OF_REACH_DB = 165;
    /** Noise of a level log, rms. */
    private static final double NOISE_DB = 4;

    private static final int SEEDS = 10;
    private static final int LEAST_REPORTS = 20;
    private static final double SPREAD_DB = 8;
    private static final double APART_M = 50;
    /** A level that copy needs, of no matter for levels. */
    private static final double NEEDED_DBM = -110;

    private static final double SENT_DBM = 37;
    private static final Position START = new Position(36, -84);

    @Test
    void printThem() {
        Map<String, Map<String, String>> ground = new LinkedHashMap<>();
        for (Map<String, String> row : FullWaveRows.read("fullwave/index.csv")) ground.put(row.get("id"), row);
        Map<String, List<Map<String, String>>> walks = new LinkedHashMap<>();
        for (Map<String, String> row : FullWaveRows.read("fullwave/along.csv"))
            if (number(row, "pe_local_mean_db") <= OUT_OF_REACH_DB)
                walks.computeIfAbsent(
                                row.get("id") + row.get("frequency_mhz") + "/" + row.get("tx_height_m"),
                                key -> new ArrayList<>())
                        .add(row);
        walks.values().removeIf(rows -> rows.size() < LEAST_REPORTS);
        System.out.printf(
                Locale.ROOT,
                "%d walks, %d levels%n",
                walks.size(),
                walks.values().stream().mapToInt(List::size).sum());
        for (LossModel model : List.of(LossModels.HANDHELD, LossModels.DELTA_BULLINGTON)) {
            Map<String, double[]> sums = new TreeMap<>();
            for (int seed = 0; seed < SEEDS; seed++) {
                Random random = new Random(seed);
                for (List<Map<String, String>> rows : walks.values()) {
                    Map<String, String> run = ground.get(rows.get(0).get("id"));
                    Optional<BlockedCheck> check =
                            BlockedCheck.of(pairs(rows, run, model, random), APART_M, Priors.USUAL, Progress.SILENT);
                    check.ifPresent(seen -> {
                        for (String family : List.of("all", run.get("family")))
                            add(sums.computeIfAbsent(family, key -> new double[5]), seen);
                    });
                }
            }
            sums.forEach((family, sum) -> System.out.printf(
                    Locale.ROOT,
                    "| `%s` | %s | %.1f | %.1f | lower on %.1f of %.0f%n",
                    model.name(),
                    family,
                    Math.sqrt(sum[0] / sum[2]),
                    Math.sqrt(sum[1] / sum[2]),
                    sum[3] / SEEDS,
                    sum[4] / SEEDS));
        }
    }

    private static void add(double[] sum, BlockedCheck seen) {
        double before = seen.rmseBeforeDb().orElseThrow();
        double after = seen.rmseAfterDb().orElseThrow();
        sum[0] += before * before * seen.reports();
        sum[1] += after * after * seen.reports();
        sum[2] += seen.reports();
        if (after < before) sum[3]++;
        sum[4]++;
    }

    private static List<WalkPair> pairs(
            List<Map<String, String>> rows, Map<String, String> run, LossModel model, Random random) {
        Profile whole = FullWaveRows.profile(run.get("id"));
        List<WalkPair> pairs = new ArrayList<>();
        for (Map<String, String> row : rows) {
            Profile cut = whole.upTo((int) Math.round(number(row, "distance_km") / 0.03));
            double predictedDb = model.loss(
                            cut,
                            new Terminals(number(row, "tx_height_m"), number(row, "rx_height_m")),
                            FullWaveRows.conditions(
                                    number(row, "frequency_mhz"),
                                    Polarization.VERTICAL,
                                    number(run, "permittivity"),
                                    number(run, "conductivity"),
                                    number(run, "k")))
                    .lossDb();
            double heardDbm = SENT_DBM - number(row, "pe_local_mean_db") + NOISE_DB * random.nextGaussian();
            double alongM = 1000 * cut.lengthKm();
            WalkPair.Spot spot = new WalkPair.Spot(
                    pairs.size() + 2, GeodesicLine.destination(START, 90, alongM), alongM, 90, alongM, Cover.OPEN);
            WalkPair.Link link = new WalkPair.Link("l", Direction.TO_WALKER, "face", "face", NEEDED_DBM, SPREAD_DB);
            pairs.add(new WalkPair(
                    spot,
                    link,
                    SENT_DBM - predictedDb - NEEDED_DBM,
                    new Reception(Reception.Kind.LEVEL, heardDbm),
                    heardDbm >= NEEDED_DBM));
        }
        return pairs;
    }
}
