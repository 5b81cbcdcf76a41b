package handreach.report;

import handreach.bench.BenchAnalysis;
import handreach.cartography.LoadoutMark;
import handreach.geodesy.Compass;
import handreach.loadout.Burden;
import handreach.loadout.CarryLoss;
import handreach.loadout.Loadout;
import handreach.loadout.NeededWays;
import handreach.plan.CalibrationFile;
import handreach.plan.Channel;
import handreach.plan.Equipment;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.plan.Questions;
import handreach.reach.LoadoutReach;
import handreach.reach.LossGrid;
import handreach.reach.MarchCost;
import handreach.reach.RadialReach;
import handreach.reach.ReachEstimate;
import handreach.report.figure.RoseFigure;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Column;
import handreach.report.page.Drawing;
import handreach.report.page.Facts;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.HandDelta;
import handreach.study.Judgement;
import handreach.study.ModelChoice;
import handreach.study.PlacesAnswer;
import handreach.study.PlacesGain;
import handreach.study.ReachAnswer;
import handreach.study.ReachVerdict;
import handreach.study.Scene;
import handreach.study.Turning;
import handreach.uncertainty.Interval;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * How far every loadout reaches, and whether the bigger antenna is worth carrying, put into words, tables and figures once:
 * terminal, report, card and window render these.
 */
public final class ReachComposer {
    /** Bearings of the table by bearing. */
    private static final int POINTS = 8;

    private static final Channel.CopyWish SOME = Channel.CopyWish.SOME_COPY;

    static final String BEARINGS_COUNTED =
            "Shares and areas of the ground are counted along the bearings, which differs a little from the count by cells that goes with maps (--out).";
    private static final String CELLS_COUNTED =
            "Shares and areas of the ground are counted by cells, which differs a little from the count along the bearings that goes without maps.";
    private static final String AT_LEAST = "+ means at least: the radius or unknown ground ended it.";

    private static final Column<Row> MARK =
            Column.words("", row -> LoadoutMark.of(row.number()).letter());
    private static final Column<Row> NAME = Column.words("loadout", Row::name);
    private static final Column<Row> OF_GROUND =
            Column.number("of the ground", row -> Shares.share(row.share().value()));

    private final ReachAnswer answer;
    private final Plan plan;
    private final Lengths lengths;
    private final List<Row> rows;
    /** The unit of all lengths in the tables. */
    private final Lengths.OneUnit unit;

    private final ReachRose rose;

    /** A loadout in the tables. */
    public record Row(
            int number,
            Loadout loadout,
            LoadoutReach reach,
            LoadoutReach someCopy,
            ReachEstimate share,
            String verdict) {
        public String name() {
            return loadout.name();
        }
    }

    private ReachComposer(ReachAnswer answer, List<ReachEstimate> shares) {
        this.answer = answer;
        this.plan = answer.scene().plan();
        this.lengths = plan.header().lengths();
        this.rows = IntStream.range(0, answer.loadouts().size())
                .mapToObj(i -> row(answer, i, shares.get(i)))
                .toList();
        this.unit = lengths.together(rows.stream().flatMapToDouble(row -> lengthsM(row.reach())));
        this.rose = new ReachRose(answer);
    }

    public static ReachComposer of(ReachAnswer answer) {
        return of(
                answer,
                IntStream.range(0, answer.loadouts().size())
                        .mapToObj(answer::share)
                        .toList());
    }

    /** With shares of the ground that were counted elsewhere, such as on the map beside the table. */
    public static ReachComposer of(ReachAnswer answer, List<ReachEstimate> shares) {
        return new ReachComposer(answer, shares);
    }

    private static Row row(ReachAnswer answer, int number, ReachEstimate share) {
        LoadoutReach reach = answer.loadouts().get(number);
        return new Row(
                number,
                answer.scene().loadout(reach.link().name()),
                reach,
                answer.someCopy().get(number),
                share,
                new VerdictComposer(answer).words(number));
    }

