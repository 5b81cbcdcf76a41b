package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every number of a plan and of a calibration, through the real command line: what is no number, and both ends of what is allowed. */
class S13PlanNumbersTest {
    /** What TOML calls numbers and nobody means. */
    private static final List<String> NO_NUMBERS = List.of("nan", "+nan", "-nan", "inf", "+inf", "-inf");

    private static final Pattern NUMBER = Pattern.compile("^([a-z_]+) = (-?[\\d.]+)( .*)?$");
    private static final Pattern NO_FIGURE = Pattern.compile("NaN|Infinity");
    private static final Pattern ROW =
            Pattern.compile("\\| `([^`]+)` \\| `(\\w+)` \\| (-?[\\d.]+) to (-?[\\d.]+)( .*)?\\|");
    private static final Pattern ALLOWED =
            Pattern.compile("allowed (?:is|are whole numbers from) (\\S+) to (\\S+?)\\.? ");
    /** Keys of the plan below; a reader that skipped some would pass unseen. */
    private static final int KEYS_OF_PLAN = 59;

    private static final int KEYS_OF_CALIBRATION = 9;

    private static final Path TILES =
            Path.of("elevation-samples/invented-valley/tiles").toAbsolutePath();

    @TempDir
    Path folder;

    /** Every key that takes a number, each within its range; two that exclude each other stand in turn. */
    private static String plan() {
        return """
            format = 1
            title = "numbers"
            [channel]
            frequency_mhz = 155.16
            [target]
            odds = 0.8
            [ground]
            tiles = "TILES"
            permittivity = 15
            conductivity = 0.005
            surface_refractivity = 325
            k_factor = 1.333
            canopy_height_m = 18
            roof_height_m = 9
            noise_floor_dbm = -120
            noise_bandwidth_khz = 8.5
            cover = "urban"
            [[radio]]
            name = "handheld"
            power_w = 5
            sensitivity_dbm = -119
            battery_mah = 2200
            send_ma = 1500
            receive_ma = 250
            wait_ma = 60
            send_percent = 5
            receive_percent = 5
            [[power_step]]
            power_w = 1
            send_ma = 700
            [[radio]]
            name = "other"
            power_w = 4
            noise_figure_db = 9
            [[radio]]
            name = "by microvolts"
            power_w = 4
            sensitivity_uv = 0.25
            sensitivity_across = "50-ohm"
            [anchor]
            control_gain_dbd = -6
            uncertainty_db = 2
            [[carry_loss]]
            carry = "chest"
            control_gain_dbd = -12
            uncertainty_db = 3
            spread_db = 3
            [[antenna]]
            name = "factory"
            control = true
            length_cm = 15
            mass_g = 22
            price = 1
            stiffness = 2
            burden_rank = 1
            [[antenna]]
            name = "whip"
            radiator = "quarter-wave"
            delta_db = 5
            delta_uncertainty_db = 1
            delta_mount = "in hand"
            swr = 1.5
            [[antenna]]
            name = "stated"
            radiator = "quarter-wave"
            gain_dbd = -1
            gain_uncertainty_db = 1
            [[loadout]]
            name = "factory at face"
            antenna = "factory"
            height_m = 1.6
            tilt_deg = 10
            noise_floor_uv = 0.2
            noise_bandwidth_khz = 8.5
            [[loadout]]
            name = "whip at chest"
            antenna = "whip"
            carry = "chest"
            [[loadout]]
            name = "stated at face"
            radio = "other"
            antenna = "stated"
            [area]
            centre = "camp"
            radius_km = 0.6
            [[position]]
            name = "camp"
            at = "CENTRE"
            loadout = "factory at face"
            base = true
            weight = 2
            [[position]]
            name = "north"
            at = "NORTH"
            loadout = "stated at face"
            [reach]
            bearing_step_deg = 90
            cell_m = 100
            [relay]
            talk = "all-to-all"
            power_w = 5
            sensitivity_dbm = -118
            gain_dbd = -0.5
            mast_m = 3
            feed_loss_db = 1
            count = 1
            max_slope_deg = 60
            walk_from = "camp"
            max_walk_minutes = 300
            min_separation_km = 0.1
            [doubt]
            model_common_db = 6
            place_spread_db = 8
            """.replace("TILES", TILES.toString().replace('\\', '/'))
                .replace("CENTRE", "44.4773, -29.5217")
                .replace("NORTH", "44.4813, -29.5217");
    }

