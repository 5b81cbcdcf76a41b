package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.plan.PlanFile;
import handreach.plan.PlanText;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** Every key of the plan stands on a form, and what is set there stands in the plan. */
@Isolated
class PlanFormTest {
    private static final Path SAMPLE = Path.of("elevation-samples", "forest-hills", "plan.toml");
    private static final Pattern KNOWN = Pattern.compile("unknown key zzz in (.+?)\\..*Known here: (.+)\\.");

    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    /** The keys of every section as the reader of the plan names them to whoever mistypes one. */
    @Test
    void everyKeyThatThePlanKnowsStandsOnAForm() throws IOException {
        PlanFile plan = PlanFile.open(SAMPLE);
        StringBuilder text = new StringBuilder("zzz = 1\n");
        for (EntryKind kind : EntryKind.values())
            if (kind != EntryKind.PLAN)
                text.append(kind.isSeveral() ? "[[" + kind.section() + "]]" : "[" + kind.section() + "]")
                        .append("\nzzz = 1\n");
        TreeMap<String, Set<String>> known = new TreeMap<>();
        try {
            plan.withText(text.toString());
        } catch (InputFault wrong) {
            wrong.faults().forEach(fault -> {
                Matcher found = KNOWN.matcher(fault.text());
                if (found.matches())
                    known.put(
                            found.group(1),
                            new TreeSet<>(Arrays.asList(found.group(2).split(", "))));
            });
        }
        assertEquals(Set.of(), sections(known.get("the plan")), "sections without a form");
        TreeMap<String, Set<String>> formed = new TreeMap<>();
        for (EntryKind kind : EntryKind.values()) {
            Set<String> keys = new TreeSet<>();
            kind.keys(plan.plan()).forEach(key -> keys.add(key.key()));
            if (kind.several() == EntryKind.Several.NAMED) keys.add("name");
            formed.put(kind == EntryKind.PLAN ? "the plan" : "[" + kind.section() + "]", keys);
        }
        formed.keySet().forEach(section -> {
            if (!section.equals("the plan")) known.get("the plan").remove(section.substring(1, section.length() - 1));
        });
        assertEquals(known.keySet(), formed.keySet());
        known.forEach((section, keys) -> {
            // a gain without its reference is asked for only to be refused
            keys.remove("gain_db");
            assertEquals(keys, formed.get(section), section);
        });
    }

    /** Sections among the keys above all sections that have no form. */
    private static Set<String> sections(Set<String> top) {
        Set<String> left = new TreeSet<>(top);
        Arrays.stream(EntryKind.values()).map(EntryKind::section).forEach(left::remove);
        EntryKeys.PLAN.forEach(key -> left.remove(key.key()));
        return left;
    }

    /** Types into a field, wherever it is scrolled to. */
    private void type(String key, String words) {
        run.onScreen(() -> {
            TextField field = run.robot().lookup("#field-" + key).query();
            field.setText(words);
            field.fireEvent(new javafx.event.ActionEvent());
        });
        run.settle();
    }

    private void choose(String key, String value) {
        run.onScreen(() ->
                run.robot().lookup("#field-" + key).<ComboBox<String>>query().setValue(value));
        run.settle();
    }

    private void tick(String id) {
        run.onScreen(() -> run.robot().lookup(id).<CheckBox>query().fire());
        run.settle();
    }

    private void open(String name) {
        run.onScreen(() -> run.robot().lookup(".kit-entry").queryAllAs(Button.class).stream()
                .filter(button -> button.getText().equals(name))
                .findFirst()
                .orElseThrow()
                .fire());
        run.settle();
    }

    private String fault(String key) {
        return run.robot().lookup("#fault-" + key).<Label>query().getText();
    }

    private Plan plan() {
        return run.onScreen(() -> run.session().scene().get().plan());
    }

    private String text() {
        return run.onScreen(() -> run.session().scene().get().file().text());
    }

