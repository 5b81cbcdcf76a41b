package handreach.study;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.plan.Questions;
import handreach.propagation.Terminals;
import handreach.reach.Progress;
import handreach.reach.ReachLink;
import handreach.reach.SubProgress;
import handreach.reach.Workers;
import handreach.relay.Conversation;
import handreach.relay.Party;
import handreach.study.WalkNextAnswer.Decision;
import handreach.terrain.Cover;
import handreach.walk.NextWalk;
import handreach.walk.ReportValue;
import handreach.walk.Thinning;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Where reports of the next walk would teach most about a decision of the plan. */
public final class WalkNextStudy {
    /** What a local mean over 40 wavelengths and the reading of a meter leave of doubt, dB; our suggestion. */
    private static final double FADING_DB = 2;
    /** Spread below which shadowing is a step, dB. */
    private static final double LEAST_SPREAD_DB = 0.1;

    /** Shares of the whole after the places are predicted, and after the questions are. */
    private static final double PREDICTED = 0.5;

    private static final double ASKED = 0.6;
    private static final int RINGS = 4;
    private static final int RING_BEARINGS = 12;

    private final Scene scene;
    private final WalkBase base;
    private final Decision decision;
    private final Progress progress;
    private final Set<String> warnings = new LinkedHashSet<>();
    private final WalkKinds kinds;
    private final double decorrelationM;
    private final List<WalkNextAnswer.Stake> stakes = new ArrayList<>();
    private final List<NextWalk.Question> questions = new ArrayList<>();
    private boolean isForGroundAround;

    private WalkNextStudy(Scene scene, Decision decision, Progress progress) {
        this.scene = scene;
        this.decision = decision;
        this.progress = progress;
        List<Questions.WalkEntry> walks = scene.plan().questions().walks();
        this.base = WalkBase.of(
                scene, walks.isEmpty() ? Optional.empty() : walks.get(0).base());
        this.kinds = new WalkKinds(scene);
        this.decorrelationM = Thinning.usualDecorrelationM(scene.isOpen());
        this.warnings.addAll(scene.warnings());
    }

    /**
     * Runs the study.
     *
     * @param tracks GPX files of what could be walked; empty takes straight lines
     * @param reports how many reports at most
     */
    public static WalkNextAnswer run(
            Scene scene,
            Decision decision,
            NextWalk.Instrument instrument,
            List<Path> tracks,
            int reports,
            Progress progress) {
        if (scene.tiles().at(WalkBase.of(scene, Optional.empty()).at()).isVoid())
            throw scene.file()
                    .fault(
                            "area",
                            "centre",
                            "the base lies where no elevation is known. Add the tile, or move the position with base = true.");
        return new WalkNextStudy(scene, decision, progress).answer(instrument, tracks, reports);
    }

    private WalkNextAnswer answer(NextWalk.Instrument instrument, List<Path> tracks, int reports) {
        progress.done("reading tracks", 0);
        Position area = scene.plan().places().area().centre();
        List<WalkTracks.Line> lines =
                tracks.isEmpty() ? WalkTracks.straight(scene, base) : WalkTracks.given(tracks, area, progress);
        if (tracks.isEmpty())
            warnings.add("No track was given: the places lie on straight lines, which nobody may be able to walk.");
        List<WalkTracks.Place> places = WalkTracks.places(lines, decorrelationM);
        List<Party> demands = decision == Decision.RELAY ? RelayDemands.of(scene, new ArrayList<>()) : List.of();
        WalkNextAnswer.Route route = route(places, walkers(demands), !tracks.isEmpty());
        progress.done("what is at stake", PREDICTED);
        if (decision == Decision.RELAY) askOfRelay(demands);
        else askOfLoadouts();
        if (!questions.isEmpty() && isSettled()) settled();
        if (questions.isEmpty())
            throw new InputFault("walk", 0, "nothing is at stake: no place of the plan lies on known ground.");
        WalkNextAnswer.Asked asked = new WalkNextAnswer.Asked(decision, instrument, reports, decorrelationM);
        NextWalk next = NextWalk.of(
                questions,
                candidates(route),
                belief(instrument),
                reports,
                new SubProgress(progress, "choosing stops", ASKED, 1));
        List<Integer> stops = next.picks().stream()
                .map(NextWalk.Pick::candidate)
                .sorted(Comparator.comparingInt(
                        (Integer i) -> route.reports().get(i).spot()))
                .toList();
        return new WalkNextAnswer(
                scene,
                base,
                asked,
                route,
                new WalkNextAnswer.Proposal(next, stops, stakes, isForGroundAround),
                List.copyOf(warnings));
    }

