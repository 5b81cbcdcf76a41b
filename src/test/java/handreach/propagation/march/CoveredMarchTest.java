package handreach.propagation.march;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.profile.Zone;
import handreach.propagation.FullWaveRows;
import handreach.propagation.LossPart;
import handreach.propagation.PathConditions;
import handreach.propagation.PathLoss;
import handreach.propagation.Step;
import handreach.propagation.Swapped;
import handreach.propagation.TerminalClutter;
import handreach.propagation.Terminals;
import handreach.propagation.handheld.Handheld;
import handreach.terrain.Cover;
import handreach.units.Polarization;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Woods and towns around the ends of a march, the two ends unlike each other. */
class CoveredMarchTest {
    private static final Terminals HANDS = new Terminals(1.6, 2.4);
    private static final PathConditions CHANNEL =
            FullWaveRows.conditions(146, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);

    /** The same angles by two ways, straight from the string and through degrees. */
    private static final double ROUNDING_DB = 1e-6;

    /** A reading at roof height makes the grid taller: stated as hundredths of a decibel. */
    private static final double TALLER_GRID_DB = 0.02;

    /** A march turned round, as docs/full-wave.md has it for excess below 65 dB. */
    private static final double TURNED_ROUND_DB = 0.35;

    @ParameterizedTest
    @CsvSource({"a12", "b08", "c02", "d05"})
    void woodsCostTheMarchWhatTheyCostTheHandheldModel(String id) { // law: one formula for both
        Profile woods = covered(FullWaveRows.profile(id), Cover.WOODLAND, 11, Cover.WOODLAND, 27);
        double byMarch = part(new FullWave().loss(woods, HANDS, CHANNEL), "woodland");
        assertEquals(part(new Handheld().loss(woods, HANDS, CHANNEL), "woodland"), byMarch, ROUNDING_DB);
        double cut = part(new FullWave().loss(woods, HANDS, CHANNEL), "height in cover");
        assertEquals(part(new Handheld().loss(woods, HANDS, CHANNEL), "height in cover"), cut, ROUNDING_DB);
        assertTrue(cut > 0.1, id + ": 2.4 m among trees of 27 m gain less: " + cut);
        assertTrue(byMarch > 1, id + ": the woods weigh something: " + byMarch);
        double changed = part(
                new FullWave().loss(covered(woods, Cover.WOODLAND, 27, Cover.WOODLAND, 11), HANDS, CHANNEL),
                "woodland");
        assertTrue(Math.abs(changed - byMarch) > 0.01, id + ": the trees of the two ends are not to be swapped");
    }

    @Test
    void theGroundIsThatOfTheBarePathFromTheAntennasOwnHeights() {
        Profile bare = FullWaveRows.profile("d05");
        PathLoss open = new FullWave().loss(bare, HANDS, CHANNEL);
        PathLoss woods = new FullWave().loss(covered(bare, Cover.WOODLAND, 11, Cover.WOODLAND, 27), HANDS, CHANNEL);
        assertEquals(part(open, "ground and relief"), part(woods, "ground and relief"));
        assertEquals(
                open.lossDb() + part(woods, "height in cover") + part(woods, "woodland"), woods.lossDb(), ROUNDING_DB);
        assertEquals(
                List.of("free space", "ground and relief", "height in cover", "woodland", "town"),
                woods.parts().stream().map(LossPart::name).toList());
    }

    @ParameterizedTest
    @CsvSource({
        "b08,SUBURBAN,9,URBAN,21,true", "b08,URBAN,21,SUBURBAN,9,true", "b08,DENSE_URBAN,0,URBAN,0,true",
        "b08,WOODLAND,14,URBAN,18,false", "a10,SUBURBAN,9,SUBURBAN,6,false", "d05,OPEN,0,DENSE_URBAN,0,false"
    })
    void aTownIsMarchedOverItsRoofsButNeverBetterThanOpenGround(
            String id, Cover near, double nearM, Cover far, double farM, boolean adds) {
        // By hand: the march from roof to roof and P.2108 from there down.
        Profile bare = FullWaveRows.profile(id);
        int last = bare.count() - 1;
        double nearRoofs = near.isTown() ? roofsM(near, nearM) : HANDS.txHeightM();
        double farRoofs = far.isTown() ? roofsM(far, farM) : HANDS.rxHeightM();
        double open = FieldMarch.along(bare, HANDS.txHeightM(), HANDS.rxHeightM(), CHANNEL)
                .excessDb(last);
        double over = FieldMarch.along(bare, nearRoofs, farRoofs, CHANNEL).excessDb(last)
                + down(near, HANDS.txHeightM(), nearRoofs)
                + down(far, HANDS.rxHeightM(), farRoofs);
        double town = part(new FullWave().loss(covered(bare, near, nearM, far, farM), HANDS, CHANNEL), "town");
        assertEquals(Math.max(0, over - open), town, TALLER_GRID_DB);
        if (adds) assertTrue(town > 5, "the roofs weigh something: " + town);
    }

