package handreach.report;

import handreach.bench.BenchAnalysis;
import handreach.bench.DeltaOverControl;
import handreach.loadout.Burden;
import handreach.plan.Equipment;
import handreach.plan.Plan;
import handreach.study.Scene;
import handreach.units.Decibels;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What an antenna buys over the control and what it costs to carry.
 *
 * @param antenna what the user calls it
 * @param source where its level over the control comes from
 * @param burden length, mass, price, stiffness
 * @param lengths how the user wants length and mass written
 */
public record AntennaCost(String antenna, Source source, Burden burden, Lengths lengths) {
    private static final String NOT_GIVEN = "not given";
    private static final String WIRE = " with counterpoise wire";

    /**
     * Where a level over the control comes from.
     *
     * @param benchName its name in the bench file
     * @param onlyWithWire whether only mountings with a counterpoise wire count
     * @param stated what the plan states in place of readings
     */
    public record Source(String benchName, boolean onlyWithWire, Optional<String> stated) {}

    /** An antenna known by its name in the bench file alone. */
    public AntennaCost(String antenna, Burden burden) {
        this(antenna, new Source(antenna, false, Optional.empty()), burden, Lengths.METRIC);
    }

    /** Every antenna of a plan, carried or not, and once more with the wire where that was read or is carried. */
    public static List<AntennaCost> of(Plan plan) {
        List<AntennaCost> costs = new ArrayList<>();
        Lengths lengths = plan.header().lengths();
        for (Equipment.AntennaEntry entry : plan.equipment().antennas()) {
            Burden burden = Scene.burden(plan, entry);
            Optional<String> stated = stated(entry);
            String name = entry.delta().benchName();
            costs.add(new AntennaCost(entry.name(), new Source(name, false, stated), burden, lengths));
            Optional<String> withWire = entry.delta().withWire();
            boolean isCarried = plan.equipment().loadouts().stream()
                    .anyMatch(one -> one.counterpoise() && one.antenna().equals(entry.name()));
            if (withWire.isPresent() || isCarried)
                costs.add(new AntennaCost(
                        entry.name() + WIRE,
                        new Source(withWire.orElse(name), withWire.isEmpty(), stated),
                        burden,
                        lengths));
        }
        return costs;
    }

    private static Optional<String> stated(Equipment.AntennaEntry entry) {
        if (entry.known().gain().isPresent())
            return entry.known().gain().map(gain -> Decibels.number(gain.dbi(), 1) + " dBi, stated in the plan");
        if (entry.delta().deltaDb().isEmpty()) return Optional.empty();
        return Optional.of(Decibels.signed(entry.delta().deltaDb().getAsDouble(), 1) + " dB "
                + entry.delta().mount().orElse("")
                + ", stated in the plan");
    }

    /** What it buys, as read on the bench in every mounting, or as the plan states it. */
    String buys(Optional<BenchAnalysis> analysis) {
        if (source.stated().isPresent()) return source.stated().get();
        if (analysis.isEmpty()) return "not read";
        boolean isControl = analysis.get()
                .control()
                .filter(source.benchName()::equalsIgnoreCase)
                .isPresent();
        if (isControl && !source.onlyWithWire()) return "control";
        List<DeltaOverControl> deltas = analysis.get().deltas(source.benchName()).stream()
                .filter(delta -> !source.onlyWithWire() || delta.mounting().withCounterpoise())
                .toList();
        if (deltas.isEmpty()) return "not read";
        return deltas.stream()
                .map(d -> Decibels.signed(d.db(), 1) + " dB " + d.mounting().name())
                .collect(Collectors.joining("; "));
    }

    /** Its length, in the plan's unit, marked where nobody stated it. */
    static String length(Burden burden, Lengths lengths) {
        return lengths.antennaNumber(burden.lengthCm()) + (burden.lengthIsUsual() ? ", usual" : "");
    }

    /** What it weighs, in the plan's unit, if that was stated. */
    static String mass(Burden burden, Lengths lengths) {
        return burden.massG().isPresent() ? lengths.massNumber(burden.massG().getAsDouble()) : NOT_GIVEN;
    }

    /** A side of the burden that may not have been stated; never 0 for not known. */
    static String side(java.util.OptionalDouble side) {
        return side.isPresent() ? Decibels.number(side.getAsDouble(), 0) : NOT_GIVEN;
    }
}
