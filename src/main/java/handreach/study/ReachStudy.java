package handreach.study;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.plan.Channel;
import handreach.plan.Places;
import handreach.propagation.Foliage;
import handreach.propagation.LossModels;
import handreach.propagation.Standing;
import handreach.propagation.Terminals;
import handreach.reach.AreaGround;
import handreach.reach.AreaRequest;
import handreach.reach.BearingLosses;
import handreach.reach.BearingRequest;
import handreach.reach.CellGrid;
import handreach.reach.DrawnArea;
import handreach.reach.GroundGain;
import handreach.reach.LoadoutReach;
import handreach.reach.LossGrid;
import handreach.reach.MapEngine;
import handreach.reach.MarchCost;
import handreach.reach.MarchTrial;
import handreach.reach.ModelDifference;
import handreach.reach.ModelNote;
import handreach.reach.OddsGrid;
import handreach.reach.OneWayGround;
import handreach.reach.Progress;
import handreach.reach.RadialLosses;
import handreach.reach.ReachLink;
import handreach.reach.RoseAndMap;
import handreach.relay.TalkBook;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;

/** The main job: how far each loadout of a plan reaches, by bearing and over the area. */
public final class ReachStudy {
    private final Scene scene;
    private final ReachOptions options;
    private final Position middle;
    private final double radiusM;
    private final List<Loadout> loadouts;
    private final List<ReachLink> links;
    private final List<Terminals> heights;
    /** With the posts of the area at hand: read once for rose and maps. */
    private final AreaGround ground;

    private final Set<String> warnings = new LinkedHashSet<>();

    private ReachStudy(Scene planned, ReachOptions options) {
        this.scene = planned.withOptions(options);
        this.options = options;
        this.middle = scene.middle();
        this.radiusM = 1000 * scene.plan().places().area().radiusKm();
        this.loadouts = scene.loadouts().stream()
                .filter(one -> options.loadouts().isEmpty()
                        || options.loadouts().contains(one.name())
                        || one.name().equals(scene.controlLoadout().name()))
                .toList();
        this.ground = scene.ground().near(middle, radiusM);
        List<ReachLink> each = new ArrayList<>();
        Set<Terminals> pairs = new LinkedHashSet<>();
        for (Loadout loadout : loadouts) {
            ReachLink link = scene.link(loadout);
            each.add(link);
            pairs.add(link.terminals());
        }
        this.links = List.copyOf(each);
        this.heights = List.copyOf(pairs);
    }

    /** Runs the study as the plan says; {@code withArea} also computes the loss to every cell, for maps. */
    public static ReachAnswer run(Scene scene, boolean withArea, Progress progress) {
        return run(scene, ReachOptions.ofPlan(withArea), progress);
    }

    /** Runs the study as the options say, and where they say nothing as the plan says. */
    public static ReachAnswer run(Scene scene, ReachOptions options, Progress progress) {
        ReachAnswer answer = single(scene, options, progress);
        return answer.beside(ChannelStudy.run(answer, options, progress));
    }

    /** On the channel of the scene alone. */
    static ReachAnswer single(Scene scene, ReachOptions options, Progress progress) {
        return new ReachStudy(scene, options).answer(progress);
    }

    /**
     * What the study will cost where that should be said before it starts: only marches are that dear.
     *
     * @param threadNanos processor time of the thread that asks, ns, by which the march is tried for some seconds; without it is counted
     */
    public static Optional<MarchCost> cost(Scene scene, ReachOptions options, Optional<LongSupplier> threadNanos) {
        if (!MapEngine.MARCH.goesBy(scene.withOptions(options).model())) return Optional.empty();
        ReachStudy study = new ReachStudy(scene, options);
        study.check();
        MarchTrial trial = new MarchTrial(Scene.threads(), threadNanos);
        return Optional.of(
                options.withArea()
                        ? RoseAndMap.cost(
                                study.bearingRequest(), study.areaRequest(), study.heights, study.ground, trial)
                        : MarchCost.ofBearings(study.bearingRequest(), study.heights, study.ground, trial));
    }

    /** What this study needs beyond what the reader of the plan has checked key by key. */
    private void check() {
        if (!CellGrid.LATITUDE.accepts(middle.latitudeDeg()))
            throw middleFault(CellGrid.refusal(middle, radiusM, 1).orElseThrow() + ".");
        requireKnownMiddle();
        if (!options.withArea()) return;
        // beside a march stands the map of the closed form
        int pairs = heights.size() + (MapEngine.MARCH.goesBy(scene.model()) ? 1 : 0);
        CellGrid.refusal(middle, radiusM, scene.plan().questions().reach().cellM(), pairs)
                .ifPresent(sentences -> {
                    throw areaFault(sentences);
                });
    }

