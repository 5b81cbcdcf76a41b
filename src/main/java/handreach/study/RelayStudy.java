package handreach.study;

import handreach.budget.LinkEnd;
import handreach.geodesy.Position;
import handreach.input.Memory;
import handreach.loadout.Radio;
import handreach.plan.Channel;
import handreach.plan.Questions;
import handreach.reach.AreaEngine;
import handreach.reach.CellGrid;
import handreach.reach.Progress;
import handreach.relay.AllowedGround;
import handreach.relay.Conversation;
import handreach.relay.DirectVerdict;
import handreach.relay.HopPath;
import handreach.relay.HopSurvey;
import handreach.relay.Party;
import handreach.relay.RelayChoice;
import handreach.relay.RelayConstraints;
import handreach.relay.RelayEquipment;
import handreach.relay.RelayMode;
import handreach.relay.RelayRequest;
import handreach.relay.RelaySearch;
import handreach.relay.ServiceLevel;
import handreach.relay.SiteCheck;
import handreach.relay.SiteScore;
import handreach.terrain.AreaPolygons;
import handreach.units.Dbd;
import handreach.units.Dbm;
import handreach.units.Frequency;
import handreach.walk.GpxTrack;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whether a relay is needed for the people of a plan, and where it should stand. */
public final class RelayStudy {
    /** Cells of one survey, all demands together; more are searched in larger cells. */
    private static final long MOST_HOPS = 60_000_000;

    private static final int MOST_CELLS = 2_000_000;
    /** Memory of a cell beside its hops, bytes: the sweep at work, heights, walking times, the map of sites. */
    private static final double BYTES_BESIDE = 80;

    private static final int CANDIDATES = 8;
    private static final int PRINTED = 5;
    /** Sites nearer to one another than this share of the radius, or 500 m, are hardly independent; our suggestion. */
    private static final double APART_SHARE = 0.1;

    private static final double APART_M = 500;

    private final Scene scene;
    private final Questions.RelayQuestion asked;
    private final Position middle;
    private final double radiusM;
    private final List<String> warnings;
    private final Progress progress;

    private RelayStudy(Scene scene, Progress progress) {
        this.scene = scene;
        this.asked = scene.plan().questions().relay();
        this.middle = scene.plan().places().area().centre();
        this.radiusM = 1000 * scene.plan().places().area().radiusKm();
        this.warnings = new ArrayList<>();
        this.progress = progress;
    }

    /** Runs the study: straight talks first, then, where they do not all work, the search for sites. */
    public static RelayAnswer run(Scene scene, Progress progress) {
        return new RelayStudy(scene.unmarched(ModelChoice.Reason.RELAY), progress).answer();
    }

    private RelayAnswer answer() {
        List<Party> demands = RelayDemands.of(scene, warnings);
        List<Conversation> talks = RelayDemands.talks(scene, demands);
        RelayRequest question = new RelayRequest(demands, talks, setting(scene));
        RelayEquipment relay = equipment(demands);
        DirectVerdict direct = DirectVerdict.of(question, byBurden(), progress);
        RelayAnswer.Already already = already(question, direct);
        Optional<RelayAnswer.Found> found = already.verdict().isEnough()
                ? Optional.empty()
                : Optional.of(search(question, relay, already.verdict()));
        warnings.addAll(0, scene.warnings());
        warnings.addAll(already.stations().warnings());
        List<String> verdict = new RelaySentences(scene, question, direct).verdict(already, found);
        return new RelayAnswer(
                scene,
                question,
                relay,
                direct,
                already,
                found,
                new RelayAnswer.Summary(verdict, List.copyOf(new LinkedHashSet<>(warnings))));
    }

    /** What stands already comes first: a new relay is looked for only for what it leaves. */
    private RelayAnswer.Already already(RelayRequest question, DirectVerdict direct) {
        StationsAnswer stations = StationStudy.run(scene, progress);
        if (stations.relays().isEmpty())
            return new RelayAnswer.Already(
                    stations,
                    direct,
                    question.talks().stream()
                            .map(talk -> Optional.<String>empty())
                            .toList());
        List<Optional<StationStudy.Served>> over =
                new StationStudy(scene, progress).talks(question.demands(), question.talks());
        List<Optional<String>> via = new ArrayList<>();
        for (int t = 0; t < over.size(); t++) {
            double straight = direct.links().get(t).standing();
            via.add(over.get(t)
                    .filter(served -> served.odds().standing() > straight)
                    .map(StationStudy.Served::relay));
        }
        DirectVerdict helped = direct.helped(
                question,
                over.stream().map(one -> one.map(StationStudy.Served::odds)).toList());
        return new RelayAnswer.Already(stations, helped, via);
    }

    /** What is asked of every path between two people of a plan. */
    static RelayRequest.Setting setting(Scene scene) {
        return new RelayRequest.Setting(
                scene.terms(),
                scene.conditions(),
                scene.model(),
                scene.ground(),
                scene.learned(),
                scene.plan().channel().wish().ways());
    }

