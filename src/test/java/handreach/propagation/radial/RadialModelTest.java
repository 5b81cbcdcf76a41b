package handreach.propagation.radial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Zone;
import handreach.propagation.Atmosphere;
import handreach.propagation.Climate;
import handreach.propagation.CoverState;
import handreach.propagation.Foliage;
import handreach.propagation.Ground;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.PathGeometry;
import handreach.propagation.Standing;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.terrain.Cover;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Along the same samples a radial gives what one path after the other gives (oracle: the loss models themselves). */
class RadialModelTest {
    /** What is promised; rounding is far below. */
    private static final double STATED_ERROR_DB = 0.01;

    @ParameterizedTest
    @ValueSource(strings = {"handheld", "delta-bullington", "two-ray", "free-space", "p1812", "bullington", "deygout"})
    void aRadialEqualsOnePathAfterTheOther(String model) {
        int paths = model.equals("handheld") || model.equals("delta-bullington") ? 60 : 12;
        int compared = 0;
        for (int seed = 1; seed <= paths; seed++) {
            Random random = new Random(seed);
            Radial radial = radial(random, 20 + random.nextInt(330));
            PathConditions conditions = conditions(random);
            Terminals terminals = new Terminals(1 + 9 * random.nextDouble(), 0.9 + 2 * random.nextDouble());
            RadialWalker at = RadialWalker.of(LossModels.KEYWORD.find(model).orElseThrow(), terminals, conditions);
            at.start(radial);
            for (int i = 1 + random.nextInt(5); i < radial.known; i += 1 + random.nextInt(7)) {
                boolean between = random.nextInt(3) == 0 && i + 1 < radial.known;
                double x = between ? 0.5 * (radial.xKm[i] + radial.xKm[i + 1]) : radial.xKm[i];
                double ground = radial.groundM[i] + (between ? random.nextGaussian() : 0);
                if (x < 0.05) continue;
                at.advanceTo(x);
                int cover = radial.cover[i];
                at.stand(x, ground, cover);
                double loss = at.lossDb();
                Profile profile = profile(radial, between ? i : i - 1, x, ground, cover);
                String where = model + ", seed " + seed + ", sample " + i;
                assertEquals(
                        LossModels.KEYWORD
                                .find(model)
                                .orElseThrow()
                                .loss(profile, terminals, conditions)
                                .lossDb(),
                        loss,
                        STATED_ERROR_DB,
                        where);
                PathGeometry geometry =
                        PathGeometry.of(profile, terminals, conditions.atmosphere(), conditions.frequency());
                assertEquals(geometry.departureDeg(), at.departureDeg(), 1e-7, where);
                assertEquals(geometry.arrivalDeg(), at.arrivalDeg(), 1e-7, where);
                assertEquals(geometry.lineOfSight(), at.isInSight(), where);
                compared++;
            }
        }
        assertTrue(compared > 10 * paths, compared + " paths compared");
    }

    @ParameterizedTest
    @ValueSource(strings = {"handheld", "delta-bullington"})
    void aPathLaidAtOnceEqualsTheModel(String model) {
        for (int seed = 1; seed <= 200; seed++) {
            Random random = new Random(1000 + seed);
            int n = 5 + random.nextInt(300);
            Radial radial = radial(random, n);
            radial.known = n;
            if (radial.xKm[n - 1] < 0.05) continue;
            PathConditions conditions = conditions(random);
            Terminals terminals = new Terminals(1 + 9 * random.nextDouble(), 0.9 + 2 * random.nextDouble());
            RadialWalker at = RadialWalker.of(LossModels.KEYWORD.find(model).orElseThrow(), terminals, conditions);
            at.path(radial);
            Profile profile = profile(radial, n - 2, radial.xKm[n - 1], radial.groundM[n - 1], radial.cover[n - 1]);
            assertEquals(
                    LossModels.KEYWORD
                            .find(model)
                            .orElseThrow()
                            .loss(profile, terminals, conditions)
                            .lossDb(),
                    at.lossDb(),
                    STATED_ERROR_DB,
                    model + ", seed " + seed);
        }
    }

