package handreach.bench;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One mounting at one frequency: all antennas against the control.
 *
 * @param mounting what the antennas stood on
 * @param frequencyMhz where the readings give it
 * @param control readings of the control taken together
 * @param antennas the others, strongest first
 * @param alike largest groups of antennas, the control among them, that cannot be told apart from one another; each of two
 *     or more, one antenna perhaps in several
 * @param drift movement of the control; none with fewer than three readings of it
 */
public record MountResult(
        Mounting mounting,
        OptionalDouble frequencyMhz,
        LevelSummary control,
        List<AntennaResult> antennas,
        List<List<String>> alike,
        Optional<ControlDrift> drift) {
    public MountResult {
        Objects.requireNonNull(mounting);
        Objects.requireNonNull(frequencyMhz);
        Objects.requireNonNull(control);
        Objects.requireNonNull(drift);
        antennas = List.copyOf(antennas);
        alike = alike.stream().map(List::copyOf).toList();
    }

    public Optional<AntennaResult> antenna(String name) {
        return antennas.stream().filter(a -> a.antenna().equalsIgnoreCase(name)).findFirst();
    }
}
