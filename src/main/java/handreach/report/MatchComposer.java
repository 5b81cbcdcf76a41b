package handreach.report;

import handreach.bench.match.ChannelMatch;
import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.MatchComparison;
import handreach.bench.match.RadiatorLength;
import handreach.bench.match.SwrBand;
import handreach.bench.match.Trim;
import handreach.cartography.LoadoutMark;
import handreach.input.NumberText;
import handreach.report.figure.ChannelMark;
import handreach.report.figure.Curve;
import handreach.report.figure.SwrFigure;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Column;
import handreach.report.page.Drawing;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.units.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What one-port sweeps say about antennas, for all faces. */
public final class MatchComposer {
    private static final int CURVE_POINTS = 240;

    private MatchComposer() {}

    /** A sweep on one channel. */
    private record OnChannel(MatchAnalysis sweep, ChannelMatch channel) {}

    /** The sweeps alone: what to do, then what that rests on. */
    public static Page page(List<MatchAnalysis> sweeps) {
        List<Block> answer = new ArrayList<>();
        advice(sweeps).ifPresent(answer::add);
        if (sweeps.size() > 1)
            answer.add(new Bullets(MatchComparison.of(sweeps).changes().stream()
                    .map(MatchComparison.Change::words)
                    .toList()));
        if (answer.isEmpty())
            answer.add(Paragraph.answer("No channel lies within the sweep: how it is tuned stands below."));
        return new Page(
                "Match",
                sweeps.stream().map(MatchAnalysis::name).distinct().collect(Collectors.joining(", ")) + " over "
                        + NumberText.plain(sweeps.get(0).systemOhm()) + " ohm",
                "Is the antenna tuned to the channels?",
                answer,
                List.of(new Section("Match", tables(sweeps))),
                "");
    }

    /** The sweeps within a larger answer: curves, what to do, and what that rests on. */
    public static List<Block> blocks(List<MatchAnalysis> sweeps, List<ChannelMark> channels, double figurePx) {
        List<Block> blocks = new ArrayList<>();
        List<Curve> curves = new ArrayList<>();
        for (int i = 0; i < sweeps.size(); i++)
            curve(sweeps.get(i), LoadoutMark.of(i)).ifPresent(curves::add);
        if (!curves.isEmpty())
            blocks.add(new Drawing(
                    SwrFigure.of("Standing-wave ratio over frequency", curves, channels, figurePx),
                    "Match explains a delta; it is not added to one. Dashed: the usual limits 2:1 and 3:1."));
        advice(sweeps).ifPresent(blocks::add);
        blocks.addAll(tables(sweeps));
        return blocks;
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

    private static List<OnChannel> onChannels(List<MatchAnalysis> sweeps) {
        return sweeps.stream()
                .flatMap(sweep -> sweep.channels().stream().map(channel -> new OnChannel(sweep, channel)))
                .toList();
    }

    private static Optional<Block> advice(List<MatchAnalysis> sweeps) {
        List<String> points = onChannels(sweeps).stream()
                .map(one -> one.sweep().name() + " on " + megahertz(one.channel()) + " MHz: "
                        + one.channel().advice())
                .toList();
        return points.isEmpty() ? Optional.empty() : Optional.of(new Bullets(points));
    }

    private static List<Block> tables(List<MatchAnalysis> sweeps) {
        List<Block> blocks = new ArrayList<>();
        Column<MatchAnalysis> sweepName = Column.words("sweep", MatchAnalysis::name);
        blocks.add(Table.of(
                "Tuning: resonance is where the reactance is zero.",
                sweeps,
                List.of(
                        sweepName,
                        Column.number(
                                "resonance, MHz",
                                sweep -> sweep.main()
                                        .resonance()
                                        .map(r -> Decibels.number(r.frequencyMhz(), 3))
                                        .orElse("none")),
                        Column.number(
                                "resistance there, ohm",
                                sweep -> sweep.main()
                                        .resonance()
                                        .map(r -> Decibels.number(r.resistanceOhm(), 1))
                                        .orElse("")),
                        Column.number(
                                "least SWR",
                                sweep -> Decibels.number(sweep.main().match().swr(), 2)),
                        Column.number(
                                "at, MHz", sweep -> Decibels.number(sweep.main().frequencyMhz(), 3)))));
        blocks.add(Table.of(
                "Bands.",
                sweeps,
                List.of(
                        sweepName,
                        Column.words(
                                "SWR to 2:1, MHz", sweep -> band(sweep.main().band2())),
                        Column.words(
                                "SWR to 3:1, MHz", sweep -> band(sweep.main().band3())))));
        List<OnChannel> rows = onChannels(sweeps);
        if (rows.isEmpty()) return blocks;
        Column<OnChannel> name = Column.words("sweep", one -> one.sweep().name());
        Column<OnChannel> channel = Column.number("channel, MHz", one -> megahertz(one.channel()));
        blocks.add(Table.of(
                "On the channels.",
                rows,
                List.of(
                        name,
                        channel,
                        Column.number(
                                "SWR, :1",
                                one -> Decibels.number(one.channel().match().swr(), 2)),
                        Column.number(
                                "return loss, dB",
                                one -> Decibels.number(one.channel().match().returnLossDb(), 1)),
                        Column.number(
                                "mismatch loss, dB",
                                one -> Decibels.number(one.channel().match().mismatchLossDb(), 2)),
                        Column.number(
                                "resistance, ohm",
                                one -> Decibels.number(one.channel().resistanceOhm(), 1)),
                        Column.number(
                                "reactance, ohm",
                                one -> Decibels.number(one.channel().reactanceOhm(), 1)))));
        blocks.add(Table.of(
                "Lengths. Too long is positive, in per cent of the present length.",
                rows,
                List.of(
                        name,
                        channel,
                        Column.number("too long, %", one -> length(one.channel(), 1, Trim::tooLongPercent)),
                        Column.number("straight whip too long, mm", one -> length(one.channel(), 0, Trim::tooLongMm)),
                        Column.number(
                                "counterpoise, mm",
                                one -> Decibels.number(
                                        RadiatorLength.counterpoiseMm(
                                                one.channel().channelMhz()),
                                        0)))));
        return blocks;
    }

    private static String length(ChannelMatch channel, int decimals, java.util.function.ToDoubleFunction<Trim> length) {
        return channel.trim()
                .map(trim -> Decibels.signed(length.applyAsDouble(trim), decimals))
                .orElse("unknown");
    }

    private static String band(Optional<SwrBand> band) {
        return band.map(b -> Decibels.number(b.lowMhz(), 1) + " to " + Decibels.number(b.highMhz(), 1)
                        + (b.isWhole() ? "" : " (cut off by the sweep)"))
                .orElse("none");
    }

    private static String megahertz(ChannelMatch channel) {
        return NumberText.plain(channel.channelMhz());
    }
}