    private void forms() {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.E);
        run.settle();
    }

    @Test
    void aStationIsAddedFromNothingAndItsFaultsStandBesideTheButton() {
        forms();
        run.press("#add-station");
        type("name", "ridge base");
        type("at", "36.29, -84.22");
        type("power_w", "25000");
        assertEquals("power is 25000, allowed is 0.001 to 1500 W. Correct the value.", fault("power_w"));
        type("power_w", "25");
        run.press("#kit-add");
        assertTrue(fault("add").contains("has no sensitivity_dbm or sensitivity_uv"), fault("add"));
        assertTrue(fault("add").contains("has no gain_dbd or gain_dbi"), fault("add"));
        run.snapshot("form-fresh");
        type("sensitivity_dbm", "-118");
        type("gain_dbd", "0");
        run.press("#kit-add");
        Places.StationEntry station = plan().places().stations().get(0);
        assertEquals("ridge base", station.name());
        assertEquals(25, station.gear().powerW());
        // Its form is the one that is open now.
        choose("on", "vehicle");
        type("receive_mhz", "155.16");
        assertEquals(
                "Waits for and sends: they mean something only together.",
                fault("receive_mhz").substring(9));
        type("transmit_mhz", "160.2");
        assertEquals(
                OptionalDouble.of(160.2),
                plan().places().stations().get(0).tuning().transmitMhz());
        run.snapshot("form-station");
        type("at", "46.5, 8.1");
        assertTrue(
                run.noticeTexts().stream().anyMatch(words -> words.startsWith("ridge base lies ")),
                run.noticeTexts().toString());
        run.press("#kit-out");
        assertEquals(List.of(), plan().places().stations());
    }

    @Test
    void aSecondChannelItsDeltaAndItsNameAreSetWithoutTheText() {
        forms();
        run.press("#add-channel");
        type("name", "high");
        type("frequency_mhz", "462.5625");
        run.press("#kit-add");
        assertEquals(2, plan().channels().size());
        run.press("#add-delta");
        choose("antenna", "quarter-wave whip");
        choose("channel", "high");
        type("delta_db", "3.5");
        type("delta_uncertainty_db", "1");
        type("delta_mount", "in hand");
        run.press("#kit-add");
        assertEquals(3.5, plan().equipment().deltas().get(0).deltaDb());
        run.snapshot("form-delta");
        type("delta_db", "2.5");
        assertEquals(2.5, plan().equipment().deltas().get(0).deltaDb());
        // The delta follows the name of its channel.
        open("high, 462.5625 MHz");
        type("name", "band two");
        assertEquals("band two", plan().channels().get(1).name());
        assertEquals("band two", plan().equipment().deltas().get(0).channel());
        run.snapshot("form-channel");
        assertEquals(List.of(), run.noticeTexts());
    }

    @Test
    void listsMarksFilesAndPlacesAreSetByHand() throws IOException {
        forms();
        open("Who must carry what");
        tick("#field-keep-0");
        tick("#field-keep-2");
        assertEquals(
                List.of("spike camp", "creek crew"), plan().questions().assign().keep());
        tick("#field-keep-0");
        assertEquals(List.of("creek crew"), plan().questions().assign().keep());
        open("The relay");
        choose("pairs-one", "north spur");
        choose("pairs-other", "creek crew");
        run.press("#add-pairs");
        choose("talk", "listed");
        assertEquals(
                List.of(List.of("north spur", "creek crew")),
                plan().questions().relay().pairs());
        run.snapshot("form-pairs");
        type("tracks", "no.gpx");
        assertTrue(fault("tracks").contains("there is no such file beside the plan"), fault("tracks"));
        type("tracks", "walk-track.gpx");
        assertTrue(text().contains("tracks = \"walk-track.gpx\"\n"), text());
        open("north spur");
        type("heading_deg", "90");
        choose("towards", "spike camp");
        Places.Facing facing = plan().places().positions().get(1).facing().orElseThrow();
        assertEquals(Optional.of("spike camp"), facing.towards());
        assertFalse(text().contains("heading_deg"), text());
        run.snapshot("form-position");
        open("What is worth carrying");
        choose("by", "ground");
        type("felt_ground", "0.2");
        assertEquals(0.2, plan().questions().decide().feltGround());
        run.press("#kit-out");
        assertFalse(text().contains("[decide]"), text());
        open("The ground");
        choose("foliage", "wet");
        type("k_factor", "1.33");
        type("refractivity_gradient", "50");
        assertFalse(text().contains("k_factor"), text());
        run.snapshot("form-ground");
        open("factory helical");
        tick("#field-control");
        assertTrue(fault("control").contains("0 antennas are marked control"), fault("control"));
        open("The plan");
        type("declination_deg", "3.5");
        assertTrue(text().contains("place_form = \"utm\"\ndeclination_deg = 3.5\n"), text());
        run.snapshot("form-plan");
        assertEquals(List.of(), run.noticeTexts());
    }

    @Test
    void lengthsAreTypedInMilesAndFeetWhereThePlanIsReadInThem() {
        forms();
        run.onScreen(() ->
                run.session().edit("units", text -> PlanText.withTopValue(text, "units", PlanText.quoted("imperial"))));
        run.settle();
        open("The area");
        TextField radius = run.robot().lookup("#field-radius_km").query();
        assertEquals("0.621", radius.getText());
        run.snapshot("form-miles");
        type("radius_km", "80");
        assertEquals("radius is 80, allowed is 0.13 to 74.56 mi. Correct the value.", fault("radius_km"));
        type("radius_km", "2.5");
        assertEquals(4.0234, plan().places().area().radiusKm());
        assertEquals("2.5", radius.getText());
        open("quarter-wave whip");
        type("length_cm", "18");
        assertEquals(
                45.72, plan().equipment().antennas().get(1).size().lengthCm().orElseThrow());
        run.robot().push(KeyCode.SHORTCUT, KeyCode.Z);
        run.settle();
        assertEquals(46, plan().equipment().antennas().get(1).size().lengthCm().orElseThrow());
    }
}
