package handreach.desktop;

import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.bench.Mounting;
import handreach.bench.Reading;
import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.Touchstone;
import handreach.input.InputFault;
import handreach.plan.Equipment;
import handreach.plan.PlanText;
import handreach.study.Scene;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Readings from a file that is not, or not yet, the plan's.
 *
 * @param file where they stand
 * @param readings as read
 * @param control the antenna all others are compared with
 * @param analysis what they say against that control, or why nothing can be said
 */
record BenchImport(Path file, BenchFile readings, String control, Said analysis) {
    /** Sweeps beside a bench file that are shown with it. */
    private static final int MOST_SWEEPS = 8;
    /** Impedance of handheld radios, ohms. */
    private static final double RADIO_OHM = 50;

    /**
     * An analysis, or the fault that stands in its way.
     *
     * @param found what the readings say
     * @param wrong why they say nothing with this control
     */
    record Said(Optional<BenchAnalysis> found, Optional<InputFault> wrong) {}

    /**
     * Sweeps of reflection, and what is wrong with those that could not be read.
     *
     * @param sweeps those that could
     * @param wrong faults of the others
     */
    record Sweeps(List<MatchAnalysis> sweeps, List<InputFault> wrong) {}

    /** Reads a file; the control is the one it declares, else the plan's, else the antenna read first. */
    static BenchImport read(Path file, Scene scene) {
        BenchFile readings = BenchFile.read(file);
        List<String> names = antennas(readings);
        if (names.isEmpty()) throw new InputFault(readings.name(), 0, "holds no reading. Add rows under the header.");
        String control = Stream.concat(
                        readings.declarations().control().stream(),
                        scene.plan().equipment().bench().map(Equipment.Bench::control).stream())
                .flatMap(wanted -> names.stream().filter(wanted::equalsIgnoreCase))
                .findFirst()
                .orElse(names.get(0));
        return of(file, readings, control);
    }

    private static BenchImport of(Path file, BenchFile readings, String control) {
        try {
            BenchAnalysis found = BenchAnalysis.of(readings, control);
            return new BenchImport(file, readings, control, new Said(Optional.of(found), Optional.empty()));
        } catch (InputFault wrong) {
            return new BenchImport(file, readings, control, new Said(Optional.empty(), Optional.of(wrong)));
        }
    }

    BenchImport against(String other) {
        return of(file, readings, other);
    }

    /** Antennas in the order they were read first. */
    List<String> antennas() {
        return antennas(readings);
    }

    static List<String> antennas(BenchFile readings) {
        return once(readings.readings().stream().map(Reading::antenna).toList());
    }

    /** Mountings in the order they were read first. */
    List<String> mounts() {
        return once(readings.readings().stream()
                .map(Reading::mounting)
                .map(Mounting::name)
                .toList());
    }

    private static List<String> once(List<String> names) {
        Map<String, String> first = new LinkedHashMap<>();
        for (String name : names) first.putIfAbsent(name.toLowerCase(Locale.ROOT), name);
        return List.copyOf(first.values());
    }

    /** The plan's text with these readings as its bench. */
    String takenInto(String planText, Path planFolder, String mount) {
        String with = PlanText.withValue(planText, "bench", "file", PlanText.quoted(named(planFolder, file)));
        with = PlanText.withValue(with, "bench", "control", PlanText.quoted(control));
        return PlanText.withValue(with, "bench", "mount", PlanText.quoted(mount));
    }

    /** The way from the plan's folder to the file, in the plan's own spelling; the whole way where no short one exists. */
    static String named(Path planFolder, Path file) {
        Path folder = planFolder.toAbsolutePath().normalize();
        Path whole = file.toAbsolutePath().normalize();
        boolean isNear = folder.getRoot() != null && folder.getRoot().equals(whole.getRoot());
        return (isNear ? folder.relativize(whole) : whole).toString().replace('\\', '/');
    }

    static MatchAnalysis sweep(Path file, Scene scene) {
        return MatchAnalysis.of(
                Touchstone.read(file),
                List.of(scene.plan().channel().frequency().mhz()),
                RADIO_OHM);
    }

    /** Touchstone files beside the plan's bench file, by name. */
    static Sweeps sweepsOf(Scene scene) {
        if (scene.plan().equipment().bench().isEmpty()) return new Sweeps(List.of(), List.of());
        Path folder =
                scene.plan().equipment().bench().get().file().toAbsolutePath().getParent();
        List<MatchAnalysis> sweeps = new ArrayList<>();
        List<InputFault> wrong = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> found = files.filter(
                            file -> file.toString().toLowerCase(Locale.ROOT).endsWith(".s1p"))
                    .sorted()
                    .limit(MOST_SWEEPS)
                    .toList();
            for (Path file : found) {
                try {
                    sweeps.add(sweep(file, scene));
                } catch (InputFault fault) {
                    wrong.add(fault);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Sweeps(List.copyOf(sweeps), List.copyOf(wrong));
    }
}
