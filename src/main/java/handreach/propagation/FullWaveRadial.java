package handreach.propagation;

import java.util.List;

/**
 * Loss from one antenna to every sample of a radial, from one march of the field.
 *
 * <p>Indices are those of the profile's samples, from 1: there is no loss to the antenna's own place. Immutable.
 */
public final class FullWaveRadial {
    private final double[] distanceKm;
    private final double[] freeSpaceDb;
    private final double[] pointDb;
    private final double[] meanDb;
    private final List<String> warnings;

    FullWaveRadial(
            double[] distanceKm, double[] freeSpaceDb, double[] pointDb, double[] meanDb, List<String> warnings) {
        this.distanceKm = distanceKm;
        this.freeSpaceDb = freeSpaceDb;
        this.pointDb = pointDb;
        this.meanDb = meanDb;
        this.warnings = List.copyOf(warnings);
    }

    /** Number of samples of the profile; losses stand at 1 to count − 1. */
    public int count() {
        return distanceKm.length;
    }

    public double distanceKm(int sample) {
        return distanceKm[checked(sample)];
    }

    /** Free-space basic transmission loss over the slant distance between the antennas, dB. */
    public double freeSpaceDb(int sample) {
        return freeSpaceDb[checked(sample)];
    }

    /** Basic transmission loss at the very point, interference and all, dB. */
    public double pointLossDb(int sample) {
        return pointDb[checked(sample)];
    }

    /** Basic transmission loss of the mean power over the stretch before the point (60 m, less near the source), dB. */
    public double meanLossDb(int sample) {
        return meanDb[checked(sample)];
    }

    /** Excess of the local mean over free space, dB. */
    public double excessDb(int sample) {
        return meanDb[checked(sample)] - freeSpaceDb[sample];
    }

    /** What was outside the validity of the march, one sentence each. */
    public List<String> warnings() {
        return warnings;
    }

    private int checked(int sample) {
        if (sample < 1 || sample >= distanceKm.length)
            throw new IndexOutOfBoundsException("sample " + sample + " of a radial of " + distanceKm.length);
        return sample;
    }
}
