package handreach.plan;

import handreach.input.Faults;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.loadout.Radio;
import handreach.propagation.LossModels;
import handreach.reach.AreaRequest;
import handreach.reach.BearingRequest;
import handreach.relay.RelayMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** Reads the questions out of a plan: reach, relay, walks, calibration, doubts. */
final class QuestionsReader {
    private final Path folder;
    private final PlanSection root;
    private final Faults faults;
    private final List<String> loadouts;
    private final List<String> positions;
    private final List<String> everybody;

    QuestionsReader(Path folder, PlanSection root, Faults faults, List<String> loadouts, Places places) {
        this.folder = folder;
        this.root = root;
        this.faults = faults;
        this.loadouts = loadouts;
        this.positions =
                places.positions().stream().map(Places.PositionEntry::name).toList();
        this.everybody = Stream.of(
                        positions.stream(),
                        places.routes().stream().map(Places.RouteEntry::name),
                        places.sectors().stream().map(Places.SectorEntry::name))
                .flatMap(names -> names)
                .toList();
    }

    Questions questions() {
        Questions.ReachQuestion reach = reach();
        Questions.RelayQuestion relay = relay();
        List<Questions.WalkEntry> walks = walks();
        PlanSection calibration = root.table("calibration");
        Optional<Path> file = PlanReader.existing(calibration, "file", false, folder, faults);
        calibration.refuseUnknownKeys();
        PlanSection doubts = root.table("doubt");
        Questions.Doubts known = new Questions.Doubts(
                doubts.number("model_common_db", 0, 20, "dB"), doubts.number("place_spread_db", 0.5, 20, "dB"));
        doubts.refuseUnknownKeys();
        return new Questions(reach, relay, walks, file, known);
    }

    private Questions.ReachQuestion reach() {
        PlanSection section = root.table("reach");
        Questions.ReachQuestion question = new Questions.ReachQuestion(
                section.reference(Reference.FROM, positions),
                section.reference(Reference.WITH, loadouts),
                bearingStep(section),
                section.number("cell_m", AreaRequest.LEAST_CELL_M, AreaRequest.LARGEST_CELL_M, "m", 30),
                section.word("model", LossModels.KEYWORD, LossModels.HANDHELD));
        section.refuseUnknownKeys();
        return question;
    }

    private static double bearingStep(PlanSection section) {
        double step = section.number("bearing_step_deg", 1, 90, "degrees", BearingRequest.USUAL_STEP_DEG);
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
                if (!everybody.contains(name))
                    section.fault(
                            "pairs",
                            "names \"" + name + "\", but the plan has no position, route or sector of that name."
                                    + NearestWord.hint(name, everybody));
        if (talk == Questions.WhoTalks.LISTED && pairs.isEmpty() && root.has("relay"))
            section.fault("talk", "is \"listed\", but there are no pairs. Add pairs = [[\"a\", \"b\"]].");
        Questions.RelayEquipment equipment = new Questions.RelayEquipment(
                section.number("power_w", 0.001, 1500, "W", 5),
                section.number("sensitivity_dbm", Radio.BEST_SENSITIVITY_DBM, Radio.WORST_SENSITIVITY_DBM, "dBm", -118),
                section.number("gain_dbd", -30, 20, "dBd", -0.5),
                section.number("mast_m", 0.5, 60, "m", 3),
                section.number("feed_loss_db", 0, 30, "dB", 1),
                section.flag("chained", false));
        int count = (int) section.number("count", 1, 4, "", 1);
        RelayMode mode = section.word("mode", RelayMode.KEYWORD, RelayMode.TWO_FREQUENCY);
        Questions.RelayConstraints constraints = constraints(section);
        section.refuseUnknownKeys();
        return new Questions.RelayQuestion(talk, pairs, equipment, constraints, count, mode);
    }

    private Questions.RelayConstraints constraints(PlanSection section) {
        Optional<Path> tracks = PlanReader.existing(section, "tracks", false, folder, faults);
        double trackM = section.number("max_track_distance_m", 0, 100_000, "m", 500);
        Optional<String> start = section.reference(Reference.WALK_FROM, positions);
        OptionalDouble minutes = section.number("max_walk_minutes", 1, 3000, "minutes");
        Optional<Questions.WalkLimit> walk =
                start.map(name -> new Questions.WalkLimit(name, minutes.orElse(Double.POSITIVE_INFINITY)));
        if (minutes.isPresent() && start.isEmpty())
            section.fault("max_walk_minutes", "needs a place to walk from. Add walk_from = \"name of a position\".");
        return new Questions.RelayConstraints(
                PlanReader.existing(section, "inside", false, folder, faults),
                PlanReader.existing(section, "outside", false, folder, faults),
                section.number("max_slope_deg", 0, 90, "degrees"),
                tracks.map(file -> new Questions.TrackLimit(file, trackM)),
                walk,
                section.number("min_separation_km", 0, 100, "km"));
    }

    private List<Questions.WalkEntry> walks() {
        List<Questions.WalkEntry> walks = new ArrayList<>();
        for (PlanSection section : root.tables("walk")) {
            String name = section.required("name", "first walk");
            Optional<Path> track = PlanReader.existing(section, "track", false, folder, faults);
            Optional<Path> reports = PlanReader.existing(section, "reports", false, folder, faults);
            if (!section.has("reports")) section.fault("reports", "is missing. Name the CSV of the walk's reports.");
            Optional<String> base = section.reference(Reference.BASE, positions);
            Optional<String> loadout = section.reference(Reference.LOADOUT, loadouts);
            OptionalDouble offset = section.number("clock_offset_s", -86_400, 86_400, "s");
            section.refuseUnknownKeys();
            reports.ifPresent(file -> walks.add(new Questions.WalkEntry(name, track, file, base, loadout, offset)));
        }
        return walks;
    }
}
