package handreach.cli;

import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.bench.Quantity;
import handreach.bench.SessionOrder;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.Range;
import handreach.input.Sources;
import handreach.input.Target;
import handreach.plan.Equipment;
import handreach.plan.PlanBeforeBench;
import handreach.plan.PlanFile;
import handreach.report.BenchComposer;
import handreach.report.BenchFiles;
import handreach.report.BenchJson;
import handreach.report.BenchSheet;
import handreach.report.page.Notes;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Deltas against the control per mounting, with uncertainty. */
@Command(
        name = "bench",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Deltas against the control per mounting, with uncertainty, and what can be told apart.",
        footer = {
            "",
            "Worked example:",
            "  handreach bench elevation-samples/invented-bench/bench.csv --control \"factory helical\"",
            "  handreach bench --template session.csv --frequency-mhz 155.16 --mount \"in hand,on box\""
                    + " --antenna \"factory helical\" --antenna \"quarter whip\"",
            "  handreach bench --template turns.csv --plan elevation-samples/urban-coast --quantity level,swr",
            "",
            "Keep the antenna away from eyes and skin while transmitting, and test within your licence."
        })
final class BenchCommand implements Callable<Integer> {
    private static final Range TRIALS = new Range("trials", SessionOrder.LEAST_TRIALS, SessionOrder.MOST_TRIALS, "");
    private static final Range SETTLE = new Range("settle_db", 0.01, 40, "dB");

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FILE.csv",
            description =
                    "Readings: antenna,mount,quantity,value,unit,frequency_mhz,trial,note. Or the plan that names them.")
    private Path file;

    @Option(names = "--control", paramLabel = "NAME", description = "The antenna all others are compared with.")
    private String control;

    @Option(
            names = "--settle-db",
            paramLabel = "DB",
            description =
                    "Say how many trials would settle a true difference of this size, 0.01 to 40 dB. Default: 1 dB.")
    private double settleDb = 1;

    @Option(
            names = "--report",
            paramLabel = "FILE.html",
            description = "Write a bench report, one self-contained file.")
    private Path report;

    @Option(
            names = "--sweep",
            paramLabel = "FILE.s1p",
            description = "One-port sweep to look at beside the readings; may be given several times.")
    private List<Path> sweeps = List.of();

    @Option(
            names = "--plan",
            paramLabel = "PLAN",
            description = "Plan with channel, mounting of use and antenna burden.")
    private Path plan;

    @Option(
            names = "--template",
            paramLabel = "FILE.csv",
            arity = "0..1",
            fallbackValue = "",
            description =
                    "Write a blank session sheet, for a spreadsheet and as a page to print, and end. Antennas, mounting and"
                            + " frequency come from --plan, or from the options below. Default: the file that the plan names,"
                            + " else session.csv beside the plan or, without one, here.")
    private Path template;

    @Option(
            names = "--antenna",
            paramLabel = "NAME",
            description = "Antenna for the sheet, the control first; give it for each one.")
    private List<String> antennas = List.of();

    @Option(
            names = "--mount",
            paramLabel = "NAME",
            split = ",",
            description =
                    "Mounting for the sheet, in words such as in hand, on box, on hip, on analyser, with counterpoise (all stand in"
                            + " docs/bench.md, Mountings). Give it for each one, or with commas. Default: in the hand.")
    private List<String> mounts = List.of();

    @Option(
            names = "--quantity",
            paramLabel = "WORD",
            split = ",",
            description =
                    "What the sheet asks for: level, meter (both in every turn), swr, return loss, resonance, bandwidth"
                            + " (once for each antenna and mounting). Give it for each one, or with commas. Default: level.")
    private List<String> quantities = List.of("level");

    @Option(names = "--frequency-mhz", paramLabel = "MHZ", description = "Frequency for the sheet, 1 to 10000 MHz.")
    private Double frequencyMhz;

    @Option(names = "--trials", paramLabel = "N", description = "Turns on the sheet, 4 to 99. Default: 6.")
    private int trials = 6;

    @Option(
            names = "--lot",
            paramLabel = "N",
            description = "Number by which the order of the sheet is drawn; another number, another order. Default: 1.")
    private long lot = 1;

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() {
        Faults faults = new Faults();
        SETTLE.check(faults, "--settle-db", settleDb);
        faults.throwIfAny();
        planAsWord();
        if (template != null) return blankSheet();
        Optional<PlanFile> planFile = Optional.ofNullable(plan).map(PlanFile::open);
        Path file = Optional.ofNullable(this.file)
                .or(() -> planFile.flatMap(BenchCommand::named))
                .orElseThrow(() -> new InputFault(
                        "bench",
                        0,
                        "needs a file of readings. Name one, or write a blank sheet: bench --template session.csv."));
        Sources sources = planFile.map(PlanFile::sources)
                .orElse(Sources.NONE)
                .and(List.of(file))
                .and(sweeps);
        if (report != null) Target.look(report, ".html", sources);
        BenchFile readings = BenchFile.read(file);
        BenchAnalysis analysis = Optional.ofNullable(control)
                .map(name -> BenchAnalysis.of(readings, name))
                .or(() -> planFile.flatMap(planned -> BenchFiles.planned(planned, file, readings)))
                .orElseGet(() -> BenchAnalysis.of(readings));
        planFile.ifPresent(planned -> json.warn(BenchFiles.misspelt(planned, readings)));
        json.warn(Notes.once(analysis.warnings()));
        BenchComposer composer = BenchFiles.composer(analysis, settleDb, sweeps, planFile);
        json.answer(List.of(), () -> BenchJson.of(analysis, settleDb), composer::text);
        if (report != null) {
            BenchFiles.write(composer, report, sources);
            json.tell("Written: " + report);
        }
        return 0;
    }

    /** Other commands take a plan, or its folder, as a word of its own; so does this one. */
    private void planAsWord() {
        if (file == null || !Files.isDirectory(file) && !file.toString().endsWith(".toml")) return;
        if (plan != null)
            throw new InputFault("--plan", 0, "and a plan as a word of its own are both given. Leave one of them out.");
        plan = file;
        file = null;
    }

    private int blankSheet() {
        Faults faults = new Faults();
        if (file != null)
            faults.add("--template", 0, "writes a blank sheet and reads no file. Leave " + file + " out.");
        TRIALS.check(faults, "--trials", trials);
        if (frequencyMhz != null) BenchFile.FREQUENCY.check(faults, "--frequency-mhz", frequencyMhz);
        faults.throwIfAny();
        Optional<PlanBeforeBench> planned = Optional.ofNullable(plan).map(PlanBeforeBench::open);
        BenchSheet sheet = BenchFiles.sheet(
                planned,
                antennas,
                mounts,
                frequencyMhz == null ? OptionalDouble.empty() : OptionalDouble.of(frequencyMhz),
                new BenchFiles.Lot(trials, lot, Quantity.namedBy("--quantity", quantities)));
        json.warn(BenchFiles.notes(sheet, planned));
        Path blank = template.toString().isEmpty()
                ? planned.map(BenchCommand::sheetOf).orElse(Path.of("session.csv"))
                : template;
        Path page = sheet.write(
                blank,
                planned.map(plan -> Sources.NONE.and(List.of(plan.file()))).orElse(Sources.NONE));
        json.written(blank);
        json.written(page);
        return 0;
    }

    /** The sheet that a plan names, else one beside it, where the plan will look for it. */
    private static Path sheetOf(PlanBeforeBench plan) {
        return plan.bench().map(Equipment.Bench::file).orElse(plan.file().resolveSibling("session.csv"));
    }

    /** The file of readings that a plan names. */
    private static Optional<Path> named(PlanFile planned) {
        return planned.plan().equipment().bench().map(Equipment.Bench::file);
    }
}
