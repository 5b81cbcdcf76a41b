package handreach.propagation.march;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.propagation.PathConditions;
import handreach.propagation.UsualConditions;
import handreach.units.Frequency;
import java.lang.module.ModuleFinder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Radials in lockstep against each of them by itself. */
class LaneMarchTest {
    private static final double LOST_DB = 65;

    @ParameterizedTest
    @CsvSource({"146, 1, 0.03, 0.2", "146, 4, 0.2, 1.2", "446, 1, 0.03, 0.2"})
    void everyLaneHasTheLossOfItsOwnMarch(double mhz, double steepness, double rmsDb, double largestDb) {
        PathConditions conditions = UsualConditions.at(new Frequency(mhz));
        List<Profile> profiles = neighbours(11, 60, steepness);
        List<List<FullWaveRadial>> together =
                FieldMarch.bundle(profiles, 1.5, new double[] {1.5, 6}, conditions, share -> true, new PlainLanes());
        double square = 0;
        double largest = 0;
        int n = 0;
        for (int i = 0; i < profiles.size(); i++) {
            List<FullWaveRadial> alone =
                    FieldMarch.along(profiles.get(i), 1.5, new double[] {1.5, 6}, conditions, share -> true);
            for (int k = 0; k < 2; k++) {
                assertEquals(alone.get(k).answered(), together.get(i).get(k).answered());
                for (int s = 1; s < alone.get(k).answered(); s++) {
                    if (alone.get(k).excessDb(s) > LOST_DB) continue;
                    double by =
                            together.get(i).get(k).meanLossDb(s) - alone.get(k).meanLossDb(s);
                    square += by * by;
                    largest = Math.max(largest, Math.abs(by));
                    n++;
                }
            }
        }
        double rms = Math.sqrt(square / n);
        assertTrue(n > 500 && rms < rmsDb && largest < largestDb, n + " points, rms " + rms + ", largest " + largest);
    }

