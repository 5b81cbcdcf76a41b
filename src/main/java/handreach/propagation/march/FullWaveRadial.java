package handreach.propagation.march;

import handreach.propagation.NoAnswer;
import java.util.List;

/**
 * Loss from one antenna to every sample of a radial, from one march of the field.
 *
 * <p>Indices are those of the profile's samples, from 1: there is no loss to the antenna's own place, and none behind ground
 * that is too steep ({@link #answered}). Between samples it is read as often as the profile has heights there, 15 m apart or more.
 * Immutable.
 */
public final class FullWaveRadial {
    private final double[] distanceKm;
    /** Readings from one sample to the next. */
    private final int readings;

    private final double[] freeSpaceDb;
    private final double[] pointDb;
    private final double[] meanDb;
    private final int answered;
    private final String refusal;
    private final List<String> warnings;

    /**
     * @param readings from one sample to the next
     * @param freePointMeanDb losses: of free space and of the local mean at every reading, at the very point at every sample
     * @param refusal why samples from {@code answered} on have no loss, a sentence for the user
     */
    FullWaveRadial(
            double[] distanceKm,
            int readings,
            double[][] freePointMeanDb,
            int answered,
            String refusal,
            List<String> warnings) {
        this.distanceKm = distanceKm;
        this.readings = readings;
        this.freeSpaceDb = freePointMeanDb[0];
        this.pointDb = freePointMeanDb[1];
        this.meanDb = freePointMeanDb[2];
        this.answered = answered;
        this.refusal = refusal;
        this.warnings = List.copyOf(warnings);
    }

    /** Number of samples of the profile; losses stand at 1 to count − 1. */
    int count() {
        return distanceKm.length;
    }

    /**
     * Number of samples the march answers for: those from here on lie behind ground steeper than it holds, and asking for a loss there
     * is refused with a sentence for the user.
     */
    int answered() {
        return answered;
    }

    double distanceKm(int sample) {
        return distanceKm[onRadial(sample)];
    }

    /** Free-space basic transmission loss over the slant distance between the antennas, dB. */
    double freeSpaceDb(int sample) {
        return freeSpaceDb[checked(sample)];
    }

    /** Basic transmission loss at the very point, interference and all, dB. */
    public double pointLossDb(int sample) {
        return pointDb[checked(sample) / readings];
    }

    /** Basic transmission loss of the mean power over the stretch before the point (60 m, less near the source), dB. */
    public double meanLossDb(int sample) {
        return meanDb[checked(sample)];
    }

    /**
     * The same at a share of the way to the next sample; at the last sample that is answered for, that one's.
     *
     * @shape  scalar; pure
     * @unit   dB
     * @valid  a share of 0 to 1
     * @error  beside the march's own that of a straight line between readings some 15 to 30 m apart: over posts of 3 arc-seconds at 446 MHz
     *     lines of 37 m were 0.3 to 0.45 dB rms off (docs/full-wave.md)
     * @source readings of the march
     */
    public double meanLossDb(int sample, double share) {
        int at = checked(sample);
        if (sample + 1 >= answered) return meanDb[at];
        int before = (int) Math.min(readings - 1.0, share * readings);
        double rest = share * readings - before;
        return meanDb[at + before] + rest * (meanDb[at + before + 1] - meanDb[at + before]);
    }

    /** Excess of the local mean over free space, dB. */
    public double excessDb(int sample) {
        int at = checked(sample);
        return meanDb[at] - freeSpaceDb[at];
    }

    /** What was outside the validity of the march, one sentence each. */
    public List<String> warnings() {
        return warnings;
    }

    /** The reading at a sample. */
    private int checked(int sample) {
        if (onRadial(sample) >= answered) throw new NoAnswer(refusal);
        return sample * readings;
    }

    private int onRadial(int sample) {
        if (sample < 1 || sample >= distanceKm.length)
            throw new IndexOutOfBoundsException("sample " + sample + " of a radial of " + distanceKm.length);
        return sample;
    }
}
