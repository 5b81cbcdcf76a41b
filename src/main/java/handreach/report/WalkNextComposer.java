package handreach.report;

import handreach.report.figure.MapPlace;
import handreach.report.page.Block;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Column;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.WalkNextAnswer;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import handreach.walk.NextWalk;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Composes which walk next, once for every face: whether there is anything to walk for, where to call, and what is at stake. */
public final class WalkNextComposer {
    private static final int MOST_QUESTIONS = 12;

    private final WalkNextAnswer answer;
    private final NextWalk next;
    private final Lengths lengths;
    private final boolean isOpen;

    private WalkNextComposer(WalkNextAnswer answer) {
        this.answer = answer;
        this.next = answer.proposal().next();
        this.lengths = answer.scene().plan().header().lengths();
        this.isOpen = answer.outlook() == WalkNextAnswer.Outlook.OPEN;
    }

    /** The answer as a page. */
    public static Page page(WalkNextAnswer answer) {
        WalkNextComposer composer = new WalkNextComposer(answer);
        List<Section> sections = new ArrayList<>();
        if (composer.isOpen) sections.add(Section.of("Where to call", composer.stops()));
        sections.add(new Section("What is at stake", composer.questions()));
        if (composer.isOpen) sections.add(Section.of("Cautions", new CautionBlock(List.of(Caution.RELIANCE))));
        return new Page(
                "Next walk",
                answer.scene().plan().header().title(),
                "Which walk would teach most about " + answer.asked().decision().meaning() + "?",
                composer.verdict(),
                sections,
                "Made by Handreach from " + answer.scene().file().file().getFileName() + ".");
    }

    /** The proposed stops as waypoints, in the order of the tracks. */
    static List<MapPlace> waypoints(WalkNextAnswer answer) {
        return answer.stops().stream()
                .map(stop -> new MapPlace(
                        stop.spot().at(),
                        MapPlace.Kind.POINT,
                        "Call " + stop.number() + ": " + stop.report().loadout() + ", odds "
                                + Shares.odds(
                                        stop.report().odds(),
                                        answer.scene().plan().channel().wish().odds())))
                .toList();
    }

    /** A report that could be made, with its place. */
    private record Tried(WalkNextAnswer.Report report, WalkNextAnswer.Spot spot) {}

    /** Odds at every place looked at, a row for each loadout, for a spreadsheet. */
    static Table<?> odds(WalkNextAnswer answer) {
        List<Tried> all = answer.route().reports().stream()
                .map(report -> new Tried(report, answer.route().spots().get(report.spot())))
                .toList();
        return Table.of(
                "",
                all,
                List.of(
                        Column.<Tried>words("track", tried -> tried.spot().track()),
                        Column.number(
                                "along_m", tried -> Decibels.plain(tried.spot().alongM(), 0)),
                        Column.number(
                                "latitude",
                                tried -> Decibels.plain(tried.spot().at().latitudeDeg(), 6)),
                        Column.number(
                                "longitude",
                                tried -> Decibels.plain(tried.spot().at().longitudeDeg(), 6)),
                        Column.number(
                                "distance_m",
                                tried -> Decibels.plain(tried.spot().distanceM(), 0)),
                        Column.number(
                                "bearing_deg",
                                tried -> Decibels.plain(tried.spot().bearingDeg(), 1)),
                        Column.words("cover", tried -> tried.spot().cover().word()),
                        Column.words("loadout", tried -> tried.report().loadout()),
                        Column.number(
                                "margin_db",
                                tried -> Decibels.plain(tried.report().marginDb(), 1)),
                        Column.number(
                                "odds", tried -> Decibels.plain(tried.report().odds(), 3))));
    }

    private List<Block> verdict() {
        List<Block> blocks = new ArrayList<>();
        switch (answer.outlook()) {
            case SETTLED -> {
                blocks.add(Paragraph.answer("Settled: no report is likely to change the answer to "
                        + answer.asked().decision().meaning() + "."));
                blocks.add(Paragraph.of("There is nothing to walk for, and no walk is proposed."));
            }
            case SILENT -> {
                blocks.add(Paragraph.answer("No report along these tracks is likely to change the answer to "
                        + answer.asked().decision().meaning() + ", though it is open: no walk is proposed."));
                blocks.add(
                        Paragraph.of(
                                "Give tracks elsewhere, or note levels instead of copies (--instrument level), which say more."));
            }
            case OPEN -> {
                if (answer.proposal().isForGroundAround())
                    blocks.add(Paragraph.answer("Settled at the places of the plan: no report is likely to change "
                            + answer.asked().decision().meaning()
                            + " there. What follows is for the ground around the base."));
                blocks.add(isForPlan() ? Paragraph.answer(proposal()) : Paragraph.of(proposal()));
                blocks.add(Paragraph.of("Log every call, those without an answer too, and call both ways."));
            }
        }
        blocks.add(Paragraph.quiet(lookedAt()));
        return blocks;
    }

