package handreach.budget;

import handreach.propagation.ExternalNoise;
import handreach.propagation.NoiseEnvironment;
import handreach.units.Frequency;

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

    /** Usual noise of such surroundings; see {@link ExternalNoise#medianDb}. */
    public static SiteNoise of(NoiseEnvironment environment, Frequency frequency) {
        boolean inside = ExternalNoise.warnings(environment, frequency).isEmpty();
        return new SiteNoise(
                environment.word(),
                ExternalNoise.medianDb(environment, frequency),
                environment.placeSpreadDb(),
                inside ? "Rec. ITU-R P.372" : "Rec. ITU-R P.372 carried on, floor ours");
    }
}