    @Test
    void aLongRadialOverTheSeaKeepsItsDigits() {
        Random random = new Random(5);
        PathConditions conditions = UsualConditions.at(new Frequency(146));
        Terminals terminals = new Terminals(1.5, 1.5);
        Radial radial = new Radial();
        radial.size(3400);
        for (int i = 0; i < 3400; i++) {
            radial.xKm[i] = 0.015 * i;
            radial.groundM[i] = 0;
        }
        radial.known = 3400;
        for (String model : new String[] {"handheld", "delta-bullington"}) {
            RadialWalker at = RadialWalker.of(LossModels.KEYWORD.find(model).orElseThrow(), terminals, conditions);
            at.start(radial);
            for (int i = 10; i < 3400; i += 60 + random.nextInt(60)) {
                at.advanceTo(radial.xKm[i]);
                at.stand(radial.xKm[i], 0, 0);
                double expected = LossModels.KEYWORD
                        .find(model)
                        .orElseThrow()
                        .loss(profile(radial, i - 1, radial.xKm[i], 0, 0), terminals, conditions)
                        .lossDb();
                assertEquals(expected, at.lossDb(), STATED_ERROR_DB, model + " at " + i);
            }
        }
    }

    /** Ground from dead flat to wild, some of it sea, some ending in a void. */
    static Radial radial(Random random, int n) {
        Radial radial = new Radial();
        radial.size(n);
        // Trees and roofs of heights of their own: the far end must not borrow the near one's.
        if (random.nextBoolean()) radial.standingM = new double[] {0, 0, 22, 7, 13, 31};
        double step = 0.010 + 0.08 * random.nextDouble();
        double rough = step * 1000 * 0.6 * random.nextDouble() * random.nextDouble();
        double height = 500 * random.nextDouble();
        double pull = 0.02 * random.nextDouble();
        boolean covered = random.nextBoolean();
        boolean coast = random.nextInt(4) == 0;
        for (int i = 0; i < n; i++) {
            radial.xKm[i] = step * i;
            if (i > 0) radial.cover[i] = random.nextInt(12) == 0 ? (byte) random.nextInt(6) : radial.cover[i - 1];
            else radial.cover[0] = (byte) (covered ? random.nextInt(6) : 0);
            if (!covered) radial.cover[i] = 0;
            radial.clutterM[i] = radial.standingM[radial.cover[i]];
            height += rough * random.nextGaussian() - pull * (height - 200);
            radial.groundM[i] = coast && i > n / 2 ? 0 : Math.max(-5, height);
        }
        radial.known = random.nextInt(5) == 0 ? n - n / 4 : n;
        return radial;
    }

    static PathConditions conditions(Random random) {
        double[] mhz = {50, 146, 155, 446, 900};
        return new PathConditions(
                new Frequency(mhz[random.nextInt(mhz.length)]),
                random.nextBoolean() ? Polarization.VERTICAL : Polarization.HORIZONTAL,
                random.nextBoolean() ? Ground.AVERAGE : new Ground(80, 5),
                Atmosphere.ofGradient(20 + 60 * random.nextDouble(), 325),
                Climate.MEDIAN,
                new CoverState(Foliage.values()[random.nextInt(Foliage.values().length)], Standing.AT_ENDS));
    }

    static Profile profile(Radial radial, int last, double x, double ground, int cover) {
        int n = last + 2;
        double[] distance = Arrays.copyOf(radial.xKm, n);
        double[] height = Arrays.copyOf(radial.groundM, n);
        double[] clutter = Arrays.copyOf(radial.clutterM, n);
        Cover[] covers = new Cover[n];
        Zone[] zones = new Zone[n];
        Arrays.fill(zones, Zone.INLAND);
        for (int i = 0; i <= last; i++) covers[i] = Cover.values()[radial.cover[i]];
        distance[n - 1] = x;
        height[n - 1] = ground;
        clutter[n - 1] = radial.standingM[cover];
        covers[n - 1] = Cover.values()[cover];
        return Profile.of(distance, height, clutter, covers, zones);
    }
}
