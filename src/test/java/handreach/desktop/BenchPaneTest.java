package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.AntennaResult;
import handreach.bench.BenchAnalysis;
import handreach.plan.Equipment;
import handreach.plan.NameKind;
import handreach.plan.PlanFile;
import handreach.plan.PlanText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The bench drawer in the real window: what the plan's readings say, and files dropped on the window. */
@Isolated
class BenchPaneTest {
    private static final String READINGS = "antenna,mount,quantity,value,unit,frequency_mhz,trial,note\n"
            + trials("factory helical", -40.2, -40.4, -40.1)
            + trials("quarter-wave whip", -37.0, -37.3, -37.1)
            + trials("quarter-wave whip with wire", -35.1, -35.4, -35.0)
            + trials("end-fed half-wave", -36.0, -36.2, -36.3)
            + trials("five-eighths whip", -35.9, -36.0, -36.3);

    @TempDir
    private Path folder;

    private WindowRun run;

    private static String trials(String antenna, double... dbm) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < dbm.length; i++)
            rows.append(antenna + ",in hand,received_level," + dbm[i] + ",dBm,155," + (i + 1) + ",\n");
        return rows.toString();
    }

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private List<String> texts(String query) {
        return run.onScreen(() -> run.robot().lookup(query).<Labeled>queryAll().stream()
                .filter(BenchPaneTest::isVisible)
                .map(Labeled::getText)
                .toList());
    }

    /** What the tables of levels say of each antenna. */
    private List<String> verdicts() {
        List<String> words = Arrays.stream(AntennaResult.Finding.values())
                .map(AntennaResult.Finding::words)
                .toList();
        return texts("#bench-findings .sheet .label").stream()
                .filter(words::contains)
                .toList();
    }

    private List<String> strong() {
        return texts("#bench-findings .strong");
    }

    private static boolean isVisible(Node node) {
        for (Node each = node; each != null; each = each.getParent()) if (!each.isVisible()) return false;
        return true;
    }

    private void drop(Path... files) {
        run.onScreen(() -> run.window().drop().take(List.of(files)));
        run.settle();
    }

    private Path written(String name, String text) throws IOException {
        return Files.writeString(
                Files.createDirectories(folder.resolve("read here")).resolve(name), text);
    }

    @Test
    void thePlansReadingsAreShownAndADroppedFileCanBeTakenIn() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.robot().clickOn("#bench-evidence");
        run.settle();
        BenchAnalysis planned =
                run.onScreen(() -> run.session().scene().get().bench().orElseThrow());
        long antennas =
                planned.mounts().stream().mapToLong(m -> m.antennas().size()).sum();
        List<String> verdicts = verdicts();
        assertEquals(antennas, verdicts.size());
        assertTrue(verdicts.stream().allMatch(words -> words.endsWith("told apart")), verdicts.toString());
        assertTrue(strong().get(0).startsWith("Mounting \"in hand\": strongest of 7 antennas"), strong().toString());
        run.snapshot("bench-view");
        run.onScreen(() -> run.robot().lookup("#drawer-taller").<Button>query().fire());
        run.onScreen(
                () -> run.robot().lookup("#bench-scroll").<ScrollPane>query().setVvalue(0.55));
        run.settle();
        run.snapshot("bench-view-lower");

        Path readings = written("readings.csv", READINGS);
        drop(readings);
        assertEquals(4, verdicts().size());
        assertTrue(
                texts("#bench-about").get(0).contains("not in the plan"),
                texts("#bench-about").toString());
        run.onScreen(() ->
                run.robot().lookup("#bench-control").<ComboBox<String>>query().setValue("five-eighths whip"));
        run.settle();
        assertTrue(strong().get(0).contains(" dB over five-eighths whip."), strong().toString());
        run.onScreen(() ->
                run.robot().lookup("#bench-control").<ComboBox<String>>query().setValue("factory helical"));
        run.settle();
        run.onScreen(() -> run.robot().lookup("#bench-take").<Button>query().fire());
        run.settle();
        Equipment.Bench taken = run.onScreen(
                () -> run.session().scene().get().plan().equipment().bench().orElseThrow());
        assertTrue(Files.isSameFile(readings, taken.file()));
        assertEquals("in hand", taken.mount());
        assertTrue(texts("#bench-about").get(0).startsWith("In the plan: readings.csv"));
        run.robot().push(KeyCode.SHORTCUT, KeyCode.S);
        run.settle();
        assertTrue(PlanFile.open(run.plan()).text().contains("file = \"../read here/readings.csv\""));
        assertEquals(List.of(), faults());
    }

    @Test
    void badFilesAreToldLineByLineSweepsAreAddedAndNothingIsCutOffOnASmallScreen() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.B);
        run.settle();
        int before = verdicts().size();
        drop(written("bad.csv", READINGS + "whip,in hand,swr,0.8,,155,1,\nwhip,in hand,loudness,3,dB,155,1,\n"));
        assertEquals(2, faults().size(), faults().toString());
        assertTrue(faults().get(0).startsWith("bad.csv line 17: "), faults().get(0));
        assertTrue(faults().get(1).startsWith("bad.csv line 18: "), faults().get(1));
        assertEquals(before, verdicts().size());
        assertTrue(before > 0);
        run.snapshot("bench-fault");
        drop(written("bad.s1p", "# MHz S RI R 50\n150 0.1 zero\n"));
        assertTrue(faults().stream().anyMatch(words -> words.startsWith("bad.s1p line 2")), faults().toString());
        drop(written("own sweep.s1p", "# MHz S RI R 50\n150 0.4 0.1\n155 0.1 0\n160 0.3 -0.2\n"));
        assertEquals(List.of(), faults());
        assertTrue(texts("#bench-findings .label").contains("own sweep.s1p"));
        drop(written("photo.jpg", "no readings"));
        assertTrue(run.noticeTexts().stream().anyMatch(words -> words.contains("photo.jpg")));
        run.onScreen(() -> run.session().notices().clear());

        run.robot().push(KeyCode.SHORTCUT, KeyCode.D);
        run.onScreen(() -> run.robot().lookup("#drawer-taller").<Button>query().fire());
        run.settle();
        run.snapshot("bench-view-night");
        run.onScreen(() -> {
            run.stage().setWidth(1100);
            run.stage().setHeight(700);
        });
        run.settle();
        run.snapshot("bench-view-small");
        assertEquals("", run.onScreen(() -> cutOff("#bench-pane .label")));
        assertEquals(List.of(), run.onScreen(this::broken));
        assertFalse(run.onScreen(() -> run.session().isEdited().get()));
    }

    /** A plan made in the window has one antenna with a name of its own: the readings' name for it is one click away. */
    @Test
    void anAntennaThatTheReadingsCallOtherwiseIsGivenTheirNameByOneClick() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        run.onScreen(() -> run.session().edit("another name", text -> {
            String with = PlanText.rename(text, NameKind.ANTENNA, "factory helical", "what it came with");
            return PlanText.withEntryValue(with, "antenna", "what it came with", "bench", "\"what it came with\"");
        }));
        run.settle();
        run.robot().push(KeyCode.SHORTCUT, KeyCode.B);
        drop(written("readings.csv", READINGS));
        assertTrue(
                texts("#bench-names .label").get(0).startsWith("No reading is called \"what it came with\""),
                texts("#bench-names .label").toString());
        List<String> offered = texts("#bench-names .link");
        assertEquals(List.of("factory helical"), offered);
        run.onScreen(() -> ((Button) run.node("#bench-names .link")).fire());
        run.settle();
        assertFalse(run.node("#bench-names").isVisible());
        assertEquals(
                "factory helical",
                run.onScreen(() -> run.session().scene().get().plan().equipment().antennas().stream()
                        .filter(antenna -> antenna.name().equals("what it came with"))
                        .findFirst()
                        .orElseThrow()
                        .delta()
                        .benchName()));
        assertEquals(List.of(), run.noticeTexts());
    }

    private List<String> faults() {
        return texts("#bench-pane .fault .label");
    }

    private List<String> broken() {
        return run.robot().lookup("#bench-findings .label").<Labeled>queryAll().stream()
                .filter(label -> isVisible(label) && WindowTour.breaksAWord(label))
                .map(Labeled::getText)
                .toList();
    }

    private String cutOff(String query) {
        return run.robot().lookup(query).<Labeled>queryAll().stream()
                .filter(label -> isVisible(label) && !label.getText().isBlank())
                .filter(label -> Optional.ofNullable(label.lookup(".text"))
                        .filter(text -> isCut(label, (javafx.scene.text.Text) text))
                        .isPresent())
                .map(Labeled::getText)
                .collect(Collectors.joining("; "));
    }

    private static boolean isCut(Labeled label, javafx.scene.text.Text drawn) {
        Bounds room = label.getLayoutBounds();
        return !drawn.getText().equals(label.getText())
                || drawn.getLayoutBounds().getWidth() > room.getWidth() + 1;
    }
}