    /** What can be carried on the body, from the least burdensome up. */
    private List<LinkEnd> byBurden() {
        return scene.loadouts().stream()
                .filter(loadout -> loadout.carry().carry().isAtBody())
                .sorted(scene.leastFirst())
                .map(scene::end)
                .toList();
    }

    /** On the two frequencies of the channel, where it has such and the relay uses them. */
    private RelayEquipment equipment(List<Party> demands) {
        RelayEquipment alone = equipment(scene);
        Optional<Channel.Split> split = scene.plan().channel().split();
        if (split.isEmpty()) return alone;
        if (alone.chained() && asked.mode() == RelayMode.TWO_FREQUENCY)
            throw scene.file()
                    .fault(
                            "relay",
                            "chained",
                            "chained relays must hear one another, but on a channel with receive_mhz and transmit_mhz none hears what"
                                    + " another sends. Take mode = \"store-and-forward\", or leave chained out.");
        return new RelayEquipment(
                alone.end(),
                alone.mode(),
                alone.chained(),
                Optional.of(new RelayEquipment.Split(
                        side(split.get().receive(), demands), side(split.get().transmit(), demands))));
    }

    private RelayEquipment.Side side(Frequency frequency, List<Party> demands) {
        StationStudy tuner = new StationStudy(scene, progress);
        Scene on = tuner.scene(OptionalDouble.of(frequency.mhz()));
        List<Party> people =
                demands.stream().map(demand -> tuner.tuned(demand, on)).toList();
        warnings.addAll(tuner.warnings());
        return new RelayEquipment.Side(setting(on), equipment(on).end(), people);
    }

    private RelayEquipment equipment(Scene on) {
        Questions.RelayRadio said = asked.equipment();
        Radio radio = new Radio(
                "relay",
                Dbm.ofWatts(said.powerW()),
                new Dbm(said.sensitivityDbm()),
                scene.plan().channel().modulation());
        return RelayEquipment.onMast(
                radio,
                new Dbd(said.gainDbd()),
                source(said.stated().contains("gain_dbd")),
                new RelayEquipment.Mast(
                        said.mastM(), said.feedLossDb(), source(said.stated().contains("feed_loss_db"))),
                on.noise(),
                on.plan().channel().frequency(),
                asked.mode(),
                said.chained());
    }

    /** Where a figure of a relay or station is from. */
    static String source(boolean isStated) {
        return isStated ? RelayEquipment.STATED : "our suggestion, not in the plan";
    }

    private RelayConstraints constraints() {
        Questions.SiteLimits said = asked.constraints();
        return new RelayConstraints(
                said.inside().or(() -> scene.plan().places().area().polygon()).map(AreaPolygons::read),
                said.outside().map(AreaPolygons::read),
                said.maxSlopeDeg(),
                said.nearTrack()
                        .map(near ->
                                new RelayConstraints.NearTrack(GpxTrack.lines(near.tracks()), near.maxDistanceM())),
                said.walk()
                        .map(walk -> new RelayConstraints.Walk(
                                scene.position(walk.start()).at(), walk.maxMinutes())),
                1000 * said.minSeparationKm().orElse(0));
    }

    private CellGrid grid(int demands) {
        double cellM = scene.plan().questions().reach().cellM();
        long room = Memory.most(MOST_CELLS, HopSurvey.bytesFor(demands, 1) + BYTES_BESIDE);
        double most = Math.min(room, MOST_HOPS / (double) Math.max(1, demands));
        double fits = Math.max(cellM, 2.05 * radiusM / Math.sqrt(most));
        double used = Math.min(Math.ceil(fits), radiusM / 2);
        if (used > cellM + 1e-9 && used != Math.ceil(cellM))
            warnings.add(
                    "Searched in cells of " + scene.plan().header().lengths().heightText(used) + " instead of "
                            + scene.plan().header().lengths().heightText(cellM) + ", to stay within memory.");
        double taken = fits > cellM ? used : Math.min(cellM, radiusM / 2);
        CellGrid.refusal(middle, radiusM, taken).ifPresent(sentence -> {
            throw scene.file().fault("area", "centre", sentence + ".");
        });
        return CellGrid.around(middle, radiusM, taken);
    }

    private AllowedGround allowed(CellGrid grid) {
        RelayConstraints limits = constraints();
        if (limits.walk().isPresent() && grid.indexOf(limits.walk().get().start()) < 0)
            throw scene.file()
                    .fault(
                            "relay",
                            "walk_from",
                            "walk_from lies outside the area. Choose a place within radius_km, or enlarge it.");
        AllowedGround ground = AllowedGround.of(grid, middle, radiusM, scene.tiles(), limits);
        if (ground.allowedCount() == 0)
            warnings.add(
                    "No ground is left on which a relay may stand: loosen the limits of [relay], or check its polygons.");
        return ground;
    }

