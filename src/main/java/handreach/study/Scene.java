package handreach.study;

import handreach.bench.BenchAnalysis;
import handreach.budget.LinkBudget;
import handreach.budget.LinkEnd;
import handreach.budget.LinkTerms;
import handreach.budget.Posture;
import handreach.budget.SiteNoise;
import handreach.budget.TwoWayLedger;
import handreach.budget.Ways;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.NearestWord;
import handreach.loadout.Burden;
import handreach.loadout.Loadout;
import handreach.plan.CalibrationFile;
import handreach.plan.Channel;
import handreach.plan.Equipment;
import handreach.plan.GroundChoice;
import handreach.plan.NoiseChoice;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.plan.PlanFile;
import handreach.plan.Questions;
import handreach.profile.CutSettings;
import handreach.propagation.Climate;
import handreach.propagation.CoverState;
import handreach.propagation.Foliage;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Standing;
import handreach.propagation.Terminals;
import handreach.reach.AreaGround;
import handreach.reach.DrawnArea;
import handreach.reach.LearnedSite;
import handreach.reach.ReachLink;
import handreach.reach.SiteLesson;
import handreach.reach.TurnedEnd;
import handreach.relay.RelayEquipment;
import handreach.terrain.AreaPolygons;
import handreach.terrain.Cover;
import handreach.terrain.LandCover;
import handreach.terrain.TileFolder;
import handreach.uncertainty.Doubt;
import handreach.units.Dbm;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A plan with everything it names opened: ground, cover, bench, loadouts, conditions. Immutable and safe for several threads;
 * the tiles behind it are read when they are needed.
 */
public final class Scene {
    /** Models whose errors over open ground were measured, see docs/field-comparison.md. */
    private static final List<LossModel> MEASURED = List.of(LossModels.HANDHELD, LossModels.FULL_WAVE);
    /** Nearer than this two places are one, m. */
    private static final double SAME_PLACE_M = 1;

    private final PlanFile file;
    private final Plan plan;
    private final TileFolder tiles;
    private final CoverFiles cover;
    /** Whether land cover says anything about the area. */
    private final boolean hasCover;

    private final Optional<DrawnArea> drawn;
    private final CutSettings cut;
    private final Optional<BenchAnalysis> bench;
    private final List<Loadout> loadouts;
    private final Optional<CalibrationFile> calibration;
    private final List<String> warnings;
    /** Why the model is what it is, where the plan leaves that to the program. */
    private final Optional<ModelChoice> choice;
    /** Links computed so far; the same for every thread that asks, since a scene never changes. */
    private final Map<List<String>, ReachLink> links = new ConcurrentHashMap<>();
    /** The plan's own ends, each one object, by which a budget between two of them is found again. */
    private final Map<String, LinkEnd> ends = new ConcurrentHashMap<>();
    /** What walks have taught, once asked for; whichever thread computes it, it is the same. */
    private volatile LearnedSite site;

    private Scene(
            PlanFile file,
            TileFolder tiles,
            CoverFiles cover,
            Optional<DrawnArea> drawn,
            CutSettings cut,
            Optional<BenchAnalysis> bench,
            List<String> benchNotes) {
        this.file = file;
        this.plan = file.plan();
        this.tiles = tiles;
        this.cover = cover;
        this.hasCover = cover.tellsAnythingIn(plan);
        this.drawn = drawn;
        this.cut = cut;
        this.bench = bench;
        List<String> notes = new ArrayList<>(benchNotes);
        this.loadouts = List.copyOf(new LoadoutBuilder(file, bench, notes).loadouts());
        this.calibration = file.plan().questions().calibration().map(CalibrationFile::read);
        calibration.ifPresent(learned -> notes.add(learned.words()));
        this.warnings = List.copyOf(notes);
        this.choice = Optional.empty();
    }

    private Scene(Scene before, Plan plan) {
        this(before, plan, before.loadouts, before.warnings, before.choice);
    }

