package handreach.report;

import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.bench.Mounting;
import handreach.bench.Quantity;
import handreach.bench.Reading;
import handreach.bench.SessionOrder;
import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.Touchstone;
import handreach.input.InputFault;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.input.Sources;
import handreach.plan.Channel;
import handreach.plan.Equipment;
import handreach.plan.Plan;
import handreach.plan.PlanBeforeBench;
import handreach.plan.PlanFile;
import handreach.report.figure.ChannelMark;
import handreach.report.file.AnswerFile;
import handreach.report.page.HtmlPage;
import handreach.study.HandDelta;
import handreach.study.PlanBench;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** The bench report as a file. */
public final class BenchFiles {
    private static final List<String> OTHERS = List.of("antenna A", "antenna B");
    private static final List<String> UNNAMED = List.of("control", OTHERS.get(0), OTHERS.get(1));

    private BenchFiles() {}

    /** The answer of a session; channel, burden and mounting of use come from the plan where there is one. */
    public static BenchComposer composer(
            BenchAnalysis analysis, double settleDb, List<Path> sweeps, Optional<PlanFile> file) {
        Optional<Plan> plan = file.map(PlanFile::plan);
        List<Double> channelsMhz =
                plan.map(p -> List.of(p.channel().frequency().mhz())).orElse(List.of());
        return BenchComposer.of(new BenchView(
                plan.map(p -> p.header().title()).orElse(analysis.file().name()),
                BenchView.Question.of(plan.flatMap(p -> p.equipment().bench()).map(Equipment.Bench::mount))
                        .settling(settleDb),
                analysis,
                sweeps.stream()
                        .map(sweep -> MatchAnalysis.of(Touchstone.read(sweep), channelsMhz, 50))
                        .toList(),
                plan.map(p -> List.of(mark(p.channel()))).orElse(List.of()),
                plan.map(AntennaCost::of).orElse(List.of()),
                file.map(named -> HandDelta.of(named, analysis)).orElse(List.of()),
                "Made by Handreach from " + analysis.file().name() + "."));
    }

    /** A session against the control of the plan: its own readings as any answer of the plan takes them, others as far as they have it. */
    public static Optional<BenchAnalysis> planned(PlanFile file, Path session, BenchFile readings) {
        Optional<Equipment.Bench> bench = file.plan().equipment().bench();
        return bench.isPresent()
                        && Sources.NONE.and(List.of(bench.get().file())).has(session)
                ? Optional.of(PlanBench.of(file, bench.get(), readings))
                : control(file, readings).map(name -> BenchAnalysis.of(readings, name));
    }

    /** The control of a plan as these readings name it; nothing where they do not have it. */
    private static Optional<String> control(PlanFile file, BenchFile readings) {
        Equipment equipment = file.plan().equipment();
        List<String> names = new ArrayList<>();
        equipment.bench().map(Equipment.Bench::control).ifPresent(names::add);
        for (Equipment.AntennaEntry antenna : equipment.antennas())
            if (antenna.control()) names.addAll(List.of(antenna.delta().benchName(), antenna.name()));
        return names.stream().flatMap(name -> readings.antenna(name).stream()).findFirst();
    }

    /** Antennas of the readings whose names only nearly are those of the plan. */
    public static List<String> misspelt(PlanFile file, BenchFile readings) {
        List<String> known =
                planned(file.plan().equipment().bench(), file.plan().equipment().antennas());
        List<String> notes = new ArrayList<>();
        for (String read :
                distinct(readings.readings().stream().map(Reading::antenna).toList()))
            if (known.stream().noneMatch(read::equalsIgnoreCase))
                NearestWord.of(read, known)
                        .ifPresent(near ->
                                notes.add("\"" + read + "\" of the readings is no antenna of the plan, which has \""
                                        + near + "\". If they are the same, write both alike."));
        return notes;
    }

    /** How many turns a sheet has, the number by which their order is drawn, and what is read. */
    public record Lot(int trials, long number, List<Quantity> quantities) {
        public Lot {
            quantities = List.copyOf(quantities);
        }
    }

