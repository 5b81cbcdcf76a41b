package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.Equipment;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The plan edited in its forms and as text, by hand. */
@Isolated
class EditDeskTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private void write(String id, String words) {
        run.robot().clickOn(id).push(KeyCode.SHORTCUT, KeyCode.A).write(words).push(KeyCode.ENTER);
        run.settle();
    }

    private String text() {
        return run.onScreen(() -> run.session().scene().get().file().text());
    }

    private Equipment equipment() {
        return run.onScreen(() -> run.session().scene().get().plan().equipment());
    }

    private String fault(String key) {
        return run.robot().lookup("#fault-" + key).<Label>query().getText();
    }

    private void choose(String id, String value) {
        run.onScreen(() -> run.robot().lookup(id).<ComboBox<String>>query().setValue(value));
        run.settle();
    }

    /** Opens the form of an entry by its name in the list. */
    private void open(String name) {
        run.onScreen(() -> run.robot().lookup(".kit-entry").queryAllAs(Button.class).stream()
                .filter(button -> button.getText().equals(name))
                .findFirst()
                .orElseThrow()
                .fire());
        run.settle();
    }

    @Test
    void theChannelStandsOnTopAndIsEditedWithItsLimitsBesideTheField() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Button channel = run.robot().lookup("#channel").query();
        assertEquals("crew direct, 155.16 MHz; handheld 5 W", channel.getText());
        run.robot().clickOn("#channel");
        run.settle();
        ComboBox<String> modulation = run.robot().lookup("#field-modulation").query();
        assertEquals(
                "not said",
                run.onScreen(() ->
                        modulation.getConverter().toString(modulation.getItems().get(0))));
        write("#field-frequency_mhz", "15516");
        assertEquals("frequency is 15516, allowed is 30 to 1000 MHz. Correct the value.", fault("frequency_mhz"));
        assertEquals(List.of(), run.noticeTexts());
        run.snapshot("edit-channel");
        run.robot().push(KeyCode.ESCAPE);
        TextField field = run.robot().lookup("#field-frequency_mhz").query();
        assertEquals("155.16", field.getText());
        assertEquals("", fault("frequency_mhz"));
        write("#field-frequency_mhz", "462.5625");
        assertTrue(channel.getText().startsWith("crew direct, 462.5625 MHz"), channel.getText());
        assertTrue(text().contains("frequency_mhz = 462.5625\npolarization = \"vertical\""), text());
        run.robot().push(KeyCode.SHORTCUT, KeyCode.Z);
        run.settle();
        assertTrue(channel.getText().startsWith("crew direct, 155.16 MHz"), channel.getText());
    }

    @Test
    void aRadioIsEditedAndWhatBelongsTogetherGoesTogether() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.E);
        open("handheld");
        write("#field-power_w", "2");
        assertEquals(2, equipment().radios().get(0).powerW());
        assertTrue(text().contains("sensitivity_dbm = -119        # level for 12 dB SINAD"));
        write("#field-sensitivity_uv", "0.2");
        assertTrue(fault("sensitivity_uv").contains("Waits for these are"), fault("sensitivity_uv"));
        choose("#field-sensitivity_across", "50-ohm");
        assertFalse(text().contains("sensitivity_dbm = -119"), text());
        assertEquals(-121, equipment().radios().get(0).sensitivityDbm().orElseThrow(), 0.1);
        run.snapshot("edit-radio");
        write("#field-sensitivity_dbm", "-118");
        assertFalse(text().contains("sensitivity_uv"), text());
        run.press("#kit-another");
        assertEquals(
                List.of("handheld", "handheld 2"),
                equipment().radios().stream().map(Equipment.RadioEntry::name).toList());
        write("#field-name", "belt radio");
        assertEquals("belt radio", equipment().radios().get(1).name());
        run.press("#kit-out");
        assertEquals(1, equipment().radios().size());
    }

    @Test
    void antennasAndLoadoutsAreEditedInPlace() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.press("#edit-loadout-2");
        choose("#field-carry", "hip-tight");
        write("#field-height_m", "0.1");
        assertTrue(fault("height_m").contains("allowed is 0.3 to 100 m"), fault("height_m"));
        write("#field-height_m", "1.1");
        assertEquals(1.1, equipment().loadouts().get(2).hold().heightM().orElseThrow());
        assertEquals("hip-tight", equipment().loadouts().get(2).carry().word());
        run.snapshot("edit-loadout");
        open("end-fed half-wave");
        write("#field-delta_db", "2.5");
        write("#field-delta_uncertainty_db", "1");
        assertTrue(fault("delta_db").contains("Waits for"), fault("delta_db"));
        write("#field-delta_mount", "in hand");
        Equipment.DeltaEntry delta = equipment().antennas().get(2).delta();
        assertEquals(2.5, delta.deltaDb().orElseThrow());
        assertEquals(Optional.of("in hand"), delta.mount());
        run.snapshot("edit-antenna");
        open("The ground");
        choose("#field-noise", "city");
        run.robot()
                .clickOn("#field-canopy_height_m")
                .push(KeyCode.SHORTCUT, KeyCode.A)
                .push(KeyCode.DELETE)
                .push(KeyCode.ENTER);
        run.settle();
        assertFalse(text().contains("canopy_height_m"), text());
        open("The relay");
        write("#field-feed_loss_db", "2");
        assertEquals(
                2,
                run.onScreen(() -> run.session()
                        .scene()
                        .get()
                        .plan()
                        .questions()
                        .relay()
                        .equipment()
                        .feedLossDb()));
        run.snapshot("edit-relay");
        assertEquals(List.of(), run.noticeTexts());
    }

    @Test
    void theTextHasLineNumbersFindAndFaultsThatLead() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.T);
        run.settle();
        TextArea area = run.robot().lookup("#plan-text").query();
        run.robot()
                .clickOn("#plan-text")
                .push(KeyCode.SHORTCUT, KeyCode.F)
                .write("walk_from")
                .push(KeyCode.ENTER);
        assertEquals("walk_from", run.onScreen(() -> area.getSelectedText()));
        run.onScreen(() -> area.setText(area.getText()
                .replace("canopy_height_m = 18", "canopy_height_m = 1800")
                .replace("count = 2", "count = 20")));
        run.settle();
        List<Button> faults = List.copyOf(run.robot().lookup(".fault-line").queryAllAs(Button.class));
        assertEquals(2, faults.size(), faults.toString());
        run.snapshot("edit-text");
        run.onScreen(() -> faults.get(1).fire());
        assertTrue(run.onScreen(() -> area.getSelectedText()).startsWith("count = 20"));
        assertTrue(run.robot().lookup("#plan-text-take").<Button>query().isDisabled());
    }

    @Test
    void aMistypedPlaceIsToldAtItsFieldAndEscapePutsTheOldOneBack() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.show("#step-2");
        run.robot().clickOn("#step-2");
        run.settle();
        TextField at = run.robot().lookup(".quiet-field").queryAllAs(TextField.class).stream()
                .findFirst()
                .orElseThrow();
        String before = at.getText();
        run.robot().clickOn(at).push(KeyCode.SHORTCUT, KeyCode.A).write("here").push(KeyCode.ENTER);
        run.settle();
        assertEquals(List.of(), run.noticeTexts());
        Label wrong = run.robot().lookup(".step-body .field-fault").queryAllAs(Label.class).stream()
                .filter(Node::isVisible)
                .findFirst()
                .orElseThrow();
        assertTrue(wrong.getText().contains("spike camp"), wrong.getText());
        run.robot().push(KeyCode.ESCAPE);
        assertEquals(before, at.getText());
        assertFalse(wrong.isVisible());
        // A fault that is told over the map goes once the mistake is mended.
        run.onScreen(() -> new PlaceVerbs(run.session()).rename("north spur", "creek crew"));
        run.settle();
        assertEquals(1, run.noticeTexts().size());
        run.robot().doubleClickOn("#radius").write("4").push(KeyCode.ENTER);
        run.settle();
        assertEquals(List.of(), run.noticeTexts());
    }

    @Test
    void whatWalksTeachMakesTheRelayAnswerOldAndIsToldBesideTheButton() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> run.window().way().open(3));
        run.settle();
        run.press("#relay-find");
        run.await(() -> run.session().relay().get().isPresent());
        run.settle();
        assertFalse(run.robot().lookup("#relay-stale").query().isVisible());
        run.onScreen(() -> run.window().way().open(4));
        run.settle();
        run.press("#walk-compare");
        run.await(() -> run.session().walked().get().isPresent());
        run.settle();
        run.press("#walk-learn");
        run.await(() -> run.session().scene().get().calibration().isPresent());
        run.settle();
        Label learned = run.robot().lookup("#walk-learned").query();
        assertTrue(learned.isVisible());
        assertTrue(learned.getText().contains("calibration.toml was written"), learned.getText());
        assertFalse(run.robot().lookup("#walk-stale").query().isVisible());
        assertTrue(run.robot().lookup("#relay-stale").query().isVisible());
        run.robot().push(KeyCode.SHORTCUT, KeyCode.Z);
        run.settle();
        assertFalse(run.robot().lookup("#relay-stale").query().isVisible());
    }
}