    private Scene(
            Scene before, Plan plan, List<Loadout> loadouts, List<String> warnings, Optional<ModelChoice> choice) {
        this.file = before.file;
        this.plan = plan;
        this.tiles = before.tiles;
        this.cover = before.cover;
        this.hasCover = before.hasCover;
        this.drawn = before.drawn;
        this.cut = before.cut;
        this.bench = before.bench;
        this.loadouts = loadouts;
        this.calibration = before.calibration;
        this.warnings = warnings;
        this.choice = choice;
    }

    /** The same scene on the channel of this name, as an option asks for it. */
    public Scene onChannel(String option, String name) {
        List<String> known = plan.channels().stream().map(Channel::name).toList();
        return plan.channels().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .map(this::on)
                .orElseThrow(() -> new InputFault(
                        option,
                        0,
                        "\"" + name + "\" is not a channel of the plan." + NearestWord.hint(name, known) + " It has: "
                                + String.join(", ", known) + "."));
    }

    /** The same scene on another channel: antennas, bodies, noise and ground are taken at its frequency. */
    Scene on(Channel channel) {
        if (channel.equals(plan.channel())) return this;
        Plan other = plan.on(channel);
        List<String> notes = new ArrayList<>();
        List<Loadout> tuned = List.copyOf(new LoadoutBuilder(file, other, bench, notes).loadouts());
        calibration.ifPresent(learned -> notes.add(learned.words()));
        return new Scene(this, other, tuned, List.copyOf(notes), choice);
    }

    /**
     * The same scene asked for another radius, cell or model than the plan file says; this very scene where it is not, by which whoever
     * asked knows the answer for its own. Faults of the options are told at once.
     */
    public Scene withOptions(ReachOptions options) {
        options.check(plan);
        if (!options.leaves(plan)) return new Scene(this, options.over(plan)).choosing();
        boolean isToBeChosen =
                choice.isEmpty() && plan.questions().reach().wish().isChosen();
        return isToBeChosen ? choosing() : this;
    }

    /** The same scene with the model that {@link ModelChoice} has for it, where the plan leaves that to the program. */
    private Scene choosing() {
        return choosing(
                plan.questions().reach().wish().isChosen() ? Optional.of(ModelChoice.of(this)) : Optional.empty());
    }

    private Scene choosing(Optional<ModelChoice> made) {
        if (made.isEmpty()) return choice.isEmpty() ? this : new Scene(this, plan, loadouts, warnings, made);
        Questions.ReachQuestion asked = plan.questions().reach();
        Plan chosen = plan.asking(
                asked.with(asked.cellM(), asked.wish().choosing(made.get().model()), asked.standing()));
        return new Scene(this, chosen, loadouts, warnings, made);
    }

    /** The same scene by the closed form for work that a march chosen by the program would make far too long; one that is named stays. */
    Scene unmarched(ModelChoice.Reason reason) {
        boolean isMarchChosen = choice.isPresent() && choice.get().model().equals(LossModels.FULL_WAVE);
        return isMarchChosen ? choosing(Optional.of(choice.get().because(reason))) : this;
    }

    /** Whether the program chose the march, which is over soon: worth waiting for whenever a hand rests. */
    public boolean isShortMarch() {
        return choice.isPresent() && choice.get().isShortMarch();
    }

    /** Why the model is what it is, where the plan or an option leaves that to the program. */
    public Optional<ModelChoice> choice() {
        return choice;
    }

    /** The same scene with woods and towns counted elsewhere by the field march. */
    public Scene counting(Standing standing) {
        ReachOptions options = ReachOptions.ofPlan(false).counting(standing);
        return options.leaves(plan) ? this : new Scene(this, options.over(plan));
    }

    /** The same scene with the rose at another place, one of many: what the plan would say, with {@code alike}, if its area lay round that. */
    Scene at(Position place) {
        Places places = plan.places();
        Places moved = new Places(
                new Places.Area(place, places.area().radiusKm(), places.area().polygon()),
                places.positions(),
                places.routes(),
                places.sectors(),
                places.stations());
        Questions asked = plan.questions();
        Questions.ReachQuestion anywhere = asked.reach().fromAnywhere();
        return new Scene(
                this,
                new Plan(
                        plan.header(),
                        plan.channel(),
                        plan.channels(),
                        plan.ground(),
                        plan.equipment(),
                        moved,
                        new Questions(
                                anywhere, asked.decide(), asked.relay(), asked.assign(), asked.walks(), asked.site())));
    }

