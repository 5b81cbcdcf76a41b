package handreach.report;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.NeededWays;
import handreach.plan.Plan;
import handreach.report.page.Block;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.PlacesAnswer;
import handreach.study.PlacesAnswer.Kind;
import handreach.study.PlacesAnswer.Pair;
import handreach.study.PlacesAnswer.Place;
import handreach.study.PlacesAnswer.Span;
import handreach.study.ReachAnswer;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.IntStream;

/** Who of a plan reaches whom without a relay: with the base in a list, everybody with everybody in a square, and pair by pair. */
public final class PlacesComposer {
    /** Places that a square has room for beside one another. */
    private static final int MOST_ACROSS = 7;
    /** Pairs that a page has room for; JSON has all. */
    private static final int MOST_PAIRS = 24;
    /** Odds of the two ways closer than this are told as alike. */
    private static final double ALIKE = 0.005;

    private static final int MOST_NAMED = 3;

    private static final String UNKNOWN = "unknown";

    private final PlacesAnswer answer;
    private final Plan plan;
    private final Lengths lengths;

    private PlacesComposer(ReachAnswer answer) {
        this.answer = answer.places();
        this.plan = answer.scene().plan();
        this.lengths = plan.header().lengths();
    }

    /** The places of a reach answer. */
    public static PlacesComposer of(ReachAnswer answer) {
        return new PlacesComposer(answer);
    }

    /**
     * How many are served both ways at the wanted odds without a relay.
     *
     * @param served places with the base; pairs where there is no base
     * @param of all of them
     * @param weakest odds of the weakest; empty where none is known
     */
    record Tally(long served, int of, OptionalDouble weakest) {}

    static Tally tally(PlacesAnswer answer, double wanted) {
        List<Pair> asked = answer.pairs().stream()
                .filter(pair -> answer.base().isEmpty()
                        || pair.a() == answer.base().getAsInt()
                        || pair.b() == answer.base().getAsInt())
                .toList();
        return new Tally(
                asked.stream()
                        .filter(pair -> pair.odds()
                                .filter(odds -> odds.weaker().low() >= wanted)
                                .isPresent())
                        .count(),
                asked.size(),
                asked.stream()
                        .flatMap(pair -> pair.odds().stream())
                        .mapToDouble(odds -> odds.weaker().low())
                        .min());
    }

    /** Nothing where nobody has anybody to reach. */
    public Optional<Section> section() {
        List<Block> blocks = blocks();
        return blocks.isEmpty() ? Optional.empty() : Optional.of(new Section("Who reaches whom", blocks));
    }

    /** The same without a heading. */
    public List<Block> blocks() {
        if (answer.pairs().isEmpty()) return List.of();
        List<Block> blocks = new ArrayList<>();
        blocks.add(Paragraph.of(sentence()));
        if (answer.base().isPresent()) blocks.add(withBase());
        if (answer.places().size() <= MOST_ACROSS && others().size() > 1) blocks.add(square());
        if (!known(others()).isEmpty()) blocks.add(pairs());
        if (known(others()).size() > MOST_PAIRS)
            blocks.add(Paragraph.quiet("And " + (known(others()).size() - MOST_PAIRS)
                    + " pairs more, each with better odds than these; the JSON has all of them."));
        if (answer.omitted() > 0)
            blocks.add(
                    Paragraph.quiet(
                            answer.omitted()
                                    + " pairs of routes and sectors were left out here, to answer in time; the relay command reckons all of them."));
        return blocks;
    }

    /** The same in short, for a narrow place: the base alone, else the pairs. */
    public List<Block> brief() {
        if (answer.pairs().isEmpty()) return List.of();
        List<Column<Pair>> columns = new ArrayList<>();
        if (answer.base().isPresent()) {
            int base = answer.base().getAsInt();
            columns.add(Column.words("who", pair -> name(other(pair, base))));
            columns.add(Column.number("calls", pair -> way(pair, pair.a() != base)));
            columns.add(Column.number("hears", pair -> way(pair, pair.a() == base)));
        } else {
            columns.add(Column.words("who", pair -> name(pair.a())));
            columns.add(Column.words("with", pair -> name(pair.b())));
            columns.add(Column.number("there", pair -> way(pair, true)));
            columns.add(Column.number("back", pair -> way(pair, false)));
        }
        return List.of(
                Paragraph.of(sentence()),
                Table.of("", answer.base().isPresent() ? basePairs() : answer.pairs(), columns));
    }

