package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.units.Frequency;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PathGeometryTest {
    private static final Frequency F150 = new Frequency(150);
    private static final Atmosphere K43 = Atmosphere.ofFactor(4 / 3.0, 325);
    private static final Atmosphere NO_BULGE = Atmosphere.ofFactor(1e9, 325);

    @ParameterizedTest
    @CsvSource({"10,1.3333333333,1.4715", "60,1.3333333333,52.974", "10,1,1.9620"})
    void theBulgeAgreesWithTheRows(double lengthKm, double k, double bulgeM) {
        // 500 d1 d2/a_e (Rec. ITU-R P.526-15 section 2); independent calculation.
        PathGeometry path = PathGeometry.of(
                PaperGround.flat(lengthKm, 3), new Terminals(1.5, 1.5), Atmosphere.ofFactor(k, 325), F150);
        assertEquals(bulgeM, path.bulgeM(1), 0.0006);
    }

    @Test
    void aPaperRidgeIsFoundWithItsAngles() {
        // By hand, no bulge: 100 m ridge 3 km from 10 m masts 8 km apart: 90 m over 3 km up, 90 m over 5 km on the
        // other side.
        Profile ridge = Profiles.of(new double[] {0, 1, 3, 6, 8}, new double[] {0, 0, 100, 0, 0});
        PathGeometry path = PathGeometry.of(ridge, new Terminals(10, 10), NO_BULGE, F150);
        assertFalse(path.lineOfSight());
        assertEquals(Math.toDegrees(Math.atan(0.03)), path.departureDeg(), 1e-6);
        assertEquals(Math.toDegrees(Math.atan(0.018)), path.arrivalDeg(), 1e-6);
        PathGeometry.Clearance worst = path.worstClearance().orElseThrow();
        assertEquals(2, worst.sample());
        assertEquals(-90, worst.clearanceM(), 1e-6);
        assertEquals(-90 / KnifeEdge.fresnelRadiusM(3, 5, F150.wavelengthM()), worst.inFresnelRadii(), 1e-9);
        List<PathGeometry.Obstacle> obstacles = path.obstacles();
        assertEquals(1, obstacles.size());
        assertEquals(90, obstacles.get(0).aboveLineM(), 1e-6);
        assertEquals(3, obstacles.get(0).distanceKm());
        assertEquals(
                KnifeEdge.nu(90, 3, 5, F150.wavelengthM()), obstacles.get(0).nu(), 1e-6);
    }

    @Test
    void inSightTheAntennasLookAtEachOther() {
        // By hand, k = 4/3: from 10 m up to 510 m at 20 km: atan(500/20000 − 20/(2·8494.67)); the other end looks down.
        Profile slope = Profiles.of(new double[] {0, 10, 20}, new double[] {0, 0, 500});
        PathGeometry path = PathGeometry.of(slope, new Terminals(10, 10), K43, F150);
        assertTrue(path.lineOfSight());
        double bend = 20 / (2 * K43.effectiveRadiusKm());
        assertEquals(Math.toDegrees(Math.atan(0.025 - bend)), path.departureDeg(), 1e-9);
        assertEquals(Math.toDegrees(Math.atan(-0.025 - bend)), path.arrivalDeg(), 1e-9);
        assertEquals(List.of(), path.obstacles());
    }

    @Test
    void handheldsLoseTheFresnelClearanceAtOnce() {
        // Two 1.5 m antennas over flat ground lose 0.6 F1 at 13 m (150 MHz), 38 m (450), 75 m (900): independent
        // calculation.
        for (double[] row : new double[][] {{150, 13}, {450, 38}, {900, 75}}) {
            double radius = KnifeEdge.fresnelRadiusM(row[1] / 2000, row[1] / 2000, new Frequency(row[0]).wavelengthM());
            assertEquals(1.5, 0.6 * radius, 0.04);
        }
    }

    @Test
    void treesHideWhatTheBareGroundShows() {
        Profile bare = PaperGround.tenKilometres(true);
        Terminals terminals = new Terminals(1.5, 1.5);
        PathGeometry overBare = PathGeometry.of(bare, terminals, K43, F150);
        PathGeometry overTrees = PathGeometry.overClutter(bare, terminals, K43, F150);
        assertEquals(overBare.clearanceM(3) - 15, overTrees.clearanceM(3), 1e-9);
        assertEquals(overBare.clearanceM(2), overTrees.clearanceM(2), 1e-9);
        assertTrue(overTrees.departureDeg() > overBare.departureDeg());
    }

    @Test
    void twoSamplesHaveNothingBetweenThem() {
        PathGeometry path = PathGeometry.of(PaperGround.flat(5, 2), new Terminals(1.5, 1.5), K43, F150);
        assertTrue(path.lineOfSight());
        assertEquals(Optional.empty(), path.worstClearance());
        assertEquals(0, path.fresnelRadiusM(0));
    }

    @Test
    void turningThePathRoundSwapsTheAngles() {
        Random random = new Random(8);
        for (int i = 0; i < 200; i++) {
            Profile profile = PaperGround.rolling(random);
            Terminals terminals = new Terminals(1 + random.nextDouble() * 20, 1.5);
            PathGeometry there = PathGeometry.of(profile, terminals, K43, F150);
            PathGeometry back = PathGeometry.of(Profiles.reversed(profile), Swapped.ends(terminals), K43, F150);
            assertEquals(there.departureDeg(), back.arrivalDeg(), 1e-9);
            assertEquals(there.arrivalDeg(), back.departureDeg(), 1e-9);
            assertEquals(there.lineOfSight(), back.lineOfSight());
        }
    }
}
