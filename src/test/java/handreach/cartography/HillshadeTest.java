package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import org.junit.jupiter.api.Test;

class HillshadeTest {
    /** Stated error: half a step of 255, and the float heights of the lattice. */
    private static final double STATED_ERROR = 0.6;

    private static final MapFrame FRAME = new MapFrame(new Position(45, 7), 20, 40, 30);

    /** A plane that rises by these tangents to the east and to the north. */
    private static PaperGround plane(double riseEast, double riseNorth) {
        return new PaperGround(
                (lat, lon) -> 1000
                        + (FRAME.xPx(lon) - 20) * FRAME.metresPerPx() * riseEast
                        - (FRAME.yPx(lat) - 15) * FRAME.metresPerPx() * riseNorth,
                20);
    }

    private static Hillshade oneSun(PaperGround ground, double exaggeration) {
        return Hillshade.shaded(ground, FRAME, exaggeration, new Hillshade.Light(Sun.USUAL));
    }

    @Test
    void levelGroundIsLitByTheSineOfTheSun() { // by hand: 255 · sin 45° = 180.3
        Hillshade shade = oneSun(plane(0, 0), 1);
        assertEquals(180.3, shade.shade(5, 7), STATED_ERROR);
    }

    @Test
    void aSlopeTowardsTheSunIsFullyLit() { // by hand: slope 45° falling to the north-west, sun at 45° from there:
        // cos 0 = 1
        double component = Math.sqrt(0.5);
        Hillshade shade = oneSun(plane(component, -component), 1);
        assertEquals(255, shade.shade(20, 15), STATED_ERROR);
    }

    @Test
    void aSlopeAwayFromTheSunGoesDark() { // by hand: the same slope falling to the south-east: cos 90° = 0
        double component = Math.sqrt(0.5);
        Hillshade shade = oneSun(plane(-component, component), 1);
        assertEquals(0, shade.shade(20, 15), STATED_ERROR);
    }

    @Test
    void aSlopeAcrossTheLightIsOnlyForeshortened() { // by hand: 45° slope across: sin 45° · cos 45° = 0.5
        double component = Math.sqrt(0.5);
        Hillshade shade = oneSun(plane(component, component), 1);
        assertEquals(127.5, shade.shade(20, 15), STATED_ERROR);
    }

    @Test
    void exaggerationActsOnTheSlope() { // law: a plane twice as steep, and the plane exaggerated twice, look alike
        int steep = oneSun(plane(0.4, 0.2), 1).shade(9, 9);
        int exaggerated = oneSun(plane(0.2, 0.1), 2).shade(9, 9);
        assertEquals(steep, exaggerated, 1);
    }

    @Test
    void theSlopeIsTakenOverAPostWherePixelsAreFiner() { // limit: on a plane the reach does not matter
        PaperGround coarse = new PaperGround(plane(0.3, -0.1).height(), 200);
        assertEquals(
                oneSun(plane(0.3, -0.1), 1).shade(20, 15), oneSun(coarse, 1).shade(20, 15), 1);
    }

    @Test
    void manySidesLightLevelGroundByTheSineOfTheirHeight() { // by hand: 255 · sin 30° = 127.5
        assertEquals(127.5, Hillshade.fromManySides(plane(0, 0), FRAME, 1).shade(3, 3), STATED_ERROR);
    }

    @Test
    void manySidesWeighEachSunByHowItGrazes() {
        // by hand: a slope of tangent 0.5 that falls to the west (aspect 270°) has cos 0.8944 and sin 0.4472; the suns
        // of 225°
        // and 315° weigh 1/2 and give 0.5 · 0.8944 + 0.8660 · 0.4472 · cos 45° = 0.7211, that of 360° weighs 1 and
        // gives 0.4472,
        // that of 270° weighs nothing: (0.7211 + 0.4472) / 2 = 0.5841, of 255 148.96
        assertEquals(148.96, Hillshade.fromManySides(plane(0.5, 0), FRAME, 1).shade(20, 15), STATED_ERROR);
    }

    @Test
    void aVoidStaysAVoidAndItsNeighboursKeepTheirLight() {
        PaperGround holed = new PaperGround((lat, lon) -> FRAME.xPx(lon) < 10 ? Double.NaN : 500, 20);
        Hillshade shade = oneSun(holed, 1);
        assertTrue(shade.isVoid(5, 5));
        assertEquals(0, shade.shade(5, 5));
        assertFalse(shade.isVoid(10, 5));
        assertEquals(180.3, shade.shade(10, 5), STATED_ERROR);
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> oneSun(plane(0, 0), 0));
        assertThrows(IllegalArgumentException.class, () -> new Sun(0, 91));
    }
}
