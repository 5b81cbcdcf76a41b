package handreach.study;

import handreach.atlas.AtlasBlock;
import handreach.atlas.AtlasGrid;
import handreach.atlas.AtlasQuestion;
import handreach.atlas.BlockReach;
import handreach.atlas.PositionFigures;
import handreach.atlas.Standpoint;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.Memory;
import handreach.loadout.Loadout;
import handreach.loadout.NeededWays;
import handreach.plan.Places;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.reach.CellGrid;
import handreach.reach.DrawnArea;
import handreach.reach.Progress;
import handreach.terrain.AreaPolygons;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Every place of a region: what is asked, block by block. */
public final class AtlasStudy {
    /** Positions tried before the cost is told. */
    private static final int TRIED = 4;

    private static final long MOST_POSITIONS = 4_000_000;
    /** What the figures of one loadout at one position take beside its bits, bytes; counted by hand. */
    private static final int BYTES_OF_FIGURES = 400;
    /** On a finer grid neighbours may stand so near that they are reckoned as if farther apart, each from its own end, m. */
    private static final double LEAST_PAIR_GRID_M = 100;
    /** Models that give the same for a path and the path walked back, to the last bits; see docs/atlas.md. */
    private static final Set<LossModel> RECIPROCAL = Set.of(LossModels.HANDHELD);

    private final Scene scene;
    private final AtlasOptions wish;
    private final AtlasQuestion question;
    private final AtlasGrid positions;
    private final AtlasGrid targets;
    private final boolean isPairOnce;
    private final BlockReach reckoner;
    /** What the figures are made from, as it was there at the beginning. */
    private final List<Path> files;
    /** Asked for at every cell of a map. */
    private final List<Integer> byBurden;

    private AtlasStudy(Scene scene, AtlasOptions wish, AtlasQuestion question, Predicate<Position> region) {
        this.scene = scene;
        this.wish = wish;
        this.question = question;
        this.positions = AtlasGrid.of(question.positions(), region);
        this.targets = AtlasGrid.of(question.targets(), region);
        this.isPairOnce = isPairOnce();
        this.reckoner = reckoner(isPairOnce);
        this.byBurden = byBurden(scene);
        this.files = scene.file().sources().present();
    }

    /** Whether both ends of every pair are positions and carry the same in the same way, so that either end gives what the other does. */
    private boolean isPairOnce() {
        return positions.cells().equals(targets.cells())
                && question.gridM() >= LEAST_PAIR_GRID_M
                && RECIPROCAL.contains(scene.model())
                && scene.plan().questions().reach().with().isEmpty()
                && scene.plan().channel().wish().ways() == NeededWays.BOTH
                && scene.calibration().isEmpty()
                && scene.plan().places().positions().stream().noneMatch(this::isFacingAtAPosition);
    }

    private boolean isFacingAtAPosition(Places.PositionEntry entry) {
        int cell = positions.cells().indexOf(entry.at());
        return entry.facing().isPresent()
                && cell >= 0
                && positions.cells().positionOf(cell).equals(entry.at());
    }

    /** Reckons blocks with each pair once, or from both its ends. */
    BlockReach reckoner(boolean once) {
        return new BlockReach(question.reach(), positions, targets, scene.ground(), this::standpoint, once);
    }

    /** Looks at everything that can be wrong before anything is reckoned; faults are told by option or line. */
    public static AtlasStudy of(Scene scene, AtlasOptions wish) {
        AtlasStudy study = ofBlocks(scene, wish);
        study.requireRoom();
        return study;
    }

