package handreach.report;

import handreach.bench.AntennaResult;
import handreach.bench.BenchAnalysis;
import handreach.bench.DetectionLimit;
import handreach.bench.Effect;
import handreach.bench.MeterResult;
import handreach.bench.MeterScale;
import handreach.bench.MountResult;
import handreach.bench.match.MatchReadings;
import handreach.input.NumberText;
import handreach.loadout.DeltaMove;
import handreach.report.figure.DeltaFigure;
import handreach.report.figure.DeltaRow;
import handreach.report.figure.PairCell;
import handreach.report.figure.PairFigure;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Column;
import handreach.report.page.Drawing;
import handreach.report.page.Notes;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.PlainText;
import handreach.report.page.Section;
import handreach.report.page.Subheading;
import handreach.report.page.Table;
import handreach.study.HandDelta;
import handreach.uncertainty.Interval;
import handreach.units.Decibels;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/** The answer of a bench session: what each antenna is worth over the control, how sure that is, and what it costs. All faces show these blocks. */
public final class BenchComposer {
    private static final String UNKNOWN = "unknown";

    private final BenchView view;
    private final BenchAnalysis analysis;
    private final List<MountResult> mounts;
    private final String control;

    private BenchComposer(BenchView view) {
        this.view = view;
        this.analysis = view.analysis();
        this.control = analysis.control().orElse("the control");
        this.mounts = analysis.mounts().stream()
                .sorted(Comparator.comparingInt(this::rank))
                .toList();
    }

    public static BenchComposer of(BenchView view) {
        return new BenchComposer(view);
    }

    /** The mounting of use first: the one named, else those in the hand and on the body, each in the order of the file. */
    private int rank(MountResult mount) {
        if (view.question()
                .mountOfUse()
                .filter(mount.mounting().name()::equalsIgnoreCase)
                .isPresent()) return 0;
        return switch (mount.mounting().kind()) {
            case HAND, BODY -> 1;
            case CHASSIS, COUNTERPOISE -> 2;
            case INSTRUMENT -> 3;
        };
    }

    /** The whole answer as a report. */
    public Page page() {
        return page(true);
    }

    /** The whole answer for a terminal, without the notes, which go another way there. */
    public String text(int width) {
        return PlainText.of(page(false), width);
    }

    private Page page(boolean withNotes) {
        List<Section> sections = new ArrayList<>(sections(withNotes));
        if (!analysis.matches().isEmpty()) sections.add(matchReadings());
        sections.add(
                Section.of(
                        "Limits of this session",
                        new Bullets(
                                List.of(
                                        "A delta holds for the mounting it was read in, and for the one elevation angle of the range.",
                                        "It is a difference from the control, not a gain; what the control itself radiates is another question.",
                                        "Intervals rest on trials being independent: take the antenna off and put it on again between readings."))));
        sections.add(Section.of("Cautions", new CautionBlock(List.of(Caution.EXPOSURE, Caution.LICENCE))));
        return new Page(
                "Bench report",
                view.title(),
                "What is each antenna worth over the control, and can they be told apart?",
                answer(),
                sections,
                view.imprint());
    }

    /** What a plan's report shows of its bench: all deltas, and the mounting of use in figures; the rest stands in the bench's own report. */
    List<Section> evidence() {
        List<Section> sections = new ArrayList<>();
        List<DeltaRow> rows = rows();
        if (!rows.isEmpty()) {
            List<Block> blocks =
                    new ArrayList<>(List.of(Paragraph.of(BenchSentences.ranking(mounts.get(0))), deltas(rows)));
            sections.add(new Section("Bench: level over the control", blocks)
                    .answering("What is each antenna worth over the control?"));
        }
        if (!mounts.isEmpty()) {
            MountResult first = mounts.get(0);
            sections.add(Section.of(
                            "Bench: " + group(first.mounting().name(), first.frequencyMhz()),
                            verdicts(first),
                            Paragraph.quiet(
                                    "The other mountings, the field meter, what the verdicts rest on, and which antennas can be told from"
                                            + " one another stand in the report of the bench itself (bench --report)."))
                    .asDetail());
        }
        if (!view.costs().isEmpty())
            sections.add(Section.of("What it buys and what it costs", costs(view.costs(), Optional.of(analysis)))
                    .answering("What does each antenna cost to carry?"));
        notes().map(Section::asDetail).ifPresent(sections::add);
        return sections;
    }

