package handreach.report;

import handreach.bench.AntennaResult;
import handreach.bench.BenchAnalysis;
import handreach.bench.ChannelMatch;
import handreach.bench.Effect;
import handreach.bench.LevelSummary;
import handreach.bench.MatchAnalysis;
import handreach.bench.MountResult;
import handreach.cartography.LoadoutMark;
import handreach.uncertainty.Interval;
import handreach.uncertainty.UncertaintyPart;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The report on a bench session: what the antennas are worth over the control, how sure that is, and what they cost. */
public final class BenchReport {
    private static final int CURVE_POINTS = 240;

    private BenchReport() {}

    public static Page page(BenchView view) {
        List<Section> sections = new ArrayList<>(sections(view));
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
                answer(view.analysis()),
                sections,
                view.imprint());
    }

    /** The evidence alone, to stand inside another report. */
    public static List<Section> sections(BenchView view) {
        List<Section> sections = new ArrayList<>();
        if (!view.analysis().mounts().isEmpty())
            sections.add(new Section("Bench: level over the control", levels(view.analysis())));
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

    private static List<Block> answer(BenchAnalysis analysis) {
        List<Block> blocks = new ArrayList<>();
        for (MountResult mount : analysis.mounts())
            for (AntennaResult antenna : mount.antennas()) {
                String words = verdict(mount, antenna);
                blocks.add(blocks.isEmpty() ? Paragraph.answer(words) : Paragraph.of(words));
            }
        if (blocks.isEmpty())
            blocks.add(
                    Paragraph.answer("This session holds nothing to compare; what it says about match stands below."));
        return blocks;
    }

    /** One antenna in one mounting, in a sentence or two. */
    public static String verdict(MountResult mount, AntennaResult antenna) {
        double delta = antenna.delta().db();
        String size = Axis.number(Math.abs(delta), 1) + " dB " + (delta < 0 ? "weaker" : "stronger") + " than "
                + antenna.delta().control() + " (" + mount.mounting().name() + ")";
        Optional<Interval> interval = antenna.delta().interval95();
        if (interval.isEmpty())
            return antenna.antenna() + " read " + size
                    + ", once: nothing is known about its scatter, so nothing more can be said.";
        String doubt = ", 95 % interval " + Axis.signed(interval.get().low(), 1) + " to "
                + Axis.signed(interval.get().high(), 1) + " dB";
        if (antenna.toldApart()) return antenna.antenna() + " is " + size + doubt + ": told apart.";
        String limit = antenna.detection()
                .map(d -> " This session would have shown a difference of " + Axis.number(d.minimumDifferenceDb(), 1)
                        + " dB.")
                .orElse("");
        return antenna.antenna() + " read " + size + doubt + ": not told apart." + limit;
    }

    private static List<Block> levels(BenchAnalysis analysis) {
        List<Block> blocks = new ArrayList<>();
        String control = analysis.control().orElse("the control");
        List<DeltaRow> rows = rows(analysis);
        if (!rows.isEmpty())
            blocks.add(new Drawing(
                    DeltaFigure.of("Level over the control with 95 % intervals", control, rows),
                    "Filled: told apart from the control after all comparisons of the mounting were made stricter together."
                            + " Open: not told apart."));
        for (MountResult mount : analysis.mounts()) {
            blocks.add(table(mount));
            if (mount.antennas().size() > 1) blocks.add(pairs(mount, control));
        }
        return blocks;
    }

    /** Every difference whose doubt is known, as {@link DeltaFigure} draws it. */
    public static List<DeltaRow> rows(BenchAnalysis analysis) {
        List<DeltaRow> rows = new ArrayList<>();
        for (MountResult mount : analysis.mounts())
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
        return mount.frequencyMhz().isEmpty()
                ? mount.mounting().name()
                : mount.mounting().name() + ", " + plain(mount.frequencyMhz().getAsDouble()) + " MHz";
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
                    antenna.toldApart() ? "told apart" : "not told apart",
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
        List<LevelSummary> levels = new ArrayList<>();
        names.add(control);
        levels.add(mount.control());
        for (AntennaResult antenna : mount.antennas()) {
            names.add(antenna.antenna());
            levels.add(antenna.level());
        }
        List<PairCell> cells = new ArrayList<>();
        for (int i = 1; i < names.size(); i++)
            for (int j = 0; j < i; j++) {
                String row = names.get(i);
                String column = names.get(j);
                boolean isAlike = mount.alike().stream().anyMatch(g -> g.contains(row) && g.contains(column));
                double difference = j == 0
                        ? mount.antennas().get(i - 1).delta().db()
                        : levels.get(i).mean() - levels.get(j).mean();
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
                        Axis.signed(channel.trim().tooLongPercent(), 1)));
        if (rows.isEmpty()) return Optional.empty();
        return Optional.of(new Sheet(
                "On the channels. Too long is positive, in per cent of the present length.",
                List.of(
                        Sheet.Column.words("sweep"),
                        Sheet.Column.number("channel, MHz"),
                        Sheet.Column.number("SWR, :1"),
                        Sheet.Column.number("return loss, dB"),
                        Sheet.Column.number("mismatch loss, dB"),
                        Sheet.Column.number("too long, %")),
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