    private static DoubleStream lengthsM(LoadoutReach reach) {
        ReachEstimate median = reach.medianM();
        return DoubleStream.of(median.value(), median.interval95().high());
    }

    /** What it is composed from. */
    public ReachAnswer answer() {
        return answer;
    }

    /** One a loadout, in the plan's order. */
    public List<Row> rows() {
        return rows;
    }

    /** The answer without what has to be drawn. */
    public Page page() {
        List<Section> sections = inWords();
        ModelsComposer.of(answer).map(ModelsComposer::section).ifPresent(sections::add);
        sections.add(byBearing());
        sections.add(notes());
        sections.add(Section.of("Caution", new CautionBlock(List.of(Caution.RELIANCE))));
        return page(sections, "");
    }

    /** What every form of the answer begins with. */
    private List<Section> inWords() {
        List<Section> sections = new ArrayList<>(List.of(reach(), worth()));
        PlacesComposer.of(answer).section().ifPresent(sections::add);
        new OneWayComposer(answer).section().ifPresent(sections::add);
        StationsComposer.of(answer.stations(), plan).section().ifPresent(sections::add);
        RoutesComposer.of(answer).section().ifPresent(sections::add);
        ChannelsComposer.of(answer).section().ifPresent(sections::add);
        new PowerComposer(answer).section().ifPresent(sections::add);
        FoliageComposer.section(answer).ifPresent(sections::add);
        return sections;
    }

    /**
     * The whole report: the same, with maps, rose, the ground and ledger of one link, the plan's bench and further evidence.
     *
     * @param drawn maps that were begun for other files already
     * @param more sections behind the bench
     */
    Page report(Optional<ReachMaps> drawn, List<Section> more, String imprint) {
        List<Section> sections = inWords();
        List<Drawing> maps = maps(drawn);
        if (!maps.isEmpty())
            sections.add(new Section(maps.size() == 1 ? "Map" : "Maps", List.copyOf(maps))
                    .answering("On which ground is there copy, and with what?"));
        sections.add(roseAndBearings());
        sections.addAll(new ReachEvidence(answer).link());
        answer.scene()
                .bench()
                .ifPresent(bench -> sections.addAll(
                        BenchComposer.of(benchView(bench, imprint)).evidence()));
        sections.addAll(more);
        sections.add(notes().asDetail());
        sections.addAll(new ReachEvidence(answer).grounds());
        return page(sections, imprint);
    }

    private Page page(List<Section> sections, String imprint) {
        return new Page("Reach report", plan.header().title(), question(), opening(), sections, imprint);
    }

    private BenchView benchView(BenchAnalysis bench, String imprint) {
        return new BenchView(
                plan.header().title(),
                BenchView.Question.of(plan.equipment().bench().map(Equipment.Bench::mount)),
                bench,
                List.of(),
                List.of(),
                AntennaCost.of(plan),
                HandDelta.of(answer.scene().file(), bench),
                imprint);
    }

    private String question() {
        return "How far does each loadout reach from "
                + answer.scene()
                        .middlePosition()
                        .map(Places.PositionEntry::name)
                        .orElse("the centre of the area")
                + ", and is the bigger antenna worth carrying?";
    }