    /** What the walker could carry: what is decided among, or what the people carry. */
    private List<Loadout> walkers(List<Party> demands) {
        List<Loadout> all = decision == Decision.RELAY
                ? demands.stream()
                        .map(demand -> demand.end().loadout())
                        .distinct()
                        .toList()
                : scene.loadouts();
        List<Loadout> carried =
                all.stream().filter(one -> one.carry().carry().isOnFoot()).toList();
        return carried.isEmpty() ? all : carried;
    }

    /** Loss of one place by the heights of the loadouts; the first path tells the geometry. */
    private record Reception(WalkNextAnswer.Spot spot, Map<Terminals, PathAnswer> paths) {}

    private WalkNextAnswer.Route route(List<WalkTracks.Place> places, List<Loadout> walkers, boolean given) {
        Set<Terminals> heights = new LinkedHashSet<>();
        for (Loadout walker : walkers) heights.add(Scene.terminals(base.loadout(), walker));
        List<Optional<Reception>> heard = heard(places, heights);
        List<WalkNextAnswer.Spot> spots = new ArrayList<>();
        List<WalkNextAnswer.Report> reports = new ArrayList<>();
        for (Optional<Reception> one : heard) {
            if (one.isEmpty()) continue;
            spots.add(one.get().spot());
            for (Loadout walker : walkers) {
                PathAnswer path = one.get().paths().get(Scene.terminals(base.loadout(), walker));
                ReachLink link = kinds.link(base.loadout(), walker);
                double margin = margin(link, path, base.at(), one.get().spot().at());
                reports.add(new WalkNextAnswer.Report(spots.size() - 1, walker.name(), margin, link.odds(margin)));
            }
        }
        if (spots.isEmpty())
            throw new InputFault(
                    "walk",
                    0,
                    "no place along the tracks could be predicted: they lie off the tiles, or within 50 m of the base."
                            + " Give a track on known ground.");
        int left = places.size() - spots.size();
        if (left > 0)
            warnings.add(left + " of " + places.size()
                    + " places along the tracks are left out: within 50 m of the base, or on unknown ground.");
        return new WalkNextAnswer.Route(spots, reports, given);
    }

    private List<Optional<Reception>> heard(List<WalkTracks.Place> places, Set<Terminals> heights) {
        List<Optional<Reception>> heard = new ArrayList<>(Collections.nCopies(places.size(), Optional.empty()));
        new Workers(Scene.threads())
                .run(
                        places.size(),
                        number -> heard.set(number, heard(places.get(number), heights)),
                        new SubProgress(progress, "predicting along the tracks", 0, PREDICTED));
        return heard;
    }

    private Optional<Reception> heard(WalkTracks.Place place, Set<Terminals> heights) {
        try {
            Map<Terminals, PathAnswer> paths = new LinkedHashMap<>();
            for (Terminals pair : heights) paths.put(pair, path(base.at(), place.at(), pair));
            PathAnswer any = paths.values().iterator().next();
            GeodesicLine line = any.link().line().orElseThrow();
            WalkNextAnswer.Spot spot = new WalkNextAnswer.Spot(
                    place.track(), place.alongM(), place.at(), line.azimuthDeg(), line.lengthM(), cover(any));
            return Optional.of(new Reception(spot, paths));
        } catch (InputFault noPath) {
            return Optional.empty();
        }
    }

    private PathAnswer path(Position from, Position to, Terminals heights) {
        return PathStudy.between(
                new PathStudy.CutGround(scene.tiles(), scene.cover(), scene.cut()),
                from,
                to,
                heights,
                scene.conditions(from),
                List.of(scene.model()));
    }

    private static Cover cover(PathAnswer path) {
        return path.profile().cover(path.profile().count() - 1);
    }

    private double margin(ReachLink link, PathAnswer path, Position from, Position to) {
        return link.marginDb(
                path.loss().lossDb(),
                path.geometry().departureDeg(),
                path.geometry().arrivalDeg(),
                scene.learnedCovers(from, to));
    }

