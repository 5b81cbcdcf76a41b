package handreach.desktop;

import handreach.loadout.Radio;
import handreach.plan.ModelWish;
import handreach.plan.Plan;
import handreach.plan.PlanLimits;
import handreach.plan.Questions;
import handreach.propagation.Standing;
import handreach.reach.AreaRequest;
import handreach.reach.BearingRequest;
import handreach.relay.RelayMode;
import java.util.List;

/** Which keys of the plan stand on the forms of what is asked and of what was learned. */
final class QuestionKeys {
    static final List<EntryKey> DECIDE = List.of(
            EntryKey.word("decided by", "by", Questions.Measure.KEYWORD),
            EntryKey.number("felt from", PlanLimits.FELT_PLACES),
            EntryKey.number("share of ground felt", PlanLimits.FELT_GROUND),
            EntryKey.number("more reach felt", PlanLimits.FELT_REACH));

    static final List<EntryKey> CALIBRATION = List.of(EntryKey.file("calibration", "file"));

    static final List<EntryKey> DOUBT = List.of(
            EntryKey.number("of the loss model", PlanLimits.MODEL_COMMON),
            EntryKey.number("spread between places", PlanLimits.PLACE_SPREAD));

    private QuestionKeys() {}

    static List<EntryKey> reach(Plan plan) {
        return List.of(
                EntryKey.choice("starts at", "from", GroundKeys.positions(plan)),
                EntryKey.choice("carried there", "with", EntryKeys.loadouts(plan))
                        .insteadOf("alike"),
                EntryKey.flag("or both ends alike", "alike").insteadOf("with"),
                EntryKey.flag("map who hears in vain", "one_way"),
                EntryKey.number("between bearings", BearingRequest.STEP),
                EntryKey.number("cells", AreaRequest.CELL),
                EntryKey.word("loss model", "model", ModelWish.KEYWORD),
                EntryKey.word("full-wave counts woods and towns", "woods_and_towns", Standing.KEYWORD));
    }

    static List<EntryKey> relay(Plan plan) {
        return List.of(
                EntryKey.word("who talks", "talk", Questions.WhoTalks.KEYWORD),
                EntryKey.pairs("pairs that talk", "pairs", GroundKeys.parties(plan)),
                EntryKey.number("relays at most", PlanLimits.RELAY_COUNT),
                EntryKey.word("works by", "mode", RelayMode.KEYWORD),
                EntryKey.flag("pass to one another", "chained"),
                EntryKey.number("power", Radio.POWER),
                EntryKey.number("sensitivity", Radio.SENSITIVITY),
                EntryKey.number("antenna gain", PlanLimits.RELAY_GAIN),
                EntryKey.number("feed loss", PlanLimits.FEED_LOSS),
                EntryKey.number("mast", PlanLimits.MAST),
                EntryKey.file("only within", "inside"),
                EntryKey.file("never within", "outside"),
                EntryKey.number("slope at most", PlanLimits.MAX_SLOPE),
                EntryKey.number("apart at least", PlanLimits.MIN_SEPARATION),
                EntryKey.file("near these tracks", "tracks"),
                EntryKey.number("from a track at most", PlanLimits.MAX_TRACK_DISTANCE),
                EntryKey.choice("walked to from", "walk_from", GroundKeys.positions(plan)),
                EntryKey.number("walk at most", PlanLimits.MAX_WALK_MINUTES).with("walk_from"));
    }

    static List<EntryKey> assign(Plan plan) {
        return List.of(
                EntryKey.names("keep what they carry", "keep", GroundKeys.everybody(plan)),
                EntryKey.names("may be handed out", "loadouts", EntryKeys.loadouts(plan)));
    }

    static List<EntryKey> walk(Plan plan) {
        return List.of(
                EntryKey.file("reports", "reports"),
                EntryKey.file("track", "track"),
                EntryKey.choice("called", "base", GroundKeys.positions(plan)),
                EntryKey.choice("carried", "loadout", EntryKeys.loadouts(plan)),
                EntryKey.number("the log's clock is off by", PlanLimits.CLOCK_OFFSET),
                EntryKey.either("unanswered calls are in it", "silent_calls_logged"));
    }
}
