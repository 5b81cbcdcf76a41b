package handreach.propagation.march;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.profile.Zone;
import handreach.propagation.EndCover;
import handreach.propagation.FullWaveRows;
import handreach.propagation.LossPart;
import handreach.propagation.PathConditions;
import handreach.propagation.PathLoss;
import handreach.propagation.Standing;
import handreach.propagation.TerminalClutter;
import handreach.propagation.Terminals;
import handreach.propagation.Woodland;
import handreach.terrain.Cover;
import handreach.units.Polarization;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The march through woods and over roofs. */
class FieldMarchCoverTest {
    private static final double EXACT_DB = 0.08;
    /** Of 55 to 80 dB; half of it because the step adds index and height derivative, where the form has their squares. */
    private static final double CLOSED_FORM_DB = 1.5;

    private static final Terminals HANDS = new Terminals(1.5, 1.5);

    private static PathConditions channel(double mhz) {
        return FullWaveRows.conditions(mhz, Polarization.VERTICAL, 15, 0.005, 1e9)
                .with(Standing.ON_THE_WAY);
    }

    @ParameterizedTest
    @ValueSource(doubles = {50, 155, 446})
    void inTreesWithoutEndAboveEveryMetreTakesItsShare(
            double mhz) { // by hand: a homogeneous medium only takes and turns
        PathConditions channel = channel(mhz);
        Profile slab = level(0.6, 21, i -> Cover.WOODLAND, 990);
        FullWaveRadial through = march(slab, channel, 1.5);
        FullWaveRadial bare = march(slab, channel.with(Standing.AT_ENDS), 1.5, 3);
        double perM = new EndCover(channel).woodDbPerM();
        // near the ground the rays and their mirrors differ by the phase of the medium, 1.049 times that of air: 0.41
        // dB at most
        double first = through.pointLossDb(5) - bare.pointLossDb(5);
        assertEquals(perM * 1000 * through.distanceKm(5), first, 0.41);
        for (int i : new int[] {12, 20})
            assertEquals(
                    perM * 1000 * (through.distanceKm(i) - through.distanceKm(5)),
                    through.pointLossDb(i) - bare.pointLossDb(i) - first,
                    EXACT_DB);
    }

    @ParameterizedTest
    @CsvSource({"155,0.02,1.1,10,10", "155,0.02,1.05,10,6", "155,0.02,1.1,4,12", "155,0.05,1,6,6", "446,0.05,1.05,5,5"})
    void underTheTopsOfADeepLayerItIsTheLateralWave(
            double mhz, double nepersPerM, double permittivity, double sourceUnderM, double receiverUnderM) {
        // Published: |E/E0| = 2/(kd|n² − 1|) · |exp(−jk √(n² − 1)(s1 + s2))|, the lateral wave over a half-space
        // (Tamir, IEEE Trans.
        // Antennas Propag. 15 (1967) 806; from memory; it is also the limit of Norton's surface wave over that medium).
        // The layer is so
        // deep and takes so much that neither the ground under it nor the straight way through it counts.
        double topM = 80;
        double dM = 1500;
        double k = channel(mhz).frequency().waveNumber();
        Complex n = new Complex(Math.sqrt(permittivity), -nepersPerM / k);
        Complex root = n.multiply(n).subtract(1).sqrt();
        double decay = Math.abs(root.getImaginary()) * k * (sourceUnderM + receiverUnderM);
        double byHand = 20 * Math.log10(Math.E) * decay
                - 20 * Math.log10(2 / (k * dM * root.multiply(root).abs()));
        FieldMarchLayer layer = new FieldMarchLayer(topM, nepersPerM, (Math.sqrt(permittivity) - 1) * k);
        double[] excess = {
            marched(layer, mhz, topM - sourceUnderM, topM - receiverUnderM, dM),
            marched(layer, mhz, topM - receiverUnderM, topM - sourceUnderM, dM)
        };
        assertEquals(byHand, excess[0], CLOSED_FORM_DB);
        assertEquals(excess[0], excess[1], 1.0, "law: reciprocity");
    }

