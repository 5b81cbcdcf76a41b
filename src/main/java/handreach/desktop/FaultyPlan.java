package handreach.desktop;

import handreach.input.Fault;
import handreach.input.InputFault;
import handreach.plan.PlanFile;
import handreach.study.Scene;
import java.nio.file.Path;
import java.util.List;

/**
 * A plan that cannot be read yet: its text as it is, and everything that is wrong with it.
 *
 * @param file where it stands
 * @param onDisk what the file says
 * @param text what it is to say
 * @param faults what is wrong with that
 */
record FaultyPlan(Path file, String onDisk, String text, List<Fault> faults) {
    /** The text behind a fault; where there is none, the fault is thrown again. */
    static FaultyPlan read(Path planOrFolder, InputFault wrong) {
        String text;
        try {
            text = PlanFile.textOf(planOrFolder);
        } catch (InputFault noText) {
            throw wrong;
        }
        return new FaultyPlan(PlanFile.named(planOrFolder), text, text, wrong.faults());
    }

    FaultyPlan still(String other, InputFault wrong) {
        return new FaultyPlan(file, onDisk, other, wrong.faults());
    }

    PlanFile with(String other) {
        return PlanFile.mended(file, onDisk, other);
    }

    /** What is wrong with a text in the place of this one, tiles and bench included. */
    List<Fault> faultsOf(String other) {
        try {
            Scene.open(with(other));
            return List.of();
        } catch (InputFault wrong) {
            return wrong.faults();
        }
    }

    String words() {
        String more = faults.size() == 1 ? "" : " And " + (faults.size() - 1) + " more.";
        return file.toAbsolutePath() + " cannot be opened yet. " + faults.get(0).message() + more
                + " Its text stands below, to be mended.";
    }

    /** Whether something is wrong with the folder of elevation tiles. */
    boolean isWithoutTiles() {
        return faults.stream()
                .anyMatch(fault -> fault.text().startsWith("tiles ")
                        || fault.text().contains("has no tiles")
                        || !fault.source().equals(String.valueOf(file.getFileName()))
                                && fault.text().contains("tile"));
    }
}
