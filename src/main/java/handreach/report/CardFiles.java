package handreach.report;

import handreach.cartography.LoadoutMark;
import handreach.geodesy.GeodesicLine;
import handreach.loadout.NeededWays;
import handreach.plan.CalibrationFile;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.report.card.CardLine;
import handreach.report.card.CardLoadout;
import handreach.report.card.CardSize;
import handreach.report.card.CardView;
import handreach.report.card.DeadGround;
import handreach.report.card.FieldCard;
import handreach.report.figure.RoseFigure;
import handreach.report.file.AnswerFile;
import handreach.report.page.Cautions;
import handreach.study.ModelChoice;
import handreach.study.ReachAnswer;
import handreach.study.RelayAnswer;
import handreach.study.Scene;
import handreach.study.Whereabouts;
import handreach.units.Shares;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The field card of a plan: one page for the pocket. */
public final class CardFiles {
    private static final int MOST_LINES = 4;
    private static final String WITHOUT_LINE = " Without a letter: no line on the rose.";
    /** A doubt in brief is no longer than this, letters. */
    private static final int MOST_BRIEF = 80;
    /** How models begin to say that a place is too far gone for the figure to mean much. */
    private static final String FAR_GONE = "Lost: ";
    /** Places beyond this many times the farthest reach would shrink the lines too much: they stand on the last ring as arrows. */
    private static final double MOST_BEYOND = 1.6;
    /** Room for a symbol within the last ring. */
    private static final double EDGE = 1.05;

    private final ReachAnswer answer;
    private final Scene scene;
    private final Plan plan;
    private final ReachComposer reach;
    private final ReachRose rose;
    private final Optional<RelayAnswer> relay;
    private final CardWho who;

    private CardFiles(ReachAnswer answer, Optional<RelayAnswer> relay) {
        this.answer = answer;
        this.scene = answer.scene();
        this.plan = scene.plan();
        this.reach = ReachComposer.of(answer);
        this.rose = new ReachRose(answer);
        this.relay = relay;
        this.who = new CardWho(Whereabouts.of(scene), relay, plan);
    }

    /** Writes the card as PDF; a fold is four small pages on one sheet of A4. */
    public static void write(
            ReachAnswer answer, Optional<RelayAnswer> relay, Instant made, CardSize paper, boolean fold, Path file) {
        CardView view = new CardFiles(answer, relay).view(made);
        AnswerFile.write(
                file,
                fold ? FieldCard.fold(view, paper) : FieldCard.sheet(view, paper),
                answer.scene().file().sources());
    }

    private CardView view(Instant made) {
        CardView.Header header = new CardView.Header(
                plan.header().title(),
                plan.channel().title(" "),
                String.format(
                        Locale.ROOT,
                        "%s at %s of places%s, from %s",
                        plan.channel().wish().quality().word().toUpperCase(Locale.ROOT),
                        Shares.wanted(plan.channel().wish().odds()),
                        plan.channel().wish().ways() == NeededWays.BOTH
                                ? ""
                                : ", " + plan.channel().wish().ways().towards("the base"),
                        scene.middlePosition().map(Places.PositionEntry::name).orElse("the centre") + " "
                                + plan.header().placeForm().format(answer.middle())
                                + (scene.calibration().isPresent() ? ", calibrated" : "")),
                made);
        return new CardView(
                header,
                loadouts(),
                who.people(),
                rose(),
                new CardView.Notes(
                        deadGround(),
                        standingAndRelay(),
                        fallback(),
                        RoutesComposer.of(answer).checkTimes(),
                        doubts()),
                Cautions.CARRYING);
    }

    private List<CardLine> standingAndRelay() {
        return Stream.of(
                        relay.stream().flatMap(found -> new RelayComposer(found).cardLines().stream()),
                        StationsComposer.of(answer.stations(), plan).cardLines().stream(),
                        ChannelsComposer.of(answer).cardLines().stream())
                .flatMap(lines -> lines)
                .toList();
    }

    /** The rose over relief, far enough out for the places that lie not too far beyond the lines. */
    private RoseFigure rose() {
        RoseFigure lines = rose.figure(drawn());
        double most = MOST_BEYOND * lines.farthestKm();
        double out = who.places().stream()
                .mapToDouble(place -> EDGE * GeodesicLine.distanceM(answer.middle(), place.position()) / 1000)
                .filter(km -> km <= most)
                .max()
                .orElse(0);
        return lines.outTo(out).over(scene.tiles(), answer.middle(), who.places(), who.ways());
    }