    /** Does each loadout suffice at each of the plan's positions, or, where it has none but the base, around it? */
    private void askOfLoadouts() {
        Map<String, Position> places = new LinkedHashMap<>();
        Map<String, Double> weights = new LinkedHashMap<>();
        for (Places.PositionEntry entry : scene.plan().places().positions())
            if (!base.name().equals(Optional.of(entry.name()))) {
                places.put(entry.name(), entry.at());
                weights.put(entry.name(), entry.weight());
            }
        if (places.isEmpty()) askAround();
        places.forEach((name, at) -> askOfLoadouts(name, at, weights.get(name)));
    }

    private void askOfLoadouts(String name, Position at, double weight) {
        for (Loadout walker : walkers(List.of())) ask(name, new Ends(base.at(), base.loadout(), at, walker), weight);
    }

    /** Whether no question can be turned round by any report. */
    private boolean isSettled() {
        List<List<Double>> covariance = kinds.covarianceDb2();
        for (NextWalk.Question question : questions) {
            double doubtDb = Math.sqrt(covariance.get(question.kind()).get(question.kind()));
            if (ReportValue.chanceOfChange(question.marginDb(), doubtDb) >= WalkNextAnswer.SETTLED_CHANCE) return false;
        }
        return true;
    }

    /** Where the plan's own places are settled, loadouts are asked about the ground around the base; a relay is not asked about. */
    private void settled() {
        if (decision == Decision.RELAY) {
            warnings.add("Whether a relay is needed is as good as settled: no report is likely to change the answer.");
            return;
        }
        warnings.add(
                "At the places of the plan every answer is as good as settled; the proposal is for the ground around the base.");
        stakes.clear();
        questions.clear();
        isForGroundAround = true;
        askAround();
    }

    private void askAround() {
        double radiusM = 1000 * scene.plan().places().area().radiusKm();
        for (int ring = 1; ring <= RINGS; ring++)
            for (int b = 0; b < RING_BEARINGS; b++) {
                double azimuth = 360.0 * b / RING_BEARINGS;
                double metres = radiusM * ring / RINGS;
                String name = scene.plan().header().lengths().text(metres) + " at "
                        + scene.plan().header().bearings().text(azimuth);
                askOfLoadouts(name, GeodesicLine.destination(base.at(), azimuth, metres), 1);
            }
    }

    /** Does each talk work without a relay? */
    private void askOfRelay(List<Party> demands) {
        for (Conversation talk : RelayDemands.talks(scene, demands)) {
            Party a = demands.get(talk.a());
            Party b = demands.get(talk.b());
            ask(
                    a.name() + " with " + b.name(),
                    new Ends(a.at(), a.end().loadout(), b.at(), b.end().loadout()),
                    talk.weight(demands));
        }
    }

    /** Two people. */
    private record Ends(Position from, Loadout near, Position to, Loadout far) {}

    private void ask(String where, Ends ends, double weight) {
        progress.goOn();
        PathAnswer path;
        try {
            path = path(ends.from(), ends.to(), Scene.terminals(ends.near(), ends.far()));
        } catch (InputFault noPath) {
            warnings.add(where + " is left out: " + noPath.faults().get(0).text());
            return;
        }
        ReachLink link = kinds.link(ends.near(), ends.far());
        double beyond = margin(link, path, ends.from(), ends.to())
                - link.thresholdDb(scene.plan().channel().wish().odds());
        stakes.add(new WalkNextAnswer.Stake(where, ends.far().name(), beyond));
        questions.add(new NextWalk.Question(kinds.kind(ends.near(), ends.far(), cover(path)), beyond, weight));
    }

    private List<NextWalk.Candidate> candidates(WalkNextAnswer.Route route) {
        List<NextWalk.Candidate> candidates = new ArrayList<>();
        for (WalkNextAnswer.Report report : route.reports()) {
            WalkNextAnswer.Spot spot = route.spots().get(report.spot());
            Loadout walker = scene.loadout(report.loadout());
            double spread =
                    Math.max(LEAST_SPREAD_DB, kinds.link(base.loadout(), walker).spreadDb());
            candidates.add(new NextWalk.Candidate(
                    spot.at(), kinds.kind(base.loadout(), walker, spot.cover()), report.marginDb(), spread));
        }
        return candidates;
    }

    private NextWalk.Belief belief(NextWalk.Instrument instrument) {
        return new NextWalk.Belief(kinds.covarianceDb2(), decorrelationM, instrument, FADING_DB);
    }
}
