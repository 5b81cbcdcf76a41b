package handreach.profile;

import handreach.geodesy.GeodesicLine;
import handreach.terrain.Elevation;
import java.util.function.Supplier;

/**
 * Heights between the samples of a cut, read from the tiles when they are asked for. What tiles hold of trees and roofs is taken off as at
 * the samples, straight between them, so that the rim of a wood is no steeper than the samples have it.
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
        for (int i = 0; i < n; i++) {
            if (i % parts == 0 || isVoid[i]) heightM[i] = Intervals.at(i, atM, parts);
            else heightM[i] -= Intervals.at(i, heldM, parts);
        }
        return heightM;
    }
}