    /** The evidence alone, what should be known of the readings before them. */
    List<Section> sections(boolean withNotes) {
        List<Section> sections = new ArrayList<>();
        if (withNotes) notes().ifPresent(sections::add);
        sections.addAll(readings());
        if (!view.sweeps().isEmpty())
            sections.add(new Section(
                    "Bench: match",
                    MatchComposer.blocks(
                            view.sweeps(), view.channels(), view.question().figurePx())));
        if (!view.costs().isEmpty())
            sections.add(Section.of("What it buys and what it costs", costs(view.costs(), Optional.of(analysis))));
        return sections;
    }

    /** What the readings of level and of a field meter say. */
    public List<Section> readings() {
        List<Section> sections = new ArrayList<>();
        if (!mounts.isEmpty()) sections.add(new Section("Bench: level over the control", levels()));
        if (!analysis.meters().isEmpty()) sections.add(new Section("Bench: field meter", meters()));
        if (!view.hand().isEmpty()) sections.add(Section.of("Bench: from the box to the hand", hand(), handWords()));
        return sections;
    }

    /** What should be known of the session; nothing where all is well. */
    public Optional<Section> notes() {
        List<Block> notes = Notes.once(analysis.warnings()).stream()
                .<Block>map(Paragraph::warning)
                .toList();
        return notes.isEmpty() ? Optional.empty() : Optional.of(new Section("Bench: to be known", notes));
    }

    /** The verdicts: for each mounting the strongest, then what cannot be told from one another. */
    public List<Block> answer() {
        List<Block> blocks = new ArrayList<>();
        for (MountResult mount : mounts) {
            String words = BenchSentences.ranking(mount);
            blocks.add(blocks.isEmpty() ? Paragraph.answer(words) : Paragraph.of(words));
            boolean isJudged = mount.antennas().stream()
                    .anyMatch(one -> one.finding() == AntennaResult.Finding.TOLD_APART
                            || one.finding() == AntennaResult.Finding.NOT_TOLD_APART);
            // without a verdict on any, "alike" would be said of antennas on opposite sides of the control
            List<String> groups = (isJudged ? mount.alike() : List.<List<String>>of())
                    .stream()
                            .map(group -> "Cannot be told from one another: " + String.join(", ", group) + ".")
                            .toList();
            if (!groups.isEmpty()) blocks.add(new Bullets(groups));
            else if (mount.antennas().size() > 1 && mount.areAllToldApart())
                blocks.add(new Bullets(List.of("All of them are told apart, from one another and from the control.")));
        }
        if (blocks.isEmpty())
            blocks.add(
                    Paragraph.answer("This session holds nothing to compare; what it says about match stands below."));
        return blocks;
    }

    private List<Block> levels() {
        List<Block> blocks = new ArrayList<>();
        List<DeltaRow> rows = rows();
        if (!rows.isEmpty()) blocks.add(deltas(rows));
        for (MountResult mount : mounts) {
            blocks.add(new Subheading(group(mount.mounting().name(), mount.frequencyMhz())));
            blocks.add(verdicts(mount));
            blocks.add(grounds(mount));
            if (mount.antennas().size() > 1) blocks.add(pairs(mount));
        }
        double settleDb = view.question().settleDb();
        if (mounts.stream().flatMap(mount -> mount.antennas().stream()).anyMatch(this::neverSettles))
            blocks.add(Paragraph.quiet("No number of trials would settle " + Decibels.text(settleDb)
                    + " where none stands: declared doubts, which no trial lessens, hide it."));
        return blocks;
    }