    /** A fault of the radius with the cell, by whichever of the two was said last. */
    private InputFault areaFault(String text) {
        if (options.cellM().isPresent()) return new InputFault("--cell-m", 0, text);
        if (options.radiusKm().isPresent()) return new InputFault("--radius-km", 0, text);
        return scene.file().fault("area", AreaRequest.RADIUS.key(), text);
    }

    private InputFault middleFault(String text) {
        boolean isNamed = scene.plan().questions().reach().from().isPresent();
        return isNamed
                ? scene.file().fault("reach", "from", text)
                : scene.file().fault("area", "centre", text);
    }

    private void requireKnownMiddle() {
        if (scene.tiles().at(middle).isVoid())
            throw middleFault(
                    "the middle of the rose lies where no elevation is known. Add the tile, or move the position that [reach] from names.");
    }

    private ReachAnswer answer(Progress progress) {
        check();
        Optional<RoseAndMap> march = march(progress);
        List<BearingLosses> losses =
                march.map(both -> drawn(both.roses().get(0))).orElseGet(() -> losses(bearingRequest(), progress));
        double odds = scene.plan().channel().wish().odds();
        String held = scene.controlLoadout().name();
        int control = 0;
        while (!loadouts.get(control).name().equals(held)) control++;
        LoadoutReach controlReach = LoadoutReach.of(losses(losses, control), links.get(control), odds);
        List<LoadoutReach> reaches = new ArrayList<>();
        List<LoadoutReach> someCopy = new ArrayList<>();
        for (int i = 0; i < loadouts.size(); i++) {
            LoadoutReach reach = i == control
                    ? controlReach
                    : LoadoutReach.against(controlReach, losses(losses, i), links.get(i), odds);
            reaches.add(reach);
            someCopy.add(LoadoutReach.of(
                    losses(losses, i), scene.someCopyLink(loadouts.get(i)), Channel.CopyWish.SOME_COPY.odds()));
        }
        List<PowerStep> powerSteps =
                PowerStep.of(scene, loadouts, (i, link) -> LoadoutReach.of(losses(losses, i), link, odds), warnings);
        List<LoadoutReach> inLeaf = inLeaf(march, progress, odds);
        int steep = 0;
        for (RadialLosses radial : losses(losses, control).radials()) if (radial.endsAtSteepGround()) steep++;
        if (steep > 0) warnings.add(noAnswer("On " + steep + " of " + controlReach.bearings() + " bearings"));
        int unknown = controlReach.partlyUnknown() - steep;
        if (unknown > 0)
            warnings.add("On " + unknown + " of " + controlReach.bearings()
                    + " bearings the ground is unknown somewhere within the radius; beyond that nothing is claimed.");
        if (scene.drawn().isPresent() && !losses.get(0).countsAny())
            warnings.add(
                    "The polygon of [area] leaves out all known ground within the radius, so no share is counted and no map drawn."
                            + " Check the polygon, or the middle of the rose.");
        for (ModelNote note : ModelNote.of(losses)) warnings.add(words(note));
        Optional<ReachAnswer.AreaAnswer> area =
                options.withArea() ? Optional.of(area(march, odds, progress)) : Optional.empty();
        area.ifPresent(this::warnOfSteepCells);
        List<OneWayGround> oneWay = oneWay(losses, area, odds);
        TalkBook book = TalkBook.of(RelayStudy.setting(scene));
        PlacesAnswer places = PlacesStudy.run(scene, book, progress);
        StationsAnswer stations = StationStudy.run(scene, progress);
        warnings.addAll(stations.warnings());
        RoutesAnswer routes = RouteStudy.run(scene, book, progress);
        warnings.addAll(routes.warnings());
        PlacesCount count = new PlacesCount(scene, book, places.places());
        List<GroundGain> grounds = grounds(losses, area, control);
        List<Optional<ReachVerdict>> verdicts = new ArrayList<>();
        for (int i = 0; i < loadouts.size(); i++)
            verdicts.add(
                    i == control
                            ? Optional.empty()
                            : Optional.of(new ReachVerdict(
                                    scene.plan().questions().decide(),
                                    count.gain(loadouts.get(control), loadouts.get(i)),
                                    grounds.get(i),
                                    sides(),
                                    reaches.get(i).overControl().orElseThrow(),
                                    best(controlReach, reaches.get(i)))));
        Set<String> told = new LinkedHashSet<>(scene.warnings());
        told.addAll(warnings);
        return new ReachAnswer(
                scene,
                middle,
                reaches,
                someCopy,
                powerSteps,
                inLeaf,
                oneWay,
                area,
                places,
                stations,
                ChannelsAnswer.none(),
                routes,
                verdicts,
                List.copyOf(told));
    }

