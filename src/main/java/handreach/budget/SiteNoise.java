package handreach.budget;

/**
 * Noise from outside the receiver at one end.
 *
 * @param label what kind of place it is
 * @param medianDb median external noise figure Fam, dB over kT, as a lossless short monopole receives it
 * @param spreadDb spread between places of that kind, dB
 * @param source document
 */
public record SiteNoise(String label, double medianDb, double spreadDb, String source) {
    /** No noise but that of the receiver and of things at 290 K. */
    public static final SiteNoise NONE = new SiteNoise("no outside noise", 0, 0, "reference temperature, 290 K");

    public SiteNoise {
        if (!(Math.abs(medianDb) <= 150) || !(spreadDb >= 0 && spreadDb <= 30))
            throw new IllegalArgumentException("external noise " + medianDb + " dB, spread " + spreadDb);
    }

    /**
     * How much outside noise raises the receiver's, given how much of it the antenna lets in.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   noise figures dB; efficiency of antenna and body together, above 0 to 1; result dB, positive weakens
     * @valid  noise figure from 0 up; slightly negative result where outside is colder than 290 K
     * @error  none beyond that of its inputs
     * @source cascade of a lossy antenna at 290 K and a receiver, Rec. ITU-R P.372, section 2 (from memory)
     */
    public static double degradationDb(double externalDb, double noiseFigureDb, double efficiency) {
        if (!(efficiency > 0 && efficiency <= 1) || !(noiseFigureDb >= 0))
            throw new IllegalArgumentException("efficiency " + efficiency + ", noise figure " + noiseFigureDb);
        double f = Math.pow(10, noiseFigureDb / 10);
        double fa = Math.pow(10, externalDb / 10);
        return 10 * Math.log10((efficiency * fa + (1 - efficiency) + f - 1) / f);
    }
}
