package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.terrain.Elevation;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SummitsTest {
    private static final MapFrame FRAME = new MapFrame(new Position(45, 7), 10, 400, 300);

    private static List<Summits.Summit> summits(PaperGround.Height height) {
        Elevation ground = new PaperGround(height, 10);
        return Summits.of(ground, HeightLattice.over(ground, FRAME, 4, 1));
    }

    /** Metres that a cone loses from its top, 2 m a pixel. */
    private static double fallM(double lat, double lon, double xPx, double yPx) {
        return 2 * Math.hypot(FRAME.xPx(lon) - xPx, FRAME.yPx(lat) - yPx);
    }

    @Test
    void twoConesAreToldWithTheirHeightsAndTheSaddleBetweenThem() {
        // By hand: tops 900 and 800 m, 200 px apart; both have fallen to 650 m where they meet, 125 px from the higher.
        List<Summits.Summit> found = summits((lat, lon) ->
                Math.max(500, Math.max(900 - fallM(lat, lon, 100.5, 150.5), 800 - fallM(lat, lon, 300.5, 150.5))));
        assertEquals(2, found.size());
        assertEquals(900, found.get(0).heightM(), 0.1);
        assertEquals(100.5, FRAME.xPx(found.get(0).at().longitudeDeg()), 1e-6);
        assertEquals(800, found.get(1).heightM(), 0.1);
        assertEquals(150, found.get(1).prominenceM(), 8); // the lattice has a node every 8 m of height
    }

    @Test
    void aShoulderIsNoSummitAndNeitherIsTheTopOfASlopeThatRunsOffTheMap() {
        assertEquals(List.of(), summits((lat, lon) -> 1000 + 3 * FRAME.xPx(lon) + 4 * Math.sin(FRAME.xPx(lon) / 9)));
    }

    @Test
    void aTopBesideAVoidCountsFromTheVoid() {
        // By hand: the last node before the void lies 28 px east of the top of a cone of 2 m a pixel, so 56 m are
        // certain.
        List<Summits.Summit> found = summits(
                (lat, lon) -> FRAME.xPx(lon) > 180 ? Double.NaN : Math.max(500, 900 - fallM(lat, lon, 148.5, 148.5)));
        assertEquals(1, found.size());
        assertEquals(56, found.get(0).prominenceM(), 0.1);
    }

    /** Law: what is told is no more than a walk down from the top to higher or unknown ground must lose, by the slow way. */
    @Test
    void thePromisedProminenceIsThatOfTheSlowWay() {
        Random chance = new Random(20_261_129L);
        double[][] bumps = new double[30][];
        for (int i = 0; i < bumps.length; i++)
            bumps[i] = new double[] {
                chance.nextInt(400), chance.nextInt(300), 40 + chance.nextInt(250), 10 + chance.nextInt(40)
            };
        Elevation ground = new PaperGround((lat, lon) -> rough(lat, lon, bumps), 10);
        HeightLattice lattice = HeightLattice.over(ground, FRAME, 4, 1);
        List<Summits.Summit> found = Summits.of(ground, lattice);
        assertTrue(found.size() > 4, found.size() + " summits");
        for (Summits.Summit summit : found) {
            int column = (int) Math.rint((FRAME.xPx(summit.at().longitudeDeg()) - 0.5) / 4) + 1;
            int row = (int) Math.rint((FRAME.yPx(summit.at().latitudeDeg()) - 0.5) / 4) + 1;
            double best = 0;
            int top = 0;
            for (int near = 0; near < 9; near++) {
                int node = (row + near / 3 - 1) * lattice.columns() + column + near % 3 - 1;
                double heightM = lattice.heightM(node % lattice.columns(), node / lattice.columns());
                if (heightM > best) {
                    best = heightM;
                    top = node;
                }
            }
            assertEquals(best - saddleM(lattice, top), summit.prominenceM(), 0.01);
        }
    }

    private static double rough(double lat, double lon, double[][] bumps) {
        double heightM = 300;
        for (double[] bump : bumps) {
            double far = Math.hypot(FRAME.xPx(lon) - bump[0], FRAME.yPx(lat) - bump[1]) / bump[3];
            heightM += bump[2] * Math.exp(-far * far);
        }
        return heightM;
    }

    /** The greatest level at which a flood from the top, kept above it, comes to higher ground or the edge: by halving. */
    private static double saddleM(HeightLattice lattice, int top) {
        double topM = lattice.heightM(top % lattice.columns(), top / lattice.columns());
        double low = 0;
        double high = topM;
        for (int step = 0; step < 40; step++) {
            double level = (low + high) / 2;
            if (escapes(lattice, top, topM, level)) low = level;
            else high = level;
        }
        return low;
    }

    private static boolean escapes(HeightLattice lattice, int top, double topM, double level) {
        boolean[] seen = new boolean[lattice.columns() * lattice.rows()];
        java.util.ArrayDeque<Integer> wet = new java.util.ArrayDeque<>(List.of(top));
        seen[top] = true;
        while (!wet.isEmpty()) {
            int node = wet.remove();
            int column = node % lattice.columns();
            int row = node / lattice.columns();
            for (int i = 0; i < 9; i++) {
                int c = column + i % 3 - 1;
                int r = row + i / 3 - 1;
                if (c < 0 || r < 0 || c >= lattice.columns() || r >= lattice.rows()) return true;
                if (lattice.heightM(c, r) > topM) return lattice.heightM(c, r) >= level;
                int next = r * lattice.columns() + c;
                if (seen[next] || lattice.heightM(c, r) < level) continue;
                seen[next] = true;
                wet.add(next);
            }
        }
        return false;
    }
}