    @ParameterizedTest
    @CsvSource({"a12", "b08", "c02", "c04", "d05", "d09"})
    void turnedRoundWithUnlikeHeightsAndTreesTheLossIsTheSame(
            String id) { // law: reciprocity, as far as a march obeys it
        Profile woods = covered(FullWaveRows.profile(id), Cover.WOODLAND, 11, Cover.WOODLAND, 27);
        Terminals unlike = new Terminals(1.2, 8);
        PathLoss there = new FullWave().loss(woods, unlike, CHANNEL);
        PathLoss back = new FullWave().loss(Profiles.reversed(woods), Swapped.ends(unlike), CHANNEL);
        assertEquals(part(there, "woodland"), part(back, "woodland"), ROUNDING_DB);
        double pointThere = step(there, "loss at the point itself");
        double pointBack = step(back, "loss at the point itself");
        if (there.excessDb() - part(there, "woodland") < 65) assertEquals(pointThere, pointBack, TURNED_ROUND_DB);
    }

    @Test
    void anAntennaOverTheTopsOfItsOwnEndAloneLosesNothingThere() {
        // By hand: 1.6 m under 11 m of trees stays in the wood, 30 m over 27 m does not.
        Profile woods = covered(FullWaveRows.profile("d05"), Cover.WOODLAND, 11, Cover.WOODLAND, 27);
        Profile nearOnly = covered(FullWaveRows.profile("d05"), Cover.WOODLAND, 11, Cover.OPEN, 0);
        Terminals mast = new Terminals(1.6, 30);
        assertEquals(
                part(new FullWave().loss(nearOnly, mast, CHANNEL), "woodland"),
                part(new FullWave().loss(woods, mast, CHANNEL), "woodland"),
                ROUNDING_DB);
    }

    @Test
    void treesBetweenTheEndsAreSaidToBeLeftOut() {
        Profile bare = FullWaveRows.profile("d05");
        assertTrue(warns(covered(bare, Cover.WOODLAND, 11, Cover.WOODLAND, 27)));
        assertTrue(!warns(bare));
    }

    @Test
    void aRoofThatWasNotMarchedForIsRefused() {
        CoveredMarch march = CoveredMarch.along(
                        FullWaveRows.profile("d05"), 1.6, new double[] {2.4}, new double[] {12}, CHANNEL, share -> true)
                .get(0);
        assertTrue(march.townDb(50, Cover.SUBURBAN, 12) >= 0);
        assertThrows(IllegalArgumentException.class, () -> march.townDb(50, Cover.SUBURBAN, 13));
    }

    @Test
    void aNearEndInTownCostsASecondMarch() {
        Profile town = covered(FullWaveRows.profile("d05"), Cover.URBAN, 15, Cover.OPEN, 0);
        double[] rx = {2.4};
        assertEquals(
                2, CoveredMarch.costs(town, 1.6, rx, new double[0], CHANNEL).size());
        assertEquals(
                1,
                CoveredMarch.costs(Profiles.reversed(town), 1.6, rx, new double[] {15}, CHANNEL)
                        .size());
    }

    private static boolean warns(Profile profile) {
        return new FullWave()
                .loss(profile, HANDS, CHANNEL).warnings().stream().anyMatch(w -> w.startsWith("Trees and buildings"));
    }

    private static double roofsM(Cover cover, double heightM) {
        return heightM > 0 ? heightM : TerminalClutter.representativeHeightM(cover);
    }

    private static double down(Cover cover, double antennaM, double roofsM) {
        if (!cover.isTown()) return 0;
        return TerminalClutter.lossDb(CHANNEL.frequency(), cover, antennaM, roofsM, TerminalClutter.STREET_WIDTH_M);
    }

    private static double part(PathLoss loss, String name) {
        return loss.parts().stream()
                .filter(p -> p.name().equals(name))
                .mapToDouble(LossPart::db)
                .sum();
    }

    private static double step(PathLoss loss, String symbol) {
        return loss.steps().stream()
                .filter(s -> s.symbol().equals(symbol))
                .mapToDouble(Step::value)
                .sum();
    }

    /** The ground with cover of these heights around its first 200 m and its last 400 m. */
    private static Profile covered(Profile bare, Cover near, double nearM, Cover far, double farM) {
        int n = bare.count();
        Cover[] cover = new Cover[n];
        double[] standing = new double[n];
        Zone[] zone = new Zone[n];
        Arrays.fill(cover, Cover.OPEN);
        Arrays.fill(zone, Zone.INLAND);
        for (int i = 0; i < n; i++) {
            boolean isNear = bare.distanceKm(i) <= 0.2;
            if (!isNear && bare.distanceKm(i) < bare.lengthKm() - 0.4) continue;
            cover[i] = isNear ? near : far;
            standing[i] = isNear ? nearM : farM;
        }
        return Profile.of(bare.distancesKm(), bare.heightsM(), standing, cover, zone);
    }
}
