package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.atlas.AtlasBlock;
import handreach.atlas.AtlasGrid;
import handreach.atlas.BlockReach;
import handreach.atlas.LoadoutFigures;
import handreach.atlas.PairsOnce;
import handreach.atlas.PositionFigures;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.plan.PlanFile;
import handreach.profile.PathCut;
import handreach.profile.Profile;
import handreach.propagation.PathGeometry;
import handreach.reach.LoadoutReach;
import handreach.reach.Progress;
import handreach.reach.ReachLink;
import handreach.terrain.Cover;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A region of a few positions against the main job at each of them, and against one path for each pair. */
class AtlasStudyTest {
    private static final Set<AtlasLayer> ALL = Set.of(AtlasLayer.values());

    @TempDir
    Path folder;

    private PlanFile plan(String sample, String radiusKm) throws IOException {
        Path from = Path.of("elevation-samples", sample).toAbsolutePath();
        String text = Files.readString(from.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + from.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + from.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replaceFirst("radius_km = \\S+", "radius_km = " + radiusKm)
                .replaceFirst("bearing_step_deg = \\S+", "bearing_step_deg = 20\nmodel = \"handheld\"");
        return PlanFile.open(Files.writeString(folder.resolve(sample + ".toml"), text));
    }

    private static AtlasStudy study(PlanFile plan, double gridM, double targetsM) {
        return AtlasStudy.of(
                Scene.open(plan),
                new AtlasOptions(
                        gridM, OptionalDouble.of(targetsM), Optional.empty(), Set.of(), 2, OptionalDouble.empty()));
    }

    private static List<PositionFigures> rows(AtlasStudy study, int threads) {
        List<PositionFigures> rows = new ArrayList<>();
        List<BlockFault> faults = study.run(
                study.positions().blocks(),
                threads,
                (block, done) -> {
                    synchronized (rows) {
                        rows.addAll(done);
                    }
                },
                Progress.SILENT);
        assertEquals(List.of(), faults);
        rows.sort(Comparator.comparingInt(PositionFigures::cell));
        PairsOnce.complete(study.positions().cells(), rows);
        return rows;
    }

    @Test
    void aPositionHasTheFiguresOfTheMainJobThereToTheLastDigit() throws IOException {
        for (String sample : List.of("invented-valley", "forest-hills")) {
            PlanFile plan = plan(sample, "1.5");
            List<PositionFigures> rows = rows(study(plan, 700, 700), 2);
            assertTrue(rows.size() > 10, rows.size() + " positions");
            for (int i = 0; i < rows.size(); i += 5) isAsReached(plan, rows.get(i));
        }
    }

    /** Rows over ground that went away would say that nobody is reached there. */
    @Test
    void aTileThatGoesAwayMeanwhileIsAFaultAndNotUnknownGround() throws IOException {
        Path tiles = Files.createDirectory(folder.resolve("own"));
        Path from = Path.of("elevation-samples", "forest-hills", "tiles");
        Path tile = tiles.resolve("cumberland-forest-3s.tif");
        Files.copy(from.resolve(tile.getFileName()), tile);
        PlanFile plan = plan("forest-hills", "1.5");
        plan = plan.withText(plan.text().replaceFirst("(?m)^tiles = .*", "tiles = '" + tiles + "'"));
        AtlasStudy study = study(plan, 900, 900);
        Files.delete(tile);
        List<PositionFigures> rows = new ArrayList<>();
        List<BlockFault> faults =
                study.run(study.positions().blocks(), 1, (block, done) -> rows.addAll(done), Progress.SILENT);
        assertEquals(List.of(), rows);
        assertEquals(
                "cumberland-forest-3s.tif: is gone since this began. Put it back, then start the same command again.",
                faults.get(0).words());
    }

    /** The base stands in the middle of this grid and carries a good antenna; its place must not look better than others for that. */
    @Test
    void thePlaceOfTheBaseIsOneAsAnyOther() throws IOException {
        PlanFile plan = plan("forest-hills", "1.5");
        Position base = plan.plan().places().positions().get(0).at();
        AtlasStudy study = study(plan, 700, 700);
        int middle = study.positions().cells().indexOf(base);
        double besideM = GeodesicLine.distanceM(base, study.positions().cells().positionOf(middle));
        assertTrue(besideM < 0.1, "the base is a position");
        PlanFile bare = plan.withText(plan.text()
                .replaceFirst("loadout = \"quarter-wave with wire at face\"\\R", "loadout = \"factory at hip\"\n"));
        assertEquals(words(rows(study(bare, 700, 700), 2)), words(rows(study, 2)));
    }

    /** Where the base needs to hear, but not to answer, the position is the base, as the middle of the rose is. */
    @Test
    void onlyTheWayThatThePlanAsksForCounts() throws IOException {
        PlanFile both = plan("forest-hills", "1.5");
        String strong = both.text()
                .replaceFirst(
                        "(?m)^\\[\\[antenna]]",
                        "[[radio]]\nname = \"strong\"\npower_w = 50\nsensitivity_dbm = -119\n\n[[antenna]]")
                .replaceFirst("name = \"five-eighths at face\"", "name = \"five-eighths at face\"\nradio = \"strong\"")
                .replaceFirst("(?m)^\\[reach]$", "[reach]\nwith = \"five-eighths at face\"");
        PlanFile hears = both.withText(strong.replaceFirst("(?m)^\\[target]$", "[target]\nways = \"hears\""));
        List<PositionFigures> rows = rows(study(hears, 900, 900), 1);
        isAsReached(hears, rows.get(0));
        int heard = rows.stream()
                .mapToInt(row -> row.loadouts().get(0).heard().count())
                .sum();
        int talked = rows(study(both.withText(strong), 900, 900), 1).stream()
                .mapToInt(row -> row.loadouts().get(0).heard().count())
                .sum();
        assertTrue(heard > talked && talked > 0, heard + " hear the position, " + talked + " talk with it");
    }

    private static void isAsReached(PlanFile plan, PositionFigures row) {
        String there = plan.text()
                .replaceFirst(
                        "(?m)^centre = .*$",
                        "centre = \"" + row.at().latitudeDeg() + ", " + row.at().longitudeDeg() + "\"")
                .replaceFirst("(?m)^from = .*$", "");
        if (plan.plan().questions().reach().with().isEmpty())
            there = there.replaceFirst("(?m)^\\[reach]$", "[reach]\nalike = true");
        PlanFile moved = plan.withText(there);
        assertEquals(row.at(), moved.plan().places().area().centre());
        List<LoadoutReach> reaches =
                ReachStudy.run(Scene.open(moved), false, Progress.SILENT).loadouts();
        for (int i = 0; i < reaches.size(); i++) {
            LoadoutReach reach = reaches.get(i);
            LoadoutFigures figures = row.loadouts().get(i);
            assertEquals(reach.medianM(), figures.medianM());
            assertEquals(reach.worstM(), figures.worst().reachM());
            assertEquals(reach.worstBearingDeg(), figures.worst().bearingDeg());
            assertEquals(reach.share(), figures.share());
            assertEquals(reach.openEnded(), figures.openEnded());
            assertEquals(reach.partlyUnknown(), figures.partlyUnknown());
        }
    }

    /** Every pair by its own profile, cut and reckoned alone; pairs within a hundredth of a decibel of the wish may fall either way. */
    @Test
    void heardByIsWhatOnePathForEachPairSays() throws IOException {
        isHeardByOnePathEach(600, 500, false);
        isHeardByOnePathEach(550, 550, true);
    }

    private void isHeardByOnePathEach(double gridM, double targetsM, boolean isOnce) throws IOException {
        AtlasStudy study = study(plan("invented-valley", "2"), gridM, targetsM);
        assertEquals(isOnce, study.pairsAreOnce());
        Scene scene = study.scene();
        AtlasAnswer answer = AtlasAnswer.of(study, rows(study, 1), List.of());
        AtlasAnswer shadowed = AtlasAnswer.of(
                AtlasStudy.of(
                        scene,
                        new AtlasOptions(
                                gridM,
                                OptionalDouble.of(targetsM),
                                Optional.empty(),
                                Set.of(AtlasLayer.SHADOW),
                                0,
                                OptionalDouble.empty())),
                answer.positions(),
                List.of());
        AtlasGrid targets = study.targets();
        int heard = 0;
        int unheard = 0;
        for (int loadout : List.of(0, scene.loadouts().size() - 1))
            for (int target = 0; target < targets.cells().count(); target++) {
                if (!targets.isAsked(target)) continue;
                int low = 0;
                int high = 0;
                for (PositionFigures one : answer.positions()) {
                    double spareDb = spareDb(scene, one.at(), targets.cells().positionOf(target), loadout);
                    if (spareDb >= 0.01) low++;
                    if (spareDb >= -0.01) high++;
                }
                int found = shadowed.heardBy(target, loadout);
                assertTrue(found >= low && found <= high, found + " of " + low + " to " + high);
                heard += found;
                unheard += answer.positions().size() - found;
            }
        assertTrue(heard > 100 && unheard > 100, heard + " heard, " + unheard + " not");
    }

    /** Over open ground to the last bit, with ground that is not known on one side; over mixed cover see docs/atlas.md. */
    @Test
    void pairsOnceAreThePairsFromBothEnds() throws IOException {
        Path overTheEdge = Files.writeString(
                folder.resolve("edge.geojson"),
                "{\"type\":\"Polygon\",\"coordinates\":[[[-105.05,36.98],[-105.0,36.98],[-104.98,37.03],[-105.05,37.02],"
                        + "[-105.05,36.98]]]}");
        int pairs = 0;
        for (AtlasStudy study : List.of(
                study(plan("invented-valley", "2.5"), 350, 350),
                AtlasStudy.of(
                        Scene.open(plan("high-mountains", "2.2")),
                        new AtlasOptions(
                                330,
                                OptionalDouble.empty(),
                                Optional.of(overTheEdge),
                                Set.of(),
                                0,
                                OptionalDouble.empty())))) {
            assertTrue(study.pairsAreOnce());
            List<PositionFigures> once = rows(study, study.reckoner(true));
            assertTrue(once.stream().anyMatch(PositionFigures::isOfLater));
            PairsOnce.complete(study.positions().cells(), once);
            List<PositionFigures> twice = rows(study, study.reckoner(false));
            assertEquals(twice.size(), once.size());
            for (int i = 0; i < once.size(); i++) assertEquals(bits(twice.get(i)), bits(once.get(i)));
            pairs += twice.stream()
                    .flatMap(row -> row.loadouts().stream())
                    .mapToInt(one -> one.heard().count())
                    .sum();
            if (study.wish().region().isPresent())
                assertTrue(twice.stream().anyMatch(row -> !row.isKnown()), "ground that is not known");
        }
        assertTrue(pairs > 10_000, pairs + " pairs");
    }

    private static List<PositionFigures> rows(AtlasStudy study, BlockReach reckoner) {
        List<PositionFigures> rows = new ArrayList<>();
        for (AtlasBlock block : study.positions().blocks()) rows.addAll(reckoner.reckon(block, Progress.SILENT));
        rows.sort(Comparator.comparingInt(PositionFigures::cell));
        return rows;
    }

    private static String bits(PositionFigures row) {
        return row.cell() + " "
                + row.loadouts().stream()
                        .map(LoadoutFigures::heard)
                        .map(heard ->
                                heard.window() + " " + HexFormat.of().formatHex(heard.bytes()) + " of " + heard.known())
                        .toList();
    }

    /** Where one end does not stand for the other, both are reckoned. */
    @Test
    void pairsOfUnlikeEndsAreReckonedFromBoth() throws IOException {
        PlanFile plan = plan("forest-hills", "1.5");
        assertTrue(study(plan, 700, 700).pairsAreOnce());
        assertFalse(study(plan, 700, 500).pairsAreOnce());
        assertFalse(study(plan, 80, 80).pairsAreOnce(), "neighbours nearer than the models hold");
        for (String[] change : new String[][] {
            {"(?m)^\\[reach]$", "[reach]\nwith = \"factory at hip\""},
            {"(?m)^\\[target]$", "[target]\nways = \"hears\""},
            {"(?m)^\\[reach]$", "[reach]\nmodel = \"p1812\""}
        }) {
            PlanFile other =
                    plan.withText(plan.text().replaceAll("(?m)^model = .*$", "").replaceFirst(change[0], change[1]));
            assertFalse(study(other, 700, 700).pairsAreOnce(), change[1]);
        }
        Position cell = study(plan, 700, 700).positions().cells().positionOf(8);
        assertTrue(
                study(facing(plan, cell.latitudeDeg() + 1e-5, cell), 700, 700).pairsAreOnce(), "beside a position");
        assertFalse(study(facing(plan, cell.latitudeDeg(), cell), 700, 700).pairsAreOnce(), "at a position");
    }

    /** The plan with somebody at a place who faces east. */
    private static PlanFile facing(PlanFile plan, double latitudeDeg, Position at) {
        PlanFile moved = plan.withText(plan.text()
                .replace(
                        "at = \"36.3000, -84.1950\"",
                        "at = \"" + latitudeDeg + ", " + at.longitudeDeg() + "\"\nheading_deg = 90"));
        assertTrue(moved.plan().places().positions().get(1).facing().isPresent());
        return moved;
    }

    /** Margin over the wish along one path; far below it beyond the radius. */
    private static double spareDb(Scene scene, Position at, Position to, int loadout) {
        double distanceM = GeodesicLine.distanceM(at, to);
        if (distanceM > 1000 * scene.plan().places().area().radiusKm() || distanceM < 50) return -1000;
        ReachLink link = scene.at(at).link(scene.loadouts().get(loadout));
        Profile profile = PathCut.between(scene.tiles(), scene.cover(), at, to, scene.cut())
                .profile()
                .orElseThrow();
        var conditions = scene.conditions(at);
        double lossDb =
                scene.model().loss(profile, link.terminals(), conditions).lossDb();
        PathGeometry angles =
                PathGeometry.of(profile, link.terminals(), conditions.atmosphere(), conditions.frequency());
        double margin = link.marginDb(lossDb, angles.departureDeg(), angles.arrivalDeg(), Cover.OPEN);
        return margin - link.thresholdDb(scene.plan().channel().wish().odds());
    }

    @Test
    void threadsChangeNothing() throws IOException {
        AtlasStudy study = study(plan("forest-hills", "1.5"), 800, 800);
        assertEquals(words(rows(study, 1)), words(rows(study, 3)));
    }

    private static List<String> words(List<PositionFigures> rows) {
        return rows.stream()
                .map(row -> row.cell() + " "
                        + row.loadouts().stream()
                                .map(one -> one.medianM() + " " + one.share() + " "
                                        + one.heard().count())
                                .toList())
                .toList();
    }

    @Test
    void aBlockThatFailsIsToldAndTheOthersGoOn() {
        List<AtlasBlock> blocks = new ArrayList<>();
        for (int i = 0; i < 9; i++) blocks.add(new AtlasBlock(i, i, 0, 1, 1));
        Set<Integer> done = ConcurrentHashMap.newKeySet();
        List<BlockFault> faults = AtlasRun.run(
                blocks,
                3,
                block -> {
                    if (block.number() == 4) throw new InputFault("N46E008.hgt", 0, "is cut short. Load it anew.");
                    if (block.number() == 7) throw new IllegalStateException("loss is not finite");
                    return List.of();
                },
                (block, rows) -> done.add(block.number()),
                Progress.SILENT);
        assertEquals(Set.of(0, 1, 2, 3, 5, 6, 8), done);
        assertEquals(
                List.of(
                        new BlockFault(4, "N46E008.hgt: is cut short. Load it anew."),
                        new BlockFault(7, "loss is not finite (a defect of the program, not of your input)")),
                faults);
    }

    /** A full disk ends the run: nothing more could be kept. */
    @Test
    void aBlockThatCannotBeWrittenEndsTheRun() {
        List<AtlasBlock> blocks = new ArrayList<>();
        for (int i = 0; i < 9; i++) blocks.add(new AtlasBlock(i, i, 0, 1, 1));
        AtomicInteger reckoned = new AtomicInteger();
        InputFault full = new InputFault("positions/block-000000.jsonl", 0, "cannot be written.");
        assertEquals(
                full,
                assertThrows(
                        InputFault.class,
                        () -> AtlasRun.run(
                                blocks,
                                1,
                                block -> {
                                    reckoned.incrementAndGet();
                                    return List.of();
                                },
                                (block, rows) -> {
                                    throw full;
                                },
                                Progress.SILENT)));
        assertEquals(1, reckoned.get());
    }

    @Test
    void whatCannotBeAskedIsOneClearLine() throws IOException {
        PlanFile plan = plan("forest-hills", "2");
        Scene scene = Scene.open(plan);
        Path elsewhere = Files.writeString(
                folder.resolve("elsewhere.geojson"),
                "{\"type\":\"Polygon\",\"coordinates\":[[[0,0],[0.1,0],[0.1,0.1],[0,0.1],[0,0]]]}");
        assertEquals(
                elsewhere + ": lies where no elevation is known. Add the tiles under it, or draw another region.",
                fault(
                        scene,
                        new AtlasOptions(
                                500, OptionalDouble.empty(), Optional.of(elsewhere), ALL, 0, OptionalDouble.empty())));
        assertTrue(fault(
                        scene,
                        new AtlasOptions(40, OptionalDouble.empty(), Optional.empty(), ALL, 0, OptionalDouble.empty()))
                .startsWith("--grid: is finer than the posts of the ground, which stand "));
        assertTrue(fault(
                        scene,
                        new AtlasOptions(500, OptionalDouble.of(900), Optional.empty(), ALL, 0, OptionalDouble.empty()))
                .startsWith("--targets: is not the grid of the positions"));
        assertTrue(fault(
                        scene,
                        new AtlasOptions(5, OptionalDouble.empty(), Optional.empty(), ALL, 99, OptionalDouble.empty()))
                .matches("--grid: is 5, allowed is 30 to 20000 m\\. .*\n--relays: is 99, allowed is 0 to 50\\. .*"));
        assertEquals(300, AtlasOptions.metres("--grid", "300m"));
        assertEquals(1500, AtlasOptions.metres("--grid", "1.5 km"));
        assertThrows(InputFault.class, () -> AtlasOptions.metres("--grid", "300 ft"));
    }

    private static String fault(Scene scene, AtlasOptions wish) {
        return assertThrows(InputFault.class, () -> AtlasStudy.of(scene, wish)).getMessage();
    }
}