    /** A blank sheet; what is not given comes from the plan, and names for everything from nowhere else. */
    public static BenchSheet sheet(
            Optional<PlanBeforeBench> plan,
            List<String> antennas,
            List<String> mounts,
            OptionalDouble frequencyMhz,
            Lot lot) {
        List<String> names = antennas.isEmpty() ? plan.map(BenchFiles::toRead).orElse(UNNAMED) : distinct(antennas);
        if (names.size() < 2)
            throw new InputFault(
                    "--antenna",
                    0,
                    "names one antenna only. Name the control first, then each antenna to compare with it.");
        List<String> stands = !mounts.isEmpty()
                ? distinct(mounts)
                : List.of(plan.flatMap(PlanBeforeBench::bench)
                        .map(Equipment.Bench::mount)
                        .filter(mount -> !mount.isBlank())
                        .orElse("in the hand"));
        OptionalDouble mhz = frequencyMhz.isPresent()
                ? frequencyMhz
                : plan.map(PlanBeforeBench::frequencyMhz).orElse(OptionalDouble.empty());
        return new BenchSheet(
                SessionOrder.drawn(names, stands, lot.trials(), lot.number()),
                mhz.isPresent() ? NumberText.plain(mhz.getAsDouble()) : "",
                lot.number(),
                lot.quantities());
    }

    /** What to know of a sheet before it is filled in. */
    public static List<String> notes(BenchSheet sheet, Optional<PlanBeforeBench> plan) {
        List<String> notes = new ArrayList<>();
        if (sheet.frequencyMhz().isEmpty())
            notes.add("The column frequency_mhz is empty: "
                    + plan.map(p -> p.file().getFileName() + " has no frequency yet. Put it into the plan and write the"
                                    + " sheet anew, or fill the column in.")
                            .orElse("nobody said where it is read. Fill it in, or write the sheet anew with"
                                    + " --frequency-mhz or --plan."));
        plan.filter(p -> OTHERS.stream().allMatch(sheet.order().antennas()::contains))
                .ifPresent(p -> notes.add(p.file().getFileName() + ", line " + p.antennasLine()
                        + ": the plan has one [[antenna]] only, \""
                        + sheet.order().control() + "\". \""
                        + String.join("\" and \"", OTHERS)
                        + "\" hold the place of what is compared with it. Put their names there, or add an [[antenna]] for each"
                        + " to the plan and write the sheet anew."));
        for (String mount : sheet.mounts()) Mounting.of(mount).treatedAs().ifPresent(notes::add);
        return notes;
    }

    /** The antennas of a plan; beside a control that is alone, room for others. */
    private static List<String> toRead(PlanBeforeBench plan) {
        List<String> names = planned(plan.bench(), plan.antennas());
        return names.size() > 1
                ? names
                : Stream.concat(names.stream(), OTHERS.stream()).toList();
    }

    /** Names as they stand in the bench file of a plan, the control first, the wire as an antenna of its own. */
    private static List<String> planned(Optional<Equipment.Bench> bench, List<Equipment.AntennaEntry> antennas) {
        List<String> names = new ArrayList<>();
        bench.map(Equipment.Bench::control).ifPresent(names::add);
        for (Equipment.AntennaEntry antenna : antennas) {
            if (antenna.control() && names.isEmpty())
                names.add(0, antenna.delta().benchName());
            names.add(antenna.delta().benchName());
            antenna.delta().withWire().ifPresent(names::add);
        }
        return distinct(names);
    }

    private static List<String> distinct(List<String> names) {
        Set<String> seen = new HashSet<>();
        return names.stream()
                .map(name -> name.strip().replaceAll("\\s+", " "))
                .filter(name -> !name.isEmpty() && seen.add(name.toLowerCase(Locale.ROOT)))
                .toList();
    }

    /** Writes the report, over none of the files that it was made from. */
    public static void write(BenchComposer composer, Path file, Sources sources) {
        AnswerFile.write(file, HtmlPage.text(composer.page()), sources);
    }

    /** Where a channel stands on a sweep. */
    public static ChannelMark mark(Channel channel) {
        return new ChannelMark(channel.name(), channel.frequency().mhz());
    }
}