    private static String calibration() {
        return """
            made_from = "a walk"
            day = "2026-05-04"
            observations = 40
            spread_db = 7.5
            links = []
            [area]
            middle = "44.4773, -29.5217"
            radius_m = 3000
            [bias]
            loss_db = 4
            uncertainty_db = 2
            [[cover]]
            name = "woodland"
            loss_db = 1
            uncertainty_db = 1
            [[carry]]
            name = "chest"
            loss_db = 2
            uncertainty_db = 1
            """;
    }

    /** A text with the number on one line replaced. */
    private record Change(int line, String key, String text) {
        static List<Change> all(String text, String value) {
            List<Change> changes = new ArrayList<>();
            List<String> lines = text.lines().toList();
            for (int i = 0; i < lines.size(); i++) {
                Matcher number = NUMBER.matcher(lines.get(i));
                if (!number.matches()) continue;
                List<String> changed = new ArrayList<>(lines);
                changed.set(i, number.group(1) + " = " + value);
                changes.add(new Change(i + 1, number.group(1), String.join("\n", changed) + "\n"));
            }
            return changes;
        }

        Change to(String value) {
            List<String> lines = new ArrayList<>(text.lines().toList());
            lines.set(line - 1, key + " = " + value);
            return new Change(line, key, String.join("\n", lines) + "\n");
        }
    }

    private CommandRun run(String plan, String command) throws IOException {
        Path file = folder.resolve("plan.toml");
        Files.writeString(file, plan);
        return CommandRun.of(command, file.toString());
    }