    /** Level ground, one layer from end to end; excess at the point itself. */
    private static double marched(FieldMarchLayer layer, double mhz, double txM, double rxM, double dM) {
        PathConditions channel = channel(mhz);
        FieldMarchWave wave = FieldMarchWave.of(channel);
        Profile level = level(dM / 1000, 51, i -> Cover.OPEN, 0);
        FieldMarchGround ground = FieldMarch.ground(level, 90, channel);
        FieldMarchGrid usual = FieldMarchGrid.fast(ground, wave.wavelengthM(), 180);
        FieldMarchGrid grid = new FieldMarchGrid(
                usual.spacingM() / 2,
                2 * wave.wavelengthM(),
                usual.topM(),
                usual.absorberM(),
                usual.turnM(),
                usual.airM(),
                usual.nearAirM());
        FieldMarchColumn column = new FieldMarchColumn(grid, wave);
        double startM = 10 * wave.wavelengthM();
        column.start(wave, startM, txM, 0, layer);
        int steps = (int) Math.round((dM - startM) / (2 * wave.wavelengthM()));
        long quanta = Math.round((dM - startM) / steps / wave.quantumM());
        for (int i = 0; i < steps; i++) {
            column.pass(layer, 0.5 * quanta * wave.quantumM());
            column.advance(quanta, wave.quantumM(), 4);
            column.pass(layer, 0.5 * quanta * wave.quantumM());
        }
        double atM = startM + steps * quanta * wave.quantumM();
        return -10 * Math.log10(column.power(rxM) * atM);
    }

    @ParameterizedTest
    @ValueSource(doubles = {446, 900})
    void deepInWoodsAMetreCostsLessThanAtTheirEdge(double mhz) { // law: the way over the tops takes the lead
        PathConditions channel = channel(mhz);
        Profile woods = level(4, 134, i -> Cover.WOODLAND, 15);
        FullWaveRadial through = march(woods, channel, 1.5);
        FullWaveRadial bare = march(woods, channel.with(Standing.AT_ENDS), 1.5);
        double perM = new EndCover(channel).woodDbPerM();
        double near = through.excessDb(2) - bare.excessDb(2);
        double deep = through.excessDb(132) - bare.excessDb(132) - through.excessDb(66) + bare.excessDb(66);
        assertEquals(perM, near / (1000 * through.distanceKm(2)), 0.3 * perM);
        assertTrue(deep / (1000 * (through.distanceKm(132) - through.distanceKm(66))) < 0.05 * perM, "deep: " + deep);
    }

    @ParameterizedTest
    @CsvSource({"105.9,9.4", "466.475,18.0"})
    void aLowEndInWoodsLosesAboutTheCeilingOfTheRecommendation(double mhz, double ceilingDb) {
        // Published: Rec. ITU-R P.833-9, table of the mixed forest, 12 to 16 m, antenna 1.6 m; a mast in the open, the
        // low end 2 km deep.
        PathConditions channel = channel(mhz);
        Profile woods = level(3, 101, i -> i < 34 ? Cover.OPEN : Cover.WOODLAND, 14);
        double added = march(woods, channel, 30).excessDb(100)
                - march(woods, channel.with(Standing.AT_ENDS), 30).excessDb(100);
        assertEquals(
                ceilingDb,
                added,
                8,
                "5 to 9 dB between places, and at UHF scattered waves fill in what this leaves out");
    }

    @ParameterizedTest
    @CsvSource({"155,a12,0.5", "155,d05,0.5", "446,d05,1"})
    void halvingEveryStepMovesItLittle(double mhz, String id, double limitDb) { // limit
        PathConditions channel = channel(mhz);
        Profile woods = covered(FullWaveRows.profile(id), i -> i % 40 < 25 ? Cover.WOODLAND : Cover.OPEN, 16);
        FieldMarchCover cover = FieldMarchCover.of(woods, channel);
        FieldMarchWave wave = FieldMarchWave.of(channel);
        FieldMarchGround ground = FieldMarch.ground(woods, 1.5, channel);
        FieldMarchGrid grid = FieldMarchGrid.fast(ground, wave.wavelengthM(), 3);
        FieldMarch usual = new FieldMarch(ground, grid, wave, cover, 1.5, 1.5);
        FieldMarch finer = new FieldMarch(ground, grid.halved(1), wave, cover, 1.5, 1.5);
        usual.run();
        finer.run(FieldMarchPace.halved(ground, grid, wave.wavelengthM(), cover));
        FullWaveRadial a = usual.radial(0, woods, channel);
        FullWaveRadial b = finer.radial(0, woods, channel);
        double squares = 0;
        int n = 0;
        for (int i = 4; i < woods.count(); i++) {
            if (b.excessDb(i) > 65) continue;
            squares += Math.pow(a.excessDb(i) - b.excessDb(i), 2);
            n++;
        }
        assertTrue(n > 30, "points: " + n);
        assertTrue(Math.sqrt(squares / n) < limitDb, "rms " + Math.sqrt(squares / n));
    }

