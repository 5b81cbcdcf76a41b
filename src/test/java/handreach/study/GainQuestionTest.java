package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GainQuestionTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();

    @TempDir
    Path folder;

    private Path plan(String line) throws IOException {
        String text = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = \"" + SAMPLE.resolve("tiles") + "\"")
                .replace(
                        "../invented-bench",
                        SAMPLE.resolveSibling("invented-bench").toString());
        text = text.substring(0, text.indexOf("[[walk]]"))
                .replace("radiator = \"five-eighths\"", "radiator = \"five-eighths\"\n" + line);
        return Files.writeString(folder.resolve("plan.toml"), text);
    }

    private InputFault refused(Path plan) {
        InputFault fault = assertThrows(InputFault.class, () -> PlanFile.open(plan));
        return GainQuestion.answered(plan, fault, Progress.SILENT);
    }

    /** What each answer would mean is what a plan with that answer says. */
    @Test
    void theAnswersAreThoseOfThePlansTheyMake() throws IOException {
        String told = refused(plan("gain_db = 6")).faults().get(1).text();
        for (String answer : new String[] {"gain_dbi = 6", "gain_dbd = 6", "gain_dbi = 3"}) {
            ReachAnswer reach = ReachStudy.run(Scene.open(PlanFile.open(plan(answer))), false, Progress.SILENT);
            String median = reach.scene()
                    .plan()
                    .header()
                    .lengths()
                    .text(reach.loadouts().get(5).medianM().value());
            assertEquals("five-eighths at face", reach.loadouts().get(5).link().name());
            assertTrue(told.contains(median + " if"), answer + ": " + median + " in " + told);
        }
    }

    @Test
    void aPlanThatIsWrongOtherwiseTooIsOnlyRefused() throws IOException {
        Path plan = plan("gain_db = 6\nlenght_cm = 3");
        InputFault fault = assertThrows(InputFault.class, () -> PlanFile.open(plan));
        assertSame(fault, GainQuestion.answered(plan, fault, Progress.SILENT));
    }
}