    private Drawing deltas(List<DeltaRow> rows) {
        return new Drawing(
                DeltaFigure.of(
                        "Level over the control with 95 % intervals",
                        control, rows, view.question().figurePx()),
                "Filled: told apart from the control after all comparisons of the mounting were made stricter together."
                        + " Open: not told apart.");
    }

    /** Every difference whose doubt is known, as {@link DeltaFigure} draws it. */
    private List<DeltaRow> rows() {
        List<DeltaRow> rows = new ArrayList<>();
        for (MountResult mount : mounts)
            for (AntennaResult antenna : mount.antennas())
                antenna.delta()
                        .interval95()
                        .ifPresent(interval -> rows.add(new DeltaRow(
                                group(mount.mounting().name(), mount.frequencyMhz()),
                                antenna.antenna(),
                                antenna.delta().db(),
                                interval,
                                antenna.toldApart(),
                                "n = " + antenna.n())));
        return rows;
    }

    /** Mounting and, where it is known, frequency. */
    private static String group(String mounting, OptionalDouble frequencyMhz) {
        return frequencyMhz.isEmpty()
                ? mounting
                : mounting + ", " + NumberText.plain(frequencyMhz.getAsDouble()) + " MHz";
    }

    private Table<AntennaResult> verdicts(MountResult mount) {
        return Table.of(
                "Control read "
                        + mount.control().n() + (mount.control().n() == 1 ? " time" : " times") + ", mean "
                        + Decibels.number(mount.control().mean(), 1)
                        + " dBm. Deltas are reckoned from the readings as they were written, in turns from the differences of each turn, so"
                        + " that rounded means may differ by other than the delta. The delta already holds: "
                        + held(mount)
                        + ".",
                mount.antennas(),
                List.of(
                        Column.words("antenna", AntennaResult::antenna),
                        Column.words("verdict", one -> one.finding().words()),
                        Column.number(
                                "over control, dB",
                                one -> Decibels.signed(one.delta().db(), 1)),
                        Column.number(
                                "95 % interval, dB",
                                one -> one.delta()
                                        .interval95()
                                        .map(BenchComposer::span)
                                        .orElse(UNKNOWN)),
                        Column.number(
                                "smallest gap it can show, dB",
                                one -> one.detection()
                                        .map(DetectionLimit::minimumDifferenceDb)
                                        .map(db -> Decibels.number(db, 1))
                                        .orElse(UNKNOWN)),
                        Column.number(
                                "trials to settle "
                                        + Decibels.text(view.question().settleDb()),
                                this::trials)));
    }

    private String trials(AntennaResult antenna) {
        if (antenna.detection().isEmpty()) return UNKNOWN;
        OptionalInt trials = antenna.trialsToSettle(view.question().settleDb());
        return trials.isPresent() ? Integer.toString(trials.getAsInt()) : "none";
    }

    private boolean neverSettles(AntennaResult antenna) {
        return antenna.detection().isPresent()
                && antenna.trialsToSettle(view.question().settleDb()).isEmpty();
    }

    private static Table<AntennaResult> grounds(MountResult mount) {
        return Table.of(
                "What these verdicts rest on.",
                mount.antennas(),
                List.of(
                        Column.words("antenna", AntennaResult::antenna),
                        Column.number("readings", one -> Integer.toString(one.n())),
                        Column.number(
                                "mean, dBm", one -> Decibels.number(one.level().mean(), 1)),
                        Column.number(
                                "95 % for all together, dB",
                                one -> one.intervalTogether()
                                        .map(BenchComposer::span)
                                        .orElse(UNKNOWN)),
                        Column.number(
                                "by chance",
                                one -> one.verdict()
                                        .map(v -> chance(v.adjustedP()))
                                        .orElse(UNKNOWN)),
                        Column.words(
                                "standard uncertainty from, dB",
                                one -> one.parts().stream()
                                        .map(part -> part.name() + " " + Decibels.number(part.standardUncertainty(), 2))
                                        .collect(Collectors.joining("; ")))));
    }