    private boolean isForPlan() {
        return !answer.proposal().isForGroundAround();
    }

    private String proposal() {
        int count = answer.stops().size();
        return "Make " + (count == 1 ? "one report" : count + " reports") + ", "
                + (answer.asked().instrument() == NextWalk.Instrument.COPY ? "copy or no copy" : "levels")
                + ", to learn " + answer.asked().decision().meaning() + ": worth "
                + worth(next.valueDb())
                + " of what knowing the site for certain would be worth.";
    }

    private String lookedAt() {
        int places = answer.route().spots().size();
        return String.format(
                Locale.ROOT,
                "Looked at: %d places %s, each with %d loadouts.",
                places,
                answer.route().tracksGiven() ? "along the tracks" : "along straight lines, since no track was given",
                answer.route().reports().size() / places);
    }

    private Table<WalkNextAnswer.Stop> stops() {
        List<WalkNextAnswer.Stop> byWorth = answer.stops().stream()
                .sorted(Comparator.comparingDouble((WalkNextAnswer.Stop stop) -> -stop.addsDb()))
                .toList();
        return Table.of(
                "In order of worth; stops are numbered along the tracks. Worth is the part of the "
                        + worth(next.valueDb())
                        + " that a call adds to those chosen before it: near and like calls tell partly the same.",
                byWorth,
                List.of(
                        Column.number("stop", stop -> String.valueOf(stop.number())),
                        Column.words(
                                "track",
                                stop -> stop.spot().track() + ", "
                                        + lengths.text(stop.spot().alongM()) + " along"),
                        Column.words(
                                "place",
                                stop -> answer.scene()
                                        .plan()
                                        .header()
                                        .placeForm()
                                        .format(stop.spot().at())),
                        Column.words("loadout", stop -> stop.report().loadout()),
                        Column.number("odds", stop -> Shares.odds(stop.report().odds(), wantedOdds())),
                        Column.number("worth", stop -> worth(stop.addsDb()))));
    }

    /** As a share of knowing the site for certain. */
    private String worth(double db) {
        return Shares.share(db / next.perfectDb());
    }

    /** A question with what becomes of it. */
    private record Asked(WalkNextAnswer.Stake stake, NextWalk.Answer answer) {}

    /** The questions whose answer is most likely to change, so that a reader sees what the walk is for. */
    private List<Block> questions() {
        List<Asked> all = IntStream.range(0, next.answers().size())
                .mapToObj(q -> new Asked(
                        answer.proposal().stakes().get(q), next.answers().get(q)))
                .sorted(Comparator.comparingDouble(
                        (Asked asked) -> -asked.answer().chanceOfChange()))
                .toList();
        String wanted = Shares.wanted(wantedOdds());
        List<Column<Asked>> columns = new ArrayList<>(List.of(
                Column.words("where", asked -> asked.stake().where()),
                Column.words("loadout", asked -> asked.stake().loadout()),
                Column.number(
                        "margin, dB", asked -> Decibels.signed(asked.stake().marginDb(), 1)),
                Column.number(
                        "doubt, dB", asked -> Decibels.number(asked.answer().doubtBeforeDb(), 1))));
        if (isOpen)
            columns.add(Column.number(
                    "after, dB", asked -> Decibels.number(asked.answer().doubtAfterDb(), 1)));
        columns.add(
                Column.number("may turn", asked -> Shares.odds(asked.answer().chanceOfChange())));
        List<Block> blocks = new ArrayList<>();
        blocks.add(Table.of(
                "Margin beyond what " + wanted
                        + " odds need: above zero the loadout suffices. Doubt is its standard uncertainty"
                        + (isOpen
                                ? ", now and after these reports. May turn is the chance that they turn the answer round."
                                : ". May turn is the chance that the best reports found would turn the answer round."),
                all.subList(0, Math.min(MOST_QUESTIONS, all.size())),
                columns));
        int left = all.size() - MOST_QUESTIONS;
        if (left == 1) blocks.add(Paragraph.quiet("One more answer is less likely to turn."));
        if (left > 1) blocks.add(Paragraph.quiet(left + " more answers are less likely to turn."));
        return blocks;
    }

    private double wantedOdds() {
        return answer.scene().plan().channel().wish().odds();
    }
}
