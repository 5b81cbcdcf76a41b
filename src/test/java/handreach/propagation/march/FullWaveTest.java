package handreach.propagation.march;

import static handreach.propagation.FullWaveRows.conditions;
import static handreach.propagation.FullWaveRows.level;
import static handreach.propagation.FullWaveRows.number;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.propagation.FullWaveRows;
import handreach.propagation.LossModels;
import handreach.propagation.LossPart;
import handreach.propagation.NoAnswer;
import handreach.propagation.PathConditions;
import handreach.propagation.PathLoss;
import handreach.propagation.Terminals;
import handreach.units.Polarization;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

class FullWaveTest {
    /** Two profiles of each family, short ones. */
    private static final Set<String> SOME = Set.of("a12", "a10", "b08", "b06", "c02", "c06", "d05", "d10");

    private static final Map<String, Map<String, String>> GROUND = new HashMap<>();

    static {
        for (Map<String, String> row : FullWaveRows.read("fullwave/index.csv")) GROUND.put(row.get("id"), row);
    }

    @Test
    void followsTheYardstickAlongSomeProfiles() { // oracle: the fine-grid solver of fullwave/README.md
        assertFollows(SOME);
    }

    /** All 24 profiles: run with {@code -Dhandreach.long=true}. */
    @Test
    @EnabledIfSystemProperty(named = "handreach.long", matches = "true")
    void followsTheYardstickAlongAllProfiles() {
        assertFollows(GROUND.keySet());
    }

    /**
     * Lanes may cost 0.05 dB over all 24 profiles, and cost 0.013 (docs/full-wave.md). Of these four, on which they cost most, 0.055; under an
     * absorber of eight tenths 0.18.
     */
    @Test
    void inLockstepItFollowsTheYardstickAsARadialByItselfDoes() {
        Map<List<String>, List<FullWaveRadial>> marches = new HashMap<>();
        double alone = 0;
        double together = 0;
        int points = 0;
        for (Map<String, String> row : FullWaveRows.read("fullwave/along.csv")) {
            double excess = number(row, "pe_local_mean_db") - number(row, "free_space_db");
            if (!Set.of("a03", "a09", "b12", "d06").contains(row.get("id"))
                    || !row.get("frequency_mhz").equals("146")
                    || excess >= 60) continue;
            double tx = number(row, "tx_height_m");
            Profile profile = FullWaveRows.profile(row.get("id"));
            PathConditions channel = channel(row.get("id"), 146);
            List<FullWaveRadial> both = marches.computeIfAbsent(
                    List.of(row.get("id"), row.get("tx_height_m")),
                    key -> List.of(
                            FieldMarch.along(profile, tx, 1.5, channel),
                            FieldMarch.bundle(List.of(profile), tx, new double[] {1.5}, channel, share -> true)
                                    .get(0)
                                    .get(0)));
            int sample = (int) Math.round(number(row, "distance_km") / 0.03);
            double yardstickDb = number(row, "pe_local_mean_db");
            alone += Math.pow(both.get(0).meanLossDb(sample) - yardstickDb, 2);
            together += Math.pow(both.get(1).meanLossDb(sample) - yardstickDb, 2);
            points++;
        }
        assertTrue(points > 100, points + " points");
        assertEquals(Math.sqrt(alone / points), Math.sqrt(together / points), 0.08);
    }

    private static void assertFollows(Set<String> ids) {
        Map<String, SummaryStatistics> errors = new HashMap<>();
        Map<List<String>, FullWaveRadial> marches = new HashMap<>();
        for (Map<String, String> row : FullWaveRows.read("fullwave/along.csv")) {
            double excess = number(row, "pe_local_mean_db") - number(row, "free_space_db");
            if (!ids.contains(row.get("id")) || excess >= 60) continue;
            FullWaveRadial radial = marches.computeIfAbsent(
                    List.of(row.get("id"), row.get("frequency_mhz"), row.get("tx_height_m")),
                    key -> march(key.get(0), number(row, "frequency_mhz"), number(row, "tx_height_m")));
            int sample = (int) Math.round(number(row, "distance_km") / 0.03);
            errors.computeIfAbsent(row.get("frequency_mhz"), key -> new SummaryStatistics())
                    .addValue(radial.meanLossDb(sample) - number(row, "pe_local_mean_db"));
        }
        for (String mhz : List.of("146", "446")) {
            SummaryStatistics error = errors.get(mhz);
            assertTrue(error.getN() > 100, mhz + " MHz: " + error.getN() + " points");
            assertEquals(0, error.getMean(), 0.2, mhz + " MHz, mean");
            assertEquals(0, error.getStandardDeviation(), mhz.equals("146") ? 0.3 : 0.4, mhz + " MHz, deviation");
        }
    }

