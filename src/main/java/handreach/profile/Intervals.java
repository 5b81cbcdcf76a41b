package handreach.profile;

/** Values at samples whose intervals are divided into equal parts. */
public final class Intervals {
    private Intervals() {}

    /**
     * Value at one of the parts, counted from the first sample: straight between the samples beside it.
     *
     * @shape  scalar; pure
     * @unit   that of the values
     * @valid  parts up to those of the last sample
     * @error  rounding
     * @source a straight line
     */
    public static double at(int part, double[] atSamples, int parts) {
        int sample = part / parts;
        int into = part % parts;
        if (into == 0) return atSamples[sample];
        return atSamples[sample] + (atSamples[sample + 1] - atSamples[sample]) * into / parts;
    }

    /**
     * Makes bare ground of what tiles have at all parts: less what they hold of trees and roofs, as it was taken off at the samples, straight
     * between them, so that the rim of a wood is no steeper than the samples have it. A void between samples lies straight between them.
     *
     * @param tileM heights of the tiles, so many of them, made bare in place, m
     * @param atM bare ground at the samples, m
     * @param heldM what was taken off there, m
     */
    public static void bare(double[] tileM, boolean[] isVoid, int count, double[] atM, double[] heldM, int parts) {
        for (int i = 0; i < count; i++) {
            if (i % parts == 0 || isVoid[i]) tileM[i] = at(i, atM, parts);
            else tileM[i] -= at(i, heldM, parts);
        }
    }

    /**
     * The values at the samples and at all parts of the intervals between them.
     *
     * @shape  n in, (n − 1) parts + 1 out; pure
     * @unit   that of the values
     * @valid  at least one sample and one part
     * @error  rounding
     * @source a straight line
     */
    public static double[] divided(double[] atSamples, int parts) {
        double[] at = new double[(atSamples.length - 1) * parts + 1];
        for (int i = 0; i < at.length; i++) at[i] = at(i, atSamples, parts);
        return at;
    }
}
