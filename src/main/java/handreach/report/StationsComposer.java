package handreach.report;

import handreach.geodesy.GeodesicLine;
import handreach.loadout.Carry;
import handreach.loadout.Loadout;
import handreach.loadout.NeededWays;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.report.card.CardLine;
import handreach.report.page.Block;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.PlacesAnswer;
import handreach.study.PlacesAnswer.Span;
import handreach.study.StationsAnswer;
import handreach.study.StationsAnswer.Pair;
import handreach.study.StationsAnswer.Reached;
import handreach.study.StationsAnswer.Station;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/** What stands already in a plan: who reaches each station, with what, and who reaches whom by way of a relay. */
public final class StationsComposer {
    /** Pairs that a page has room for; JSON has all. */
    private static final int MOST_PAIRS = 40;

    private static final String UNKNOWN = "unknown";

    static final String HEADING = "What already stands";

    private final StationsAnswer answer;
    private final Plan plan;
    private final Lengths lengths;

    private StationsComposer(StationsAnswer answer, Plan plan) {
        this.answer = answer;
        this.plan = plan;
        this.lengths = plan.header().lengths();
    }

    /** The stations of a plan. */
    public static StationsComposer of(StationsAnswer answer, Plan plan) {
        return new StationsComposer(answer, plan);
    }

    /** Nothing where nothing stands. */
    Optional<Section> section() {
        if (answer.stations().isEmpty()) return Optional.empty();
        List<Block> blocks = new ArrayList<>();
        for (Station station : answer.stations()) {
            blocks.add(Paragraph.of(sentence(station)));
            blocks.add(Paragraph.quiet(gear(station)));
            if (!station.places().isEmpty()) blocks.add(places(station));
            if (!station.pairs().isEmpty()) blocks.add(pairs(station));
            if (station.pairs().size() > MOST_PAIRS)
                blocks.add(Paragraph.quiet("And " + (station.pairs().size() - MOST_PAIRS)
                        + " pairs more, each with better odds than these; the JSON has all of them."));
        }
        return Optional.of(new Section(HEADING, blocks).answering("Does what stands already do?"));
    }

    /** The same in short, for a narrow place. */
    public List<Block> brief() {
        List<Block> blocks = new ArrayList<>();
        for (Station station : answer.stations()) {
            blocks.add(Paragraph.of(sentence(station)));
            if (!station.places().isEmpty())
                blocks.add(Table.of(
                        "",
                        station.places(),
                        List.of(
                                Column.words("who", one -> one.place().name()),
                                Column.number("calls", one -> of(one.odds(), PlacesAnswer.Odds::there)),
                                Column.number("hears", one -> of(one.odds(), PlacesAnswer.Odds::back)))));
        }
        return blocks;
    }

    /** A line each for the field card. */
    List<CardLine> cardLines() {
        return answer.stations().stream()
                .map(station -> new CardLine(
                        station.entry().name() + ":",
                        plan.header().placeForm().format(station.entry().at()) + ", " + frequencies(station)
                                + "; "
                                + switch (ways()) {
                                    case BOTH -> "reached both ways by ";
                                    case CALLS -> "copies calls of ";
                                    case HEARS -> "copied at ";
                                }
                                + count(station)))
                .toList();
    }

    private String sentence(Station station) {
        String relay = station.pairs().isEmpty()
                ? ""
                : " By way of it "
                        + station.pairs().stream().filter(this::isServed).count() + " of "
                        + station.pairs().size() + (station.pairs().size() == 1 ? " pair has" : " pairs have")
                        + " them, each way by its weaker hop.";
        String weakest = station.places().stream()
                .filter(one -> one.odds().isPresent())
                .min(Comparator.comparingDouble(one -> one.odds().get().weaker().low()))
                .map(one -> "; the weakest is " + one.place().name() + ", "
                        + Shares.odds(one.odds().get().weaker().low(), wantedOdds()))
                .orElse("");
        return station.entry().name() + ": " + served(station) + " the wanted " + wanted() + " " + ways().towards("it")
                + weakest + "." + relay;
    }

    private String served(Station station) {
        return count(station) + (station.places().size() == 1 ? " has" : " have");
    }

    private String count(Station station) {
        int all = station.places().size();
        long served = station.places().stream().filter(this::isServed).count();
        return served + " of " + all + (all == 1 ? " place" : " places");
    }

    private boolean isServed(Reached reached) {
        return isServed(reached.odds());
    }

