package handreach.cartography;

import handreach.geodesy.Position;
import handreach.terrain.Elevation;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Tops that are worth a number on a map: those that stand out from all higher ground by enough, the most prominent first.
 *
 * <p>A flood that sinks from the highest node to the lowest joins islands; where two meet, the lower top is told how far it stands
 * above that saddle. What lies beyond the edge of the map and under voids is not known and may be higher: an island that reaches it
 * ends there, so that a prominence is never overstated.
 */
public final class Summits {
    /** Least prominence: as a share of the relief of the map, and in any case. Our suggestion. */
    private static final double SHARE_OF_RELIEF = 1 / 15.0;

    private static final double LEAST_M = 15;
    private static final double APART_PX = 90;
    private static final int MOST = 24;

    private Summits() {}

    /**
     * A top.
     *
     * @param heightM of the ground there, by the tiles
     * @param prominenceM above the highest saddle to ground that is higher or unknown, at least
     */
    public record Summit(Position at, double heightM, double prominenceM) {}

    /** A top of the lattice. */
    private record Top(int node, double prominenceM) {}

    /**
     * The summits of a map.
     *
     * @shape  n nodes in, at most 24 summits out; O(n log n), pure
     * @unit   m
     * @valid  every map; none where nothing is known, or where the relief is under 15 m
     * @error  the prominence is a lower bound, short by what lies beyond the map; saddles are those of the lattice. The height is that of
     *     the highest pixel within one node, so a sharp top comes out low by what the tiles and the pixels miss
     * @source the definition of prominence, common practice, no source; the least one worth a number is our suggestion
     */
    public static List<Summit> of(Elevation elevation, HeightLattice lattice) {
        double low = lattice.lowestM().orElse(0);
        double leastM = Math.max(LEAST_M, SHARE_OF_RELIEF * (lattice.highestM().orElse(0) - low));
        List<Summit> summits = new ArrayList<>();
        for (Top top : tops(lattice, leastM)) {
            int column = top.node() % lattice.columns();
            int row = top.node() / lattice.columns();
            boolean isApart = summits.stream().allMatch(other -> apartPx(lattice, column, row, other.at()) >= APART_PX);
            if (isApart && summits.size() < MOST) summits.add(refined(elevation, lattice, column, row, top));
        }
        return List.copyOf(summits);
    }

    private static double apartPx(HeightLattice lattice, int column, int row, Position other) {
        return Math.hypot(
                lattice.frame().xPx(other.longitudeDeg()) - lattice.xPx(column),
                lattice.frame().yPx(other.latitudeDeg()) - lattice.yPx(row));
    }

    /** Tops of the lattice with at least this prominence, the most prominent first. */
    private static List<Top> tops(HeightLattice lattice, double leastM) {
        int nodes = lattice.columns() * lattice.rows();
        int unknown = nodes;
        int[] parent = new int[nodes + 1];
        int[] peak = new int[nodes + 1];
        Arrays.fill(parent, -1);
        parent[unknown] = unknown;
        peak[unknown] = unknown;
        List<Top> tops = new ArrayList<>();
        for (long key : fromTheHighest(lattice)) {
            int node = (int) key;
            double heightM = heightM(lattice, node);
            parent[node] = node;
            peak[node] = node;
            int column = node % lattice.columns();
            int row = node / lattice.columns();
            for (int down = -1; down <= 1; down++)
                for (int right = -1; right <= 1; right++) {
                    int other = neighbour(lattice, column + right, row + down, unknown);
                    if (parent[other] < 0) continue;
                    int one = root(parent, node);
                    int two = root(parent, other);
                    if (one == two) continue;
                    boolean isOneLower = two == root(parent, unknown)
                            || one != root(parent, unknown)
                                    && heightM(lattice, peak[one]) <= heightM(lattice, peak[two]);
                    int lower = isOneLower ? one : two;
                    double prominenceM = heightM(lattice, peak[lower]) - heightM;
                    if (prominenceM >= leastM) tops.add(new Top(peak[lower], prominenceM));
                    parent[lower] = isOneLower ? two : one;
                }
        }
        tops.sort(Comparator.comparingDouble(Top::prominenceM).reversed().thenComparing(Top::node));
        return tops;
    }

    /** A node; the unknown beyond the edge and in voids. */
    private static int neighbour(HeightLattice lattice, int column, int row, int unknown) {
        boolean isInside = column >= 0 && row >= 0 && column < lattice.columns() && row < lattice.rows();
        return isInside && !lattice.isVoid(column, row) ? row * lattice.columns() + column : unknown;
    }

    private static double heightM(HeightLattice lattice, int node) {
        return lattice.heightM(node % lattice.columns(), node / lattice.columns());
    }

    /** Nodes with a height, each as a number whose lower half is the node. */
    private static long[] fromTheHighest(HeightLattice lattice) {
        long[] keys = new long[lattice.columns() * lattice.rows()];
        int known = 0;
        for (int node = 0; node < keys.length; node++)
            if (!lattice.isVoid(node % lattice.columns(), node / lattice.columns()))
                keys[known++] = (long) Math.round(-1000 * heightM(lattice, node)) << 32 | node;
        long[] sorted = Arrays.copyOf(keys, known);
        Arrays.sort(sorted);
        return sorted;
    }

    private static int root(int[] parent, int node) {
        int top = node;
        while (parent[top] != top) {
            parent[top] = parent[parent[top]];
            top = parent[top];
        }
        return top;
    }

    /** The highest pixel within one node of a top. */
    private static Summit refined(Elevation elevation, HeightLattice lattice, int column, int row, Top top) {
        int reach = (int) Math.rint(lattice.xPx(1) - lattice.xPx(0));
        int side = 2 * reach + 1;
        double[] latitude = new double[side * side];
        double[] longitude = new double[side * side];
        double[] heightM = new double[side * side];
        boolean[] isVoid = new boolean[side * side];
        for (int i = 0; i < latitude.length; i++) {
            int down = i / side - reach;
            int right = i % side - reach;
            latitude[i] = lattice.frame().latitudeDeg(lattice.yPx(row) + down);
            longitude[i] = lattice.frame().longitudeDeg(lattice.xPx(column) + right);
        }
        elevation.heights(latitude, longitude, latitude.length, heightM, isVoid);
        int best = latitude.length / 2;
        for (int i = 0; i < latitude.length; i++) if (!isVoid[i] && heightM[i] > heightM[best]) best = i;
        return new Summit(new Position(latitude[best], longitude[best]), heightM[best], top.prominenceM());
    }
}
