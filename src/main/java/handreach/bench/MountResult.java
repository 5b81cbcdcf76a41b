package handreach.bench;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One mounting at one frequency: all antennas against the control. Immutable. */
public final class MountResult {
    private final SessionKey key;
    private final LevelSession session;
    private final LevelSummary control;
    private final List<AntennaResult> antennas;
    private List<List<String>> alike;

    /** Of a session whose control is set, and which nobody changes any more. */
    MountResult(SessionKey key, LevelSession session, List<AntennaResult> antennas) {
        this.key = key;
        this.session = session;
        this.control = session.control().orElseThrow().summary();
        this.antennas = List.copyOf(antennas);
    }

    /** What the antennas stood on. */
    public Mounting mounting() {
        return key.mounting();
    }

    /** Where the readings give it. */
    public OptionalDouble frequencyMhz() {
        return key.frequencyMhz();
    }

    /** Readings of the control taken together. */
    public LevelSummary control() {
        return control;
    }

    /** The others, strongest first. */
    public List<AntennaResult> antennas() {
        return antennas;
    }

    /**
     * Largest groups of antennas, the control among them, that cannot be told apart from one another; each of two or more, one
     * antenna perhaps in several. Worked out when first asked for: no loadout is built of them.
     */
    public synchronized List<List<String>> alike() {
        if (alike == null) alike = AlikeGroups.of(session, antennas);
        return alike;
    }

    /** Whether every antenna is told apart from the control and from every other one. */
    public boolean areAllToldApart() {
        return antennas.size() < AlikeGroups.MOST_ANTENNAS
                && antennas.stream().allMatch(AntennaResult::toldApart)
                && alike().isEmpty();
    }

    /** Movement of the control; none with fewer than three readings of it. */
    public Optional<ControlDrift> drift() {
        return session.drift();
    }

    public Optional<AntennaResult> antenna(String name) {
        return antennas.stream().filter(a -> a.antenna().equalsIgnoreCase(name)).findFirst();
    }
}
