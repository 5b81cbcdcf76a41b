package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.profile.Zone;
import handreach.terrain.Cover;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Woods, streets, roofs and walls. */
class CoverLossTest {
    @ParameterizedTest
    @CsvFileSource(resources = "woodland-p833.csv", useHeadersInDisplayName = true)
    void woodlandAgreesWithP833(double depthM, double gamma, double ceilingDb, double lossDb) {
        assertEquals(lossDb, Woodland.terminalDb(depthM, gamma, ceilingDb), 0.004);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "woodland-attenuation-p833.csv", useHeadersInDisplayName = true)
    void attenuationAndCeilingAgreeWithP833(double mhz, double gamma, double rounding, double ceilingDb) {
        Frequency f = new Frequency(mhz);
        assertEquals(gamma, Woodland.attenuationDbPerM(f, Polarization.VERTICAL), rounding);
        assertEquals(ceilingDb, Woodland.ceilingDb(f, Polarization.VERTICAL), 0.051);
    }

    @ParameterizedTest
    @CsvSource({"105.9,9.4,1", "466.475,18.0,0.5", "949,26.5,2.2", "1852.2,29.0,3.4", "2117.5,34.1,0.6"})
    void theCeilingFollowsTheMeasuredForest(double mhz, double publishedDb, double fitDb) {
        // Rec. ITU-R P.833-9 section 2.1, table for mixed forest; the formula is the document's own fit, within the
        // given dB.
        assertEquals(publishedDb, Woodland.Kind.MIXED_FOREST.ceilingDb(new Frequency(mhz)), fitDb);
    }

    @Test
    void horizontalIsWeakenedLessUntilOneGigahertz() {
        for (double mhz = 30; mhz <= 1000; mhz += 10) {
            Frequency f = new Frequency(mhz);
            double h = Woodland.attenuationDbPerM(f, Polarization.HORIZONTAL);
            assertTrue(h <= Woodland.attenuationDbPerM(f, Polarization.VERTICAL) + 1e-12);
            assertTrue(
                    terminalDb(f, Polarization.HORIZONTAL, 150) <= terminalDb(f, Polarization.VERTICAL, 150) + 1e-12);
        }
        assertEquals(0.03, Woodland.attenuationDbPerM(new Frequency(150), Polarization.HORIZONTAL), 1e-9);
        assertEquals(
                Woodland.attenuationDbPerM(new Frequency(1000), Polarization.VERTICAL),
                Woodland.attenuationDbPerM(new Frequency(999.99), Polarization.HORIZONTAL),
                0.001);
    }

    @Test
    void aDeepWoodCostsItsCeilingAndNoMore() {
        Frequency f = new Frequency(150);
        double ceiling = Woodland.ceilingDb(f, Polarization.VERTICAL);
        assertEquals(ceiling, terminalDb(f, Polarization.VERTICAL, 20_000), 1e-6);
        assertEquals(0, terminalDb(f, Polarization.VERTICAL, 0));
        // Limit: short depths cost the specific attenuation.
        double gamma = Woodland.attenuationDbPerM(f, Polarization.VERTICAL);
        assertEquals(gamma, terminalDb(f, Polarization.VERTICAL, 1), 0.01 * gamma);
    }

    @Test
    void aBeltBetweenTwoMastsIsFoundWithItsThickness() {
        // By hand: samples every 1 km, wood at 3 and 4 km reaches from 2.5 to 4.5 km; masts of 10 m look through 15 m
        // of trees.
        Profile belt = wooded(new double[9], 3, 4);
        PathConditions conditions = new PathConditions(
                new Frequency(450),
                Polarization.VERTICAL,
                Ground.AVERAGE,
                Atmosphere.ofFactor(1e9, 325),
                Climate.MEDIAN);
        List<TreeBelts.Belt> belts = TreeBelts.across(belt, new Terminals(10, 10), conditions);
        assertEquals(1, belts.size());
        assertEquals(2.5, belts.get(0).fromKm(), 1e-12);
        assertEquals(2000, belts.get(0).thicknessM(), 1e-9);
        // Through 2 km of trees costs 236 dB, so the way goes over: an edge 5 m over the line, 4 + 4 km the worse of
        // the two samples.
        double over = Math.max(
                        KnifeEdge.lossDb(KnifeEdge.nu(5, 3, 5, new Frequency(450).wavelengthM())),
                        KnifeEdge.lossDb(KnifeEdge.nu(5, 4, 4, new Frequency(450).wavelengthM())))
                - KnifeEdge.lossDb(KnifeEdge.nu(-10, 4, 4, new Frequency(450).wavelengthM()));
        assertEquals(over, belts.get(0).lossDb(), 1e-9);
        assertEquals(List.of(), TreeBelts.across(belt, new Terminals(40, 40), conditions));
    }