    private AreaEngine engine(CellGrid grid) {
        return AreaEngine.forMap(scene.model(), radiusM, grid.cellM(), Scene.threads())
                .withoutMeasuring();
    }

    private RelayAnswer.Found search(RelayRequest question, RelayEquipment relay, DirectVerdict direct) {
        CellGrid grid = grid(question.demands().size());
        AllowedGround ground = allowed(grid);
        int within = ground.knownWithin(middle, radiusM);
        if (ground.allowedCount() == 0) {
            RelayAnswer.Search nowhere = new RelayAnswer.Search(grid.cellM(), 0, within, Optional.empty());
            return new RelayAnswer.Found(List.of(), Optional.empty(), List.of(), List.of(), nowhere);
        }
        HopSurvey survey = HopSurvey.of(question, relay, grid, engine(grid), progress);
        RelaySearch search = RelaySearch.of(survey, ground, direct, progress);
        RelayAnswer.Search extent =
                new RelayAnswer.Search(grid.cellM(), ground.allowedCount(), within, Optional.of(search.map()));
        double apart = Math.max(
                1000 * asked.constraints().minSeparationKm().orElse(0), Math.max(APART_M, APART_SHARE * radiusM));
        List<RelayAnswer.Site> sites = search.ranked(ServiceLevel.BY_SERVED, apart, CANDIDATES).stream()
                .map(score -> site(question, relay, direct, ground, score))
                .sorted(Comparator.comparing((RelayAnswer.Site s) -> s.check().service(), ServiceLevel.BY_SERVED)
                        .reversed())
                .limit(PRINTED)
                .toList();
        Optional<RelayAnswer.Together> together = Optional.empty();
        if (asked.count() > 1 && !sites.get(0).check().service().servesAll())
            together = together(question, relay, direct, ground, search);
        List<RelayAnswer.Trade> front = search.front().stream()
                .map(score -> new RelayAnswer.Trade(grid.positionOf(score.cell()), score.service()))
                .toList();
        SiteCheck best =
                together.map(RelayAnswer.Together::check).orElse(sites.get(0).check());
        return new RelayAnswer.Found(sites, together, front, unserved(question, relay, search, grid, best), extent);
    }

    private static RelayAnswer.Site site(
            RelayRequest question, RelayEquipment relay, DirectVerdict direct, AllowedGround ground, SiteScore score) {
        Position at = ground.grid().positionOf(score.cell());
        SiteCheck check = SiteCheck.of(question, relay, List.of(at), direct);
        RelayMode other =
                relay.mode() == RelayMode.TWO_FREQUENCY ? RelayMode.STORE_AND_FORWARD : RelayMode.TWO_FREQUENCY;
        SiteCheck otherwise = SiteCheck.of(question, relay.inMode(other), List.of(at), direct);
        return new RelayAnswer.Site(at, access(ground, score.cell()), check, otherwise.service());
    }

    private static RelayAnswer.Access access(AllowedGround ground, int cell) {
        OptionalDouble height = ground.heightM(cell);
        return new RelayAnswer.Access(height, ground.slopeDeg(cell), ground.minutes(cell));
    }

    /** Two relays, then more, until all are served or the plan's count is reached. */
    private Optional<RelayAnswer.Together> together(
            RelayRequest question,
            RelayEquipment relay,
            DirectVerdict direct,
            AllowedGround ground,
            RelaySearch search) {
        RelayAnswer.Together last = null;
        for (int count = 2; count <= asked.count(); count++) {
            RelayChoice choice = search.choose(count);
            if (choice.cells().size() < 2) break;
            List<Position> at =
                    choice.cells().stream().map(ground.grid()::positionOf).toList();
            List<RelayAnswer.Access> access =
                    choice.cells().stream().map(cell -> access(ground, cell)).toList();
            last = new RelayAnswer.Together(choice, access, SiteCheck.of(question, relay, at, direct));
            if (last.check().service().servesAll()) break;
        }
        return Optional.ofNullable(last);
    }

    private List<RelayAnswer.Unserved> unserved(
            RelayRequest question, RelayEquipment relay, RelaySearch search, CellGrid grid, SiteCheck best) {
        double wanted = question.setting().terms().odds();
        RelaySentences words = new RelaySentences(scene, question, null);
        return best.unserved(question).stream()
                .map(d -> {
                    Party demand = question.demands().get(d);
                    SiteScore anywhere = search.bestFor(d).orElseThrow();
                    boolean isHopeless = anywhere.service().worstOdds() < wanted;
                    Optional<HopPath> path = isHopeless
                            ? HopPath.toRelay(question, d, grid.positionOf(anywhere.cell()), relay)
                            : best.hops().get(d).map(SiteCheck.Hop::path);
                    return new RelayAnswer.Unserved(
                            d, anywhere.service().worstOdds(), words.reason(demand, isHopeless, path));
                })
                .toList();
    }
}