    /** How many have the wanted odds both ways, and who is worst off. */
    String sentence() {
        List<Pair> asked = answer.base().isPresent() ? basePairs() : answer.pairs();
        long served = asked.stream().filter(this::isServed).count();
        String who = answer.base().isPresent() ? "With " + name(answer.base().getAsInt()) + ", " : "With one another, ";
        String weakest = asked.stream()
                .filter(pair -> pair.odds().isPresent())
                .min(Comparator.comparingDouble(
                        pair -> pair.odds().get().weaker().low()))
                .map(pair -> "; the weakest is " + other(pair) + ", "
                        + Shares.odds(pair.odds().get().weaker().low(), wantedOdds()))
                .orElse("");
        return who + served + " of " + asked.size()
                + (answer.base().isPresent() ? " places have" : " pairs have")
                + (hasPoints() ? ", at all their points," : "")
                + " the wanted " + wanted()
                + " "
                + (answer.base().isPresent()
                        ? plan.channel()
                                .wish()
                                .ways()
                                .towards(name(answer.base().getAsInt()))
                        : NeededWays.BOTH.towards(""))
                + " without a relay" + weakest + unknown(asked) + ".";
    }

    private boolean hasPoints() {
        return answer.places().stream().anyMatch(place -> place.kind() != Kind.POSITION);
    }

    /** Whom nothing can be said of, by name where they are few. */
    private String unknown(List<Pair> asked) {
        List<String> names = asked.stream()
                .filter(pair -> pair.odds().isEmpty())
                .map(this::other)
                .toList();
        if (names.isEmpty()) return "";
        return "; nothing is known of "
                + (names.size() <= MOST_NAMED ? String.join(", ", names) : names.size() + " of them");
    }

    private String other(Pair pair) {
        return answer.base().isPresent()
                ? name(other(pair, answer.base().getAsInt()))
                : name(pair.a()) + " with " + name(pair.b());
    }

    private boolean isServed(Pair pair) {
        return pair.odds()
                .filter(odds -> odds.weaker().low() >= plan.channel().wish().odds())
                .isPresent();
    }

    private List<Pair> basePairs() {
        int base = answer.base().orElseThrow();
        return answer.pairs().stream()
                .filter(pair -> pair.a() == base || pair.b() == base)
                .toList();
    }

    private List<Pair> others() {
        if (answer.base().isEmpty()) return answer.pairs();
        int base = answer.base().getAsInt();
        return answer.pairs().stream()
                .filter(pair -> pair.a() != base && pair.b() != base)
                .toList();
    }

    private static List<Pair> known(List<Pair> pairs) {
        return pairs.stream().filter(pair -> pair.odds().isPresent()).toList();
    }

    private static int other(Pair pair, int base) {
        return pair.a() == base ? pair.b() : pair.a();
    }

    private Table<Pair> withBase() {
        int base = answer.base().orElseThrow();
        return Table.of(
                "Calls: odds that " + name(base)
                        + " copies them; hears: that they copy it; who is heard worse has the smaller. Wanted are "
                        + wanted()
                        + ". Pessimistic: "
                        + (plan.channel().wish().ways() == NeededWays.BOTH ? "the weaker way" : "the way that counts")
                        + ", should all that is uncertain everywhere at once turn out badly.",
                basePairs(),
                List.of(
                        Column.words("who", pair -> name(other(pair, base))),
                        Column.words(
                                "carries",
                                pair -> place(other(pair, base)).loadout().name()),
                        Column.words("place", pair -> where(place(other(pair, base)))),
                        Column.number(
                                "true bearing, distance", pair -> bearing(base, other(pair, base)) + distance(pair)),
                        Column.number("calls", pair -> way(pair, pair.a() != base)),
                        Column.number("hears", pair -> way(pair, pair.a() == base)),
                        Column.number("pessimistic", this::pessimistic)));
    }