    /** The same for whoever hands on each block and never holds all of them: there need not be room for the whole region. */
    public static AtlasStudy ofBlocks(Scene planned, AtlasOptions wish) {
        wish.check();
        Scene scene = planned.unmarched(ModelChoice.Reason.ATLAS);
        if (scene.model().equals(LossModels.FULL_WAVE))
            throw scene.file()
                    .fault(
                            "reach",
                            "model",
                            "full-wave goes along whole radials and would take weeks over a region. Take another model for the atlas.");
        if (wish.layers().contains(AtlasLayer.TALK)
                && scene.plan().questions().reach().with().isPresent())
            throw scene.file()
                    .fault(
                            "reach",
                            "with",
                            "sets what stands at one end, but the layer talk asks who hears whom with the same on all."
                                    + " Take talk out of --layers, or the key out of the plan.");
        refuseOneWay(scene, wish);
        double radiusM = 1000 * scene.plan().places().area().radiusKm();
        Optional<Geometry> drawn = wish.region().map(AreaPolygons::read);
        Predicate<Position> region = drawn.<Predicate<Position>>map(polygons -> new DrawnArea(polygons)::holds)
                .orElseGet(() -> areaOf(scene, radiusM));
        AtlasQuestion.Box box = drawn.map(AtlasStudy::box).orElseGet(() -> box(scene, radiusM));
        refuse("--grid", box, wish.gridM());
        double targetsM = wish.targetsM().orElse(wish.gridM());
        refuse("--targets", box, targetsM);
        AtlasQuestion question = new AtlasQuestion(
                box,
                wish.gridM(),
                targetsM,
                new AtlasQuestion.Reach(
                        radiusM,
                        scene.plan().questions().reach().bearingStepDeg(),
                        scene.plan().channel().wish().odds(),
                        wish.servesM().orElse(radiusM / 4)));
        AtlasStudy study = new AtlasStudy(scene, wish, question, region);
        study.check();
        return study;
    }

    /** With {@code ways} whoever stands at a position is the base; among people at positions both ways count. */
    private static void refuseOneWay(Scene scene, AtlasOptions wish) {
        NeededWays ways = scene.plan().channel().wish().ways();
        if (ways != NeededWays.BOTH && wish.layers().contains(AtlasLayer.TALK))
            throw scene.file()
                    .fault(
                            "target",
                            "ways",
                            "[target] ways is \"" + ways.word()
                                    + "\", so one way to the position is enough, but the layer talk asks who can talk to whom."
                                    + " Take talk out of --layers (--layers reach,shadow), or the key out of the plan.");
        if (scene.plan().questions().reach().oneWay())
            throw scene.file()
                    .fault(
                            "reach",
                            "one_way",
                            "[reach] one_way asks where one way alone works, which an atlas does not tell. Set it to false for the atlas;"
                                    + " [target] ways sets which way counts.");
    }

    private static Predicate<Position> areaOf(Scene scene, double radiusM) {
        Position centre = scene.plan().places().area().centre();
        return at -> GeodesicLine.distanceM(centre, at) <= radiusM
                && scene.drawn().map(drawn -> drawn.holds(at)).orElse(true);
    }

    private static AtlasQuestion.Box box(Geometry polygons) {
        Envelope edges = polygons.getEnvelopeInternal();
        return new AtlasQuestion.Box(edges.getMinY(), edges.getMinX(), edges.getMaxY(), edges.getMaxX());
    }

    private static AtlasQuestion.Box box(Scene scene, double radiusM) {
        Position centre = scene.plan().places().area().centre();
        double eastDeg = Math.IEEEremainder(
                GeodesicLine.destination(centre, 90, radiusM).longitudeDeg() - centre.longitudeDeg(), 360);
        return new AtlasQuestion.Box(
                GeodesicLine.destination(centre, 180, radiusM).latitudeDeg(),
                centre.longitudeDeg() - eastDeg,
                GeodesicLine.destination(centre, 0, radiusM).latitudeDeg(),
                centre.longitudeDeg() + eastDeg);
    }

    private static void refuse(String option, AtlasQuestion.Box box, double cellM) {
        CellGrid.refusal(box.southDeg(), box.westDeg(), box.northDeg(), box.eastDeg(), cellM)
                .ifPresent(sentence -> {
                    throw new InputFault(option, 0, sentence + ".");
                });
    }

    private void check() {
        String source = wish.region().map(Object::toString).orElse("[area]");
        if (positions.count() == 0)
            throw new InputFault(
                    source, 0, "holds no position of a grid this coarse. Take a finer --grid, or a larger region.");
        if (targets.count() == 0)
            throw new InputFault(source, 0, "holds no target of a grid this coarse. Take finer --targets.");
        List<AtlasBlock> blocks = positions.blocks();
        Optional<Integer> onGround = blocks.stream()
                .flatMap(block -> positions.cellsOf(block).stream())
                .filter(cell ->
                        !scene.tiles().at(positions.cells().positionOf(cell)).isVoid())
                .findFirst();
        if (onGround.isEmpty())
            throw new InputFault(
                    source, 0, "lies where no elevation is known. Add the tiles under it, or draw another region.");
        double postM = scene.tiles()
                .postSpacingM(
                        positions.cells().positionOf(onGround.get()).latitudeDeg(),
                        positions.cells().positionOf(onGround.get()).longitudeDeg(),
                        1);
        if (question.gridM() < postM || question.targetsM() < postM)
            throw new InputFault(
                    question.gridM() < postM ? "--grid" : "--targets",
                    0,
                    "is finer than the posts of the ground, which stand " + Math.round(postM)
                            + " m apart: places between them are not known apart. Take " + (long) Math.ceil(postM)
                            + "m or more.");
    }