    private static FullWaveRadial march(String id, double mhz, double tx) {
        return FieldMarch.along(FullWaveRows.profile(id), tx, 1.5, channel(id, mhz));
    }

    private static PathConditions channel(String id, double mhz) {
        Map<String, String> ground = GROUND.get(id);
        return conditions(
                mhz,
                Polarization.VERTICAL,
                number(ground, "permittivity"),
                number(ground, "conductivity"),
                number(ground, "k"));
    }

    @Test
    void thePathIsTheLastSampleOfTheRadial() {
        Profile profile = FullWaveRows.profile("d09");
        PathConditions conditions = conditions(146, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);
        PathLoss loss = new FullWave().loss(profile, new Terminals(1.5, 1.5), conditions);
        FullWaveRadial radial = FieldMarch.along(profile, 1.5, 1.5, conditions);
        assertEquals(radial.meanLossDb(profile.count() - 1), loss.lossDb(), 1e-9);
        assertEquals(
                loss.lossDb(), loss.parts().stream().mapToDouble(LossPart::db).sum(), 1e-9);
        assertEquals("full-wave", loss.model());
        assertTrue(LossModels.KEYWORD.find("full-wave").isPresent());
    }

    @Test
    void turnedRoundTheLossIsTheSameWithinTheErrorOfAOneWayMarch() { // law, as far as outward waves obey it
        SummaryStatistics difference = new SummaryStatistics();
        for (String id : List.of("a12", "b08", "c02", "c04", "d05", "d09")) {
            Profile profile = FullWaveRows.profile(id);
            PathConditions conditions = conditions(146, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);
            double there = point(profile, conditions);
            double back = point(Profiles.reversed(profile), conditions);
            difference.addValue(there - back);
        }
        assertTrue(difference.getMax() < 0.5 && difference.getMin() > -0.5, difference.toString());
    }

    private static double point(Profile profile, PathConditions conditions) {
        return FieldMarch.along(profile, 1.5, 1.5, conditions).pointLossDb(profile.count() - 1);
    }

    @Test
    void fiftyMetresIsTheShortestPath() {
        PathConditions conditions = conditions(146, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);
        Terminals terminals = new Terminals(1.5, 1.5);
        PathLoss loss = new FullWave().loss(level(50, 50, 0), terminals, conditions);
        double norton = -20
                * Math.log10(FieldMarchWave.of(conditions)
                        .levelGroundFactor(50, 1.5, 1.5)
                        .abs());
        assertEquals(norton, loss.excessDb(), 0.3);
        Profile tooShort = level(49, 49, 0);
        assertThrows(NoAnswer.class, () -> new FullWave().loss(tooShort, terminals, conditions));
    }

    @Test
    void farOutsideItsFrequenciesItAnswersAndWarns() {
        for (double mhz : new double[] {1, 3000}) {
            PathConditions conditions = conditions(mhz, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);
            PathLoss loss = new FullWave().loss(level(60, 20, 5), new Terminals(1.5, 1.5), conditions);
            assertTrue(loss.excessDb() > -7 && loss.excessDb() < 60, mhz + " MHz: " + loss.excessDb());
            assertTrue(
                    loss.warnings().get(0).contains("30 to 1000 MHz"),
                    loss.warnings().toString());
        }
    }

    @Test
    void deepShadowIsReportedAsLost() {
        PathConditions conditions = conditions(446, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);
        PathLoss loss = new FullWave().loss(FullWaveRows.profile("b06"), new Terminals(1.5, 1.5), conditions);
        assertTrue(loss.excessDb() > 65);
        assertTrue(
                loss.warnings().stream().anyMatch(w -> w.startsWith("Lost")),
                loss.warnings().toString());
    }

    @Test
    void twoHundredThousandSamplesOnAShortWalkAreThinned() {
        int n = 200_000;
        double[] d = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            d[i] = i * 1e-5;
            h[i] = 10 * Math.sin(d[i] * 3);
        }
        PathConditions conditions = conditions(146, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);
        PathLoss loss = new FullWave().loss(Profiles.of(d, h), new Terminals(1.5, 1.5), conditions);
        Profile thin = thinned(d, h, 1000);
        PathLoss same = new FullWave().loss(thin, new Terminals(1.5, 1.5), conditions);
        assertEquals(same.lossDb(), loss.lossDb(), 0.5);
    }

    private static Profile thinned(double[] d, double[] h, int step) {
        int n = (d.length - 1) / step + 2;
        double[] x = new double[n];
        double[] z = new double[n];
        for (int i = 0; i < n; i++) {
            int from = Math.min(i * step, d.length - 1);
            x[i] = d[from];
            z[i] = h[from];
        }
        return Profiles.of(x, z);
    }
}
