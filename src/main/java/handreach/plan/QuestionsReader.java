package handreach.plan;

import handreach.input.Faults;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.input.Range;
import handreach.loadout.Radio;
import handreach.propagation.Standing;
import handreach.reach.AreaRequest;
import handreach.reach.BearingRequest;
import handreach.relay.RelayMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** Reads the questions out of a plan: reach, relay, walks, calibration, doubts. */
final class QuestionsReader {
    static final Range MODEL_COMMON = new Range("model_common_db", 0, 20, "dB");
    static final Range PLACE_SPREAD = new Range("place_spread_db", 0.5, 20, "dB");
    static final Range FELT_PLACES = new Range("felt_places", 0, 100, "places");
    static final Range FELT_GROUND = new Range("felt_ground", 0, 10, "");
    static final Range FELT_REACH = new Range("felt_reach_m", 0, 20_000, "m");
    static final Range RELAY_GAIN = new Range("gain_dbd", -30, 20, "dBd");
    static final Range MAST = new Range("mast_m", 0.5, 60, "m");
    static final Range FEED_LOSS = new Range("feed_loss_db", 0, 30, "dB");
    static final Range COUNT = new Range("count", 1, 4, "");
    static final Range MAX_TRACK_DISTANCE = new Range("max_track_distance_m", 0, 100_000, "m");
    static final Range MAX_WALK_MINUTES = new Range("max_walk_minutes", 1, 3000, "minutes");
    static final Range MAX_SLOPE = new Range("max_slope_deg", 0, 90, "degrees");
    static final Range MIN_SEPARATION = new Range("min_separation_km", 0, 100, "km");
    private static final String SILENT_CALLS = "silent_calls_logged";
    static final Range CLOCK_OFFSET = new Range("clock_offset_s", -86_400, 86_400, "s");

    private final Path folder;
    private final PlanSection root;
    private final Faults faults;
    private final List<String> loadouts;
    private final List<String> positions;
    private final List<String> everybody;
    private final List<Places.StationEntry> stations;

    QuestionsReader(Path folder, PlanSection root, Faults faults, List<String> loadouts, Places places) {
        this.folder = folder;
        this.root = root;
        this.faults = faults;
        this.loadouts = loadouts;
        this.positions =
                places.positions().stream().map(Places.PositionEntry::name).toList();
        this.stations = places.stations();
        this.everybody = Stream.of(
                        positions.stream(),
                        places.routes().stream().map(Places.RouteEntry::name),
                        places.sectors().stream().map(Places.SectorEntry::name))
                .flatMap(names -> names)
                .toList();
    }

    Questions questions() {
        Questions.ReachQuestion reach = reach();
        Questions.DecideQuestion decide = decide();
        Questions.RelayQuestion relay = relay();
        Questions.AssignQuestion assign = assign();
        List<Questions.WalkEntry> walks = walks();
        PlanSection calibration = root.table("calibration");
        Optional<Path> file = PlanReader.existing(calibration, "file", false, folder, faults);
        calibration.refuseUnknownKeys();
        PlanSection doubts = root.table("doubt");
        Questions.Doubts known = new Questions.Doubts(doubts.number(MODEL_COMMON), doubts.number(PLACE_SPREAD));
        doubts.refuseUnknownKeys();
        return new Questions(reach, decide, relay, assign, walks, new Questions.Site(file, known));
    }

    private Questions.DecideQuestion decide() {
        PlanSection section = root.table("decide");
        Questions.Measure usual = everybody.isEmpty() ? Questions.Measure.GROUND : Questions.Measure.PLACES;
        Questions.DecideQuestion question = new Questions.DecideQuestion(
                section.word("by", Questions.Measure.KEYWORD, usual),
                section.number(FELT_PLACES, 1),
                section.number(FELT_GROUND, 0.1),
                section.number(FELT_REACH, 100));
        if (question.by() == Questions.Measure.PLACES && everybody.isEmpty())
            section.fault(
                    "by",
                    "is \"places\", but the plan has no position, route or sector. Add one, or decide by ground.");
        section.refuseUnknownKeys();
        return question;
    }

    private Questions.AssignQuestion assign() {
        PlanSection section = root.table("assign");
        Questions.AssignQuestion question = new Questions.AssignQuestion(
                section.references(Reference.KEEP, everybody), section.references(Reference.LOADOUTS, loadouts));
        section.refuseUnknownKeys();
        return question;
    }

    private Questions.ReachQuestion reach() {
        PlanSection section = root.table("reach");
        Questions.ReachQuestion question = new Questions.ReachQuestion(
                section.reference(Reference.FROM, positions),
                section.reference(Reference.WITH, loadouts),
                section.flag("alike", false),
                bearingStep(section),
                section.number(AreaRequest.CELL, 30),
                section.word("model", ModelWish.KEYWORD, ModelWish.USUAL),
                section.word("woods_and_towns", Standing.KEYWORD, Standing.AT_ENDS),
                section.flag("one_way", false));
        if (question.alike() && section.has("with"))
            section.fault(
                    "alike", "says that both ends carry the same, and with says what stands there. Keep one of them.");
        section.refuseUnknownKeys();
        return question;
    }

