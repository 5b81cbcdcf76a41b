package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The polygon of {@code [area]}: read by every command, and obeyed by what is counted and drawn. */
class S15DrawnAreaTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills");
    /** West of the middle alone, to beyond the radius: half of the ground. */
    private static final String WEST = polygon(-84.40, -84.21, 36.10, 36.45);

    @TempDir
    Path folder;

    private static String polygon(double west, double east, double south, double north) {
        return String.format(
                java.util.Locale.ROOT,
                "{\"type\":\"Polygon\",\"coordinates\":[[[%1$f,%3$f],[%2$f,%3$f],[%2$f,%4$f],[%1$f,%4$f],[%1$f,%3$f]]]}",
                west,
                east,
                south,
                north);
    }

    private Path plan(String geoJson) throws IOException {
        Files.writeString(folder.resolve("area.geojson"), geoJson);
        String text = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("radius_km = 5", "radius_km = 2\npolygon = \"area.geojson\"")
                .replace("cell_m = 30", "cell_m = 60");
        for (String named : List.of("tiles", "../invented-bench/bench.csv", "walk-track.gpx", "walk-reports.csv")) {
            Path there = SAMPLE.resolve(named).toAbsolutePath().normalize();
            text = text.replace('"' + named + '"', '"' + there.toString().replace('\\', '/') + '"');
        }
        return Files.writeString(folder.resolve("plan.toml"), text);
    }

    private static JsonNode json(CommandRun run) throws IOException {
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void everyCommandThatOpensThePlansGroundTellsGarbage() throws IOException {
        String plan = plan("no polygon").toString();
        String out = folder.resolve("out").toString();
        for (String[] command : new String[][] {
            {"reach", plan},
            {"relay", plan},
            {"card", plan, "--out", out},
            {"report", plan, "--out", out},
            {"walk", plan},
            {"walk", plan, "--next"},
            {"path", "--plan", plan, "--from", "spike camp", "--to", "north spur"}
        }) {
            CommandRun run = CommandRun.of(command);
            assertEquals(2, run.code(), command[0] + run.err());
            assertTrue(run.err().startsWith("area.geojson line 1: is not JSON"), command[0] + run.err());
            assertEquals(1, run.err().lines().count(), run.err());
        }
    }

    /** By hand: the middle lies on the polygon's east side, so half of the circle's cells are left. */
    @Test
    void cellsOutsideAreNeitherCountedNorDrawn() throws IOException {
        String everywhere = plan(polygon(-85, -83, 35, 37)).toString();
        String out = folder.resolve("all").toString();
        JsonNode all = json(CommandRun.of("reach", everywhere, "--json", "--out", out, "--only", "rasters,outlines"));
        String west = plan(WEST).toString();
        String half = folder.resolve("half").toString();
        JsonNode cut = json(CommandRun.of("reach", west, "--json", "--out", half, "--only", "rasters,outlines"));
        double kept = cut.at("/area/known_cells").asDouble()
                / all.at("/area/known_cells").asDouble();
        assertEquals(0.5, kept, 0.02);
        assertEquals(all.at("/loadouts/0/median_km"), cut.at("/loadouts/0/median_km"));
        for (Path file : outlines(half)) {
            JsonNode features = new ObjectMapper().readTree(Files.readString(file));
            for (JsonNode number : features.findValues("coordinates")) assertTrue(east(number) < -84.2089, file + "");
        }
    }

    private static List<Path> outlines(String folder) throws IOException {
        try (var files = Files.list(Path.of(folder))) {
            List<Path> found =
                    files.filter(file -> file.toString().endsWith(".geojson")).toList();
            assertTrue(!found.isEmpty());
            return found;
        }
    }

    private static double east(JsonNode coordinates) {
        if (coordinates.size() == 2 && coordinates.get(0).isNumber())
            return coordinates.get(0).asDouble();
        double most = -180;
        for (JsonNode inner : coordinates) most = Math.max(most, east(inner));
        return most;
    }

    @Test
    void sharesOfBearingsAreOfTheGroundWithin() throws IOException {
        CommandRun near = CommandRun.of(
                "reach", plan(polygon(-84.213, -84.207, 36.268, 36.272)).toString(), "--json");
        CommandRun all = CommandRun.of("reach", plan(polygon(-85, -83, 35, 37)).toString(), "--json");
        // All that lies within 250 m of the middle is reached, most of the rest is not.
        assertTrue(share(json(near)) > 0.9, near.out());
        assertTrue(share(json(all)) < 0.6, all.out());
    }

    private static double share(JsonNode answer) {
        return answer.at("/loadouts/0/area_share").asDouble(Double.NaN);
    }

    @Test
    void aPolygonElsewhereIsToldAndCountsNothing() throws IOException {
        CommandRun run = CommandRun.of("reach", plan(polygon(8, 9, 46, 47)).toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.err().contains("The polygon of [area] leaves out all known ground"), run.err());
    }
}
