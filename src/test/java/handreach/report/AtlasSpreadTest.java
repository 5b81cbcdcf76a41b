package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.study.AtlasOptions;
import handreach.study.AtlasStudy;
import handreach.study.BlockFault;
import handreach.study.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a worker makes of what was sent to it. */
class AtlasSpreadTest {
    @TempDir
    Path folder;

    private PlanFile plan(String sample, String radiusKm) throws IOException {
        Path from = Path.of("elevation-samples", sample).toAbsolutePath();
        String text = Files.readString(from.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + from.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + from.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replaceFirst("radius_km = \\S+", "radius_km = " + radiusKm)
                .replaceFirst("bearing_step_deg = \\S+", "bearing_step_deg = 45\nmodel = \"handheld\"");
        return PlanFile.open(Files.writeString(folder.resolve("plan.toml"), text));
    }

    private AtlasOptions wish(double gridM, String west, String east, String south, String north) throws IOException {
        String ring =
                String.format("[%1$s,%3$s],[%2$s,%3$s],[%2$s,%4$s],[%1$s,%4$s],[%1$s,%3$s]", west, east, south, north);
        return new AtlasOptions(
                gridM,
                OptionalDouble.empty(),
                Optional.of(Files.writeString(
                        folder.resolve("region.geojson"), "{\"type\":\"Polygon\",\"coordinates\":[[" + ring + "]]}")),
                Set.of(),
                0,
                OptionalDouble.empty());
    }

    /** The region lies over two tiles: without the second, half of it would be unknown ground, and nobody would be told. */
    @Test
    void aWorkerWithoutOneOfTheTilesSaysSoInOneLineAndNoBlockIsKept() throws IOException {
        AtlasStudy study = AtlasStudy.of(
                Scene.open(plan("high-mountains", "1")), wish(900, "-105.05", "-104.95", "37.40", "37.41"));
        try (AtlasFolder atlas = AtlasFolder.open(study, folder.resolve("out"))) {
            assertTrue(atlas.todo().size() > 1, atlas.todo().size() + " blocks");
            AtlasSpread spread = AtlasSpread.of("local[1]", OptionalInt.empty(), 1);
            AtlasSpread.Laid laid =
                    AtlasSpread.laidOut(atlas, Files.createDirectories(folder.resolve("aside/all")), Progress.SILENT);
            Path tile = laid.folder().resolve("tiles/N37W105.hgt.zip");
            Path away = Files.move(tile, folder.resolve("tile"));
            List<BlockFault> faults = spread.run(atlas, atlas.todo(), laid, Progress.SILENT);
            assertEquals(atlas.todo().size(), faults.size());
            List<String> said = AtlasComposer.faults(faults);
            assertEquals(1, said.size(), said::toString);
            assertTrue(said.get(0).contains("did not arrive whole on this worker"), said::toString);

            Files.move(away, tile);
            assertEquals(List.of(), spread.run(atlas, atlas.todo(), laid, Progress.SILENT));
            assertEquals(List.of(), atlas.todo());
        }
    }

    /** A block that failed and comes later gives its neighbours pairs that they had not: their columns are written anew, once. */
    @Test
    void columnsFollowABlockThatComesLater() throws IOException {
        AtlasStudy study =
                AtlasStudy.of(Scene.open(plan("forest-hills", "1")), wish(300, "-84.24", "-84.19", "36.26", "36.275"));
        AtlasSpread spread = AtlasSpread.of("local[1]", OptionalInt.empty(), 1);
        try (AtlasFolder atlas = AtlasFolder.open(study, folder.resolve("out"))) {
            assertEquals(2, atlas.todo().size());
            study.run(atlas.todo().subList(0, 1), 1, atlas::put, Progress.SILENT);
            atlas.answer(List.of());
            spread.addColumns(atlas, Progress.SILENT);
            assertEquals(List.of(), atlas.withoutColumns());
        }
        try (AtlasFolder atlas = AtlasFolder.open(study, folder.resolve("out"))) {
            atlas.answer(List.of());
            assertEquals(List.of(), atlas.withoutColumns());
        }
        try (AtlasFolder atlas = AtlasFolder.open(study, folder.resolve("out"))) {
            study.run(atlas.todo(), 1, atlas::put, Progress.SILENT);
            atlas.answer(List.of());
            assertEquals(2, atlas.withoutColumns().size());
            spread.addColumns(atlas, Progress.SILENT);
            assertEquals(List.of(), atlas.withoutColumns());
        }
    }

    /** All figures of such a region fill more memory than a worker, or this test, has; a worker holds one block. */
    @Test
    void aWorkerNeedsNoRoomForTheWholeRegion() throws IOException {
        PlanFile plan = plan("forest-hills", "30");
        AtlasOptions wish = wish(100, "-84.40", "-83.90", "36.00", "36.40");
        String said = assertThrows(InputFault.class, () -> AtlasStudy.of(Scene.open(plan), wish))
                .getMessage();
        Matcher bound = Pattern.compile("--grid: makes \\d+ positions, at most \\d+ fit\\. .* -Xmx(\\d+)m .*")
                .matcher(said);
        assertTrue(bound.matches(), said);
        // 170 kB a position: what lifts the bound is told for this region, not for the largest that there may be
        assertTrue(Integer.parseInt(bound.group(1)) < 55_000, said);
        Path all = Files.createDirectories(folder.resolve("all"));
        PlanFile shipped = plan.saveAs(all.resolve(AtlasErrand.PLAN), PlanFile.Named.TAKEN_ALONG, () -> true);
        Path region = Files.copy(wish.region().orElseThrow(), all.resolve(AtlasErrand.REGION));
        AtlasErrand errand = new AtlasErrand(
                "question", List.of(), 100, 100, true, AtlasErrand.digest(shipped, Optional.of(region)));
        assertNotNull(errand.open(all));
    }
}