    @Test
    void turnedRoundItIsTheSame() { // law: reciprocity, as far as a march obeys it
        PathConditions channel = channel(155);
        Profile woods = covered(FullWaveRows.profile("a12"), i -> i < 40 ? Cover.WOODLAND : Cover.OPEN, 16);
        int last = woods.count() - 1;
        double there = march(woods, channel, 1.5).pointLossDb(last);
        double back = march(Profiles.reversed(woods), channel, 1.5).pointLossDb(last);
        assertEquals(there, back, 1.0);
    }

    @Test
    void treesAreAsHighAcrossASlopeAsTheyStand() { // by hand: 20 m of trees on 30° reach 17.3 m from the facet
        int n = 30;
        double[] z = new double[n];
        for (int i = 0; i < n; i++) z[i] = 30 * i * Math.tan(Math.toRadians(30));
        Profile slope = profile(0.03 * (n - 1), z, i -> Cover.WOODLAND, 20);
        PathConditions channel = channel(155);
        FieldMarchGround ground = FieldMarch.ground(slope, 1.5, channel);
        FieldMarchLayer layer = FieldMarchCover.of(slope, channel).layer(ground, 10);
        assertEquals(20 * Math.cos(Math.toRadians(30)), layer.topM(), 1e-3);
    }

    @Test
    void aFacetHalfInWoodsTakesHalf() { // by hand: the border lies half-way between samples
        Profile edge = level(3, 101, i -> i < 50 ? Cover.OPEN : Cover.WOODLAND, 12);
        PathConditions channel = channel(155);
        FieldMarchCover cover = FieldMarchCover.of(edge, channel);
        double whole = Woodland.attenuationDbPerM(channel.frequency(), Polarization.VERTICAL) * Math.log(10) / 20;
        assertEquals(whole / 2, cover.layer(1470, 1500, 0).nepersPerM(), 1e-12);
        assertEquals(12, cover.layer(1470, 1500, 0).topM(), 1e-9);
        assertEquals(whole, cover.layer(1500, 1530, 0).nepersPerM(), 1e-12);
        assertSame(FieldMarchLayer.NONE, cover.layer(1440, 1470, 0));
    }

    @Test
    void roofsRiseFromTheRimOfATown() { // by hand: a metre for every three, and never above the roofs
        Profile town = level(0.3, 31, i -> i < 10 || i > 24 ? Cover.OPEN : Cover.URBAN, 12);
        FieldMarchCover cover = FieldMarchCover.of(town, channel(155));
        Profile raised = cover.raised(town);
        assertEquals(0, raised.heightM(9));
        assertEquals(10 / 3.0, raised.heightM(10), 1e-9);
        assertEquals(12, raised.heightM(14), 1e-9);
        assertEquals(0, raised.heightM(25));
        assertEquals(1.5, cover.overGroundM(5, 1.5));
        assertEquals(30 - 12, cover.overGroundM(16, 30), 1e-9);
        // 0.187 √(35 m · λ), λ = 1.934 m
        assertEquals(1.54, cover.overGroundM(16, 12), 0.01);
    }

    @Test
    void thePartsSayWhatStandsOnTheWay() {
        PathConditions channel = channel(155);
        Profile ground = FullWaveRows.profile("a12");
        int last = ground.count() - 1;
        Profile belt = covered(ground, i -> i > last - 25 && i < last - 3 ? Cover.WOODLAND : Cover.OPEN, 16);
        PathLoss through = new FullWave().loss(belt, HANDS, channel);
        PathLoss ends = new FullWave().loss(belt, HANDS, channel.with(Standing.AT_ENDS));
        assertEquals(part(ends, "ground and relief"), part(through, "ground and relief"));
        assertTrue(part(through, "on the way") > 1, "a belt of 600 m weighs something");
        assertEquals(0, part(ends, "woodland"), "and nothing where the ends alone count");
        assertTrue(
                through.warnings().stream().anyMatch(w -> w.startsWith("Trees and buildings between the ends count")));
        assertTrue(
                ends.warnings().stream().anyMatch(w -> w.startsWith("Trees and buildings count at the two ends only")));
    }

    @Test
    void anEndBelowRoofsIsReckonedFromThem() {
        PathConditions channel = channel(155);
        Profile town = covered(FullWaveRows.profile("b08"), i -> Cover.URBAN, 15);
        PathLoss loss = new FullWave().loss(town, HANDS, channel);
        double down = TerminalClutter.lossDb(channel.frequency(), Cover.URBAN, 1.5, 15, TerminalClutter.STREET_WIDTH_M);
        assertEquals(2 * down, part(loss, "town"), 1e-9);
    }

