package handreach.bench;

import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Whether the declared test range can be trusted at the frequencies that were read. */
final class RangeCheck {
    /** Ground effect below this is the flank of a null, where centimetres matter. */
    private static final double NEAR_NULL_DB = -6;

    private static final double SENSITIVE_DB = 1;

    private RangeCheck() {}

    static void warn(BenchFile file, List<String> warnings) {
        Optional<TestRange> range = file.declarations().range();
        if (range.isEmpty()) return;
        file.readings().stream()
                .filter(r -> r.quantity() == Quantity.RECEIVED_LEVEL || r.quantity() == Quantity.FIELD_METER)
                .flatMap(r -> r.frequencyMhz().stream().boxed())
                .distinct()
                .sorted()
                .forEach(mhz -> warnings.addAll(findings(range.get(), new Frequency(mhz))));
    }

    /** What speaks against readings on this range at this frequency; nothing when it is sound. */
    static List<String> findings(TestRange range, Frequency frequency) {
        List<String> found = new ArrayList<>();
        String at = SessionKey.plain(frequency.mhz()) + " MHz";
        double sizeM = range.antennaSizeM().orElse(frequency.wavelengthM() / 4);
        double farM = TestRange.farFieldM(sizeM, frequency);
        if (range.distanceM() < farM)
            found.add(String.format(
                    Locale.ROOT,
                    "Test range: %s m is too close at %s, the far field of %s begins at %.1f m. Near readings favour one antenna"
                            + " over another for no good reason; step back.",
                    SessionKey.plain(range.distanceM()),
                    at,
                    range.antennaSizeM().isPresent()
                            ? SessionKey.plain(sizeM) + " m of antenna"
                            : "a quarter-wave antenna (antenna_size_m is not declared)",
                    farM));
        double groundDb = range.groundEffectDb(frequency);
        double sensitiveDb = range.heightSensitivityDb(frequency);
        if (groundDb < NEAR_NULL_DB && isGrazing(range, frequency))
            found.add(String.format(
                    Locale.ROOT,
                    "Test range: at %s the ground reflection takes %.1f dB away: at this distance the ray grazes the ground, which"
                            + " cancels it the more, the lower and the farther the antennas. %s",
                    at,
                    -groundDb,
                    advice(range)));
        else if (groundDb < NEAR_NULL_DB)
            found.add(String.format(
                    Locale.ROOT,
                    "Test range: at %s the ground reflection takes %.1f dB away at this distance and these heights: the receiver"
                            + " sits near a null. %s",
                    at,
                    -groundDb,
                    advice(range)));
        else if (sensitiveDb > SENSITIVE_DB)
            found.add(String.format(
                    Locale.ROOT,
                    "Test range: at %s a radiating centre 0.25 m higher or lower reads %.1f dB otherwise by ground reflection"
                            + " alone, and a longer antenna has a higher centre. %s",
                    at,
                    sensitiveDb,
                    advice(range)));
        return found;
    }

    /** Beyond the farthest null there is none any more, only the slow fall of a path that grazes the ground. */
    private static boolean isGrazing(TestRange range, Frequency frequency) {
        double direct = Math.hypot(range.distanceM(), range.txHeightM() - range.rxHeightM());
        double mirrored = Math.hypot(range.distanceM(), range.txHeightM() + range.rxHeightM());
        return mirrored - direct < frequency.wavelengthM() / 2;
    }

    private static String advice(TestRange range) {
        return range.polarization() == Polarization.VERTICAL
                ? String.format(
                        Locale.ROOT,
                        "The ground reflects least near %.0f m; or read at two distances and declare the spread as"
                                + " phase_centre_db.",
                        range.quietestDistanceM())
                : "Read at two distances or heights and declare the spread as phase_centre_db.";
    }
}
