package handreach.report;

import handreach.loadout.CarryLoss;
import handreach.plan.Plan;
import handreach.report.card.CardLine;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.ChannelsAnswer.OnChannel;
import handreach.study.ReachAnswer;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Which channel on this ground: reach, share and places served on every channel of a plan, side by side. */
public final class ChannelsComposer {
    private final ReachAnswer answer;
    private final List<OnChannel> channels;
    private final Plan plan;
    private final Lengths lengths;

    private ChannelsComposer(ReachAnswer answer) {
        this.answer = answer;
        this.channels = answer.channels().channels();
        this.plan = answer.scene().plan();
        this.lengths = plan.header().lengths();
    }

    /** The channels of a reach answer. */
    public static ChannelsComposer of(ReachAnswer answer) {
        return new ChannelsComposer(answer);
    }

    /** Nothing where the plan has one channel. */
    Optional<Section> section() {
        List<String> warnings = answer.channels().warnings();
        if (channels.isEmpty() && warnings.isEmpty()) return Optional.empty();
        List<Block> blocks = new ArrayList<>(sentences());
        if (!channels.isEmpty()) {
            blocks.add(table());
            blocks.add(reach());
        }
        if (!warnings.isEmpty()) blocks.add(new Bullets(warnings));
        return Optional.of(new Section("Which channel", blocks).answering("Which channel on this ground?"));
    }

    /** The same in short, for a narrow place. */
    public List<Block> brief() {
        return sentences();
    }

    private List<Block> sentences() {
        return channels.isEmpty() ? List.of() : List.of(Paragraph.of(sentence()));
    }

    /** A line for the field card. */
    List<CardLine> cardLines() {
        return channels.isEmpty() ? List.of() : List.of(new CardLine("Channel:", sentence()));
    }

    /** The channel that serves most places, else most of the ground with the control. */
    String sentence() {
        boolean byPlaces = channels.stream().anyMatch(one -> tally(one).of() > 0);
        Comparator<OnChannel> byGround = Comparator.comparingDouble(one -> share(one, answer.control()));
        Comparator<OnChannel> order = byPlaces
                ? Comparator.<OnChannel>comparingLong(one -> tally(one).served())
                        .thenComparing(byGround)
                : byGround;
        OnChannel best = channels.stream().max(order).orElseThrow();
        String rest = channels.stream()
                .filter(one -> !one.channel().name().equals(best.channel().name()))
                .map(one -> one.channel().name() + " " + figure(one, byPlaces))
                .collect(Collectors.joining(", "));
        boolean isTie = byPlaces
                && channels.stream()
                        .filter(one ->
                                !one.channel().name().equals(best.channel().name()))
                        .anyMatch(one -> tally(one).served() == tally(best).served());
        String by = byPlaces
                ? isTie
                        ? "As many places as on any other, and most ground, are reached on "
                        : "Most places are reached on "
                : "Most ground is reached on ";
        return by + best.channel().name() + ": " + figure(best, byPlaces) + "; " + rest + ". All else here is for "
                + plan.channel().name() + ".";
    }

    private String figure(OnChannel one, boolean byPlaces) {
        String ground = Shares.share(share(one, answer.control())) + " of the ground with "
                + answer.scene().controlLoadout().name();
        return byPlaces ? served(one) + " and " + ground : ground;
    }

    private PlacesComposer.Tally tally(OnChannel one) {
        return PlacesComposer.tally(one.places(), plan.channel().wish().odds());
    }

    private String served(OnChannel one) {
        PlacesComposer.Tally tally = tally(one);
        return tally.served() + " of " + tally.of();
    }

    private static double share(OnChannel one, int loadout) {
        return one.loadouts().get(loadout).share().value();
    }

    private Table<OnChannel> table() {
        List<Column<OnChannel>> columns = new ArrayList<>();
        columns.add(Column.words("channel", one -> one.channel().name()));
        columns.add(Column.number(
                "MHz",
                one -> String.format(
                        Locale.ROOT, "%.4f", one.channel().frequency().mhz())));
        columns.add(Column.number("served", this::served));
        columns.add(Column.number(
                "weakest",
                one -> tally(one).weakest().isPresent()
                        ? Shares.odds(
                                tally(one).weakest().getAsDouble(),
                                plan.channel().wish().odds())
                        : ""));
        columns.add(Column.number("noise, dB", one -> Decibels.number(one.noiseDb(), 1)));
        for (CarryLoss carry : channels.get(0).carries())
            columns.add(Column.number(
                    carry.carry().word() + ", dBd",
                    one -> one.carries().stream()
                            .filter(other -> other.carry() == carry.carry())
                            .findFirst()
                            .map(other -> Decibels.signed(other.mean().dbd(), 1))
                            .orElse("")));
        return Table.of(
                "Served: places with the wanted "
                        + Shares.wanted(plan.channel().wish().odds())
                        + " " + plan.channel().wish().ways().towards("the base")
                        + ", as people are loaded. Noise: of the surroundings, over thermal noise. Under each way of"
                        + " carrying: what an antenna of the control's kind radiates there over a half-wave dipole.",
                channels,
                columns);
    }

    private Table<Integer> reach() {
        List<Column<Integer>> columns = new ArrayList<>();
        columns.add(Column.words("loadout", i -> answer.loadouts().get(i).link().name()));
        for (OnChannel one : channels)
            columns.add(Column.number(
                    one.channel().name(),
                    i -> lengths.text(one.loadouts().get(i).medianM().value()) + ", " + Shares.share(share(one, i))));
        return Table.of(
                "Median continuous reach, and share of the ground along the bearings.",
                IntStream.range(0, answer.loadouts().size()).boxed().toList(),
                columns);
    }
}
