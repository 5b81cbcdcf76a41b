package handreach.plan;

import handreach.input.Range;
import handreach.loadout.StatedSensitivity;
import handreach.propagation.NoiseEnvironment;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Noise from outside at a place: the kind of surroundings, and the floor where somebody has measured it.
 *
 * @param surroundings by which noise is taken from the table where it was not measured
 * @param measured in place of the table
 */
public record NoiseChoice(NoiseEnvironment surroundings, Optional<Measured> measured) {
    static final Range FLOOR = new Range("noise_floor_dbm", -150, -40, "dBm");
    static final Range FLOOR_MICROVOLTS = new Range("noise_floor_uv", 0.005, 2000, "uV");
    static final Range BANDWIDTH = new Range("noise_bandwidth_khz", 0.1, 1000, "kHz");

    /**
     * A floor as read at the antenna socket.
     *
     * @param floorDbm level without a signal
     * @param bandwidthKhz in which it was read
     */
    public record Measured(double floorDbm, double bandwidthKhz) {}

    /** The keys of a section that say it; nothing where none of them is there. */
    static Optional<NoiseChoice> read(PlanSection section) {
        NoiseEnvironment surroundings = section.word("noise", NoiseEnvironment.KEYWORD, NoiseEnvironment.RURAL);
        Optional<Measured> measured = measured(section);
        return section.has("noise") || measured.isPresent()
                ? Optional.of(new NoiseChoice(surroundings, measured))
                : Optional.empty();
    }

    private static Optional<Measured> measured(PlanSection section) {
        OptionalDouble dbm = section.number(FLOOR);
        OptionalDouble microvolts = section.number(FLOOR_MICROVOLTS);
        OptionalDouble bandwidth = section.number(BANDWIDTH);
        boolean isInDbm = section.has(FLOOR.key());
        boolean isInMicrovolts = section.has(FLOOR_MICROVOLTS.key());
        if (isInDbm && isInMicrovolts)
            section.fault(FLOOR_MICROVOLTS.key(), "stands beside " + FLOOR.key() + ", which says the same. Keep one.");
        if ((isInDbm || isInMicrovolts) && !section.has(BANDWIDTH.key()))
            section.fault(
                    isInDbm ? FLOOR.key() : FLOOR_MICROVOLTS.key(),
                    "means nothing without the bandwidth it was read in. Add " + BANDWIDTH.key()
                            + ", from the instrument's settings.");
        if (!isInDbm && !isInMicrovolts && section.has(BANDWIDTH.key()))
            section.fault(BANDWIDTH.key(), "stands alone. Add " + FLOOR.key() + " or " + FLOOR_MICROVOLTS.key() + ".");
        OptionalDouble floor = microvolts.isPresent()
                ? OptionalDouble.of(StatedSensitivity.ofMicrovolts(
                                microvolts.getAsDouble(),
                                StatedSensitivity.Across.LOAD,
                                StatedSensitivity.Mark.SINAD_12)
                        .dbm())
                : dbm;
        return floor.isPresent() && bandwidth.isPresent()
                ? Optional.of(new Measured(floor.getAsDouble(), bandwidth.getAsDouble()))
                : Optional.empty();
    }
}
