package handreach.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Readings that may be compared with one another: one mounting, one frequency.
 *
 * @param mounting what the antennas stood on
 * @param frequencyMhz where the readings give it
 */
public record SessionKey(Mounting mounting, OptionalDouble frequencyMhz) {
    /**
     * Sorts readings of one quantity into sessions. A row without a frequency joins the only frequency of its mounting if
     * there is just one.
     */
    static Map<SessionKey, List<Reading>> sessions(List<Reading> readings, Quantity quantity) {
        Map<Mounting, Set<Double>> frequencies = new LinkedHashMap<>();
        for (Reading r : readings)
            if (r.quantity() == quantity) {
                Set<Double> known = frequencies.computeIfAbsent(r.mounting(), m -> new LinkedHashSet<>());
                r.frequencyMhz().ifPresent(known::add);
            }
        Map<SessionKey, List<Reading>> sessions = new LinkedHashMap<>();
        for (Reading r : readings) {
            if (r.quantity() != quantity) continue;
            Set<Double> known = frequencies.get(r.mounting());
            OptionalDouble frequency = r.frequencyMhz();
            if (frequency.isEmpty() && known.size() == 1)
                frequency = OptionalDouble.of(known.iterator().next());
            sessions.computeIfAbsent(new SessionKey(r.mounting(), frequency), k -> new ArrayList<>())
                    .add(r);
        }
        return sessions;
    }

    /** How the session is called in a sentence. */
    String words() {
        return frequencyMhz.isEmpty()
                ? mounting.name()
                : mounting.name() + " at " + plain(frequencyMhz.getAsDouble()) + " MHz";
    }

    /** The same before a colon. */
    String named() {
        return "Mounting \"" + mounting.name() + "\""
                + (frequencyMhz.isEmpty() ? "" : " at " + plain(frequencyMhz.getAsDouble()) + " MHz");
    }

    public static String plain(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? String.valueOf((long) value)
                : String.valueOf(value);
    }

    /** Written out, as in {@link Mounting}. */
    @Override
    public boolean equals(Object other) {
        return other instanceof SessionKey that
                && mounting.equals(that.mounting)
                && frequencyMhz.equals(that.frequencyMhz);
    }

    @Override
    public int hashCode() {
        return 31 * mounting.hashCode() + frequencyMhz.hashCode();
    }
}