    /** Where the plan asks for it: over the cells where there are some, else along the bearings. */
    private List<OneWayGround> oneWay(List<BearingLosses> losses, Optional<ReachAnswer.AreaAnswer> area, double odds) {
        List<OneWayGround> all = new ArrayList<>();
        for (int i = 0; scene.plan().questions().reach().oneWay() && i < loadouts.size(); i++)
            all.add(
                    area.isPresent()
                            ? OneWayGround.of(area.get().odds().get(i), odds)
                            : OneWayGround.of(losses(losses, i), links.get(i), odds));
        return all;
    }

    /** What each loadout reaches beside the control: over the cells where there are some, else along the bearings. */
    private List<GroundGain> grounds(List<BearingLosses> losses, Optional<ReachAnswer.AreaAnswer> area, int control) {
        double odds = scene.plan().channel().wish().odds();
        List<Position> places = new ArrayList<>();
        for (Side side : sidesOf()) places.add(side.at());
        if (area.isPresent()) {
            List<OddsGrid> all = area.get().odds();
            return GroundGain.of(all.get(control), all, odds, places);
        }
        List<GroundGain> gains = new ArrayList<>();
        for (int i = 0; i < loadouts.size(); i++)
            gains.add(GroundGain.of(
                    losses(losses, control), links.get(control), losses(losses, i), links.get(i), odds, places));
        return gains;
    }

    /** A place by which sides of the ground are told. */
    private record Side(String name, Position at) {}

    /** Positions of the plan; the middle where it has none. */
    private List<Side> sidesOf() {
        List<Side> sides = new ArrayList<>();
        for (Places.PositionEntry entry : scene.plan().places().positions())
            sides.add(new Side(entry.name(), entry.at()));
        return sides.isEmpty() ? List.of(new Side("the middle", middle)) : sides;
    }

    private List<String> sides() {
        List<String> names = new ArrayList<>();
        for (Side side : sidesOf()) names.add(side.name());
        return names;
    }

