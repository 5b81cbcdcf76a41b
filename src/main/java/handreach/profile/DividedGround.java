package handreach.profile;

import handreach.geodesy.GeodesicLine;
import handreach.terrain.Elevation;
import java.util.function.Supplier;

/**
 * Heights between the samples of a cut, read from the tiles when they are asked for ({@link Intervals#bare}).
 *
 * @param atM bare ground at the samples, m
 * @param heldM what was taken off there, m
 */
record DividedGround(Elevation elevation, GeodesicLine line, double[] atM, double[] heldM, int parts)
        implements Supplier<double[]> {
    @Override
    public double[] get() {
        int n = (atM.length - 1) * parts + 1;
        double[] latitudeDeg = new double[n];
        double[] longitudeDeg = new double[n];
        double[] heightM = new double[n];
        boolean[] isVoid = new boolean[n];
        line.fill(n, latitudeDeg, longitudeDeg);
        elevation.heights(latitudeDeg, longitudeDeg, n, heightM, isVoid);
        Intervals.bare(heightM, isVoid, n, atM, heldM, parts);
        return heightM;
    }
}
