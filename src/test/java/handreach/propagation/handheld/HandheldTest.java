package handreach.propagation.handheld;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.profile.Zone;
import handreach.propagation.Atmosphere;
import handreach.propagation.Climate;
import handreach.propagation.FullWaveRows;
import handreach.propagation.Ground;
import handreach.propagation.HandheldByHand;
import handreach.propagation.HandheldGrounds;
import handreach.propagation.LossPart;
import handreach.propagation.NoAnswer;
import handreach.propagation.PathConditions;
import handreach.propagation.PathLoss;
import handreach.propagation.Swapped;
import handreach.propagation.TerminalClutter;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.terrain.Cover;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Laws, limits and the slow oracle of the default model over bare ground. */
class HandheldTest {
    private static final Handheld MODEL = new Handheld();
    private static final double LARGEST_STEP_DB = 1;

    @Test
    void agreesWithTheFormulaByHand() {
        // Antennas 2 m, 146 MHz H over a roof: 0, 100, 0 m at 0, 4, 10 km; earth flat (k = 1e6). λ = 2.05337 m, k =
        // 3.05993 /m.
        // Bend at the ridge: slopes +98/4000 and −98/6000: Θ = 0.0408333; M = Θ · 4000 · 6000/10000 = 98 m (the height
        // over the line).
        // ν² = 2ΘM/λ = 3.89765, ν = 1.97425, J = 6.9 + 20 log(√(1.87425² + 1) + 1.87425) = 18.938 dB. One edge: s = 0.
        // E = 18.938 + 7 = 25.938 dB.
        // String over ground, x in km: 2(1 − x/4) m up to the ridge, (x − 4)/3 m beyond. Near end, weight (1 − x/10)³:
        // 2.6944 up to it
        //   + 0.1296 beyond = 2.8240 km·m, α = 20 · 2824.0/1e8 = 5.6480e-4. Far end, weight (x/10)³: 0.0256 + 3.3504 =
        // 3.3760,
        //   α = 6.7520e-4.
        // Horizontal, δ = √(14 − j0.6156) = 3.7426 − j0.0822: |2 + 1/(jkδ)| = |2 + 0.0019 − j0.0873| = 2.0038 m.
        // y = 2 k · 2.0038 α = 6.9262e-3 and 8.2800e-3; 5.5 log(20847 · 14587) = 46.657 dB.
        // Roughness: the roof's variance 100²/12 less what its line takes, (5/3)² · 12: r = √800 = 28.284 m, r/√λ =
        // 19.738:
        //   8.5 · 19.738/24.738 = 6.782 dB; above 2.5 √λ, so q = 1.
        // Ground around the ends: string over ground 120 m from them 1.94 and 1.96 m, ¼√(120 λ) = 3.924 m: c = 0.33082
        // and 0.33309;
        //   turn 0.64 + 0.2 log 2.0038 = 0.70037; 7.8(c − turn) = −2.8825 and −2.8648; −2.8825/√(1 + 2.8825²) = −0.9448
        // and −0.9441:
        //   3.3 · 1.8889 = 6.233 dB.
        // G = −6.9 + 6.782 + 46.657 + 6.233 = 52.772 dB; together 78.710 dB.
        Profile roof = Profiles.of(new double[] {0, 4, 10}, new double[] {0, 100, 0});
        PathConditions flat = new PathConditions(
                new Frequency(146),
                Polarization.HORIZONTAL,
                Ground.AVERAGE,
                Atmosphere.ofFactor(1e6, 325),
                Climate.MEDIAN);
        PathLoss loss = MODEL.loss(roof, new Terminals(2, 2), flat);
        assertEquals(78.710, loss.excessDb(), 0.01);
        assertEquals(25.938, part(loss, "edges"), 0.002);
        assertEquals(52.772, part(loss, "ground"), 0.01);
    }

    @Test
    void agreesWithThePlainAndSlowReckoning() { // oracle: every measure by search and by numerical integration
        for (int seed = 0; seed < 60; seed++) {
            Ground ground = new Ground(4 + seed % 20, 0.005);
            HandheldGrounds at = HandheldGrounds.random(seed);
            PathConditions conditions = at.conditions(ground);
            double slow = new HandheldByHand(at.distanceM(), at.heightM(), at.terminals(), conditions).excessDb();
            double fast = MODEL.loss(at.profile(), at.terminals(), conditions).excessDb();
            assertEquals(slow, fast, 0.01, at.toString());
        }
    }

    @Test
    void swappingTheEndsChangesNothing() { // law: reciprocity
        for (int seed = 0; seed < 400; seed++) {
            HandheldGrounds at = HandheldGrounds.random(seed);
            PathConditions conditions = at.conditions(Ground.AVERAGE);
            double there = MODEL.loss(at.profile(), at.terminals(), conditions).lossDb();
            double back = MODEL.loss(Profiles.reversed(at.profile()), Swapped.ends(at.terminals()), conditions)
                    .lossDb();
            assertEquals(there, back, 1e-5, at.toString());
        }
    }