    private static ReachVerdict.OnBearing best(LoadoutReach control, LoadoutReach other) {
        boolean isGain = other.overControl().orElseThrow().medianM() >= 0;
        int best = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < other.bearings(); i++) {
            double gainM = other.radial(i).continuousM() - control.radial(i).continuousM();
            double towards = isGain ? gainM : -gainM;
            if (towards <= most) continue;
            most = towards;
            best = i;
        }
        return new ReachVerdict.OnBearing(other.bearingDeg(best), isGain ? most : -most);
    }

    /** A warning of the model with where it holds, as every face says it. */
    private String words(ModelNote note) {
        if (note.isEverywhere()) return note.sentence() + " On every bearing.";
        Lengths lengths = scene.plan().header().lengths();
        String first = note.firstM().isPresent()
                ? "nearest at " + lengths.text(note.firstM().getAsDouble()) + " towards"
                : "the first at";
        String last = note.lastM().isPresent()
                ? ", no farther than " + lengths.text(note.lastM().getAsDouble())
                : "";
        return note.sentence() + " On " + note.bearings() + " of " + note.of() + " bearings, " + first + " "
                + scene.plan().header().bearings().text(note.firstBearingDeg()) + last + ".";
    }

    private void warnOfSteepCells(ReachAnswer.AreaAnswer area) {
        LossGrid grid = area.losses().get(0);
        int steep = grid.behindSteepGround();
        if (steep > 0) warnings.add(noAnswer("Towards " + steep + " cells of the map"));
    }

    private static String noAnswer(String where) {
        return where
                + " the ground is steeper somewhere than the field march holds; behind that it gives no answer, and nothing is"
                + " claimed (docs/full-wave.md).";
    }

    private BearingLosses losses(List<BearingLosses> all, int loadout) {
        return all.get(heights.indexOf(links.get(loadout).terminals()));
    }

    private BearingRequest bearingRequest() {
        return new BearingRequest(
                middle,
                radiusM,
                scene.plan().questions().reach().bearingStepDeg(),
                scene.conditions(middle),
                scene.model());
    }

    private boolean wantsLeaf() {
        return scene.foliage() != Foliage.IN_LEAF && scene.heedsFoliage() && !scene.isOpen();
    }

    private BearingRequest leafyRequest() {
        BearingRequest asked = bearingRequest();
        return new BearingRequest(
                asked.source(),
                asked.radiusM(),
                asked.stepDeg(),
                asked.conditions().with(Foliage.IN_LEAF),
                asked.model());
    }

    /** Once more along the bearings, for what the state of the trees moves. */
    private List<LoadoutReach> inLeaf(Optional<RoseAndMap> march, Progress progress, double odds) {
        if (!wantsLeaf()) return List.of();
        List<BearingLosses> losses = march.filter(both -> both.roses().size() > 1)
                .map(both -> drawn(both.roses().get(1)))
                .orElseGet(() -> losses(leafyRequest(), progress));
        List<LoadoutReach> reaches = new ArrayList<>();
        for (int i = 0; i < loadouts.size(); i++) reaches.add(LoadoutReach.of(losses(losses, i), links.get(i), odds));
        return reaches;
    }

    private List<BearingLosses> losses(BearingRequest request, Progress progress) {
        return drawn(BearingLosses.of(request, heights, ground, Scene.threads(), progress));
    }

    private List<BearingLosses> drawn(List<BearingLosses> all) {
        Optional<DrawnArea> drawn = scene.drawn();
        return drawn.isEmpty()
                ? all
                : all.stream().map(one -> one.within(drawn.get())).toList();
    }

    /** Rose and map at once, where both are marched and every bearing can be a radial of the map. */
    private Optional<RoseAndMap> march(Progress progress) {
        if (!options.withArea() || engine(areaRequest()) != MapEngine.MARCH) return Optional.empty();
        if (!RoseAndMap.isOneMarch(bearingRequest(), areaRequest())) return Optional.empty();
        // A march through the woods is another one when they are in leaf.
        boolean sharesLeaf = wantsLeaf() && areaRequest().conditions().standing() == Standing.AT_ENDS;
        List<BearingRequest> roses = sharesLeaf ? List.of(bearingRequest(), leafyRequest()) : List.of(bearingRequest());
        return Optional.of(RoseAndMap.of(roses, areaRequest(), heights, ground, Scene.threads(), progress));
    }

    private MapEngine engine(AreaRequest request) {
        return options.engine().orElseGet(() -> MapEngine.usual(request, ground));
    }

    private AreaRequest areaRequest() {
        double cellM = scene.plan().questions().reach().cellM();
        CellGrid grid = CellGrid.around(middle, radiusM, cellM);
        return new AreaRequest(middle, grid, radiusM, heights.get(0), scene.conditions(middle), scene.model());
    }

    private ReachAnswer.AreaAnswer area(Optional<RoseAndMap> march, double targetOdds, Progress progress) {
        AreaRequest request = areaRequest();
        List<LossGrid> losses = march
                .map(RoseAndMap::map)
                .orElseGet(() ->
                        engine(request).engine(request, Scene.threads()).losses(request, heights, ground, progress))
                .stream()
                .map(all -> scene.drawn().map(all::within).orElse(all))
                .toList();
        List<OddsGrid> odds = new ArrayList<>();
        for (ReachLink link : links) odds.add(OddsGrid.of(losses.get(heights.indexOf(link.terminals())), link));
        return ReachAnswer.AreaAnswer.of(odds, byBurden(odds), targetOdds, models(losses, progress));
    }

    /** Where the map is a march, what the closed form says beside it. */
    private Optional<ModelDifference> models(List<LossGrid> losses, Progress progress) {
        Terminals control = scene.link(scene.controlLoadout()).terminals();
        LossGrid march = losses.get(heights.indexOf(control));
        if (march.engine() != MapEngine.MARCH) return Optional.empty();
        AreaRequest asked = march.request();
        AreaRequest closed = new AreaRequest(
                asked.source(), asked.grid(), asked.radiusM(), control, asked.conditions(), LossModels.HANDHELD);
        return Optional.of(ModelDifference.of(march, closed, ground, Scene.threads(), progress));
    }

    /** Loadouts from the least burdensome up: what is worn first, by the user's ranks, then by score, then as the plan has them. */
    private List<OddsGrid> byBurden(List<OddsGrid> odds) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < odds.size(); i++) order.add(i);
        order.sort(Comparator.comparing(loadouts::get, scene.leastFirst()));
        return order.stream().map(odds::get).toList();
    }
}