    /** Odds that the column copies the row. */
    private Table<Integer> square() {
        List<Integer> all = IntStream.range(0, answer.places().size()).boxed().toList();
        List<Column<Integer>> columns = new ArrayList<>();
        columns.add(Column.number("", row -> String.valueOf(row + 1)));
        columns.add(Column.words("calls", this::name));
        for (int column : all)
            columns.add(
                    Column.number(String.valueOf(column + 1), row -> row == column ? "\u00b7" : copied(row, column)));
        return Table.of(
                "Odds that the place of the column copies the one of the row, as people are loaded.", all, columns);
    }

    private String copied(int from, int to) {
        return answer.pairs().stream()
                .filter(pair -> pair.a() == Math.min(from, to) && pair.b() == Math.max(from, to))
                .findFirst()
                .map(pair -> way(pair, from < to))
                .orElse("");
    }

    private Table<Pair> pairs() {
        List<Pair> weakestFirst = known(others()).stream()
                .sorted(Comparator.comparingDouble(
                        pair -> pair.odds().orElseThrow().weaker().low()))
                .limit(MOST_PAIRS)
                .toList();
        int unknown = others().size() - known(others()).size();
        return Table.of(
                (answer.base().isPresent() ? "With one another, weakest first." : "Weakest first.")
                        + (unknown == 0
                                ? ""
                                : " Left out: " + unknown + (unknown == 1 ? " pair" : " pairs")
                                        + " of which nothing is known, since heights are missing there or on the way."),
                weakestFirst,
                withHeardWorse(
                        weakestFirst,
                        Column.words("who", pair -> name(pair.a())),
                        Column.words("with", pair -> name(pair.b())),
                        Column.number("distance", this::distance),
                        Column.number("there", pair -> way(pair, true)),
                        Column.number("back", pair -> way(pair, false)),
                        Column.number("pessimistic", this::pessimistic)));
    }

    /** Who is heard worse stands behind the other columns, where anybody is. */
    @SafeVarargs
    private final List<Column<Pair>> withHeardWorse(List<Pair> shown, Column<Pair>... columns) {
        List<Column<Pair>> all = new ArrayList<>(List.of(columns));
        if (shown.stream().anyMatch(pair -> !heardWorse(pair).isEmpty()))
            all.add(Column.words("heard worse", this::heardWorse));
        return all;
    }

    private Place place(int number) {
        return answer.places().get(number);
    }

    private String name(int number) {
        return place(number).name();
    }

    private String where(Place place) {
        if (place.kind() != Kind.POSITION)
            return place.kind().word() + ", " + place.points().size()
                    + (place.points().size() == 1 ? " point" : " points");
        return plan.places().positions().stream()
                .filter(entry -> entry.name().equals(place.name()))
                .map(entry -> plan.header().placeForm().format(entry.at()))
                .findFirst()
                .orElse("");
    }

    private String bearing(int base, int to) {
        if (place(to).kind() != Kind.POSITION
                || place(to).points().isEmpty()
                || place(base).points().isEmpty()) return "";
        Position from = place(base).points().get(0).at();
        Position at = place(to).points().get(0).at();
        double azimuthDeg = GeodesicLine.distanceM(from, at) < 1
                ? 0
                : GeodesicLine.between(from, at).azimuthDeg();
        return plan.header().bearings().brief(azimuthDeg) + ", ";
    }

    private String distance(Pair pair) {
        return pair.distanceM().high() <= 0
                ? ""
                : lengths.range(pair.distanceM().low(), pair.distanceM().high());
    }

    private String way(Pair pair, boolean isThere) {
        return of(pair, odds -> isThere ? odds.there() : odds.back());
    }

    private String pessimistic(Pair pair) {
        return of(pair, PlacesAnswer.Odds::pessimistic);
    }

    private String of(Pair pair, Function<PlacesAnswer.Odds, Span> figure) {
        return pair.odds()
                .map(figure)
                .map(span -> Shares.oddsRange(span.low(), span.high(), wantedOdds()))
                .orElse(UNKNOWN);
    }

    /** Whose call fails first: the end that sends in the weaker way. */
    private String heardWorse(Pair pair) {
        if (pair.odds().isEmpty()) return "";
        double there = pair.odds().get().there().low();
        double back = pair.odds().get().back().low();
        if (Math.abs(there - back) < ALIKE) return "";
        return name(there < back ? pair.a() : pair.b());
    }

    private String wanted() {
        return Shares.wanted(wantedOdds());
    }

    private double wantedOdds() {
        return plan.channel().wish().odds();
    }
}