    @Test
    void aHundredthMoreDistanceNeverMakesAStep() { // law: continuity over every switch-over; lobes of level ground
        // left out
        for (int seed = 0; seed < 1500; seed++) {
            HandheldGrounds at = HandheldGrounds.random(seed);
            if (at.standsAmongLobes()) continue;
            assertEquals(at.excessDb(1, 1, 1), at.excessDb(1.01, 1, 1), LARGEST_STEP_DB, at.toString());
        }
    }

    @Test
    void aHundredthMoreHeightNeverMakesAStepAndNeverCosts() { // law: continuity, and monotony below the lobes
        for (int seed = 0; seed < 1500; seed++) {
            HandheldGrounds at = HandheldGrounds.random(seed);
            if (at.standsAmongLobes()) continue;
            double before = at.excessDb(1, 1, 1);
            for (double after : new double[] {at.excessDb(1, 1.01, 1), at.excessDb(1, 1, 1.01)}) {
                assertEquals(before, after, LARGEST_STEP_DB, at.toString());
                assertTrue(after < before + 0.02, at + ": " + before + " dB, higher antenna " + after + " dB");
            }
        }
    }

    @Test
    void neverBeatsFreeSpaceByMoreThanOneReflectionCan() { // limit
        for (int seed = 0; seed < 800; seed++)
            assertTrue(HandheldGrounds.random(seed).excessDb(1, 1, 1) >= -20 * Math.log10(2) - 1e-9);
    }

    @Test
    void aRadialWalkedOnceSaysTheSameAsEveryPathCut() { // law: area equals path
        HandheldGrounds at = HandheldGrounds.random(8);
        PathConditions conditions = at.conditions(Ground.AVERAGE);
        HandheldTerms terms = HandheldTerms.of(conditions, at.terminals());
        StretchedString string = new StretchedString(at.profile().count());
        string.start(terms.effectiveRadiusM(), at.heightM()[0], at.terminals().txHeightM());
        for (int i = 1; i < at.profile().count(); i++) {
            string.add(at.distanceM()[i], at.heightM()[i]);
            if (at.distanceM()[i] < 50) continue;
            double path =
                    MODEL.loss(at.profile().upTo(i), at.terminals(), conditions).excessDb();
            assertEquals(path, terms.excessDb(string, terms.near(), terms.far()), 1e-9);
        }
    }

    @Test
    void deepShadowIsCalledLostAndStaysFiniteAndInOrder() { // limit
        double before = 0;
        for (double ridgeM = 300; ridgeM < 9000; ridgeM *= 1.3) {
            PathLoss loss = MODEL.loss(ridge(5, 2.5, ridgeM), new Terminals(1.5, 1.5), at(446));
            assertTrue(loss.excessDb() > before, "ridge of " + ridgeM + " m");
            before = loss.excessDb();
            assertEquals(before > 65, loss.warnings().stream().anyMatch(w -> w.startsWith("Lost")));
        }
        assertTrue(before > 65 && before < 200);
    }

    @Test
    void samplingOfLevelGroundDoesNotMatter() { // law, where the earth's bulge between two samples is below a
        // centimetre
        for (double lengthM : new double[] {60, 100, 300, 800}) {
            PathLoss fine = MODEL.loss(FullWaveRows.level(lengthM, 5, 50), new Terminals(1.5, 3), at(146));
            Profile two = Profiles.of(new double[] {0, lengthM / 1000}, new double[] {50, 50});
            Profile lame = Profiles.of(new double[] {0, lengthM * 0.9e-3, lengthM / 1000}, new double[] {50, 50, 50});
            assertEquals(
                    fine.excessDb(),
                    MODEL.loss(two, new Terminals(1.5, 3), at(146)).excessDb(),
                    0.05);
            assertEquals(
                    fine.excessDb(),
                    MODEL.loss(lame, new Terminals(1.5, 3), at(146)).excessDb(),
                    0.05);
        }
    }