    /** All figures are held at the end, to lay them over one another. */
    private void requireRoom() {
        double window = Math.pow(2 * question.reach().radiusM() / question.targetsM() + 1, 2);
        double bits = Math.min(window, targets.cells().count()) / 8;
        double bytes = scene.loadouts().size() * (BYTES_OF_FIGURES + bits) + (isPairOnce ? bits : 0);
        long most = Memory.most(MOST_POSITIONS, bytes);
        if (positions.count() > most)
            throw new InputFault(
                    "--grid",
                    0,
                    "makes " + positions.count() + " positions, at most " + most
                            + " fit. Take a wider grid, or draw the region smaller with --region."
                            + Memory.advice(most, Math.min(MOST_POSITIONS, positions.count()), bytes));
    }

    private Standpoint standpoint(Position at) {
        Scene here = scene.at(at);
        return new Standpoint(
                here.conditions(at),
                here.model(),
                here.loadouts().stream().map(here::link).toList(),
                here.drawn());
    }

    public Scene scene() {
        return scene;
    }

    public AtlasOptions wish() {
        return wish;
    }

    public AtlasQuestion question() {
        return question;
    }

    public AtlasGrid positions() {
        return positions;
    }

    public AtlasGrid targets() {
        return targets;
    }

    /**
     * Whether rows come with pairs to later positions alone, until {@link handreach.atlas.PairsOnce} makes them whole: where either end of a
     * pair gives what the other does.
     */
    public boolean pairsAreOnce() {
        return isPairOnce;
    }

    /** Numbers of the loadouts from the least burdensome up. */
    public List<Integer> byBurden() {
        return byBurden;
    }

    private static List<Integer> byBurden(Scene scene) {
        List<Loadout> loadouts = scene.loadouts();
        return IntStream.range(0, loadouts.size())
                .boxed()
                .sorted(Comparator.comparing(loadouts::get, scene.leastFirst()))
                .toList();
    }

    /** Which of the loadouts is the control. */
    public int control() {
        return scene.loadouts().indexOf(scene.controlLoadout());
    }

    /**
     * Reckons a few positions here and there.
     *
     * @param threadNanos processor time of the thread that asks, ns
     */
    public AtlasTrial trial(List<AtlasBlock> blocks, LongSupplier threadNanos) {
        List<PositionFigures> rows = new ArrayList<>();
        long least = Long.MAX_VALUE;
        for (int i = 0; i < TRIED; i++) {
            long before = threadNanos.getAsLong();
            PositionFigures row;
            try {
                row = reckoner.first(blocks.get((int) ((2L * i + 1) * blocks.size() / (2L * TRIED))));
            } catch (InputFault bad) {
                // the run itself will tell of this block and go on with the others
                continue;
            }
            if (row.isKnown()) least = Math.min(least, threadNanos.getAsLong() - before);
            rows.add(row);
        }
        return new AtlasTrial(rows, least == Long.MAX_VALUE ? 0 : least / 1e9);
    }

    /** Reckons blocks; each is handed over by the thread that did it. Those that failed come back, the others go on. */
    public List<BlockFault> run(
            List<AtlasBlock> blocks,
            int threads,
            BiConsumer<AtlasBlock, List<PositionFigures>> done,
            Progress progress) {
        return AtlasRun.run(blocks, threads, block -> reckoned(block, progress), done, progress);
    }

    /** A tile that went away meanwhile is unknown ground, and the rows would look as good as any: such a block is faulty. */
    private List<PositionFigures> reckoned(AtlasBlock block, Progress progress) {
        List<PositionFigures> rows = reckoner.reckon(block, progress);
        for (Path file : files)
            if (!Files.isRegularFile(file))
                throw new InputFault(
                        String.valueOf(file.getFileName()),
                        0,
                        "is gone since this began. Put it back, then start the same command again.");
        return rows;
    }
}