    /** Opens everything the plan names, and chooses the model where the plan leaves that to the program. */
    public static Scene open(PlanFile file) {
        return unchosen(file).choosing();
    }

    /** The same for whoever puts options over it next: the model is chosen for what they ask, and counted once. */
    public static Scene unchosen(PlanFile file) {
        Plan plan = file.plan();
        GroundChoice.CoverChoice choice = plan.ground().cover();
        CompletableFuture<TileFolder> tiles = CompletableFuture.supplyAsync(() -> read(plan));
        Optional<BenchAnalysis> bench = plan.equipment().bench().map(named -> PlanBench.of(file, named));
        CutSettings cut = new CutSettings(
                choice.surface(), choice.heights().canopyM(), choice.heights().roofM());
        return new Scene(file, opened(tiles), CoverFiles.of(choice), drawn(plan), cut, bench, List.of());
    }

    /** The polygons round the plan's area, read whoever asks, so that every command tells what is wrong with them. */
    private static Optional<DrawnArea> drawn(Plan plan) {
        return plan.places().area().polygon().map(file -> new DrawnArea(AreaPolygons.read(file)));
    }

    /** The plan's tiles, that under the middle of its area read already; beside the bench, which needs another core. */
    private static TileFolder read(Plan plan) {
        TileFolder tiles = TileFolder.open(plan.ground().tiles());
        tiles.at(plan.places().area().centre());
        return tiles;
    }