    private static double bearingStep(PlanSection section) {
        double step = section.number(BearingRequest.STEP, BearingRequest.USUAL_STEP_DEG);
        if (BearingRequest.makesTurn(step)) return step;
        section.fault(
                "bearing_step_deg",
                "is " + NumberText.plain(step)
                        + ", which does not go into 360 degrees. Take 1, 5, 10 or another that does.");
        return BearingRequest.USUAL_STEP_DEG;
    }

    private Questions.RelayQuestion relay() {
        PlanSection section = root.table("relay");
        Questions.WhoTalks talk = section.word("talk", Questions.WhoTalks.KEYWORD, Questions.WhoTalks.ALL_TO_ALL);
        List<List<String>> pairs = section.pairs(section.keyOf(Reference.PAIRS));
        for (List<String> pair : pairs)
            for (String name : pair)
                if (!everybody.contains(name)) notAnEnd(name).ifPresent(fault -> section.fault("pairs", fault));
        if (talk == Questions.WhoTalks.LISTED && pairs.isEmpty() && root.has("relay"))
            section.fault("talk", "is \"listed\", but there are no pairs. Add pairs = [[\"a\", \"b\"]].");
        Questions.RelayRadio equipment = new Questions.RelayRadio(
                section.number(Radio.POWER, 5),
                section.number(Radio.SENSITIVITY, -118),
                section.number(RELAY_GAIN, -0.5),
                section.number(MAST, 3),
                section.number(FEED_LOSS, 1),
                section.flag("chained", false),
                stated(section, Radio.POWER, Radio.SENSITIVITY, RELAY_GAIN, MAST, FEED_LOSS));
        int count = section.whole(COUNT).orElse(1);
        RelayMode mode = section.word("mode", RelayMode.KEYWORD, RelayMode.TWO_FREQUENCY);
        Questions.SiteLimits constraints = constraints(section);
        section.refuseUnknownKeys();
        return new Questions.RelayQuestion(talk, pairs, equipment, constraints, count, mode);
    }

    private static Set<String> stated(PlanSection section, Range... ranges) {
        Set<String> stated = new HashSet<>();
        for (Range range : ranges) if (section.has(range.key())) stated.add(range.key());
        return stated;
    }

    /** What is wrong with a name in a pair; nothing for a station with which people can talk. */
    private Optional<String> notAnEnd(String name) {
        Optional<Places.StationEntry> station =
                stations.stream().filter(one -> one.name().equals(name)).findFirst();
        if (station.filter(Places.StationEntry::talks).isPresent()) return Optional.empty();
        if (station.filter(one -> one.relay().isPresent()).isPresent())
            return Optional.of("names \"" + name
                    + "\", a relay: it passes speech on and counts of itself. Name the two who must talk.");
        if (station.isPresent())
            return Optional.of(
                    "names \"" + name
                            + "\", which stands on frequencies of its own: reach tells who reaches it. For a straight talk leave them out.");
        List<String> known = Stream.concat(
                        everybody.stream(),
                        stations.stream().filter(Places.StationEntry::talks).map(Places.StationEntry::name))
                .toList();
        return Optional.of(
                "names \"" + name + "\", but the plan has no position, route, sector or station of that name."
                        + NearestWord.hint(name, known));
    }

    private Questions.SiteLimits constraints(PlanSection section) {
        Optional<Path> tracks = PlanReader.existing(section, "tracks", false, folder, faults);
        double trackM = section.number(MAX_TRACK_DISTANCE, 500);
        Optional<String> start = section.reference(Reference.WALK_FROM, positions);
        OptionalDouble minutes = section.number(MAX_WALK_MINUTES);
        Optional<Questions.WalkLimit> walk =
                start.map(name -> new Questions.WalkLimit(name, minutes.orElse(Double.POSITIVE_INFINITY)));
        if (minutes.isPresent() && start.isEmpty())
            section.fault("max_walk_minutes", "needs a place to walk from. Add walk_from = \"name of a position\".");
        return new Questions.SiteLimits(
                PlanReader.existing(section, "inside", false, folder, faults),
                PlanReader.existing(section, "outside", false, folder, faults),
                section.number(MAX_SLOPE),
                tracks.map(file -> new Questions.TrackLimit(file, trackM)),
                walk,
                section.number(MIN_SEPARATION));
    }

    private List<Questions.WalkEntry> walks() {
        List<Questions.WalkEntry> walks = new ArrayList<>();
        for (PlanSection section : root.tables("walk")) {
            String name = section.requiredName("name", "first walk");
            Optional<Path> track = PlanReader.existing(section, "track", false, folder, faults);
            Optional<Path> reports = PlanReader.existing(section, "reports", false, folder, faults);
            if (!section.has("reports")) section.fault("reports", "is missing. Name the CSV of the walk's reports.");
            Optional<String> base = section.reference(Reference.BASE, positions);
            Optional<String> loadout = section.reference(Reference.LOADOUT, loadouts);
            OptionalDouble offset = section.number(CLOCK_OFFSET);
            Optional<Boolean> silent =
                    section.has(SILENT_CALLS) ? Optional.of(section.flag(SILENT_CALLS, false)) : Optional.empty();
            section.refuseUnknownKeys();
            reports.ifPresent(
                    file -> walks.add(new Questions.WalkEntry(name, track, file, base, loadout, offset, silent)));
        }
        return walks;
    }
}
