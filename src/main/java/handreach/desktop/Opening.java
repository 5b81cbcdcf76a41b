package handreach.desktop;

import handreach.input.InputFault;
import handreach.plan.PlanFile;
import handreach.study.Scene;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What came of opening a plan: the plan with all it names, or its text and what is wrong with it.
 *
 * @param scene the plan, opened
 * @param faulty the text, where it cannot be read as a plan
 * @param left edits that were never saved when the window ended last
 */
record Opening(Optional<Scene> scene, Optional<FaultyPlan> faulty, Optional<Autosave.Left> left) {
    static Opening of(Scene scene) {
        return new Opening(Optional.of(scene), Optional.empty(), Optional.empty());
    }

    /** Reads a plan with all it names, and remembers where it was. A file without a text is a fault as before. */
    static Opening read(Path planOrFolder) {
        try {
            Scene fresh = Scene.open(PlanFile.open(planOrFolder));
            RecentPlans.remember(fresh.file().file());
            return new Opening(Optional.of(fresh), Optional.empty(), Autosave.left(fresh.file()));
        } catch (InputFault wrong) {
            return of(FaultyPlan.read(planOrFolder, wrong));
        }
    }

    /** The same of a text that is to stand in the place of a faulty one. */
    static Opening mended(FaultyPlan plan, String text) {
        try {
            return of(Scene.open(plan.with(text)));
        } catch (InputFault wrong) {
            return of(plan.still(text, wrong));
        }
    }

    private static Opening of(FaultyPlan plan) {
        return new Opening(Optional.empty(), Optional.of(plan), Optional.empty());
    }
}