    private static TileFolder opened(CompletableFuture<TileFolder> tiles) {
        try {
            return tiles.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof RuntimeException wrong) throw wrong;
            throw failed;
        }
    }

    /** The same ground under an edited plan; tiles and cover stay open when the plan still names the same. */
    public Scene with(PlanFile edited) {
        GroundChoice before = plan.ground();
        GroundChoice after = edited.plan().ground();
        if (!before.tiles().equals(after.tiles()) || !before.cover().equals(after.cover())) return open(edited);
        boolean sameBench =
                plan.equipment().bench().equals(edited.plan().equipment().bench());
        Optional<BenchAnalysis> newBench =
                sameBench ? bench : edited.plan().equipment().bench().map(named -> PlanBench.of(edited, named));
        boolean sameDrawn = plan.places()
                .area()
                .polygon()
                .equals(edited.plan().places().area().polygon());
        return new Scene(edited, tiles, cover, sameDrawn ? drawn : drawn(edited.plan()), cut, newBench, List.of())
                .choosing();
    }

    public PlanFile file() {
        return file;
    }

    /** What is asked: the plan of the file, or that with a {@link ReachOptions} over it. */
    public Plan plan() {
        return plan;
    }

    public TileFolder tiles() {
        return tiles;
    }

    public LandCover cover() {
        return cover.cover();
    }

    /** What the plan draws round its area: ground outside it is neither counted nor drawn. */
    public Optional<DrawnArea> drawn() {
        return drawn;
    }

    public CutSettings cut() {
        return cut;
    }

    public Optional<BenchAnalysis> bench() {
        return bench;
    }

    /** The plan's loadouts in its own order. */
    public List<Loadout> loadouts() {
        return loadouts;
    }

    /** What was doubtful while opening and with the tiles that have been read since, one sentence each. */
    public List<String> warnings() {
        Set<String> all = new LinkedHashSet<>(tiles.warnings());
        all.addAll(cover.warnings(file.plan()));
        all.addAll(warnings);
        choice.filter(ModelChoice::isNoted).map(ModelChoice::words).ifPresent(all::add);
        return List.copyOf(all);
    }

    public Loadout loadout(String name) {
        for (Loadout loadout : loadouts) if (loadout.name().equals(name)) return loadout;
        throw unknown("loadout", name, loadouts.stream().map(Loadout::name).toList());
    }

    /** A position of the plan by its name. */
    public Places.PositionEntry position(String name) {
        List<Places.PositionEntry> all = plan().places().positions();
        for (Places.PositionEntry entry : all) if (entry.name().equals(name)) return entry;
        throw unknown(
                "position", name, all.stream().map(Places.PositionEntry::name).toList());
    }

    private static InputFault unknown(String kind, String name, List<String> known) {
        return new InputFault(
                kind,
                0,
                "\"" + name + "\" is not in the plan." + NearestWord.hint(name, known) + " It has: "
                        + String.join(", ", known) + ".");
    }

    /** Name of the loadout all others are held against: the first that carries the control without the wire. */
    public Loadout controlLoadout() {
        List<Equipment.LoadoutEntry> entries = plan().equipment().loadouts();
        String control = plan().equipment().control().name();
        for (int i = 0; i < entries.size(); i++)
            if (entries.get(i).antenna().equals(control) && !entries.get(i).counterpoise()) return loadouts.get(i);
        return loadouts.get(0);
    }

    /** Frequency, ground, air and climate at a position. */
    public PathConditions conditions(Position middle) {
        Climate climate = new Climate(50, 50, middle.latitudeDeg(), 500, 500);
        return new PathConditions(
                plan().channel().frequency(),
                plan().channel().polarization(),
                plan().ground().ground(),
                plan().ground().atmosphere(),
                climate,
                new CoverState(foliage(), plan().questions().reach().standing()));
    }

    public PathConditions conditions() {
        return conditions(plan().places().area().centre());
    }

    /** State of the trees, as the plan has it. */
    public Foliage foliage() {
        return plan().ground().cover().foliage();
    }

    /** Whether the plan's model computes the way out of a wood, so that the state of the trees moves it. */
    public boolean heedsFoliage() {
        return MEASURED.contains(model());
    }

    public LossModel model() {
        return plan().questions().reach().model();
    }

    public SiteNoise noise() {
        return noise(plan().ground().noise());
    }

    SiteNoise noise(NoiseChoice choice) {
        if (choice.measured().isEmpty())
            return SiteNoise.of(choice.surroundings(), plan().channel().frequency());
        NoiseChoice.Measured floor = choice.measured().get();
        return SiteNoise.measured(
                new Dbm(floor.floorDbm()),
                floor.bandwidthKhz(),
                choice.surroundings().placeSpreadDb());
    }

    /** What is asked of every link of the plan. */
    public LinkTerms terms() {
        return terms(plan().channel().wish());
    }

    private LinkTerms terms(Channel.CopyWish wish) {
        return new LinkTerms(
                plan().channel().frequency(), wish.quality(), wish.fading(), wish.odds(), modelDoubt(), List.of());
    }

    /** Doubt of the loss model before any walk: the plan's own figures, else by what is known of ground and cover. */
    private Doubt modelDoubt() {
        Questions.Doubts doubts = plan().questions().doubts();
        Doubt usual = usualDoubt();
        return new Doubt(
                doubts.modelCommonDb().orElse(usual.commonDb()),
                doubts.placeSpreadDb().orElse(usual.spreadDb()));
    }

    private Doubt usualDoubt() {
        if (!isOpen()) return covered();
        return MEASURED.contains(model()) ? LinkTerms.MODEL_OPEN : LinkTerms.MODEL_OTHER;
    }

    /** With what the state of the trees may be out by, where the model heeds it. */
    private Doubt covered() {
        if (!heedsFoliage()) return LinkTerms.MODEL_COVERED;
        double treesDb =
                foliage().doubtDb(plan().channel().frequency(), plan().channel().polarization());
        if (treesDb == 0) return LinkTerms.MODEL_COVERED;
        return new Doubt(Math.hypot(LinkTerms.MODEL_COVERED.commonDb(), treesDb), LinkTerms.MODEL_COVERED.spreadDb());
    }

    /** Whether all ground of the plan is open as far as is known. */
    boolean isOpen() {
        return plan().ground().cover().everywhere() == Cover.OPEN && !hasCover;
    }

    /** The link between two loadouts of this plan. */
    public LinkBudget budget(Loadout a, Loadout b) {
        return LinkBudget.between(end(a), end(b), terms());
    }

    /** One end of a link; a tilt in the plan is taken across the path, the way that costs most. */
    public LinkEnd end(Loadout loadout) {
        int at = own(loadout);
        return at < 0 ? endOf(loadout, at) : ends.computeIfAbsent(loadout.name(), name -> endOf(loadout, at));
    }

    private LinkEnd endOf(Loadout loadout, int at) {
        double tiltDeg =
                at < 0 ? 0 : plan().equipment().loadouts().get(at).hold().tiltDeg();
        Posture posture = new Posture(OptionalDouble.empty(), tiltDeg, 0);
        Optional<NoiseChoice> own = at < 0
                ? Optional.empty()
                : plan().equipment().loadouts().get(at).noise();
        SiteNoise noise = own.isPresent() ? noise(own.get()) : noise();
        double feedDb =
                at < 0 ? 0 : plan().equipment().loadouts().get(at).hold().feedLossDb();
        return new LinkEnd(loadout, noise, posture, RelayEquipment.feedLine(feedDb, RelayEquipment.STATED));
    }

    /**
     * Index among the plan's own loadouts, -1 for another. Mostly it is the very object, and the name tells nearly all others apart:
     * the generated comparison is linked at its first use, which the first answer would wait for.
     */
    @SuppressWarnings("ReferenceEquality")
    private int own(Loadout loadout) {
        for (int i = 0; i < loadouts.size(); i++) {
            Loadout one = loadouts.get(i);
            if (one == loadout || one.name().equals(loadout.name()) && one.equals(loadout)) return i;
        }
        return -1;
    }

    /** What stands at the middle of the reach rose for a loadout: what stays there, or the same at both ends. */
    public Loadout middleLoadout(Loadout far) {
        Optional<String> name = middleLoadoutName();
        return name.isPresent() ? loadout(name.get()) : far;
    }

    /**
     * The loadout that stays at the middle of the reach rose whoever calls: the one that the plan fixes there, else what the position
     * there carries; empty where both ends are to be alike, or nothing is known of the middle.
     */
    public Optional<String> middleLoadoutName() {
        Questions.ReachQuestion asked = plan().questions().reach();
        if (asked.with().isPresent() || asked.alike()) return asked.with();
        return middlePosition().flatMap(Places.PositionEntry::loadout);
    }

    /** Who is called first of all: the first position marked as base, else the one in which the rose stands. */
    public Optional<Places.PositionEntry> base() {
        for (Places.PositionEntry entry : plan().places().positions()) if (entry.base()) return Optional.of(entry);
        Optional<String> from = plan().questions().reach().from();
        return from.isPresent() ? Optional.of(position(from.get())) : Optional.empty();
    }

    /** Whether a position is the base: marked as one, or called first of all. */
    boolean isBase(Places.PositionEntry entry) {
        if (entry.base()) return true;
        Optional<Places.PositionEntry> called = base();
        return called.isPresent() && called.get().name().equals(entry.name());
    }

    /** Which ways must work between two places: one is enough only where one of them is the base and the plan says so. */
    Ways ways(Position from, Position to) {
        return Ways.between(plan().channel().wish().ways(), isBaseAt(from), isBaseAt(to));
    }

    private boolean isBaseAt(Position at) {
        for (Places.PositionEntry entry : plan().places().positions())
            if (isBase(entry) && entry.at().equals(at)) return true;
        return false;
    }

    /** The same for the rose, in whose middle the base is, or who stands for it. */
    private Ways fromMiddle() {
        return Ways.between(plan().channel().wish().ways(), true, false);
    }

    /** The position of the plan in the middle of the rose: the one named, else the base where it stands at the centre of the area. */
    public Optional<Places.PositionEntry> middlePosition() {
        Optional<String> from = plan().questions().reach().from();
        if (from.isPresent()) return Optional.of(position(from.get()));
        Position centre = plan().places().area().centre();
        for (Places.PositionEntry entry : plan().places().positions())
            if (entry.base() && GeodesicLine.distanceM(entry.at(), centre) < SAME_PLACE_M) return Optional.of(entry);
        return Optional.empty();
    }

    /** The link from the middle of the rose to somebody with this loadout; in the middle people face as the plan says. */
    public ReachLink link(Loadout far) {
        Loadout near = middleLoadout(far);
        if (middleHeading(near).isEmpty()) return link(near, far).asking(fromMiddle());
        return links.computeIfAbsent(
                List.of(near.name(), far.name(), "turned"), pair -> fromMiddle(end(near), end(far), terms()));
    }

    /** Way that somebody in the middle faces, where the plan says it and it counts. */
    private OptionalDouble middleHeading(Loadout near) {
        return near.carry().carry().isAtBody() ? headingDeg(middle()) : OptionalDouble.empty();
    }

    private ReachLink fromMiddle(LinkEnd near, LinkEnd far, LinkTerms terms) {
        OptionalDouble heading = middleHeading(near.loadout());
        Terminals heights = terminals(near.loadout(), far.loadout());
        String name = far.loadout().name();
        ReachLink link = heading.isPresent()
                ? ReachLink.of(name, TurnedEnd.of(near, heading.getAsDouble(), far, terms), heights)
                : ReachLink.of(name, LinkBudget.between(near, far, terms), heights);
        return taught(link, near.loadout(), far.loadout()).asking(fromMiddle());
    }

    /** Way that people face at a position, clockwise from true north, degrees; nothing where the plan does not say. */
    OptionalDouble headingDeg(Places.PositionEntry entry) {
        if (entry.facing().isEmpty()) return OptionalDouble.empty();
        Places.Facing facing = entry.facing().get();
        if (facing.headingDeg().isPresent()) return facing.headingDeg();
        Position towards = position(facing.towards().orElseThrow()).at();
        return isSamePlace(entry.at(), towards)
                ? OptionalDouble.empty()
                : OptionalDouble.of(GeodesicLine.between(entry.at(), towards).azimuthDeg());
    }

    static boolean isSamePlace(Position one, Position other) {
        return GeodesicLine.distanceM(one, other) < 1;
    }

    /** The position of the plan at a place, where people face as the plan says; nothing where no heading is known. */
    Optional<Places.PositionEntry> facingAt(Position place) {
        for (Places.PositionEntry entry : plan().places().positions())
            if (entry.facing().isPresent() && entry.at().equals(place)) return Optional.of(entry);
        return Optional.empty();
    }

    private OptionalDouble headingDeg(Position place) {
        Optional<Places.PositionEntry> entry = facingAt(place);
        return entry.isPresent() ? headingDeg(entry.get()) : OptionalDouble.empty();
    }

    /** Name of the position of the plan at a place, or else these words. */
    String placeWords(Position place, String otherwise) {
        return plan().places().positions().stream()
                .filter(entry -> entry.at().equals(place))
                .map(Places.PositionEntry::name)
                .findFirst()
                .orElse(otherwise);
    }

    /** One end of a path towards another place, facing as the plan says. */
    LinkEnd end(Loadout loadout, Position at, Position towards) {
        OptionalDouble heading = headingDeg(at);
        LinkEnd end = end(loadout);
        if (heading.isEmpty() || isSamePlace(at, towards)) return end;
        return end.facing(GeodesicLine.between(at, towards).azimuthDeg() - heading.getAsDouble());
    }

    /** The link between two people with these loadouts; computed once for each pair of the plan's own. */
    public ReachLink link(Loadout near, Loadout far) {
        if (own(near) < 0 || own(far) < 0) return linkOf(near, far);
        return links.computeIfAbsent(List.of(near.name(), far.name()), pair -> linkOf(near, far));
    }

    /** The same from the middle, asked for no more than some copy; the rest of the link is as it was. */
    ReachLink someCopyLink(Loadout far) {
        return fromMiddle(end(middleLoadout(far)), end(far), terms(Channel.CopyWish.SOME_COPY));
    }

    /** The same from the middle with the radio turned down; at both ends where both carry that loadout. */
    ReachLink link(Loadout far, Dbm power) {
        Loadout near = middleLoadout(far);
        LinkEnd turned = PowerStep.turnedDown(end(far), power);
        return fromMiddle(near.equals(far) ? turned : end(near), turned, terms());
    }

    private ReachLink linkOf(Loadout near, Loadout far) {
        return taught(ReachLink.of(far.name(), budget(near, far), terminals(near, far)), near, far);
    }

    private ReachLink taught(ReachLink link, Loadout near, Loadout far) {
        Optional<LearnedSite> walked = learned();
        if (walked.isEmpty()) return link;
        LearnedSite taught = walked.get();
        return link.calibrated(lesson(taught, link.budget(), near, far), taught.covers(this::coverAt, middle()));
    }

    /** What walks have taught, where the plan names it. */
    public Optional<CalibrationFile> calibration() {
        return calibration;
    }

    /** The same as the engines take it: with those walked links that the plan still has, and where they were called from. */
    public Optional<LearnedSite> learned() {
        if (calibration.isEmpty()) return Optional.empty();
        if (site == null) site = learned(calibration.get());
        return Optional.of(site);
    }

    private LearnedSite learned(CalibrationFile learned) {
        List<String> known = loadouts.stream().map(Loadout::name).toList();
        return new LearnedSite(
                learned.site(),
                learned.links().stream()
                        .filter(known::containsAll)
                        .map(ends -> budget(loadout(ends.get(0)), loadout(ends.get(1))))
                        .toList(),
                WalkBase.all(this).stream().map(WalkBase::at).toList());
    }

    private static SiteLesson lesson(LearnedSite taught, LinkBudget budget, Loadout near, Loadout far) {
        return taught.lesson(
                budget, near.carry().carry().word(), far.carry().carry().word());
    }

    /** A ledger of this plan between two places, with what walks have taught. */
    TwoWayLedger taught(TwoWayLedger ledger, PathStudy.Carried carried, Position from, Position to) {
        if (learned().isEmpty()) return ledger;
        SiteLesson lesson = lesson(learned().get(), carried.budget(), carried.near(), carried.far());
        double shiftDb = lesson.shiftDb(learnedCovers(from, to));
        return lesson.over(ledger, shiftDb, plan().channel().wish().odds());
    }

    /** Covers that count between two places for what walks have taught; none where nothing was. */
    List<Cover> learnedCovers(Position from, Position to) {
        return learned().map(taught -> taught.covers(this::coverAt, from, to)).orElse(List.of());
    }

    private Cover coverAt(Position at) {
        return cover.cover().coverAt(at.latitudeDeg(), at.longitudeDeg());
    }

    /** Ground and cover as the area engines read them. */
    public AreaGround ground() {
        return new AreaGround(tiles, cover.cover(), cut);
    }

    /** How many threads long work may use. */
    public static int threads() {
        return Math.max(1, Runtime.getRuntime().availableProcessors());
    }

    /** What an antenna of a plan costs to carry, as its loadouts have it. */
    public static Burden burden(Plan plan, Equipment.AntennaEntry antenna) {
        return LoadoutBuilder.burden(antenna, plan.channels().get(0).frequency());
    }

    /** One number to order loadouts by: the user's own rank where there is one, else the score of the burden. */
    public double burdenScore(Loadout loadout) {
        int at = loadouts.indexOf(loadout);
        String antenna = plan().equipment().loadouts().get(at).antenna();
        OptionalInt rank = plan().equipment().antennas().stream()
                .filter(entry -> entry.name().equals(antenna))
                .findFirst()
                .orElseThrow()
                .size()
                .burdenRank();
        double wire = plan().equipment().loadouts().get(at).counterpoise() ? 0.5 : 0;
        if (rank.isPresent()) return rank.getAsInt() + wire;
        return loadout.antenna().burden().score(Burden.USUAL_RANKING) + wire;
    }

    /** Loadouts from the least burdensome up: what is worn first, then masts and vehicles, which nobody carries. */
    public Comparator<Loadout> leastFirst() {
        return Comparator.comparing(
                        (Loadout loadout) -> !loadout.carry().carry().isAtBody())
                .thenComparingDouble(this::burdenScore);
    }

    public static Terminals terminals(Loadout a, Loadout b) {
        return new Terminals(a.heightM(), b.heightM());
    }

    /** Where the reach rose stands. */
    public Position middle() {
        Optional<String> from = plan().questions().reach().from();
        return from.isPresent()
                ? position(from.get()).at()
                : plan().places().area().centre();
    }
}
