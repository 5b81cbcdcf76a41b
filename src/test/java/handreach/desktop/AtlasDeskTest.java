package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.geodesy.Position;
import handreach.story.CommandRun;
import handreach.units.Lengths;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** An atlas that the command made, laid over the map of the same plan. */
@Isolated
class AtlasDeskTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private Set<String> words(String query) {
        return run.onScreen(() -> run.node(query).lookupAll(".label").stream()
                .map(label -> ((Labeled) label).getText())
                .collect(Collectors.toSet()));
    }

    private void lay(Path atlas) {
        run.onScreen(() -> run.window().drop().take(List.of(atlas)));
        run.settle();
    }

    /** The first position of the first block, as it stands in the file. */
    private static JsonNode row(Path atlas) throws IOException {
        return new ObjectMapper()
                .readTree(Files.readAllLines(atlas.resolve("positions").resolve("block-000000.jsonl"))
                        .get(1));
    }

    @Test
    void anAtlasLiesOverTheMapAClickShowsItsFiguresAndOneCanStandThere() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Path atlas = folder.resolve("atlas");
        CommandRun made = CommandRun.of(
                "atlas",
                run.plan().toString(),
                "--grid",
                "1500m",
                "--layers",
                "reach,shadow",
                "--out",
                atlas.toString());
        assertEquals(0, made.code(), made.err());
        ComboBox<Layer> layers = run.node("#layer");
        assertFalse(layers.getItems().contains(Layer.ATLAS_MEDIAN), "not before there is one");

        lay(atlas);
        assertTrue(
                run.noticeTexts().stream().anyMatch(words -> words.startsWith("An atlas of ")),
                run.noticeTexts().toString());
        assertEquals(
                Layer.ATLAS_MEDIAN, run.onScreen(() -> run.session().layer().get()));
        assertTrue(
                words("#map-key").contains("Median reach, atlas, factory at face"),
                words("#map-key").toString());
        for (Layer layer : List.of(Layer.ATLAS_LEAST, Layer.ATLAS_HEARD, Layer.ATLAS_SHADOW)) {
            run.onScreen(() -> run.session().layer().set(layer));
            run.settle();
            assertTrue(
                    words("#map-key").stream().anyMatch(line -> line.contains(", atlas")),
                    layer + ": " + words("#map-key"));
        }
        run.snapshot("atlas-shadow");
        run.onScreen(() -> run.session().layer().set(Layer.ATLAS_MEDIAN));
        run.settle();

        JsonNode row = row(atlas);
        Position at = new Position(
                row.get("latitude").asDouble(), row.get("longitude").asDouble());
        run.onScreen(() -> run.window().map().middleOn(at));
        run.settle();
        run.robot().clickOn(run.pixel(at));
        run.settle();
        String median = Lengths.METRIC.text(row.at("/loadouts/0/median_m/0").asDouble());
        assertTrue(
                words("#atlas-place").stream().anyMatch(cell -> cell.startsWith(median + " (")),
                median + ": " + words("#atlas-place"));
        run.snapshot("atlas-place");

        run.press("#atlas-stand");
        Position stands = run.onScreen(() -> run.session().scene().get().middle());
        assertEquals(at.latitudeDeg(), stands.latitudeDeg(), 1e-6);
        assertEquals(at.longitudeDeg(), stands.longitudeDeg(), 1e-6);
        assertTrue(run.onScreen(() -> run.session().atlas().get().isPresent()), "it stays though the plan is another");
        run.onScreen(() -> run.session().undo());
        run.settle();
        assertEquals(
                run.position("spike camp"),
                run.onScreen(() -> run.session().scene().get().middle()));

        Files.writeString(atlas.resolve("atlas.json"), "{}");
        lay(atlas);
        assertTrue(
                run.noticeTexts()
                        .get(0)
                        .contains("atlas.json: is no summary that this version of the program can show."),
                run.noticeTexts().toString());
        assertTrue(run.onScreen(() -> run.session().atlas().get().isPresent()), "what lay there stays");
        run.onScreen(() -> run.session().takeAtlasAway());
        run.settle();
        assertEquals(Layer.ODDS, run.onScreen(() -> run.session().layer().get()));
        assertFalse(layers.getItems().contains(Layer.ATLAS_LEAST));
    }
}
