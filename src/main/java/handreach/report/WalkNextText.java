package handreach.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.geodesy.Compass;
import handreach.report.figure.MapPlace;
import handreach.report.file.Csv;
import handreach.report.file.Json;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.report.page.TextTable;
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

/** Which walk next, as text, as JSON, and every place along the tracks as CSV. */
public final class WalkNextText {
    private static final int MOST_QUESTIONS = 12;
    /** Below this, knowing the site for certain is worth nothing that anybody feels, dB. */
    private static final double SETTLED_DB = 0.005;

    private WalkNextText() {}

    /** A proposed report with what it adds. */
    private record Stop(WalkNextAnswer.Report report, WalkNextAnswer.Spot spot, int rank, double addsDb) {}

    private static List<Stop> stops(WalkNextAnswer answer) {
        List<NextWalk.Pick> picks = answer.proposal().next().picks();
        List<Stop> stops = new ArrayList<>();
        for (int candidate : answer.proposal().stops())
            for (int rank = 0; rank < picks.size(); rank++)
                if (picks.get(rank).candidate() == candidate) {
                    WalkNextAnswer.Report report = answer.route().reports().get(candidate);
                    WalkNextAnswer.Spot spot = answer.route().spots().get(report.spot());
                    stops.add(new Stop(report, spot, rank + 1, picks.get(rank).addsDb()));
                }
        return stops;
    }

    /** The answer for people. */
    public static String text(WalkNextAnswer answer) {
        Lengths lengths = answer.scene().plan().heading().lengths();
        NextWalk next = answer.proposal().next();
        StringBuilder out = new StringBuilder();
        out.append(answer.scene().plan().heading().title()).append('\n');
        say(
                out,
                "Next walk, to learn %s: %d reports, chosen among %d places and %d loadouts, all by %s.%n%n",
                answer.asked().decision().meaning(),
                next.picks().size(),
                answer.route().spots().size(),
                answer.route().reports().size() / answer.route().spots().size(),
                answer.asked().instrument() == NextWalk.Instrument.COPY ? "copy or no copy" : "level");
        TextTable table =
                TextTable.of("stop", "track", "along", "place", "from base", "loadout", "odds", "worth", "rank");
        int number = 0;
        for (Stop stop : stops(answer))
            table.row(
                    String.valueOf(++number),
                    stop.spot().track(),
                    lengths.text(stop.spot().alongM()),
                    answer.scene()
                            .plan()
                            .heading()
                            .placeForm()
                            .format(stop.spot().at()),
                    lengths.text(stop.spot().distanceM()) + " "
                            + Compass.word(stop.spot().bearingDeg()),
                    stop.report().loadout(),
                    Shares.odds(stop.report().odds()),
                    worth(stop.addsDb(), next.perfectDb()),
                    String.valueOf(stop.rank()));
        out.append(table.text()).append('\n');
        out.append(questions(answer)).append('\n');
        out.append(summary(next)).append('\n');
        out.append(
                "Log every call, those without an answer too, and call both ways. Worth is what a report adds to those of"
                        + " higher rank, as a share of knowing every shift of the loss for certain.\n");
        out.append(Cautions.brief(Caution.RELIANCE)).append('\n');
        return out.toString();
    }

    private static String summary(NextWalk next) {
        if (next.perfectDb() < SETTLED_DB)
            return "The answers are as good as certain: no report is expected to change any of them.";
        return String.format(
                Locale.ROOT,
                "Together they are worth %.2f dB of margin, %s of what knowing the site for certain would be worth"
                        + " (%.2f dB).",
                next.valueDb(),
                Shares.share(next.valueDb() / next.perfectDb()),
                next.perfectDb());
    }

    /** The questions whose answer is most likely to change, so that a reader sees what the walk is for. */
    private static String questions(WalkNextAnswer answer) {
        List<NextWalk.Answer> answers = answer.proposal().next().answers();
        List<Integer> order = IntStream.range(0, answers.size())
                .boxed()
                .sorted(Comparator.comparingDouble(
                        (Integer q) -> -answers.get(q).chanceOfChange()))
                .limit(MOST_QUESTIONS)
                .toList();
        String wanted = Shares.wanted(answer.scene().plan().channel().wish().odds());
        TextTable table = TextTable.of(
                "at stake", "loadout", "beyond " + wanted + " odds", "± now", "± after", "answer now", "may change");
        for (int q : order) {
            WalkNextAnswer.Stake stake = answer.proposal().stakes().get(q);
            table.row(
                    stake.where(),
                    stake.loadout(),
                    Decibels.signed(stake.marginDb(), 1) + " dB",
                    Decibels.number(answers.get(q).doubtBeforeDb(), 1) + " dB",
                    Decibels.number(answers.get(q).doubtAfterDb(), 1) + " dB",
                    stake.marginDb() >= 0 ? "suffices" : "does not",
                    Shares.odds(answers.get(q).chanceOfChange()));
        }
        String left = answers.size() > order.size()
                ? (answers.size() - order.size()) + " more questions are less likely to change.\n"
                : "";
        return table.text() + left;
    }