    private List<Block> opening() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(Paragraph.answer(headline()));
        answer.scene()
                .calibration()
                .map(CalibrationFile::words)
                .map(Paragraph::of)
                .ifPresent(blocks::add);
        blocks.add(facts());
        blocks.add(Paragraph.of(answer.otherEnd()));
        return blocks;
    }

    /** The farthest of what people carry. What stands on a mast is an end to be reached, not a choice to be carried. */
    String headline() {
        Row best = rows.get(rose.farthest());
        LoadoutReach reach = best.reach();
        ReachEstimate median = reach.medianM();
        String length = unit.text(median.value());
        long equals = rose.choices().stream()
                .filter(i -> unit.text(rows.get(i).reach().medianM().value()).equals(length))
                .count();
        return (equals > 1 ? "None reaches farther than \"" : "The farthest is \"") + best.name() + "\": "
                + (isCut(reach) ? "at least " : "") + length + " ("
                + unit.rangeText(median.interval95().low(), median.interval95().high())
                + ") in the median direction, " + unit.text(reach.worstM().value()) + " towards the "
                + Compass.word(reach.worstBearingDeg()) + ", its worst. " + Sentences.begun(someCopy(best)) + "."
                + new VerdictComposer(answer)
                        .bought()
                        .map(bought -> " " + bought)
                        .orElse("");
    }

    /** How far people would say that somebody answered: {@code some copy, standing still, to 1.1 km}. */
    private String someCopy(Row row) {
        return "some copy, " + SOME.fading().word() + " still, to " + someCopyLength(row);
    }

    private String someCopyLength(Row row) {
        return (isCut(row.someCopy()) ? "at least " : "")
                + unit.text(row.someCopy().medianM().value());
    }

    private static boolean isCut(LoadoutReach reach) {
        return 2 * reach.openEnded() > reach.bearings();
    }

    private Facts facts() {
        return new Facts(List.of(
                new Facts.Fact("Channel", channel(plan)),
                new Facts.Fact("Counts as copy", wish(plan)),
                new Facts.Fact("Some copy", words(SOME) + ": " + SOME.quality().meaning()),
                new Facts.Fact("From", from()),
                new Facts.Fact("Bearings", NorthNote.words(plan.header(), answer.middle(), "the middle")),
                new Facts.Fact(
                        "Within", lengths.text(1000 * plan.places().area().radiusKm())),
                new Facts.Fact("Model", model(answer.scene()))));
    }

    /** Name of the loss model, and whether the program chose it; why stands here where it does not stand among the warnings. */
    static String model(Scene scene) {
        return scene.choice().map(ModelChoice::line).orElse(scene.model().name());
    }

    /** The same without the reason, for pictures and tags. */
    static String briefModel(Scene scene) {
        return scene.choice().map(ModelChoice::brief).orElse(scene.model().name());
    }

    /** Name, frequency and modulation. */
    static String channel(Plan plan) {
        return plan.channel().title(", ") + ", " + plan.channel().modulation().word()
                + plan.channel()
                        .split()
                        .map(split -> "; a relay on it hears "
                                + Decibels.number(split.receive().mhz(), 4) + " MHz and sends "
                                + Decibels.number(split.transmit().mhz(), 4) + " MHz")
                        .orElse("");
    }

    /** What a picture was computed for, in a line: {@code crew direct, 155.16 MHz, 5 W}. */
    public static String channel(Scene scene, Loadout carried) {
        return scene.plan().channel().name() + ", "
                + Decibels.number(scene.plan().channel().frequency().mhz(), 4).replaceAll("\\.?0+$", "") + " MHz, "
                + Decibels.number(powerW(scene, carried), 3).replaceAll("\\.?0+$", "") + " W";
    }

    private static double powerW(Scene scene, Loadout carried) {
        return scene.plan().equipment().radios().stream()
                .filter(radio -> radio.name().equals(carried.radio().name()))
                .mapToDouble(Equipment.RadioEntry::powerW)
                .findFirst()
                .orElseThrow();
    }

    /** What counts as copy. */
    static String wish(Plan plan) {
        return words(plan.channel().wish());
    }

    private static String words(Channel.CopyWish wish) {
        return wish.quality().word().toUpperCase(Locale.ROOT) + ", "
                + wish.fading().word() + ", at " + Shares.wanted(wish.odds()) + " of places"
                + (wish.ways() == NeededWays.BOTH ? "" : ", " + wish.ways().towards("the base"));
    }

    /** Where the middle is, with its name if it has one. */
    String from() {
        return plan.questions().reach().from().map(name -> name + ", ").orElse("")
                + plan.header().placeForm().format(answer.middle());
    }

    /** What is at the middle, where there is no room for more. */
    String farEnd() {
        return answer.scene()
                .middleLoadoutName()
                .map(name -> "Reach when " + name + " is at the middle.")
                .orElse("Reach with the same at both ends.");
    }

    private Section reach() {
        return Section.of("Reach by loadout", table()).answering("How far does each loadout reach?");
    }

    /** How shares and areas of the ground were counted, in the same words wherever they stand. */
    private String groundCounted() {
        return groundCounted(answer);
    }

    static String groundCounted(ReachAnswer answer) {
        return answer.area().isPresent() ? CELLS_COUNTED : BEARINGS_COUNTED;
    }

    Table<Row> table() {
        return Table.of(
                "Continuous reach ends before the first stretch longer than "
                        + lengths.text(RadialReach.LONGEST_GAP_M)
                        + " below the wanted odds. 95 % intervals hold what is uncertain everywhere at once (model, carry"
                        + " loss, bench). Good copy is what the plan counts as copy, some copy that somebody answered, "
                        + SOME.fading().word() + " still, at every second place; both in the median direction."
                        + (rows.stream().anyMatch(row -> isCut(row.reach()) || isCut(row.someCopy()))
                                ? " " + AT_LEAST
                                : "")
                        + " " + groundCounted(),
                rows,
                List.of(
                        MARK,
                        NAME,
                        median(),
                        Column.number("95 % interval, " + unit.unit(), row -> interval(row.reach())),
                        someCopy(),
                        worst(),
                        Column.words(
                                "towards", row -> Compass.letters(row.reach().worstBearingDeg())),
                        OF_GROUND,
                        Column.number("95 % interval", row -> share(row.share().interval95()))));
    }

    /** The same in short, for a narrow place. */
    public Table<Row> brief() {
        return Table.of("", rows, List.of(MARK, NAME, median(), someCopy(), worst(), OF_GROUND));
    }

    private Column<Row> median() {
        return Column.number("good copy, " + unit.unit(), row -> median(row.reach()));
    }

    private Column<Row> someCopy() {
        return Column.number("some copy, " + unit.unit(), row -> median(row.someCopy()));
    }

    private String median(LoadoutReach reach) {
        return unit.number(reach.medianM().value()) + (isCut(reach) ? "+" : "");
    }

    private Column<Row> worst() {
        return Column.number(
                "worst, " + unit.unit(), row -> unit.number(row.reach().worstM().value()));
    }

    private String interval(LoadoutReach reach) {
        Interval interval = reach.medianM().interval95();
        return unit.range(interval.low(), interval.high());
    }

    private static String share(Interval interval) {
        return Shares.shareRange(interval.low(), interval.high());
    }

    private Section worth() {
        return Section.of(
                        "Is it worth carrying?",
                        Table.of(
                                placesCounted(),
                                rows,
                                List.of(
                                        NAME,
                                        Column.number(
                                                "antenna, " + lengths.antennaUnit(),
                                                row -> carried(row, burden -> AntennaCost.length(burden, lengths))),
                                        Column.number(
                                                "mass, " + lengths.massUnit(),
                                                row -> carried(row, burden -> AntennaCost.mass(burden, lengths))),
                                        Column.words("verdict", row -> Sentences.begun(row.verdict())))))
                .answering("Is the bigger antenna worth carrying?");
    }

    /** "Who reaches whom" takes people as they are loaded, and counts a route or sector only where all of its points are reached. */
    private String placesCounted() {
        boolean hasPoints =
                answer.places().places().stream().anyMatch(place -> place.kind() != PlacesAnswer.Kind.POSITION);
        return "Places are counted as if everybody who wears a radio there wore the loadout of the row; who reaches whom, below, is as"
                + " people are loaded. In brackets the 95 % interval of the difference: what is"
                + " uncertain for both alike, most of all the model, is left out of it."
                + (hasPoints ? " Of a route or a sector each point that is reached counts by its share." : "");
    }

    /** A side of what is worn; nobody carries a mast or a vehicle. */
    private static String carried(Row row, Function<Burden, String> side) {
        return row.loadout().carry().carry().isAtBody()
                ? side.apply(row.loadout().antenna().burden())
                : "not worn";
    }

    private Section byBearing() {
        return Section.of("Reach by bearing", bearings());
    }

    private Section roseAndBearings() {
        return Section.of(
                        "Reach by bearing",
                        new Drawing(
                                rose.figure(rose.drawn()),
                                "Distance to which copy is kept from the middle outwards. A band is the interval from doubt that"
                                        + " all places share: the true line may lie anywhere in it, but as a whole."),
                        bearings())
                .answering("How far in which direction?");
    }

    private Table<Row> bearings() {
        List<Column<Row>> columns = new ArrayList<>(List.of(MARK, NAME));
        for (int i = 0; i < POINTS; i++) {
            double azimuthDeg = 360.0 / POINTS * i;
            columns.add(Column.number(Compass.letters(azimuthDeg), row -> towards(row.reach(), azimuthDeg)));
        }
        return Table.of(
                "Continuous reach, " + unit.unit()
                        + ", by bearing. The worst of all bearings, above, may lie between these. " + AT_LEAST,
                rows,
                columns);
    }

    private String towards(LoadoutReach reach, double azimuthDeg) {
        RadialReach radial = reach.radial(nearest(reach, azimuthDeg));
        return unit.number(radial.continuousM()) + (radial.openEnded() ? "+" : "");
    }

    private static int nearest(LoadoutReach reach, double azimuthDeg) {
        int best = 0;
        for (int i = 1; i < reach.bearings(); i++)
            if (gapDeg(reach.bearingDeg(i), azimuthDeg) < gapDeg(reach.bearingDeg(best), azimuthDeg)) best = i;
        return best;
    }

    private static double gapDeg(double bearingDeg, double azimuthDeg) {
        double gap = Math.abs(bearingDeg - azimuthDeg) % 360;
        return Math.min(gap, 360 - gap);
    }

    private List<Drawing> maps(Optional<ReachMaps> begun) {
        if (answer.area().isEmpty()) return List.of();
        ReachMaps drawn = begun.orElseGet(() -> new ReachMaps(answer));
        int control = answer.control();
        int best = rose.mostGround();
        List<Drawing> maps = new ArrayList<>();
        maps.add(drawn.odds(best));
        if (rows.size() > 1) maps.add(drawn.least());
        if (best != control) maps.add(drawn.bought(control, best));
        if (!answer.oneWay().isEmpty()) maps.add(drawn.oneWay(best));
        drawn.models().ifPresent(maps::add);
        return maps;
    }

    /** How the figures were counted. */
    private Section notes() {
        List<String> points = new ArrayList<>();
        largestAssumption().ifPresent(points::add);
        for (Turning turning : Turning.all(answer)) points.add(turning.words());
        answer.area().ifPresent(area -> points.addAll(counted(area)));
        answer.scene()
                .plan()
                .places()
                .area()
                .polygon()
                .ifPresent(file -> points.add("Only ground within " + file.getFileName()
                        + " is counted and drawn; the reach along a bearing goes on beyond it."));
        return Section.of("Notes", new Bullets(points));
    }

    /** The carry position on which computation and earlier figures differ most, where people of this answer carry so. */
    private Optional<String> largestAssumption() {
        return rows.stream()
                .map(row -> row.loadout().carry())
                .filter(CarryLoss::isDisputed)
                .max(Comparator.comparingDouble(carry -> carry.doubt().commonDb()))
                .map(carry ->
                        "Largest assumption: carried as \"" + carry.carry().word() + "\", the control is worth "
                                + Decibels.text(carry.mean().dbd()) + " over a dipole, give or take "
                                + Decibels.text(carry.doubt().commonDb()) + "; " + carry.origin()
                                + ". One level against the bare radio on a pole settles it (docs/measure-body.md).");
    }

    private List<String> counted(ReachAnswer.AreaAnswer area) {
        List<String> points = new ArrayList<>();
        LossGrid first = area.losses().get(0);
        String how = switch (first.engine()) {
            case EXACT -> "one path per cell";
            case MARCH -> "the field marched along radials" + MarchCost.together() + ", cells between two of them";
            case SWEEP -> "a sweep of radials";
        };
        points.add(String.format(
                Locale.ROOT,
                "Maps: %d cells of %s by %s (%s).",
                first.knownCount(),
                lengths.heightText(first.grid().cellM()),
                how,
                first.engine().word()));
        for (LossGrid loss : area.losses())
            loss.difference()
                    .ifPresent(difference -> points.add(String.format(
                            Locale.ROOT,
                            "Antennas %.2f and %.2f m up, %s.",
                            loss.request().terminals().txHeightM(),
                            loss.request().terminals().rxHeightM(),
                            difference.sentence(loss.engine()))));
        return points;
    }

    /**
     * The answer for one loadout in a line: {@code 520 m on the median bearing (340 to 670 m), 12 % of the ground; some copy, standing
     * still, to 1.1 km}.
     */
    public String line(Row row) {
        ReachEstimate median = row.reach().medianM();
        return (isCut(row.reach()) ? "at least " : "") + unit.text(median.value()) + " on the median bearing ("
                + unit.rangeText(median.interval95().low(), median.interval95().high()) + "), "
                + Shares.share(row.share().value()) + " of the ground; " + someCopy(row);
    }

    /** What else {@link #words(Row)} means, once for all rows. */
    String someCopyMeans() {
        return "Some copy: " + SOME.fading().word() + " still.";
    }

    /** The same where there is hardly room: {@code 520 m, worst 220 m west; some copy to 1.1 km}. */
    String words(Row row) {
        LoadoutReach reach = row.reach();
        return unit.text(reach.medianM().value()) + ", worst "
                + unit.text(reach.worstM().value()) + " " + Compass.word(reach.worstBearingDeg())
                + "; some copy to " + someCopyLength(row);
    }

    /** What to carry and why, in a sentence: of what people carry that whose gain is felt, the most; else the control. */
    public String advice() {
        String control = answer.scene().controlLoadout().name();
        if (rose.choices().size() < 2)
            return "Carry \"" + rows.get(rose.choices().get(0)).name() + "\": the plan has nothing to hold against it.";
        return rose.choices().stream()
                .filter(this::isFelt)
                .max(Comparator.comparingDouble(this::placesGained).thenComparingDouble(this::groundGained))
                .map(rows::get)
                .map(row -> "Carry \"" + row.name() + "\": it " + firstSentence(row.verdict()))
                .orElse("Keep \"" + control + "\": nothing else adds so much that it would be felt.");
    }

    private static String firstSentence(String words) {
        int end = words.indexOf(". ");
        return end < 0 ? words : words.substring(0, end + 1);
    }

    private boolean isFelt(int number) {
        return answer.verdicts().get(number).stream()
                .anyMatch(verdict -> verdict.judgement(verdict.decidedBy()) == Judgement.MORE);
    }

    private double placesGained(int number) {
        return answer.verdicts()
                .get(number)
                .filter(verdict -> verdict.decidedBy() == Questions.Measure.PLACES)
                .flatMap(ReachVerdict::places)
                .map(PlacesGain::gain)
                .orElse(0.0);
    }

    private double groundGained(int number) {
        return answer.verdicts()
                .get(number)
                .map(verdict -> verdict.ground().gain())
                .orElse(0.0);
    }

    /** Whether one loadout is worth carrying, with its name. */
    public Paragraph verdict(Row row) {
        return Paragraph.of(Sentences.begun(row.name() + ": " + row.verdict()));
    }

    /** Reach by bearing of some loadouts, by their numbers in the answer. */
    public RoseFigure rose(List<Integer> which) {
        return rose.figure(which);
    }
}
