package handreach.study;

import handreach.bench.BenchAnalysis;
import handreach.bench.DeltaOverControl;
import handreach.bench.MountKind;
import handreach.loadout.Antenna;
import handreach.loadout.AntennaDelta;
import handreach.loadout.Carry;
import handreach.loadout.CarryLoss;
import handreach.loadout.DeltaMove;
import handreach.plan.Equipment;
import handreach.plan.PlanFile;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A delta that was read clear of any body, and what of it is to be expected in the hand.
 *
 * @param read as it was read on the box or on an instrument
 * @param move what becomes of it in the hand at the face, or why that is not known
 * @param inHand the same antenna as it was read in the hand, where it was
 */
public record HandDelta(DeltaOverControl read, DeltaMove move, Optional<DeltaOverControl> inHand) {
    /**
     * All such deltas of the antennas of a plan, on its channel.
     *
     * @shape  one entry a mounting clear of the body of every antenna, in the order of the plan; pure
     * @unit   decibels over the control
     * @valid  antennas that the bench has under the names of the plan; the control's own only with the wire
     * @error  {@link DeltaMove}
     * @source {@link DeltaMove#of}
     */
    public static List<HandDelta> of(PlanFile file, BenchAnalysis bench) {
        Frequency frequency = file.plan().channel().frequency();
        LoadoutBuilder builder = new LoadoutBuilder(file, Optional.of(bench), new ArrayList<>());
        List<HandDelta> found = new ArrayList<>();
        for (Equipment.AntennaEntry entry : file.plan().equipment().antennas()) {
            String name = entry.delta().benchName();
            for (DeltaOverControl read : bench.deltas(name)) {
                boolean wire = read.mounting().withCounterpoise();
                add(found, bench, read, builder.bare(entry, wire), builder.control(), frequency);
            }
            Optional<String> wired = entry.delta().withWire().filter(other -> !other.equalsIgnoreCase(name));
            for (DeltaOverControl read : wired.map(bench::deltas).orElse(List.of()))
                add(found, bench, read, builder.bare(entry, true), builder.control(), frequency);
        }
        return List.copyOf(found);
    }

    private static void add(
            List<HandDelta> found,
            BenchAnalysis bench,
            DeltaOverControl read,
            Antenna antenna,
            Antenna control,
            Frequency frequency) {
        if (read.mounting().kind() == MountKind.HAND || read.mounting().kind() == MountKind.BODY) return;
        DeltaMove move = DeltaMove.of(
                AntennaDelta.of(read, 1, ""), antenna, control, CarryLoss.standard(Carry.FACE, frequency), frequency);
        Optional<DeltaOverControl> inHand = bench.deltas(read.antenna()).stream()
                .filter(other -> other.mounting().kind() == MountKind.HAND)
                .filter(other ->
                        other.mounting().withCounterpoise() == read.mounting().withCounterpoise())
                .findFirst();
        found.add(new HandDelta(read, move, inHand));
    }

    /** What is to be expected in the hand, dB over the control; nothing where it is not known. */
    public OptionalDouble expectedDb() {
        return move.isKnown() ? OptionalDouble.of(read.db() + move.shiftDb()) : OptionalDouble.empty();
    }

    /** Standard uncertainty of {@link #expectedDb}, reading and move together, dB; nothing where that of the reading is not known. */
    public OptionalDouble doubtDb() {
        OptionalDouble reading = read.standardUncertaintyDb();
        if (!move.isKnown() || reading.isEmpty()) return OptionalDouble.empty();
        return OptionalDouble.of(
                Math.hypot(reading.getAsDouble(), Math.hypot(move.controlDoubtDb(), move.kindDoubtDb())));
    }
}