    @Test
    void woodsAtAnEndAreNotABelt() {
        PathConditions conditions = UsualConditions.at(new Frequency(450));
        assertEquals(
                List.of(), TreeBelts.across(wooded(new double[9], 0, 1, 2, 7, 8), new Terminals(1.5, 1.5), conditions));
        assertEquals(List.of(), TreeBelts.across(wooded(new double[3], 0, 1, 2), new Terminals(1.5, 1.5), conditions));
    }

    @Test
    void treesOnACrestAddOnlyWhatTheyRaiseItBy() {
        double[] ridge = {0, 0, 0, 0, 200, 0, 0, 0, 0};
        PathConditions conditions = new PathConditions(
                new Frequency(450),
                Polarization.VERTICAL,
                Ground.AVERAGE,
                Atmosphere.ofFactor(1e9, 325),
                Climate.MEDIAN);
        double lambda = new Frequency(450).wavelengthM();
        // By hand: ridge 190 m over the line of two 10 m masts, trees 15 m on it.
        double raised =
                KnifeEdge.lossDb(KnifeEdge.nu(205, 4, 4, lambda)) - KnifeEdge.lossDb(KnifeEdge.nu(190, 4, 4, lambda));
        List<TreeBelts.Belt> belts = TreeBelts.across(wooded(ridge, 4), new Terminals(10, 10), conditions);
        assertEquals(raised, TreeBelts.lossDb(belts, conditions), 1e-6);
    }

    @Test
    void manyBeltsCostNoMoreThanTwoCeilings() {
        PathConditions conditions = UsualConditions.at(new Frequency(150));
        List<TreeBelts.Belt> belts =
                TreeBelts.across(wooded(new double[13], 1, 3, 5, 7, 9, 11), new Terminals(1.5, 1.5), conditions);
        assertEquals(6, belts.size());
        assertEquals(
                2 * Woodland.ceilingDb(new Frequency(150), Polarization.VERTICAL),
                TreeBelts.lossDb(belts, conditions),
                1e-9);
    }

    @Test
    void theRunOfWoodEndsHalfWayToTheFirstOpenSample() {
        Profile profile = covered(Cover.WOODLAND, Cover.WOODLAND, Cover.OPEN, Cover.WOODLAND, Cover.OPEN);
        assertEquals(1500, Woodland.runFromEndM(profile, true), 1e-9);
        assertEquals(0, Woodland.runFromEndM(profile, false), 1e-9);
        assertEquals(1500, Woodland.runFromEndM(Profiles.reversed(profile), false), 1e-9);
        Profile all = covered(Cover.WOODLAND, Cover.WOODLAND, Cover.WOODLAND);
        assertEquals(2000, Woodland.runFromEndM(all, true), 1e-9);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "terminal-clutter-p2108.csv", useHeadersInDisplayName = true)
    void terminalClutterAgreesWithP2108(
            double mhz, Cover cover, double heightM, double clutterM, double lossDb, double rounding) {
        assertEquals(
                lossDb,
                TerminalClutter.lossDb(new Frequency(mhz), cover, heightM, clutterM, TerminalClutter.STREET_WIDTH_M),
                rounding);
    }

    @ParameterizedTest
    @EnumSource(Cover.class)
    void anAntennaAboveTheRoofsLosesNothing(Cover cover) {
        double top = TerminalClutter.representativeHeightM(cover);
        Frequency f = new Frequency(450);
        assertEquals(0, TerminalClutter.lossDb(f, cover, top, top, 27));
        assertTrue(TerminalClutter.lossDb(f, cover, top - 0.001, top, 27) < 0.05);
        assertTrue(TerminalClutter.lossDb(f, cover, 1, top, 27) > TerminalClutter.lossDb(f, cover, 2, top, 27));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "street-level-spread-p1411.csv", useHeadersInDisplayName = true)
    void streetSpreadsAgreeWithTheTableOfP1411(double percent, double sightDb, double cornerDb, double sightM) {
        assertEquals(sightDb, StreetLevel.sightSpreadDb(percent), 0.051);
        assertEquals(cornerDb, StreetLevel.cornerSpreadDb(percent), 0.051);
        assertEquals(sightM, StreetLevel.sightRangeM(percent), 0.51);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "street-level-p1411.csv", useHeadersInDisplayName = true)
    void streetLossAgreesWithTheRows(double mhz, double distanceM, double percent, Cover town, double lossDb) {
        assertEquals(lossDb, StreetLevel.lossDb(new Frequency(mhz), distanceM, town, percent), 0.006);
    }

