package handreach.bench;

import handreach.bench.match.MatchReadings;
import handreach.input.Fault;
import handreach.input.InputFault;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** What a bench session says: deltas over the control with their doubt, field-meter order, match, and all warnings. */
public final class BenchAnalysis {
    private final BenchFile file;
    private final Optional<String> control;
    private final List<MountResult> mounts;
    /** Levels of the file; none when it holds match readings only. */
    private final Optional<LevelComparison> levels;

    private final List<String> levelWarnings;
    private Beside beside;

    private BenchAnalysis(
            BenchFile file,
            Optional<String> control,
            List<MountResult> mounts,
            Optional<LevelComparison> levels,
            List<String> warnings) {
        this.file = file;
        this.control = control;
        this.mounts = List.copyOf(mounts);
        this.levels = levels;
        this.levelWarnings = List.copyOf(warnings);
    }

    /** What no loadout is built of, computed when first asked for: a reach does without, and is there a twentieth of a second sooner. */
    private record Beside(List<MeterResult> meters, List<MatchReadings> matches, List<String> warnings) {}

    private synchronized Beside beside() {
        if (beside != null) return beside;
        List<String> warnings = new ArrayList<>(levelWarnings);
        List<MeterResult> meters = levels.map(
                        known -> new MeterComparison(file, control.orElseThrow(), known, warnings).meters())
                .orElse(List.of());
        if (levels.isPresent()) RangeCheck.warn(file, warnings);
        List<MatchReadings> matches = MatchReadings.of(file, warnings);
        beside = new Beside(List.copyOf(meters), matches, List.copyOf(warnings));
        return beside;
    }

    /**
     * Compares every antenna with the control, mounting by mounting and frequency by frequency.
     *
     * <p>Differences within trials where antenna and control were read in turns, Welch's comparison otherwise; a drift that is
     * seen is taken out, from turns or from a control that was read before and after, and its doubt carried; declared doubts are
     * combined by the GUM; the verdicts of one mounting are made stricter together (Holm), and none is given from fewer than four
     * trials unless declared doubts carry it. Without declarations and drift the numbers are those of the plain paired or Welch
     * test.
     *
     * @shape  n readings in, one analysis out; O(n log n) plus the pairs of antennas in a mounting; pure
     * @unit   levels dBm, deltas dB, positive when stronger than the control
     * @valid  at least one mounting with readings of the control and of another antenna; else InputFault
     * @error  statistics below 1e-9 dB; what they mean rests on scatter being normal in decibels and trials independent
     * @source JCGM 100:2008 (GUM); Welch, Biometrika 34 (1947) 28; Holm, Scand. J. Statistics 6 (1979) 65
     */
    public static BenchAnalysis of(BenchFile file, String control) {
        return analysis(file, Optional.of(control));
    }

    /** As {@link #of(BenchFile, String)}, the control being the one that the file declares. */
    public static BenchAnalysis of(BenchFile file) {
        return analysis(file, file.declarations().control());
    }

    private static BenchAnalysis analysis(BenchFile file, Optional<String> asked) {
        List<String> warnings = new ArrayList<>(file.notes());
        if (!file.compares()) {
            warnings.add(
                    "The file holds no received_level and no field_meter rows: there is nothing to compare, only match.");
            return new BenchAnalysis(file, asked, List.of(), Optional.empty(), warnings);
        }
        String control = resolved(file, asked);
        requireComparison(file, control);
        LevelComparison levels = new LevelComparison(file, control, warnings);
        List<MountResult> mounts = levels.mounts();
        return new BenchAnalysis(file, Optional.of(control), mounts, Optional.of(levels), warnings);
    }

    private static String resolved(BenchFile file, Optional<String> asked) {
        if (asked.isEmpty())
            throw new InputFault(
                    file.name(),
                    0,
                    "names no control, the antenna all others are compared with. Name it with --control or a line # control ="
                            + " NAME above the header."
                            + file.antennasRead());
        String name = asked.get().strip().replaceAll("\\s+", " ");
        return file.antenna(name)
                .orElseThrow(() -> new InputFault(
                        file.name(), 0, "the control \"" + name + "\" has no reading." + file.insteadOf(name)));
    }

    /** Refuses a file from which no comparison at all can be made, line by line of the mountings that lack the control. */
    private static void requireComparison(BenchFile file, String control) {
        Map<String, List<Reading>> byGroup = new LinkedHashMap<>();
        for (Reading r : file.readings())
            if (r.quantity() == Quantity.RECEIVED_LEVEL || r.quantity() == Quantity.FIELD_METER)
                byGroup.computeIfAbsent(r.mounting().identity() + "\u0000" + r.quantity(), key -> new ArrayList<>())
                        .add(r);
        boolean possible = byGroup.values().stream()
                .anyMatch(rows -> rows.stream().anyMatch(r -> is(r, control))
                        && rows.stream().anyMatch(r -> !is(r, control)));
        if (possible) return;
        String where = String.join(
                ", ",
                byGroup.values().stream()
                        .flatMap(List::stream)
                        .filter(r -> is(r, control))
                        .map(r -> r.mounting().name())
                        .distinct()
                        .toList());
        List<Fault> faults = byGroup.values().stream()
                .filter(rows -> rows.stream().noneMatch(r -> is(r, control)))
                .map(rows -> new Fault(
                        file.name(),
                        rows.get(0).line(),
                        "the mounting \"" + rows.get(0).mounting().name() + "\" has "
                                + rows.get(0).quantity().key()
                                + " readings but none of the control \"" + control + "\""
                                + (where.isEmpty() ? "" : ", which was read in " + where + " only")
                                + ". Read the control in the same mounting; a delta across mountings means nothing."))
                .toList();
        if (!faults.isEmpty()) throw new InputFault(faults);
        throw new InputFault(
                file.name(),
                0,
                "only the control \"" + control + "\" was read. Add readings of the antennas to be compared with it.");
    }

    private static boolean is(Reading reading, String antenna) {
        return reading.antenna().equalsIgnoreCase(antenna);
    }

    public BenchFile file() {
        return file;
    }

    /** The control; none when the file holds match readings only. */
    public Optional<String> control() {
        return control;
    }

    /** One result a mounting and frequency, in the order of the file. */
    public List<MountResult> mounts() {
        return mounts;
    }

    public List<MeterResult> meters() {
        return beside().meters();
    }

    /** SWR, return loss, resonance and bandwidth, antenna by antenna and mounting by mounting. */
    public List<MatchReadings> matches() {
        return beside().matches();
    }

    /** What should be known about all this, in plain words, a sentence or two each. */
    public List<String> warnings() {
        return beside().warnings();
    }

    /** All deltas of an antenna from received levels, and from a field meter only where there are no levels. */
    public List<DeltaOverControl> deltas(String antenna) {
        List<DeltaOverControl> levels = mounts.stream()
                .flatMap(m -> m.antenna(antenna).stream())
                .map(AntennaResult::delta)
                .toList();
        List<DeltaOverControl> meter = meters().stream()
                .flatMap(m -> m.deltas().stream())
                .filter(a -> a.antenna().equalsIgnoreCase(antenna))
                .map(AntennaResult::delta)
                .filter(d -> levels.stream().noneMatch(l -> l.mounting().equals(d.mounting())))
                .toList();
        return Stream.concat(levels.stream(), meter.stream()).toList();
    }
}