    /** Deltas read clear of the body beside what is to be expected of them in the hand. */
    private Table<HandDelta> hand() {
        return Table.of(
                "Decibels over the control. A short helical loses most to hand and body, so that other antennas gain over it.",
                view.hand(),
                List.of(
                        Column.words("antenna", one -> one.read().antenna()),
                        Column.words("mounting", one -> one.read().mounting().name()),
                        Column.number(
                                "on the box, dB",
                                one -> Decibels.signed(one.read().db(), 1)),
                        Column.number("expected in the hand, dB", one -> signed(one.expectedDb())),
                        Column.number(
                                "doubt, dB",
                                one -> one.doubtDb().isPresent()
                                        ? Decibels.number(one.doubtDb().getAsDouble(), 1)
                                        : UNKNOWN),
                        Column.number(
                                "read in the hand, dB",
                                one -> one.inHand()
                                        .map(read -> Decibels.signed(read.db(), 1))
                                        .orElse("not read"))));
    }

    private static String signed(OptionalDouble db) {
        return db.isPresent() ? Decibels.signed(db.getAsDouble(), 1) : UNKNOWN;
    }

    /** Whose figures these are, and why some are not known. */
    private Bullets handWords() {
        Set<String> words = new LinkedHashSet<>();
        words.add("Expected in the hand: " + DeltaMove.SOURCE
                + ". A delta read in the hand outranks it; the budget takes that where there is one.");
        words.add(
                "It is of antennas matched where they stand: what one tuned elsewhere loses is in the doubt. Trim in the hand.");
        for (HandDelta one : view.hand())
            if (!one.move().isKnown())
                words.add(one.read().antenna() + ": " + one.move().words() + ".");
        return new Bullets(List.copyOf(words));
    }

    private static String chance(double p) {
        return p < 0.001 ? "under 0.1 %" : Decibels.number(100 * p, p < 0.1 ? 1 : 0) + " %";
    }

    private static String held(MountResult mount) {
        if (mount.antennas().isEmpty()) return "nothing";
        return mount.antennas().get(0).delta().effects().effects().stream()
                .sorted()
                .map(Effect::words)
                .collect(Collectors.joining(", "));
    }

    private static String span(Interval interval) {
        return Decibels.signed(interval.low(), 1) + " to " + Decibels.signed(interval.high(), 1);
    }

    /** Every antenna against every other; two are alike when some group that cannot be told apart holds both. */
    private Drawing pairs(MountResult mount) {
        List<String> names = new ArrayList<>();
        names.add(control);
        for (AntennaResult antenna : mount.antennas()) names.add(antenna.antenna());
        List<PairCell> cells = new ArrayList<>();
        for (int i = 1; i < names.size(); i++)
            for (int j = 0; j < i; j++) {
                String row = names.get(i);
                String column = names.get(j);
                boolean isAlike = mount.alike().stream().anyMatch(g -> g.contains(row) && g.contains(column));
                double difference = mount.antennas().get(i - 1).delta().db()
                        - (j == 0 ? 0 : mount.antennas().get(j - 1).delta().db());
                cells.add(new PairCell(i, j, difference, !isAlike));
            }
        return new Drawing(
                PairFigure.of(
                        "Which can be told from which: "
                                + group(mount.mounting().name(), mount.frequencyMhz()),
                        names,
                        cells),
                "Row minus column, dB. Hatched squares hold two antennas that this session could not tell apart.");
    }

    private List<Block> meters() {
        List<Block> blocks = new ArrayList<>();
        for (MeterResult meter : analysis.meters()) {
            blocks.add(Paragraph.of(BenchSentences.meter(meter)));
            blocks.add(meter(meter));
        }
        return blocks;
    }