    private boolean isServed(Pair pair) {
        return isServed(pair.odds());
    }

    private boolean isServed(Optional<PlacesAnswer.Odds> odds) {
        return odds.filter(found -> found.weaker().low() >= wantedOdds()).isPresent();
    }

    private String gear(Station station) {
        Places.StationEntry entry = station.entry();
        String what = entry.relay().map(mode -> "A relay, " + mode.word()).orElse("A station");
        return what + ", at " + plan.header().placeForm().format(entry.at()) + ": "
                + Decibels.number(entry.gear().powerW(), 1) + " W, antenna "
                + Decibels.signed(entry.gear().gain().dbi(), 1) + " dBi ("
                + entry.gear().gain().source() + "), "
                + (entry.gear().stand() == Carry.ROOF ? "on the roof of a vehicle, " : "")
                + lengths.heightText(entry.gear().heightM())
                + " above ground, feed line " + Decibels.text(entry.gear().feedLossDb()) + "; "
                + frequencies(station) + ".";
    }

    private static String frequencies(Station station) {
        return station.receiveMhz() == station.transmitMhz()
                ? mhz(station.receiveMhz())
                : "hears " + mhz(station.receiveMhz()) + ", sends " + mhz(station.transmitMhz());
    }

    private static String mhz(double mhz) {
        return String.format(Locale.ROOT, "%.4f MHz", mhz);
    }

    private Table<Reached> places(Station station) {
        return Table.of(
                "Calls: odds that " + station.entry().name()
                        + " copies them; hears: that they copy it. Least: the least burden with which "
                        + switch (ways()) {
                            case BOTH -> "it is reached both ways.";
                            case CALLS -> "it copies them.";
                            case HEARS -> "they copy it.";
                        },
                station.places(),
                List.of(
                        Column.words("who", one -> one.place().name()),
                        Column.words("carries", one -> one.place().loadout().name()),
                        Column.number(
                                "true bearing, distance", one -> bearing(station, one) + distance(one.distanceM())),
                        Column.number("calls", one -> of(one.odds(), PlacesAnswer.Odds::there)),
                        Column.number("hears", one -> of(one.odds(), PlacesAnswer.Odds::back)),
                        Column.number("pessimistic", one -> of(one.odds(), PlacesAnswer.Odds::pessimistic)),
                        Column.words("least", this::least)));
    }

    private String least(Reached reached) {
        if (!reached.place().loadout().carry().carry().isAtBody()) return "stays as it is";
        return reached.with().stream().findFirst().map(Loadout::name).orElse("none of the plan");
    }

    private Table<Pair> pairs(Station station) {
        return Table.of(
                "By way of " + station.entry().name() + ", weakest first: each way by its weaker hop.",
                station.pairs().stream()
                        .sorted(Comparator.comparingDouble(pair ->
                                pair.odds().map(odds -> odds.weaker().low()).orElse(-1.0)))
                        .limit(MOST_PAIRS)
                        .toList(),
                List.of(
                        Column.words("who", Pair::a),
                        Column.words("with", Pair::b),
                        Column.number("there", pair -> of(pair.odds(), PlacesAnswer.Odds::there)),
                        Column.number("back", pair -> of(pair.odds(), PlacesAnswer.Odds::back)),
                        Column.number("pessimistic", pair -> of(pair.odds(), PlacesAnswer.Odds::pessimistic))));
    }

    private String of(Optional<PlacesAnswer.Odds> odds, Function<PlacesAnswer.Odds, Span> figure) {
        return odds.map(figure)
                .map(span -> Shares.oddsRange(span.low(), span.high(), wantedOdds()))
                .orElse(UNKNOWN);
    }

    /** From the place, as whoever turns towards it needs it. */
    private String bearing(Station station, Reached reached) {
        if (reached.place().kind() != PlacesAnswer.Kind.POSITION
                || reached.place().points().isEmpty()
                || reached.distanceM().high() < 1) return "";
        GeodesicLine line = GeodesicLine.between(
                reached.place().points().get(0).at(), station.entry().at());
        return plan.header().bearings().brief(line.azimuthDeg()) + ", ";
    }

    private String distance(Span distanceM) {
        return distanceM.high() <= 0 ? "" : lengths.range(distanceM.low(), distanceM.high());
    }

    private double wantedOdds() {
        return plan.channel().wish().odds();
    }

    private NeededWays ways() {
        return plan.channel().wish().ways();
    }

    private String wanted() {
        return Shares.wanted(wantedOdds());
    }
}