    @Test
    void nothingJumpsAtTheCorner() {
        Frequency f = new Frequency(446);
        double at = StreetLevel.sightRangeM(50);
        for (double edge : new double[] {at, at + 20})
            assertEquals(
                    StreetLevel.lossDb(f, edge - 1e-6, Cover.URBAN, 50),
                    StreetLevel.lossDb(f, edge + 1e-6, Cover.URBAN, 50),
                    1e-3);
    }

    @Test
    void belowThreeHundredMegahertzStreetsFallBackAndSaySo() {
        Profile town = covered(Cover.URBAN, Cover.URBAN, Cover.SUBURBAN);
        Terminals hands = new Terminals(1.9, 1.9);
        PathLoss low = new StreetLevelModel().loss(town, hands, UsualConditions.at(new Frequency(150)));
        PathLoss ends = new ClutterAtEndsModel().loss(town, hands, UsualConditions.at(new Frequency(150)));
        assertEquals(ends.lossDb(), low.lossDb(), 1e-9);
        assertTrue(low.warnings().stream().anyMatch(w -> w.contains("300 to 3000 MHz")));
        PathLoss high = new StreetLevelModel().loss(town, hands, UsualConditions.at(new Frequency(446)));
        assertEquals(StreetLevel.lossDb(new Frequency(446), 2000, Cover.URBAN, 50), high.lossDb(), 1e-9);
        assertEquals(0, high.warnings().size());
    }

    @Test
    void clutterAtTheEndsIsCountedOncePerEnd() {
        Profile town = covered(Cover.URBAN, Cover.OPEN, Cover.OPEN);
        PathConditions conditions = UsualConditions.at(new Frequency(450));
        PathLoss loss = new ClutterAtEndsModel().loss(town, new Terminals(1.5, 1.5), conditions);
        // By hand: the first end is reckoned to 15 m of roofs and gets 19.566 dB (row above), the last stays at 1.5 m
        // and gets none.
        assertEquals(19.566, loss.parts().get(2).db(), 0.0006);
        assertEquals(0, loss.parts().get(3).db());
        PathLoss above = new DeltaBullingtonModel().loss(town.bare(), new Terminals(15, 1.5), conditions);
        assertEquals(above.lossDb() + 19.566, loss.lossDb(), 0.01);
    }

    @Test
    void whatLiesOutsideTheDocumentsIsSaid() {
        assertEquals(
                1, Woodland.warnings(new Frequency(50), Polarization.VERTICAL).size());
        assertEquals(
                1,
                Woodland.warnings(new Frequency(150), Polarization.HORIZONTAL).size());
        assertEquals(
                0, Woodland.warnings(new Frequency(150), Polarization.VERTICAL).size());
        assertEquals(1, TerminalClutter.warnings(new Frequency(20)).size());
        assertEquals(0, TerminalClutter.warnings(new Frequency(150)).size());
    }

    private static double terminalDb(Frequency f, Polarization polarization, double depthM) {
        return Woodland.terminalDb(
                depthM, Woodland.attenuationDbPerM(f, polarization), Woodland.ceilingDb(f, polarization));
    }

    @Test
    void nonsenseIsRefused() {
        Frequency f = new Frequency(450);
        assertThrows(IllegalArgumentException.class, () -> terminalDb(f, Polarization.VERTICAL, -1));
        assertThrows(IllegalArgumentException.class, () -> TerminalClutter.lossDb(f, Cover.URBAN, 0, 15, 27));
        assertThrows(IllegalArgumentException.class, () -> StreetLevel.lossDb(f, 100, Cover.URBAN, 100));
    }

    private static Profile wooded(double[] heightM, int... woods) {
        int n = heightM.length;
        double[] d = new double[n];
        double[] c = new double[n];
        Cover[] cover = new Cover[n];
        Zone[] zone = new Zone[n];
        Arrays.fill(cover, Cover.OPEN);
        Arrays.fill(zone, Zone.INLAND);
        for (int i = 0; i < n; i++) d[i] = i;
        for (int i : woods) {
            cover[i] = Cover.WOODLAND;
            c[i] = 15;
        }
        return Profile.of(d, heightM, c, cover, zone);
    }

    private static Profile covered(Cover... cover) {
        int n = cover.length;
        double[] d = new double[n];
        Zone[] zone = new Zone[n];
        for (int i = 0; i < n; i++) {
            d[i] = i;
            zone[i] = Zone.INLAND;
        }
        return Profile.of(d, new double[n], new double[n], cover, zone);
    }
}