    private Table<MeterResult.Rank> meter(MeterResult meter) {
        boolean isRankOnly = meter.basis() == MeterScale.Basis.UNDECLARED;
        List<Column<MeterResult.Rank>> columns = new ArrayList<>(List.of(
                Column.words("antenna", MeterResult.Rank::antenna),
                Column.number("rank", one -> Integer.toString(one.rank())),
                Column.number("readings", one -> Integer.toString(one.n())),
                Column.number("median, uA", one -> Decibels.number(one.medianMicroamps(), 1))));
        if (isRankOnly)
            columns.add(Column.number(
                    "between, dB over control",
                    one -> one.bracketDb().map(BenchComposer::span).orElse("")));
        else {
            columns.add(Column.number(
                    "over control, dB",
                    one -> result(meter, one)
                            .map(r -> Decibels.signed(r.delta().db(), 1))
                            .orElse("")));
            columns.add(Column.number(
                    "95 % interval, dB",
                    one -> result(meter, one)
                            .flatMap(r -> r.delta().interval95())
                            .map(BenchComposer::span)
                            .orElse("")));
            columns.add(Column.words(
                    "verdict",
                    one -> one.antenna().equalsIgnoreCase(control)
                            ? "control"
                            : result(meter, one).map(r -> r.finding().words()).orElse("rank only")));
        }
        return Table.of(
                "Field meter, " + group(meter.mounting().name(), meter.frequencyMhz()) + ".", meter.ranks(), columns);
    }

    private static Optional<AntennaResult> result(MeterResult meter, MeterResult.Rank rank) {
        return meter.antenna(rank.antenna());
    }

    /** A match as it was read at one frequency. */
    private record MatchRow(MatchReadings readings, MatchReadings.Point point) {}

    /** SWR and return loss as they were read, one row an antenna, mounting and frequency. */
    private Section matchReadings() {
        List<MatchRow> rows = analysis.matches().stream()
                .flatMap(readings -> readings.points().stream().map(point -> new MatchRow(readings, point)))
                .toList();
        List<MatchReadings> tuned = analysis.matches().stream()
                .filter(one ->
                        one.resonanceMhz().isPresent() || one.bandwidthMhz().isPresent())
                .toList();
        List<Block> blocks = new ArrayList<>();
        if (!rows.isEmpty())
            blocks.add(Table.of(
                    "Match explains a delta of the same mounting; it is never a second loss.",
                    rows,
                    List.of(
                            Column.words("antenna", row -> row.readings().antenna()),
                            Column.words(
                                    "mounting", row -> row.readings().mounting().name()),
                            Column.number(
                                    "MHz", row -> NumberText.plain(row.point().frequencyMhz())),
                            Column.number(
                                    "SWR, :1",
                                    row -> Decibels.number(row.point().match().swr(), 2)),
                            Column.number(
                                    "return loss, dB",
                                    row -> Decibels.number(row.point().match().returnLossDb(), 1)),
                            Column.number(
                                    "mismatch loss, dB",
                                    row -> Decibels.number(row.point().match().mismatchLossDb(), 2)))));
        if (!tuned.isEmpty())
            blocks.add(Table.of(
                    "Tuning as it was read.",
                    tuned,
                    List.of(
                            Column.words("antenna", MatchReadings::antenna),
                            Column.words("mounting", one -> one.mounting().name()),
                            Column.number("resonance, MHz", one -> megahertz(one.resonanceMhz())),
                            Column.number("3:1 bandwidth, MHz", one -> megahertz(one.bandwidthMhz())))));
        return new Section("Bench: match as it was read", blocks);
    }

    private static String megahertz(OptionalDouble value) {
        return value.isPresent() ? Decibels.number(value.getAsDouble(), 2) : "";
    }

    /** What each antenna buys over the control, and what it costs to carry. */
    public static Table<AntennaCost> costs(List<AntennaCost> costs, Optional<BenchAnalysis> analysis) {
        Lengths lengths = costs.isEmpty() ? Lengths.METRIC : costs.get(0).lengths();
        return Table.of(
                "",
                costs,
                List.of(
                        Column.words("antenna", AntennaCost::antenna),
                        Column.words("over the control", cost -> cost.buys(analysis)),
                        Column.number(
                                "length, " + lengths.antennaUnit(), cost -> AntennaCost.length(cost.burden(), lengths)),
                        Column.number("mass, " + lengths.massUnit(), cost -> AntennaCost.mass(cost.burden(), lengths)),
                        Column.number(
                                "price, own currency",
                                cost -> AntennaCost.side(cost.burden().price()))));
    }
}