    @Test
    void whereNothingStandsItIsTheBareMarchToTheLastBit() {
        Profile bare = FullWaveRows.profile("d05");
        PathConditions channel = channel(155);
        FullWaveRadial on = march(bare, channel, 1.5);
        FullWaveRadial at = FieldMarch.along(bare, 1.5, 1.5, channel);
        for (int i = 1; i < bare.count(); i++) assertEquals(at.meanLossDb(i), on.meanLossDb(i));
    }

    @Test
    void inLockstepItIsTheSame() {
        PathConditions channel = channel(155);
        List<Profile> radials = new ArrayList<>();
        List<FieldMarchCover> covers = new ArrayList<>();
        for (int r = 0; r < 6; r++) {
            int of = r;
            Profile ground = FullWaveRows.profile("a12");
            radials.add(covered(ground, i -> i > 10 + 5 * of && i < 60 + of ? Cover.WOODLAND : Cover.OPEN, 12 + of));
            covers.add(FieldMarchCover.of(radials.get(r), channel));
        }
        List<List<FullWaveRadial>> together =
                FieldMarch.bundle(radials, covers, 1.5, new double[] {1.5}, channel, share -> true, new PlainLanes());
        for (int r = 0; r < 6; r++) {
            FullWaveRadial alone = march(radials.get(r), channel, 1.5);
            FullWaveRadial lane = together.get(r).get(0);
            for (int i = 8; i < radials.get(r).count(); i++)
                if (alone.excessDb(i) < 65) assertEquals(alone.excessDb(i), lane.excessDb(i), 1.1, r + " at " + i);
        }
    }

    private static FullWaveRadial march(Profile profile, PathConditions channel, double txM) {
        return march(profile, channel, txM, 0);
    }

    /** With range steps of so many wavelengths at most; 0 for those of the product. */
    private static FullWaveRadial march(Profile profile, PathConditions channel, double txM, double wavelengths) {
        FieldMarchCover cover = FieldMarchCover.of(profile, channel);
        if (wavelengths == 0)
            return FieldMarch.along(profile, cover, txM, new double[] {1.5}, channel, share -> true)
                    .get(0);
        FieldMarchWave wave = FieldMarchWave.of(channel);
        FieldMarchGround ground = FieldMarch.ground(profile, Math.max(txM, 1.5), channel);
        FieldMarchGrid usual = FieldMarchGrid.fast(ground, wave.wavelengthM(), txM + 1.5);
        FieldMarchGrid grid = new FieldMarchGrid(
                usual.spacingM(),
                wavelengths * wave.wavelengthM(),
                usual.topM(),
                usual.absorberM(),
                usual.turnM(),
                usual.airM(),
                usual.nearAirM());
        FieldMarch march = new FieldMarch(ground, grid, wave, cover, txM, 1.5);
        march.run();
        return march.radial(0, profile, channel);
    }

    private static Profile level(double lengthKm, int samples, IntFunction<Cover> cover, double standingM) {
        return profile(lengthKm, new double[samples], cover, standingM);
    }

    private static Profile profile(double lengthKm, double[] heightM, IntFunction<Cover> cover, double standingM) {
        int n = heightM.length;
        double[] distanceKm = new double[n];
        for (int i = 0; i < n; i++) distanceKm[i] = lengthKm * i / (n - 1);
        return covered(distanceKm, heightM, cover, standingM);
    }

    private static Profile covered(Profile bare, IntFunction<Cover> cover, double standingM) {
        return covered(bare.distancesKm(), bare.heightsM(), cover, standingM);
    }

    private static Profile covered(double[] distanceKm, double[] heightM, IntFunction<Cover> cover, double standingM) {
        int n = heightM.length;
        double[] standing = new double[n];
        Cover[] kind = new Cover[n];
        Zone[] zone = new Zone[n];
        Arrays.fill(zone, Zone.INLAND);
        for (int i = 0; i < n; i++) {
            kind[i] = cover.apply(i);
            standing[i] = kind[i] == Cover.OPEN ? 0 : standingM;
        }
        return Profile.of(distanceKm, heightM, standing, kind, zone);
    }

    private static double part(PathLoss loss, String name) {
        return loss.parts().stream()
                .filter(p -> p.name().equals(name))
                .mapToDouble(LossPart::db)
                .sum();
    }
}
