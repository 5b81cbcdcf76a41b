package handreach.report;

import handreach.bench.AntennaResult;
import handreach.bench.BenchAnalysis;
import handreach.bench.Effect;
import handreach.bench.MeterResult;
import handreach.bench.MeterScale;
import handreach.bench.MountResult;
import handreach.bench.match.ChannelMatch;
import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.MatchReadings;
import handreach.cartography.LoadoutMark;
import handreach.report.figure.Axis;
import handreach.report.figure.Curve;
import handreach.report.figure.DeltaFigure;
import handreach.report.figure.DeltaRow;
import handreach.report.figure.PairCell;
import handreach.report.figure.PairFigure;
import handreach.report.figure.SwrFigure;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Drawing;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Sheet;
import handreach.uncertainty.Interval;
import handreach.uncertainty.UncertaintyPart;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The report on a bench session: what the antennas are worth over the control, how sure that is, and what they cost. */
public final class BenchReport {
    private static final int CURVE_POINTS = 240;

    private BenchReport() {}

    public static Page page(BenchView view) {
        return page(view, Optional.empty());
    }

    /** The mounting named, that in which the antennas are used, stands first. */
    public static Page page(BenchView view, Optional<String> mountOfUse) {
        List<MountResult> mounts = inOrder(view.analysis(), mountOfUse);
        List<Section> sections = new ArrayList<>(sections(view, mounts));
        if (!view.analysis().matches().isEmpty()) sections.add(matchReadings(view.analysis()));
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
                answer(mounts),
                sections,
                view.imprint());
    }

    /** The evidence alone, to stand inside another report. */
    public static List<Section> sections(BenchView view, Optional<String> mountOfUse) {
        return sections(view, inOrder(view.analysis(), mountOfUse));
    }

    private static List<Section> sections(BenchView view, List<MountResult> mounts) {
        List<Section> sections = new ArrayList<>();
        if (!mounts.isEmpty())
            sections.add(new Section("Bench: level over the control", levels(view.analysis(), mounts)));
        if (!view.analysis().meters().isEmpty())
            sections.add(new Section("Bench: field meter", meters(view.analysis())));
        if (!view.sweeps().isEmpty()) sections.add(new Section("Bench: match", match(view)));
        if (!view.costs().isEmpty())
            sections.add(
                    Section.of("What it buys and what it costs", costs(view.costs(), Optional.of(view.analysis()))));
        List<Block> warnings = view.analysis().warnings().stream()
                .<Block>map(Paragraph::warning)
                .toList();
        if (!warnings.isEmpty()) sections.add(new Section("Bench: to be known", warnings));
        return sections;
    }

    /** The mounting of use first: the one named, else those in the hand and on the body, each in the order of the file. */
    private static List<MountResult> inOrder(BenchAnalysis analysis, Optional<String> mountOfUse) {
        return analysis.mounts().stream()
                .sorted(Comparator.comparingInt((MountResult mount) -> rank(mount, mountOfUse)))
                .toList();
    }

    private static int rank(MountResult mount, Optional<String> mountOfUse) {
        if (mountOfUse.filter(mount.mounting().name()::equalsIgnoreCase).isPresent()) return 0;
        return switch (mount.mounting().kind()) {
            case HAND, BODY -> 1;
            case CHASSIS, COUNTERPOISE -> 2;
            case INSTRUMENT -> 3;
        };
    }

    private static List<Block> answer(List<MountResult> mounts) {
        List<Block> blocks = new ArrayList<>();
        for (MountResult mount : mounts) {
            String words = BenchWords.ranking(mount);
            blocks.add(blocks.isEmpty() ? Paragraph.answer(words) : Paragraph.of(words));
        }
        if (blocks.isEmpty())
            blocks.add(
                    Paragraph.answer("This session holds nothing to compare; what it says about match stands below."));
        return blocks;
    }

    private static List<Block> levels(BenchAnalysis analysis, List<MountResult> mounts) {
        List<Block> blocks = new ArrayList<>();
        String control = analysis.control().orElse("the control");
        List<DeltaRow> rows = rowsOf(mounts);
        if (!rows.isEmpty())
            blocks.add(new Drawing(
                    DeltaFigure.of("Level over the control with 95 % intervals", control, rows),
                    "Filled: told apart from the control after all comparisons of the mounting were made stricter together."
                            + " Open: not told apart."));
        for (MountResult mount : mounts) {
            blocks.add(table(mount));
            blocks.add(new Bullets(mount.antennas().stream()
                    .map(antenna -> BenchWords.verdict(mount, antenna))
                    .toList()));
            if (mount.antennas().size() > 1) blocks.add(pairs(mount, control));
        }
        return blocks;
    }

    /** Every difference whose doubt is known, as {@link DeltaFigure} draws it. */
    public static List<DeltaRow> rows(BenchAnalysis analysis) {
        return rowsOf(analysis.mounts());
    }

    private static List<DeltaRow> rowsOf(List<MountResult> mounts) {
        List<DeltaRow> rows = new ArrayList<>();
        for (MountResult mount : mounts)
            for (AntennaResult antenna : mount.antennas())
                antenna.delta()
                        .interval95()
                        .ifPresent(interval -> rows.add(new DeltaRow(
                                group(mount),
                                antenna.antenna(),
                                antenna.delta().db(),
                                interval,
                                antenna.toldApart(),
                                "n = " + antenna.n())));
        return rows;
    }

    /** Mounting and, where it is known, frequency. */
    public static String group(MountResult mount) {
        return group(mount.mounting().name(), mount.frequencyMhz());
    }

    private static String group(String mounting, OptionalDouble frequencyMhz) {
        return frequencyMhz.isEmpty() ? mounting : mounting + ", " + plain(frequencyMhz.getAsDouble()) + " MHz";
    }

    private static String plain(double value) {
        return new java.math.BigDecimal(String.valueOf(value))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static Sheet table(MountResult mount) {
        List<Sheet.Row> rows = new ArrayList<>();
        for (AntennaResult antenna : mount.antennas()) {
            Optional<Interval> interval = antenna.delta().interval95();
            rows.add(Sheet.Row.of(
                    antenna.antenna(),
                    String.valueOf(antenna.n()),
                    Axis.number(antenna.level().mean(), 1),
                    Axis.signed(antenna.delta().db(), 1),
                    interval.map(i -> Axis.signed(i.low(), 1) + " to " + Axis.signed(i.high(), 1))
                            .orElse("unknown"),
                    antenna.verdict().map(v -> chance(v.adjustedP())).orElse("unknown"),
                    antenna.finding().words(),
                    antenna.parts().stream().map(BenchReport::part).collect(Collectors.joining("; "))));
        }
        return new Sheet(
                group(mount) + ": control read " + mount.control().n() + " times, mean "
                        + Axis.number(mount.control().mean(), 1) + " dBm. The delta already holds: " + held(mount)
                        + ".",
                List.of(
                        Sheet.Column.words("antenna"),
                        Sheet.Column.number("n"),
                        Sheet.Column.number("mean, dBm"),
                        Sheet.Column.number("over control, dB"),
                        Sheet.Column.number("95 % interval, dB"),
                        Sheet.Column.number("by chance"),
                        Sheet.Column.words("verdict"),
                        Sheet.Column.words("doubt from, dB")),
                rows);
    }

    private static List<Block> meters(BenchAnalysis analysis) {
        List<Block> blocks = new ArrayList<>();
        for (MeterResult meter : analysis.meters()) {
            blocks.add(meter(meter, analysis.control().orElse("")));
            blocks.add(Paragraph.of(BenchWords.meter(meter)));
        }
        return blocks;
    }

    private static Sheet meter(MeterResult meter, String control) {
        boolean isRankOnly = meter.basis() == MeterScale.Basis.UNDECLARED;
        List<Sheet.Row> rows = new ArrayList<>();
        for (MeterResult.Rank rank : meter.ranks()) {
            Optional<AntennaResult> result = meter.antenna(rank.antenna());
            String told = rank.antenna().equalsIgnoreCase(control)
                    ? "control"
                    : result.map(r -> r.finding().words()).orElse("rank only");
            Optional<Interval> interval = isRankOnly
                    ? rank.bracketDb()
                    : result.flatMap(r -> r.delta().interval95());
            rows.add(Sheet.Row.of(
                    rank.antenna(),
                    String.valueOf(rank.rank()),
                    String.valueOf(rank.n()),
                    Axis.number(rank.medianMicroamps(), 1),
                    result.map(r -> Axis.signed(r.delta().db(), 1)).orElse(""),
                    interval.map(i -> Axis.signed(i.low(), 1) + " to " + Axis.signed(i.high(), 1))
                            .orElse(""),
                    told));
        }
        return new Sheet(
                "Field meter, " + group(meter.mounting().name(), meter.frequencyMhz()) + ".",
                List.of(
                        Sheet.Column.words("antenna"),
                        Sheet.Column.number("rank"),
                        Sheet.Column.number("n"),
                        Sheet.Column.number("median, uA"),
                        Sheet.Column.number("over control, dB"),
                        Sheet.Column.number(isRankOnly ? "between, dB" : "95 % interval, dB"),
                        Sheet.Column.words("verdict")),
                rows);
    }

    /** SWR and return loss as they were read, one row an antenna, mounting and frequency. */
    private static Section matchReadings(BenchAnalysis analysis) {
        List<Sheet.Row> rows = new ArrayList<>();
        List<Sheet.Row> tuned = new ArrayList<>();
        for (MatchReadings readings : analysis.matches()) {
            String mounting = readings.mounting().name();
            for (MatchReadings.Point point : readings.points())
                rows.add(Sheet.Row.of(
                        readings.antenna(),
                        mounting,
                        plain(point.frequencyMhz()),
                        Axis.number(point.match().swr(), 2),
                        Axis.number(point.match().returnLossDb(), 1),
                        Axis.number(point.match().mismatchLossDb(), 2)));
            if (readings.resonanceMhz().isPresent() || readings.bandwidthMhz().isPresent())
                tuned.add(Sheet.Row.of(
                        readings.antenna(),
                        mounting,
                        megahertz(readings.resonanceMhz()),
                        megahertz(readings.bandwidthMhz())));
        }
        List<Block> blocks = new ArrayList<>();
        if (!rows.isEmpty())
            blocks.add(new Sheet(
                    "Match explains a delta of the same mounting; it is never a second loss.",
                    List.of(
                            Sheet.Column.words("antenna"),
                            Sheet.Column.words("mounting"),
                            Sheet.Column.number("MHz"),
                            Sheet.Column.number("SWR, :1"),
                            Sheet.Column.number("return loss, dB"),
                            Sheet.Column.number("mismatch loss, dB")),
                    rows));
        if (!tuned.isEmpty())
            blocks.add(new Sheet(
                    "Tuning as it was read.",
                    List.of(
                            Sheet.Column.words("antenna"),
                            Sheet.Column.words("mounting"),
                            Sheet.Column.number("resonance, MHz"),
                            Sheet.Column.number("3:1 bandwidth, MHz")),
                    tuned));
        return new Section("Bench: match as it was read", blocks);
    }

    private static String megahertz(OptionalDouble value) {
        return value.isPresent() ? Axis.number(value.getAsDouble(), 2) : "";
    }

    private static String part(UncertaintyPart part) {
        return part.name() + " " + Axis.number(part.standardUncertainty(), 2);
    }

    private static String chance(double p) {
        return p < 0.001 ? "under 0.1 %" : Axis.number(100 * p, p < 0.1 ? 1 : 0) + " %";
    }

    private static String held(MountResult mount) {
        if (mount.antennas().isEmpty()) return "nothing";
        return mount.antennas().get(0).delta().effects().effects().stream()
                .sorted()
                .map(Effect::words)
                .collect(Collectors.joining(", "));
    }

    /** Every antenna against every other; two are alike when some group that cannot be told apart holds both. */
    private static Drawing pairs(MountResult mount, String control) {
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
                PairFigure.of("Which can be told from which: " + group(mount), names, cells),
                "Row minus column, dB. Hatched squares hold two antennas that this session could not tell apart.");
    }

    private static List<Block> match(BenchView view) {
        List<Block> blocks = new ArrayList<>();
        List<Curve> curves = curves(view.sweeps());
        if (!curves.isEmpty())
            blocks.add(new Drawing(
                    SwrFigure.of("Standing-wave ratio over frequency", curves, view.channels()),
                    "Match explains a delta; it is not added to one. Dashed: the usual limits 2:1 and 3:1."));
        channels(view.sweeps()).ifPresent(blocks::add);
        return blocks;
    }

    /** Standing-wave ratio over each sweep, as {@link SwrFigure} draws it. */
    public static List<Curve> curves(List<MatchAnalysis> sweeps) {
        List<Curve> curves = new ArrayList<>();
        for (int i = 0; i < sweeps.size(); i++)
            curve(sweeps.get(i), LoadoutMark.of(i)).ifPresent(curves::add);
        return curves;
    }

    /** What each sweep says on the channels; none where no channel lies within a sweep. */
    public static Optional<Sheet> channels(List<MatchAnalysis> sweeps) {
        List<Sheet.Row> rows = new ArrayList<>();
        for (MatchAnalysis sweep : sweeps)
            for (ChannelMatch channel : sweep.channels())
                rows.add(Sheet.Row.of(
                        sweep.name(),
                        plain(channel.channelMhz()),
                        Axis.number(channel.match().swr(), 2),
                        Axis.number(channel.match().returnLossDb(), 1),
                        Axis.number(channel.match().mismatchLossDb(), 2),
                        channel.trim()
                                .map(trim -> Axis.signed(trim.tooLongPercent(), 1))
                                .orElse(""),
                        channel.advice()));
        if (rows.isEmpty()) return Optional.empty();
        return Optional.of(new Sheet(
                "On the channels. Too long is positive, in per cent of the present length.",
                List.of(
                        Sheet.Column.words("sweep"),
                        Sheet.Column.number("channel, MHz"),
                        Sheet.Column.number("SWR, :1"),
                        Sheet.Column.number("return loss, dB"),
                        Sheet.Column.number("mismatch loss, dB"),
                        Sheet.Column.number("too long, %"),
                        Sheet.Column.words("advice")),
                rows));
    }

    private static Optional<Curve> curve(MatchAnalysis sweep, LoadoutMark mark) {
        double low = sweep.lowestMhz();
        double high = sweep.highestMhz();
        if (!(high > low)) return Optional.empty();
        List<Double> across = new ArrayList<>();
        List<Double> up = new ArrayList<>();
        for (int i = 0; i <= CURVE_POINTS; i++) {
            double mhz = i == CURVE_POINTS ? high : low + (high - low) * i / CURVE_POINTS;
            sweep.matchAt(mhz).ifPresent(match -> {
                across.add(mhz);
                up.add(match.swr());
            });
        }
        return across.size() < 2 ? Optional.empty() : Optional.of(new Curve(mark, sweep.name(), across, up));
    }

    /** What each antenna buys over the control, and what it costs to carry. */
    public static Sheet costs(List<AntennaCost> costs, Optional<BenchAnalysis> analysis) {
        List<Sheet.Row> rows = new ArrayList<>();
        for (AntennaCost cost : costs) {
            rows.add(Sheet.Row.of(
                    cost.antenna(),
                    cost.buys(analysis),
                    Axis.number(cost.burden().lengthCm(), 0),
                    AntennaCost.side(cost.burden().massG()),
                    AntennaCost.side(cost.burden().price())));
        }
        return new Sheet(
                "",
                List.of(
                        Sheet.Column.words("antenna"),
                        Sheet.Column.words("over the control"),
                        Sheet.Column.number("length, cm"),
                        Sheet.Column.number("mass, g"),
                        Sheet.Column.number("price, own currency")),
                rows);
    }
}
