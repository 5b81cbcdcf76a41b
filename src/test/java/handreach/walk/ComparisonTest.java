package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.reach.Progress;
import handreach.terrain.Cover;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class ComparisonTest {
    /** Finley's tornado forecasts of 1884 with their scores in Murphy, Weather and Forecasting 11 (1996) 3 (from memory). */
    @Test
    void finleysTornadoesAreScoredAsPublished() {
        CopyTable table = new CopyTable(28, 72, 23, 2680);
        assertEquals(0.966, table.shareRight().orElseThrow(), 0.0005);
        assertTrue(new CopyTable(0, 0, 0, 0).shareRight().isEmpty());
    }

    /** By hand: (0.01 + 0.49 + 0.36 + 0.04)/4. */
    @Test
    void brierFollowsTheHandCount() {
        assertEquals(
                0.225,
                Comparison.brier(new double[] {0.9, 0.7, 0.4, 0.2}, new boolean[] {true, false, true, false}),
                1e-12);
    }

    /** Errors 2, 4, 9: mean 5, squares 9 + 1 + 16 = 26, sd √13, RMSE √(101/3). */
    @Test
    void errorsFollowTheHandCount() {
        Comparison.LevelScore score = Comparison.LevelScore.of(new double[] {2, 4, 9});
        assertEquals(5, score.meanDb(), 1e-12);
        assertEquals(Math.sqrt(13), score.standardDeviationDb(), 1e-12);
        assertEquals(Math.sqrt(101 / 3.0), score.rmseDb(), 1e-12);
    }

    @Test
    void aTruePredictionIsReliableAndItsWorstPlacesComeFirst() {
        SimulatedWalk truth = new SimulatedWalk(0, new double[] {0, 0}, new double[] {0, 0}, 8);
        List<WalkPair> pairs = new ArrayList<>(truth.walk(new Random(9), 3000, false));
        pairs.add(SimulatedWalk.pair(5000, Cover.OPEN, "face", 60, Reception.copy(false), false));
        Comparison comparison = Comparison.of(pairs);
        for (Comparison.Reliability bin : comparison.reliability())
            assertEquals(bin.meanOdds(), bin.shareFound(), 4 * Math.sqrt(0.25 / bin.count()));
        assertEquals(5002, comparison.worst().get(0).spot().line());
        assertEquals(1, comparison.sectors().size());
        assertEquals(3001, comparison.all().copies().count());
    }

    /** Forty readings of one place and one far away: the forty count once. */
    @Test
    void readingsOfOnePlaceCountOnce() {
        List<WalkPair> pairs = new ArrayList<>();
        for (int i = 0; i < 40; i++)
            pairs.add(SimulatedWalk.pair(0, Cover.OPEN, "face", 0, Reception.copy(true), true));
        pairs.add(SimulatedWalk.pair(50, Cover.OPEN, "face", 0, Reception.copy(true), true));
        assertEquals(
                2, DoubleStream.of(Thinning.weights(pairs, 50, Progress.SILENT)).sum(), 1e-6);
    }

    /** Rayleigh fading of known mean power, 0.5 wavelengths apart: the published half-width at 50 readings is about 1 dB. */
    @Test
    void theLocalMeanOfFadingIsFoundWithinItsHalfWidth() {
        Random random = new Random(4);
        int inside = 0;
        int tries = 400;
        for (int t = 0; t < tries; t++) {
            double[] along = new double[50];
            List<Reception> heard = new ArrayList<>();
            for (int i = 0; i < 50; i++) {
                along[i] = 0.5 * i;
                double power = -Math.log(1 - random.nextDouble());
                heard.add(new Reception(Reception.Kind.LEVEL, -100 + 10 * Math.log10(power)));
            }
            LocalMean mean = LocalMean.of(along, heard, 1);
            assertEquals(50, mean.independent());
            assertEquals(1.0, mean.halfWidth90Db(), 0.1);
            if (Math.abs(mean.heard().value() + 100) <= mean.halfWidth90Db()) inside++;
        }
        assertEquals(0.9, (double) inside / tries, 0.05);
    }

    @Test
    void whatWasBelowTheFloorIsNeitherDroppedNorSetToIt() {
        List<Reception> few = List.of(
                new Reception(Reception.Kind.BELOW, -120),
                new Reception(Reception.Kind.LEVEL, -110),
                new Reception(Reception.Kind.LEVEL, -105));
        assertEquals(
                -110 + 1.59,
                LocalMean.of(new double[] {0, 1, 2}, few, 1).heard().value(),
                0.01);
        List<Reception> most = List.of(
                new Reception(Reception.Kind.BELOW, -120),
                new Reception(Reception.Kind.BELOW, -119),
                new Reception(Reception.Kind.LEVEL, -105));
        assertEquals(
                new Reception(Reception.Kind.BELOW, -119),
                LocalMean.of(new double[] {0, 1, 2}, most, 1).heard());
    }

    /** Rows of the score interval as statistics packages give it (prop.test without correction, from memory), to 0.0001. */
    @org.junit.jupiter.params.ParameterizedTest
    @org.junit.jupiter.params.provider.CsvSource({
        "5, 10, 0.2366, 0.7634",
        "0, 10, 0, 0.2775",
        "10, 10, 0.7225, 1",
        "1, 20, 0.0089, 0.2361"
    })
    void theIntervalOfAShareIsThePublishedOne(int found, int of, double low, double high) {
        Comparison.Reliability bin = new Comparison.Reliability(0, 1, of, 0.5, (double) found / of);
        assertEquals(low, bin.share95().low(), 6e-5);
        assertEquals(high, bin.share95().high(), 6e-5);
    }
}