    /** Every loadout that somebody carries at a position, on a route or in a sector, in the plan's order. */
    private List<Integer> carried() {
        Places places = plan.places();
        return Stream.of(
                        places.positions().stream().map(Places.PositionEntry::loadout),
                        places.routes().stream().map(Places.RouteEntry::loadout),
                        places.sectors().stream().map(Places.SectorEntry::loadout))
                .flatMap(each -> each)
                .flatMap(Optional::stream)
                .map(this::indexOf)
                .distinct()
                .sorted()
                .toList();
    }

    /** The control, what opens most ground, then what people carry or, where nobody has a loadout yet, what the report draws; by letter. */
    private List<Integer> drawn() {
        List<Integer> carried = carried();
        return Stream.of(List.of(answer.control(), rose.mostGround()), carried.isEmpty() ? rose.drawn() : carried)
                .flatMap(List::stream)
                .distinct()
                .limit(MOST_LINES)
                .sorted()
                .toList();
    }

    /** Those on the rose first, then what else is carried. */
    private CardView.Loadouts loadouts() {
        List<Integer> drawn = drawn();
        List<CardLoadout> lines = new ArrayList<>();
        for (int i : drawn) lines.add(line(i, Optional.of(LoadoutMark.of(i))));
        for (int i : carried()) if (!drawn.contains(i)) lines.add(line(i, Optional.empty()));
        return new CardView.Loadouts(
                reach.farEnd() + " " + reach.someCopyMeans() + (lines.size() > drawn.size() ? WITHOUT_LINE : "")
                        + notHere(),
                lines);
    }

    /** Loadouts of the plan that the card does not tell of, by name. */
    private String notHere() {
        List<Integer> told = new ArrayList<>(drawn());
        told.addAll(carried());
        List<String> others = new ArrayList<>();
        for (int i = 0; i < answer.loadouts().size(); i++)
            if (!told.contains(i)) others.add(answer.loadouts().get(i).link().name());
        return others.isEmpty()
                ? ""
                : " Only in the report, as nobody carries " + (others.size() == 1 ? "it: " : "them: ")
                        + String.join(", ", others) + ".";
    }

    private CardLoadout line(int index, Optional<LoadoutMark> mark) {
        ReachComposer.Row row = reach.rows().get(index);
        return new CardLoadout(mark, row.name(), reach.words(row));
    }

    private int indexOf(String loadout) {
        for (int i = 0; i < answer.loadouts().size(); i++)
            if (answer.loadouts().get(i).link().name().equals(loadout)) return i;
        throw new IllegalArgumentException("no reach for " + loadout);
    }

    private List<CardLine> deadGround() {
        int least = leastCarried();
        List<CardLine> lines = new ArrayList<>(DeadGround.lines(
                rose.trace(least, false),
                scene.tiles(),
                answer.middle(),
                plan.header().lengths(),
                plan.header().bearings()));
        if (lines.isEmpty()) lines.add(CardLine.of("None in a whole sector within the radius; single hollows remain."));
        else
            lines.add(CardLine.of(
                    "Reckoned for " + answer.loadouts().get(least).link().name() + "."));
        return lines;
    }

    /**
     * What the model says of places that are lost anyway helps nobody who carries the card, nor why the program chose it. What the
     * calibration is comes first and is said in full however little room there is.
     */
    private List<CardLine> doubts() {
        Optional<String> calibration = scene.calibration().map(CalibrationFile::words);
        Optional<String> choice = scene.choice().map(ModelChoice::words);
        Stream<CardLine> others = answer.warnings().stream()
                .filter(warning -> !warning.startsWith(FAR_GONE)
                        && !calibration.equals(Optional.of(warning))
                        && !choice.equals(Optional.of(warning)))
                .map(warning -> new CardLine("", warning, brief(warning)));
        return Stream.concat(calibration.map(CardLine::of).stream(), others).toList();
    }

    /** What a doubt is about: its first sentence, or as many of its words as make a line. */
    private static String brief(String warning) {
        int end = warning.indexOf(". ");
        String first = (end < 0 ? warning : warning.substring(0, end)).strip().replaceAll("\\.$", "");
        if (first.length() <= MOST_BRIEF) return first;
        return first.substring(0, Math.max(first.lastIndexOf(' ', MOST_BRIEF), MOST_BRIEF / 2)) + " …";
    }

    /** What reaches least of all that is carried; the control where nobody carries anything yet. */
    private int leastCarried() {
        return carried().stream()
                .min(Comparator.comparingDouble(
                        i -> answer.loadouts().get(i).medianM().value()))
                .orElseGet(() -> indexOf(scene.controlLoadout().name()));
    }

    private static List<CardLine> fallback() {
        return List.of(
                CardLine.of(
                        "No answer: stand still, lift the radio to face height, antenna upright, turn until the radio side faces them."),
                CardLine.of("Move half a wavelength, then uphill or to the edge of the shadow; call again."),
                CardLine.of("Still none at the next check time: use the second means, go to the agreed place."));
    }
}