    @Test
    void aStraightSlopeIsLevelGround() { // law: tilting the whole path changes nothing but the free-space distance
        int n = 101;
        double[] d = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            d[i] = 0.03 * i;
            h[i] = 500 - 2.7 * i;
        }
        double tilted =
                MODEL.loss(Profiles.of(d, h), new Terminals(1.5, 1.5), at(146)).excessDb();
        double level = MODEL.loss(FullWaveRows.level(3000, 30, 0), new Terminals(1.5, 1.5), at(146))
                .excessDb();
        assertEquals(level, tilted, 0.01);
    }

    @Test
    void partsAddUpAndFreeSpaceComesFirst() {
        PathLoss loss = MODEL.loss(ridge(8, 3, 120), new Terminals(1.5, 10), at(146));
        assertEquals("free space", loss.parts().get(0).name());
        assertEquals(
                loss.lossDb(), loss.parts().stream().mapToDouble(LossPart::db).sum(), 1e-9);
        assertEquals(0, part(loss, "woodland"));
        assertEquals(0, part(loss, "town"));
    }

    @Test
    void aLongPathOfManySamplesWorks() {
        int n = 200_000;
        double[] d = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            d[i] = i * 3e-4;
            h[i] = -3 + 2 * Math.sin(i * 1e-3);
        }
        double excess =
                MODEL.loss(Profiles.of(d, h), new Terminals(1.5, 1.5), at(146)).excessDb();
        assertTrue(excess > 60 && excess < 150, excess + " dB");
    }

    @Test
    void warnsOutsideItsRangeAndRefusesWhatIsNoPath() {
        assertFalse(MODEL.loss(ridge(8, 3, 120), new Terminals(1.5, 1.5), at(146)).warnings().stream()
                .anyMatch(w -> w.contains("outside")));
        assertTrue(MODEL.loss(ridge(8, 3, 120), new Terminals(0.3, 150), at(2400)).warnings().stream()
                        .filter(w -> w.contains("outside"))
                        .count()
                == 3);
        assertThrows(NoAnswer.class, () -> MODEL.loss(FullWaveRows.level(40, 10, 0), new Terminals(1.5, 1.5), at(146)));
    }

    @Test
    void aWoodAroundAnEndCostsUpToItsCeilingAndNothingElse() {
        // P.833-9 (1): 95 m deep at 150 MHz V: γ = 0.02 · 5^0.6567 = 0.05755 dB/m, A_m = 1.37 · 150^0.42 = 11.238 dB:
        // 11.238 (1 − exp(−5.467/11.238)) = 4.329 dB
        double bare = MODEL.loss(covered(Cover.OPEN, 0, Cover.OPEN, 0), new Terminals(1.5, 1.5), at(150))
                .lossDb();
        PathLoss wood = MODEL.loss(covered(Cover.WOODLAND, 95, Cover.OPEN, 0), new Terminals(1.5, 1.5), at(150));
        assertEquals(4.329, part(wood, "woodland"), 0.002);
        assertEquals(bare + part(wood, "woodland"), wood.lossDb(), 1e-9);
        PathLoss both =
                MODEL.loss(covered(Cover.WOODLAND, 1500, Cover.WOODLAND, 1500), new Terminals(1.5, 1.5), at(150));
        assertEquals(2 * 11.238, part(both, "woodland"), 0.03);
    }

    @Test
    void eachEndLeavesItsOwnWoodByItsOwnTreeTops() {
        // By hand, 150 MHz V: γ 0.05755 dB/m, A_m 11.238 dB (above). Level ground on a flat earth, a crest of 200 m
        // half-way on
        // 3 km, antennas 2 and 4 m up: the string rises with 198/1500 at the first end and with 196/1500 at the last.
        // Trees of 12 m
        // at the first end and 30 m at the last.
        // Ways in the trees: 10/(198/1500) = 75.76 m: 3.614 dB; 26/(196/1500) = 198.98 m: 7.181 dB.
        double treesThere = -11.238 * Math.expm1(-75.76 * 0.05755 / 11.238);
        double treesBack = -11.238 * Math.expm1(-198.98 * 0.05755 / 11.238);
        Profile crest = wooded(12, 30);
        PathConditions flat = new PathConditions(
                new Frequency(150),
                Polarization.VERTICAL,
                Ground.AVERAGE,
                Atmosphere.ofFactor(1e6, 325),
                Climate.MEDIAN);
        PathLoss there = MODEL.loss(crest, new Terminals(2, 4), flat);
        assertEquals(treesThere + treesBack, part(there, "woodland"), 0.01);
        PathLoss back = MODEL.loss(Profiles.reversed(crest), new Terminals(4, 2), flat);
        assertEquals(part(there, "woodland"), part(back, "woodland"), 1e-9);
        // 18 m of trees in place of 30 at the last end: 14 m over the antenna, 107.14 m of way.
        double lower = -11.238 * Math.expm1(-107.14 * 0.05755 / 11.238);
        assertEquals(treesThere + lower, part(MODEL.loss(wooded(12, 18), new Terminals(2, 4), flat), "woodland"), 0.01);
    }

    @Test
    void roofsOfUnlikeHeightCountAtTheirOwnEnd() {
        PathConditions conditions = at(446);
        Terminals hands = new Terminals(1.5, 2);
        double over = MODEL.loss(covered(Cover.OPEN, 0, Cover.OPEN, 0), new Terminals(8, 24), conditions)
                        .excessDb()
                + TerminalClutter.lossDb(conditions.frequency(), Cover.SUBURBAN, 1.5, 8, 27)
                + TerminalClutter.lossDb(conditions.frequency(), Cover.URBAN, 2, 24, 27);
        Profile towns = standing(covered(Cover.SUBURBAN, 200, Cover.URBAN, 200), 8, 24);
        assertEquals(over, MODEL.loss(towns, hands, conditions).excessDb(), 1e-9);
        assertEquals(
                over,
                MODEL.loss(Profiles.reversed(towns), Swapped.ends(hands), conditions)
                        .excessDb(),
                1e-6);
    }

    @Test
    void anAntennaAboveTheTreesOrRoofsLosesNothingToThem() {
        PathLoss loss = MODEL.loss(covered(Cover.WOODLAND, 500, Cover.URBAN, 500), new Terminals(16, 16), at(150));
        assertEquals(0, part(loss, "woodland"));
        assertEquals(0, part(loss, "town"));
    }

    @Test
    void aTownIsReckonedOverItsRoofsButNeverBetterThanOpenGround() {
        PathConditions conditions = at(446);
        Profile bare = covered(Cover.OPEN, 0, Cover.OPEN, 0);
        double open = MODEL.loss(bare, new Terminals(1.5, 1.5), conditions).excessDb();
        double overRoofs = MODEL.loss(bare, new Terminals(1.5, 15), conditions).excessDb()
                + TerminalClutter.lossDb(conditions.frequency(), Cover.URBAN, 1.5, 15, 27);
        PathLoss town = MODEL.loss(covered(Cover.OPEN, 0, Cover.URBAN, 200), new Terminals(1.5, 1.5), conditions);
        assertEquals(Math.max(open, overRoofs), town.excessDb(), 1e-9);
        PathLoss back = MODEL.loss(covered(Cover.URBAN, 200, Cover.OPEN, 0), new Terminals(1.5, 1.5), conditions);
        assertEquals(town.excessDb(), back.excessDb(), 1e-6);
        double lower = MODEL.loss(covered(Cover.OPEN, 0, Cover.SUBURBAN, 200), new Terminals(1.5, 1.5), conditions)
                .excessDb();
        assertTrue(lower >= open);
    }

    private static double part(PathLoss loss, String name) {
        return loss.parts().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow()
                .db();
    }

    private static PathConditions at(double mhz) {
        return UsualConditions.at(new Frequency(mhz));
    }

    /** Level ground but for one triangular ridge, 30 m samples. */
    private static Profile ridge(double lengthKm, double atKm, double heightM) {
        int n = (int) Math.round(lengthKm / 0.03) + 1;
        double[] d = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            d[i] = lengthKm * i / (n - 1);
            h[i] = Math.max(0, heightM * (1 - Math.abs(d[i] - atKm) / 0.9));
        }
        return Profiles.of(d, h);
    }

    /** Woods 300 m deep at both ends of 3 km with one crest of 200 m half-way, trees of these heights around the ends. */
    private static Profile wooded(double nearTreesM, double farTreesM) {
        Profile level = covered(Cover.WOODLAND, 300, Cover.WOODLAND, 300);
        double[] ground = level.heightsM();
        ground[150] = 200;
        Cover[] cover = new Cover[301];
        Zone[] zone = new Zone[301];
        for (int i = 0; i < cover.length; i++) {
            cover[i] = level.cover(i);
            zone[i] = level.zone(i);
        }
        return standing(Profile.of(level.distancesKm(), ground, new double[301], cover, zone), nearTreesM, farTreesM);
    }

    /** The same with what stands around the ends told: so high around the first half's cover, so high around the other's. */
    private static Profile standing(Profile profile, double nearM, double farM) {
        int n = profile.count();
        double[] clutter = new double[n];
        Cover[] cover = new Cover[n];
        Zone[] zone = new Zone[n];
        for (int i = 0; i < n; i++) {
            cover[i] = profile.cover(i);
            zone[i] = profile.zone(i);
            if (cover[i] != Cover.OPEN) clutter[i] = 2 * i < n ? nearM : farM;
        }
        return Profile.of(profile.distancesKm(), profile.heightsM(), clutter, cover, zone);
    }

    /** Level 3 km with so many metres of cover around each end; borders half-way between the 10 m samples. */
    private static Profile covered(Cover near, double nearM, Cover far, double farM) {
        int n = 301;
        double[] d = new double[n];
        Cover[] cover = new Cover[n];
        Zone[] zone = new Zone[n];
        Arrays.fill(zone, Zone.INLAND);
        for (int i = 0; i < n; i++) {
            d[i] = 0.01 * i;
            cover[i] = 10 * i < nearM ? near : 3000 - 10 * i < farM ? far : Cover.OPEN;
        }
        return Profile.of(d, new double[n], new double[n], cover, zone);
    }
}
