package handreach.profile;

/** Values at samples whose intervals are divided into equal parts. */
public final class Intervals {
    private Intervals() {}

    /** Value at one of the parts, counted from the first sample: straight between the samples beside it. */
    public static double at(int part, double[] atSamples, int parts) {
        int sample = part / parts;
        int into = part % parts;
        if (into == 0) return atSamples[sample];
        return atSamples[sample] + (atSamples[sample + 1] - atSamples[sample]) * into / parts;
    }

    /** The distances of so many samples and of all parts of the intervals between them. */
    public static double[] divided(double[] atSamples, int parts) {
        double[] at = new double[(atSamples.length - 1) * parts + 1];
        for (int i = 0; i < at.length; i++) at[i] = at(i, atSamples, parts);
        return at;
    }
}
