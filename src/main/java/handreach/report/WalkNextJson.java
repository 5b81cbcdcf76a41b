package handreach.report;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import handreach.study.WalkBase;
import handreach.study.WalkNextAnswer;
import handreach.walk.NextWalk;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Which walk next, as its JSON object holds it; the schema says what each key means. */
public record WalkNextJson(
        @JsonUnwrapped PlanSubject subject,
        String model,
        String decision,
        NextWalk.Instrument instrument,
        double odds,
        Base base,
        boolean tracksGiven,
        int places,
        double decorrelationM,
        double valueDb,
        double perfectValueDb,
        WalkNextAnswer.Outlook outlook,
        List<Stop> stops,
        List<Question> questions,
        List<String> warnings) {
    /** Who is called. */
    record Base(Optional<String> name, double latitude, double longitude, String loadout) {
        static Base of(WalkBase base) {
            return new Base(
                    base.name(),
                    base.at().latitudeDeg(),
                    base.at().longitudeDeg(),
                    base.loadout().name());
        }
    }

    /** A report of the best set. */
    record Stop(
            int rank,
            String track,
            double alongM,
            double latitude,
            double longitude,
            String place,
            double bearingDeg,
            double distanceM,
            String cover,
            String loadout,
            double marginDb,
            double oddsOfCopy,
            double addsDb) {
        static Stop of(WalkNextAnswer answer, WalkNextAnswer.Stop stop) {
            WalkNextAnswer.Spot spot = stop.spot();
            return new Stop(
                    stop.rank(),
                    spot.track(),
                    spot.alongM(),
                    spot.at().latitudeDeg(),
                    spot.at().longitudeDeg(),
                    answer.scene().plan().header().placeForm().format(spot.at()),
                    spot.bearingDeg(),
                    spot.distanceM(),
                    spot.cover().word(),
                    stop.report().loadout(),
                    stop.report().marginDb(),
                    stop.report().odds(),
                    stop.addsDb());
        }
    }

    /** A part of the decision. */
    record Question(
            String where,
            String loadout,
            double marginBeyondOddsDb,
            double doubtBeforeDb,
            double doubtAfterDb,
            double chanceOfChange) {
        static Question of(WalkNextAnswer.Stake stake, NextWalk.Answer answer) {
            return new Question(
                    stake.where(),
                    stake.loadout(),
                    stake.marginDb(),
                    answer.doubtBeforeDb(),
                    answer.doubtAfterDb(),
                    answer.chanceOfChange());
        }
    }

    /** The object of an answer. */
    public static WalkNextJson of(WalkNextAnswer answer) {
        NextWalk next = answer.proposal().next();
        return new WalkNextJson(
                PlanSubject.of(answer.scene().plan()),
                answer.scene().plan().questions().reach().model().name(),
                answer.asked().decision().word(),
                answer.asked().instrument(),
                answer.scene().plan().channel().wish().odds(),
                Base.of(answer.base()),
                answer.route().tracksGiven(),
                answer.route().spots().size(),
                answer.asked().decorrelationM(),
                next.valueDb(),
                next.perfectDb(),
                answer.outlook(),
                answer.bestSet().stream().map(stop -> Stop.of(answer, stop)).toList(),
                IntStream.range(0, next.answers().size())
                        .mapToObj(q -> Question.of(
                                answer.proposal().stakes().get(q),
                                next.answers().get(q)))
                        .toList(),
                answer.warnings());
    }
}