    private static void oneLineNames(CommandRun run, String file, Change change, String found) {
        assertEquals(2, run.code(), change.key() + " = " + found + ": " + run.err());
        String start = file + " line " + change.line() + ": " + change.key() + " is " + found + ", allowed ";
        assertTrue(run.err().startsWith(start), run.err());
        assertTrue(ALLOWED.matcher(run.err()).find(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
    }

    private static String said(String written) {
        return written.replace("+", "").replace("-nan", "nan");
    }

    @Test
    void whatIsNoNumberIsRefusedWithItsLineInAPlan() throws IOException {
        assertEquals(0, run(plan(), "reach").code());
        for (String value : NO_NUMBERS) {
            List<Change> changes = Change.all(plan(), value);
            assertEquals(KEYS_OF_PLAN, changes.size());
            for (Change change : changes) oneLineNames(run(change.text(), "reach"), "plan.toml", change, said(value));
        }
    }

    @Test
    void whatIsNoNumberIsRefusedWithItsLineInACalibration() throws IOException {
        String plan = plan() + "[calibration]\nfile = \"learned.toml\"\n";
        for (String value : NO_NUMBERS) {
            List<Change> changes = Change.all(calibration(), value);
            assertEquals(KEYS_OF_CALIBRATION, changes.size());
            for (Change change : changes) {
                Files.writeString(folder.resolve("learned.toml"), change.text());
                oneLineNames(run(plan, "reach"), "learned.toml", change, said(value));
            }
        }
    }

    /** What the reader allows, the models take: an answer, or a fault of the user's; the range is read off the fault itself. */
    @Test
    void bothEndsOfEveryRangeAreTaken() throws IOException {
        for (Change change : Change.all(plan(), "nan")) {
            Matcher allowed = ALLOWED.matcher(run(change.text(), "reach").err());
            assertTrue(allowed.find(), change.key());
            for (int end = 1; end <= 2; end++) {
                if (change.key().equals("radius_km") && end == 2) continue; // below, without the maps of a relay
                Change at = change.to(allowed.group(end));
                String command = isOfRelay(at) ? "relay" : "reach";
                CommandRun answer = run(at.text(), command);
                String what = at.key() + " = " + allowed.group(end) + ": " + answer.err();
                assertFalse(answer.err().contains("A defect of the program"), what);
                assertEquals(0, answer.code(), what);
                assertFalse(NO_FIGURE.matcher(answer.out()).find(), what + answer.out());
            }
        }
    }

    /** Every key of the page's table, in a section by itself: what is no number or too large is told with line and key, all together. */
    @Test
    void everyKeyOfThePageRefusesWhatIsOutside() throws IOException {
        Map<String, List<String[]>> sections = new LinkedHashMap<>();
        for (String line : Files.readAllLines(Path.of("docs/plan-file.md"))) {
            Matcher row = ROW.matcher(line);
            if (!row.matches()) continue;
            for (String section : row.group(1).split(", "))
                sections.computeIfAbsent(section.equals("top of the file") ? "" : section, name -> new ArrayList<>())
                        .add(new String[] {row.group(2), row.group(3), row.group(4)});
        }
        assertTrue(sections.size() > 15
                && sections.values().stream().mapToInt(List::size).sum() > 80);
        for (String value : List.of("nan", "inf", "-inf", "1e308", "-1e308", "\"5\"", "true", "low", "high")) {
            for (Map.Entry<String, List<String[]>> section : sections.entrySet()) {
                StringBuilder text = new StringBuilder(section.getKey() + "\n");
                for (String[] key : section.getValue())
                    text.append(key[0])
                            .append(" = ")
                            .append(
                                    value.equals("low")
                                            ? beyond(key[1], -1)
                                            : value.equals("high") ? beyond(key[2], 1) : value)
                            .append('\n');
                CommandRun run = run(text.toString(), "reach");
                assertEquals(2, run.code(), run.err());
                for (int i = 0; i < section.getValue().size(); i++) {
                    String told = "plan.toml line " + (i + 2) + ": "
                            + section.getValue().get(i)[0] + " is ";
                    assertTrue(
                            run.err().lines().anyMatch(line -> line.startsWith(told)),
                            () -> section.getKey() + " " + value + ": " + told + "\n" + run.err());
                }
            }
        }
    }

    private static String beyond(String end, int way) {
        return new java.math.BigDecimal(end)
                .add(java.math.BigDecimal.valueOf(way, 3))
                .toPlainString();
    }

    private static boolean isOfRelay(Change change) {
        List<String> lines = change.text().lines().toList();
        return change.line() > lines.indexOf("[relay]");
    }

    @Test
    void theRadiusIsThatOfTheModels() throws IOException {
        CommandRun far = run(plan().replace("radius_km = 0.6", "radius_km = 120.5"), "reach");
        assertEquals(2, far.code());
        assertTrue(
                far.err().matches("(?s)plan.toml line \\d+: radius_km is 120.5, allowed is 0.2 to 120 km. .*"),
                far.err());
        CommandRun farthest = run(plan().replace("radius_km = 0.6", "radius_km = 120"), "reach");
        assertEquals(0, farthest.code(), farthest.err());
        CommandRun option = CommandRun.of("reach", folder.resolve("plan.toml").toString(), "--radius-km", "120.5");
        assertTrue(option.err().startsWith("--radius-km: is 120.5, allowed is 0.2 to 120 km."), option.err());
    }

    @Test
    void aStepThatMakesNoTurnIsToldWithItsLine() throws IOException {
        CommandRun run = run(plan().replace("bearing_step_deg = 90", "bearing_step_deg = 7"), "reach");
        assertEquals(2, run.code());
        assertTrue(run.err().matches("(?s)plan.toml line \\d+: bearing_step_deg is 7, .*"), run.err());
    }

    @Test
    void aDecimalCommaIsToldAsSuch() throws IOException {
        String plan = plan().replace("frequency_mhz = 155.16", "frequency_mhz = 155,16");
        CommandRun run = run(plan, "reach");
        assertEquals(2, run.code());
        assertEquals(
                "plan.toml line 4: frequency_mhz is 155,16, a number with a point is expected. Write 155.16.",
                run.err().strip());
    }
}
