package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.report.page.Page;
import handreach.report.page.PlainText;
import handreach.study.PowerStep;
import handreach.study.ReachAnswer;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PowerComposerTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();

    @TempDir
    Path folder;

    private ReachAnswer answer(String radio) throws IOException {
        String text = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = \"" + SAMPLE.resolve("tiles") + "\"")
                .replace(
                        "../invented-bench",
                        SAMPLE.resolveSibling("invented-bench").toString());
        text = text.substring(0, text.indexOf("[[walk]]")).replace("power_w = 5\nsensitivity_dbm = -119", radio);
        return ReachStudy.run(
                Scene.open(PlanFile.open(Files.writeString(folder.resolve("plan.toml"), text))),
                false,
                Progress.SILENT);
    }

    private static String text(ReachAnswer answer) {
        Page page = ReachComposer.of(answer).page();
        return PlainText.of(page, PlainText.USUAL_WIDTH).replaceAll("\\s+", " ");
    }

    /** A radio turned down to 1 W reaches what a plan says whose crews have 1 W, the base keeping its 5 W or being turned down alike. */
    @Test
    void aLowerPowerReachesWhatAWeakerRadioWould() throws IOException {
        String step = "\n[[power_step]]\npower_w = 1\nsend_ma = 700\n";
        ReachAnswer turned = answer("power_w = 5\nsensitivity_dbm = -119\n"
                + "battery_mah = 2200\nsend_ma = 1500\nreceive_ma = 250\nwait_ma = 60" + step);
        ReachAnswer weak = answer("power_w = 1\nsensitivity_dbm = -119");
        assertEquals(turned.loadouts().size(), turned.powerSteps().size());
        // at the base stands the fourth loadout: only against itself are both ends turned down
        PowerStep alike = turned.powerSteps().get(3);
        assertEquals(
                weak.loadouts().get(3).medianM().value(),
                alike.reach().medianM().value(),
                1e-6);
        assertEquals(2200 / (0.05 * 700 + 0.05 * 250 + 0.9 * 60), alike.hours().getAsDouble(), 1e-9);
        String told = text(turned);
        assertTrue(told.contains("5 W over 1 W buys"), told);
        assertTrue(told.contains("costs 6.1 h of battery (15.5 h in place of 21.7 h)."), told);
    }

    @Test
    void aStepThatIsNoneIsLeftOutAndTold() throws IOException {
        ReachAnswer answer = answer("power_w = 5\nsensitivity_dbm = -119\n[[power_step]]\npower_w = 7\n");
        assertEquals(List.of(), answer.powerSteps());
        assertTrue(
                answer.warnings().contains("A power step of handheld is not below its power_w and is left out."),
                answer.warnings().toString());
        assertTrue(!text(answer).contains("Lower power"));
    }

    @Test
    void withoutCurrentsOnlyReachIsTold() throws IOException {
        String told = text(answer("power_w = 5\nsensitivity_dbm = -119\n[[power_step]]\npower_w = 1\n"));
        assertTrue(told.contains("For hours of battery give [[radio]] battery_mah"), told);
        assertTrue(!told.contains("costs"), told);
    }
}
