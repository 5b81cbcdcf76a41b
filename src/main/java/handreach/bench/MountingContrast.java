package handreach.bench;

import handreach.uncertainty.Estimate;
import handreach.uncertainty.MeanDifference;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** One antenna in two mountings. */
final class MountingContrast {
    private MountingContrast() {}

    static Optional<Estimate> of(BenchFile file, String antenna, String mounting, String against) {
        Map<SessionKey, List<Reading>> sessions = SessionKey.sessions(file.readings(), Quantity.RECEIVED_LEVEL);
        for (SessionKey key : sessions.keySet()) {
            if (!isNamed(key, mounting)) continue;
            List<Double> here = levels(sessions.get(key), antenna);
            List<Double> there = levels(other(sessions, against, key.frequencyMhz()), antenna);
            if (here.size() >= 2 && there.size() >= 2) return Optional.of(MeanDifference.welch(here, there));
        }
        return Optional.empty();
    }

    private static List<Reading> other(Map<SessionKey, List<Reading>> sessions, String name, OptionalDouble frequency) {
        return sessions.entrySet().stream()
                .filter(e ->
                        isNamed(e.getKey(), name) && e.getKey().frequencyMhz().equals(frequency))
                .flatMap(e -> e.getValue().stream())
                .toList();
    }

    private static boolean isNamed(SessionKey key, String mounting) {
        return key.mounting().identity().equals(mounting.strip().toLowerCase(Locale.ROOT));
    }

    private static List<Double> levels(List<Reading> readings, String antenna) {
        return readings.stream()
                .filter(r -> r.antenna().equalsIgnoreCase(antenna))
                .map(Reading::value)
                .toList();
    }
}
