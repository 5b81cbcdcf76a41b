package handreach.budget;

import handreach.propagation.ExternalNoise;
import handreach.propagation.NoiseEnvironment;
import handreach.units.Dbm;
import handreach.units.Decibels;
import handreach.units.Frequency;
import java.math.BigDecimal;
import java.util.Locale;

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
     * Noise where somebody has read the floor: F = P − kT0 − B, all in decibels.
     *
     * @shape  scalars in, one value out; pure
     * @unit   floor dBm at the antenna socket, bandwidth kHz, spread dB
     * @valid  as a lossless short antenna clear of the body reads it, the instrument's own noise well below: what the antenna loses is
     *         missing in the reading, and what the instrument adds is in it
     * @error  that of the reading; other hours and places by the spread
     * @source Rec. ITU-R P.372-16, section 2: fa = p / (k T0 b)
     */
    public static SiteNoise measured(Dbm floor, double bandwidthKhz, double spreadDb) {
        double median = floor.dbm() - Dbm.THERMAL_PER_HZ - 10 * Math.log10(1000 * bandwidthKhz);
        return new SiteNoise(
                String.format(
                        Locale.ROOT,
                        "measured floor, %s dBm in %s kHz",
                        Decibels.number(floor.dbm(), 1),
                        BigDecimal.valueOf(bandwidthKhz).stripTrailingZeros().toPlainString()),
                median,
                spreadDb,
                "measured, as stated in the plan; spread as between such places, Rec. ITU-R P.372");
    }

    /** Usual noise of such surroundings; see {@link ExternalNoise#medianDb}. */
    public static SiteNoise of(NoiseEnvironment environment, Frequency frequency) {
        boolean inside = ExternalNoise.warnings(environment, frequency).isEmpty();
        return new SiteNoise(
                environment.word(),
                ExternalNoise.medianDb(environment, frequency),
                environment.placeSpreadDb(),
                inside
                        ? "Rec. ITU-R P.372, median of hours and places"
                        : "Rec. ITU-R P.372 carried on, floor ours; median of hours and places");
    }
}