    /** The same radials by the vectors of this machine, which need a virtual machine of their own. */
    @Test
    void vectorsGiveWhatPlainLoopsGive() throws Exception {
        Assumptions.assumeTrue(
                ModuleFinder.ofSystem().find("jdk.incubator.vector").isPresent(), "no vector module here");
        Process run = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "--add-modules",
                        "jdk.incubator.vector",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Vectors.class.getName())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String[] said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                .strip()
                .split(" ");
        assertEquals(0, run.waitFor());
        assertEquals("VectorLanes", said[0]);
        assertTrue(Double.parseDouble(said[1]) < 0.05, "largest difference " + said[1] + " dB");
        assertTrue(Double.parseDouble(said[1]) > 0, "two arithmetics differ by rounding");
    }

    /** Prints which lanes there are, and the largest difference of theirs from plain loops, dB. */
    static final class Vectors {
        public static void main(String[] args) {
            PathConditions conditions = UsualConditions.at(new Frequency(146));
            List<Profile> profiles = neighbours(16, 60, 1);
            double[] height = {1.5};
            List<List<FullWaveRadial>> fast =
                    FieldMarch.bundle(profiles, 1.5, height, conditions, s -> true, LaneChoice.best());
            List<List<FullWaveRadial>> plain =
                    FieldMarch.bundle(profiles, 1.5, height, conditions, s -> true, new PlainLanes());
            double largest = 0;
            for (int i = 0; i < profiles.size(); i++) {
                FullWaveRadial one = plain.get(i).get(0);
                for (int s = 1; s < one.answered(); s++)
                    if (one.excessDb(s) <= LOST_DB)
                        largest = Math.max(largest, Math.abs(fast.get(i).get(0).meanLossDb(s) - one.meanLossDb(s)));
            }
            System.out.println(LaneChoice.best().getClass().getSimpleName() + " " + largest);
        }
    }

    @Test
    void aShorterRadialIsTheBeginningOfTheLonger() {
        PathConditions conditions = UsualConditions.at(new Frequency(146));
        List<Profile> whole = neighbours(3, 60, 1);
        List<Profile> cut = List.of(whole.get(0), whole.get(1).upTo(30), whole.get(2));
        double[] height = {1.5};
        FullWaveRadial all = FieldMarch.bundle(whole, 1.5, height, conditions, s -> true, new PlainLanes())
                .get(1)
                .get(0);
        FullWaveRadial some = FieldMarch.bundle(cut, 1.5, height, conditions, s -> true, new PlainLanes())
                .get(1)
                .get(0);
        assertEquals(31, some.count());
        for (int i = 1; i < 30; i++) assertEquals(all.meanLossDb(i), some.meanLossDb(i), 0.05);
    }

    /** Law: the root of a turn is the cosine of the ray's angle, less one. */
    @Test
    void oneTermServesForTheRootOfATurnUpTo26Degrees() {
        double a = FieldMarchTurn.strength(1, 1);
        double b = FieldMarchTurn.spread(1, 1, 1);
        for (int deg = 0; deg <= 26; deg++) {
            double cosine = Math.cos(Math.toRadians(deg));
            double x = cosine * cosine - 1;
            assertEquals(cosine - 1, a * x / (1 + b * x), 5e-5, deg + " degrees");
        }
    }

    /** Where one radial ends on a slope, the others must not pay for a corner that nobody stands behind. */
    @Test
    void aRadialThatEndsOnASlopeLeavesItsNeighboursAlone() {
        PathConditions conditions = UsualConditions.at(new Frequency(146));
        List<Profile> whole = neighbours(16, 160, 0.1).stream()
                .map(profile -> climbing(profile, 100))
                .toList();
        List<Profile> cut = new ArrayList<>(whole);
        for (int i = 0; i < 16; i += 2) cut.set(i, whole.get(i).upTo(120 + i));
        double[] height = {1.5};
        List<List<FullWaveRadial>> together =
                FieldMarch.bundle(cut, 1.5, height, conditions, s -> true, new PlainLanes());
        for (int i = 1; i < 16; i += 4) {
            FullWaveRadial alone = FieldMarch.along(whole.get(i), 1.5, 1.5, conditions);
            for (int s = 100; s < 160; s++)
                assertEquals(alone.meanLossDb(s), together.get(i).get(0).meanLossDb(s), 1, "lane " + i + ", " + s);
        }
    }

    /** A crest of 42° under some, a slope on and on under the others: a corner of one must not cost its neighbours their field. */
    @Test
    void aCrestUnderOneLaneLeavesItsNeighboursAlone() {
        PathConditions conditions = UsualConditions.at(new Frequency(146));
        List<Profile> profiles = new ArrayList<>();
        for (Profile hills : neighbours(16, 160, 0.1)) {
            int lane = profiles.size();
            profiles.add(lane % 2 == 0 ? levelFrom(climbing(hills, 100), 120 + lane) : climbing(hills, 100));
        }
        double[] height = {1.5};
        List<List<FullWaveRadial>> together =
                FieldMarch.bundle(profiles, 1.5, height, conditions, s -> true, new PlainLanes());
        for (int i = 0; i < 16; i += 3) {
            FullWaveRadial alone = FieldMarch.along(profiles.get(i), 1.5, 1.5, conditions);
            for (int s = 60; s < 160; s++) {
                if (alone.excessDb(s) > LOST_DB) continue;
                assertEquals(alone.meanLossDb(s), together.get(i).get(0).meanLossDb(s), 2, "lane " + i + ", " + s);
            }
        }
    }

    /** Samples between posts, as they are cut from tiles: in lockstep they are averaged, by itself a radial keeps each. */
    @ParameterizedTest
    @CsvSource({"146, 1, 0.1, 0.5", "146, 3, 0.3, 1.5", "446, 1, 0.2, 1"})
    void samplesBetweenPostsTellLittleMore(double mhz, double steepness, double rmsDb, double largestDb) {
        PathConditions conditions = UsualConditions.at(new Frequency(mhz));
        List<Profile> profiles = neighbours(5, 60, steepness).stream()
                .map(LaneMarchTest::betweenPosts)
                .toList();
        double[] height = {1.5};
        List<List<FullWaveRadial>> together =
                FieldMarch.bundle(profiles, 1.5, height, conditions, share -> true, new PlainLanes());
        SummaryStatistics by = new SummaryStatistics();
        for (int i = 0; i < profiles.size(); i++) {
            FullWaveRadial alone = FieldMarch.along(profiles.get(i), 1.5, height, conditions, share -> true)
                    .get(0);
            for (int s = 9; s < alone.answered(); s++)
                if (alone.excessDb(s) <= LOST_DB)
                    by.addValue(together.get(i).get(0).meanLossDb(s) - alone.meanLossDb(s));
        }
        double rms = Math.sqrt(by.getSumsq() / by.getN());
        double largest = Math.max(by.getMax(), -by.getMin());
        assertTrue(by.getN() > 300 && rms < rmsDb && largest < largestDb, "rms " + rms + ", " + by);
    }

    private static Profile betweenPosts(Profile posts) {
        int n = 3 * (posts.count() - 1) + 1;
        double[] d = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            int before = Math.min(i / 3, posts.count() - 2);
            double share = i / 3.0 - before;
            d[i] = 0.01 * i;
            h[i] = posts.heightM(before) + share * (posts.heightM(before + 1) - posts.heightM(before));
        }
        return Profiles.of(d, h);
    }

    private static Profile levelFrom(Profile profile, int sample) {
        double[] h = profile.heightsM();
        for (int i = sample + 1; i < h.length; i++) h[i] = h[sample];
        return Profiles.of(profile.distancesKm(), h);
    }

    /** The same as a valley 600 m deep, with a slope of 42° on its far side from a sample on. */
    private static Profile climbing(Profile profile, int from) {
        double[] h = profile.heightsM();
        double[] d = profile.distancesKm();
        double climbM = 0;
        for (int i = 0; i < h.length; i++) h[i] -= 600 * Math.sin(Math.PI * Math.min(i, from) / 2 / from);
        for (int i = from; i < h.length; i++) {
            climbM += 1000 * (d[i] - d[i - 1]) * Math.tan(Math.toRadians(42)) * Math.min(1, 0.1 * (i - from));
            h[i] += climbM;
        }
        return Profiles.of(d, h);
    }

    /** Invented hills, from one radial to the next a little different. */
    private static List<Profile> neighbours(int count, int samples, double steepness) {
        Random random = new Random(7);
        double[] phase = random.doubles(12, 0, 2 * Math.PI).toArray();
        List<Profile> profiles = new ArrayList<>();
        for (int p = 0; p < count; p++) {
            double[] d = new double[samples];
            double[] h = new double[samples];
            for (int i = 0; i < samples; i++) {
                d[i] = i * 0.03;
                for (int w = 1; w <= phase.length; w++)
                    h[i] += steepness
                            * 30
                            / Math.pow(w, 1.3)
                            * Math.sin(phase[w - 1] + 0.02 * p * w + 2 * Math.PI * w * d[i] / 4);
            }
            profiles.add(Profiles.of(d, h));
        }
        return profiles;
    }
}
