package handreach.study;

import handreach.atlas.AtlasQuestion;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.Range;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What a person asks of an atlas beside the plan.
 *
 * @param gridM from position to position, m
 * @param targetsM from target to target, m; empty takes the grid of the positions
 * @param region polygons of the region; empty takes the plan's area
 * @param layers what is told of the region
 * @param relays how many relays to place; 0 for none
 * @param servesM median reach from which a loadout serves, m; empty takes a quarter of the radius
 */
public record AtlasOptions(
        double gridM,
        OptionalDouble targetsM,
        Optional<Path> region,
        Set<AtlasLayer> layers,
        int relays,
        OptionalDouble servesM) {
    /** Relays that can be asked for; our suggestion. */
    public static final Range RELAYS = new Range("relays", 0, 50, "");
    /** Threads that can be asked for. */
    public static final Range CORES = new Range("cores", 1, 256, "");

    private static final Range SERVES = new Range("serves", 50, 120_000, "m");

    public AtlasOptions {
        layers = Set.copyOf(layers);
    }

    /** Every fault of the wish at once, named by the options that set it. */
    void check() {
        Faults faults = new Faults();
        AtlasQuestion.GRID.check(faults, "--grid", gridM);
        targetsM.ifPresent(m -> AtlasQuestion.GRID.check(faults, "--targets", m));
        servesM.ifPresent(m -> SERVES.check(faults, "--serves", m));
        RELAYS.check(faults, "--relays", relays);
        if (layers.contains(AtlasLayer.TALK) && targetsM.isPresent() && targetsM.getAsDouble() != gridM)
            faults.add(
                    "--targets",
                    0,
                    "is not the grid of the positions, but the layer talk asks which positions hear one another."
                            + " Leave --targets out, or talk out of --layers.");
        faults.throwIfAny();
    }

    /** A distance as typed, such as {@code 300m}, {@code 0.3km} or {@code 300}; a fault of the option if it is none. */
    public static double metres(String option, String typed) {
        String plain = typed.strip();
        boolean isKm = plain.endsWith("km");
        String number = isKm
                ? plain.substring(0, plain.length() - 2)
                : plain.endsWith("m") ? plain.substring(0, plain.length() - 1) : plain;
        if (!number.strip().matches("[0-9]+(\\.[0-9]+)?"))
            throw new InputFault(option, 0, "is \"" + typed + "\", a distance is expected. Write 300m or 0.3km.");
        return Double.parseDouble(number.strip()) * (isKm ? 1000 : 1);
    }
}
