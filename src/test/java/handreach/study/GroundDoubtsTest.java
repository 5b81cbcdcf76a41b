package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.terrain.PaperTiff;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What answers say about tiles that contradict one another and about land cover that lies elsewhere. */
class GroundDoubtsTest {
    private static final Path SAMPLES = Path.of("elevation-samples").toAbsolutePath();
    private static final double STEP = 1 / 1200.0;

    @TempDir
    Path folder;

    private String text;

    @BeforeEach
    void aPlanOfItsOwn() throws IOException {
        Files.createDirectories(folder.resolve("tiles"));
        try (Stream<Path> tiles = Files.list(SAMPLES.resolve("forest-hills/tiles"))) {
            for (Path tile : tiles.toList())
                Files.copy(tile, folder.resolve("tiles").resolve(tile.getFileName()));
        }
        for (String file : List.of("walk-track.gpx", "walk-reports.csv"))
            Files.copy(SAMPLES.resolve("forest-hills").resolve(file), folder.resolve(file));
        text = Files.readString(SAMPLES.resolve("forest-hills/plan.toml"))
                .replace("../invented-bench", SAMPLES.resolve("invented-bench").toString())
                .replace("cover = \"woodland\"", "cover = \"open\"")
                .replace("[reach]", "[reach]\nmodel = \"handheld\"");
    }

    private Scene scene(String groundLines) throws IOException {
        Path plan = folder.resolve("plan.toml");
        Files.writeString(plan, text.replace("noise = \"rural\"", "noise = \"rural\"\n" + groundLines));
        return Scene.open(PlanFile.open(plan));
    }

    private void coverAt(double west, double north) throws IOException {
        new PaperTiff(40, 40, (x, y) -> x % 2 == 0 ? 10 : 30)
                .sample(8, 1)
                .at(west, north, 0.01, 0.01)
                .write(folder.resolve("cover.tif"));
    }

    /** The sample's middle lies at 36.3 N, 84.2 W. */
    @Test
    void landCoverOfAnotherContinentIsToldAndChangesNothing() throws IOException {
        Scene without = scene("");
        coverAt(6.4, 0.4);
        Scene with = scene("land_cover = \"cover.tif\"");
        assertEquals(without.terms(), with.terms());
        List<String> told = with.warnings().stream()
                .filter(said -> said.startsWith("cover.tif: "))
                .toList();
        assertEquals(1, told.size(), String.join("\n", with.warnings()));
        assertTrue(told.get(0).contains("covers none of the plan's area"), told.get(0));
        assertEquals(1, told.get(0).lines().count());
    }

    @Test
    void landCoverOfTheAreaRaisesTheSpreadAndIsNotTold() throws IOException {
        Scene without = scene("");
        Position middle = without.plan().places().area().centre();
        coverAt(middle.longitudeDeg() - 0.2, middle.latitudeDeg() + 0.2);
        Scene with = scene("land_cover = \"cover.tif\"");
        assertTrue(with.terms().model().spreadDb() > without.terms().model().spreadDb());
        assertEquals(without.warnings(), with.warnings());
    }

    @Test
    void aMapThatHoldsNoDataOverTheAreaCoversNoneOfIt() throws IOException {
        Position middle = scene("").plan().places().area().centre();
        new PaperTiff(40, 40, (x, y) -> 0)
                .sample(8, 1)
                .at(middle.longitudeDeg() - 0.2, middle.latitudeDeg() + 0.2, 0.01, 0.01)
                .write(folder.resolve("cover.tif"));
        assertTrue(scene("land_cover = \"cover.tif\"").warnings().stream()
                .anyMatch(said -> said.startsWith("cover.tif: covers none")));
    }

    @Test
    void polygonsElsewhereAreToldAndChangeNothing() throws IOException {
        Files.writeString(
                folder.resolve("wood.geojson"),
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"cover\":\"woodland\"},"
                        + "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[6,0],[7,0],[7,1],[6,1],[6,0]]]}}]}");
        Scene without = scene("");
        Scene with = scene("cover_areas = \"wood.geojson\"");
        assertEquals(without.terms(), with.terms());
        assertTrue(with.warnings().stream().anyMatch(said -> said.startsWith("wood.geojson: covers none")));
    }

    /** A set 40 m higher over the whole area, coarser than the sample's. */
    @Test
    void tilesThatContradictOneAnotherAreToldByReachAndPath() throws IOException {
        Position middle = scene("").plan().places().area().centre();
        new PaperTiff(40, 40, (x, y) -> 1900)
                .at(middle.longitudeDeg() - 0.1, middle.latitudeDeg() + 0.1, 5 * STEP, 5 * STEP)
                .write(folder.resolve("tiles/high.tif"));
        Scene scene = scene("");
        ReachAnswer reach = ReachStudy.run(scene, false, Progress.SILENT);
        assertEquals(
                1,
                reach.warnings().stream()
                        .filter(said -> said.startsWith("high.tif: lies"))
                        .count());
        PathAnswer path = PathStudy.between(
                new PathStudy.CutGround(scene.tiles(), scene.cover(), scene.cut()),
                middle,
                new Position(middle.latitudeDeg() + 0.01, middle.longitudeDeg() + 0.01),
                Scene.terminals(scene.loadouts().get(0), scene.loadouts().get(0)),
                scene.conditions(),
                List.of(scene.model()));
        assertTrue(path.warnings().stream().anyMatch(said -> said.startsWith("high.tif: lies")));
    }
}