    private static void say(StringBuilder out, String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values));
    }

    private static String worth(double addsDb, double perfectDb) {
        return perfectDb < SETTLED_DB ? "nothing" : Shares.share(addsDb / perfectDb);
    }

    /** The answer as one JSON object; keys are described in docs/walk.md. */
    public static ObjectNode json(WalkNextAnswer answer) {
        NextWalk next = answer.proposal().next();
        ObjectNode node = object();
        node.put("title", answer.scene().plan().heading().title());
        node.put("model", answer.scene().plan().questions().reach().model().name());
        node.put("decision", answer.asked().decision().word());
        node.put("instrument", answer.asked().instrument().name().toLowerCase(Locale.ROOT));
        node.put("odds", answer.scene().plan().channel().wish().odds());
        ObjectNode base = node.putObject("base");
        answer.base().name().ifPresentOrElse(name -> base.put("name", name), () -> base.putNull("name"));
        base.put("latitude", answer.base().at().latitudeDeg());
        base.put("longitude", answer.base().at().longitudeDeg());
        base.put("loadout", answer.base().loadout().name());
        node.put("tracks_given", answer.route().tracksGiven());
        node.put("places", answer.route().spots().size());
        node.put("decorrelation_m", answer.asked().decorrelationM());
        node.put("value_db", next.valueDb());
        node.put("perfect_value_db", next.perfectDb());
        ArrayNode stops = node.putArray("stops");
        for (Stop stop : stops(answer)) stops.add(stop(answer, stop));
        ArrayNode questions = node.putArray("questions");
        for (int q = 0; q < next.answers().size(); q++) {
            ObjectNode question = questions.addObject();
            WalkNextAnswer.Stake stake = answer.proposal().stakes().get(q);
            question.put("where", stake.where());
            question.put("loadout", stake.loadout());
            question.put("margin_beyond_odds_db", stake.marginDb());
            question.put("doubt_before_db", next.answers().get(q).doubtBeforeDb());
            question.put("doubt_after_db", next.answers().get(q).doubtAfterDb());
            question.put("chance_of_change", next.answers().get(q).chanceOfChange());
        }
        node.set("warnings", Json.tree(answer.warnings()));
        return node;
    }

    private static ObjectNode stop(WalkNextAnswer answer, Stop stop) {
        ObjectNode node = object();
        node.put("rank", stop.rank());
        node.put("track", stop.spot().track());
        node.put("along_m", stop.spot().alongM());
        node.put("latitude", stop.spot().at().latitudeDeg());
        node.put("longitude", stop.spot().at().longitudeDeg());
        node.put(
                "place",
                answer.scene().plan().heading().placeForm().format(stop.spot().at()));
        node.put("bearing_deg", stop.spot().bearingDeg());
        node.put("distance_m", stop.spot().distanceM());
        node.put("cover", stop.spot().cover().word());
        node.put("loadout", stop.report().loadout());
        node.put("margin_db", stop.report().marginDb());
        node.put("odds_of_copy", stop.report().odds());
        node.put("adds_db", stop.addsDb());
        return node;
    }

    private static ObjectNode object() {
        return (ObjectNode) Json.tree(new Object() {});
    }

    /** Proposed stops as waypoints, in the order of the tracks. */
    static List<MapPlace> places(WalkNextAnswer answer) {
        List<MapPlace> places = new ArrayList<>();
        int number = 0;
        for (Stop stop : stops(answer))
            places.add(new MapPlace(
                    stop.spot().at(),
                    MapPlace.Kind.POINT,
                    "Call " + ++number + ": " + stop.report().loadout() + ", odds "
                            + Shares.odds(stop.report().odds())));
        return places;
    }

    /** Odds at every place looked at, a row for each loadout. */
    static String csv(WalkNextAnswer answer) {
        List<String> head = List.of(
                "track",
                "along_m",
                "latitude",
                "longitude",
                "distance_m",
                "bearing_deg",
                "cover",
                "loadout",
                "margin_db",
                "odds");
        List<List<String>> rows = answer.route().reports().stream()
                .map(report -> {
                    WalkNextAnswer.Spot spot = answer.route().spots().get(report.spot());
                    return List.of(
                            spot.track(),
                            Decibels.number(spot.alongM(), 0),
                            Decibels.number(spot.at().latitudeDeg(), 6),
                            Decibels.number(spot.at().longitudeDeg(), 6),
                            Decibels.number(spot.distanceM(), 0),
                            Decibels.number(spot.bearingDeg(), 1),
                            spot.cover().word(),
                            report.loadout(),
                            Decibels.number(report.marginDb(), 1),
                            Decibels.number(report.odds(), 3));
                })
                .toList();
        return Csv.text(head, rows);
    }
}
