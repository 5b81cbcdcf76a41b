package handreach.study;

import handreach.geodesy.Position;
import handreach.plan.Questions;
import handreach.reach.LeastLoadout;
import handreach.reach.LoadoutReach;
import handreach.reach.LossGrid;
import handreach.reach.OddsGrid;
import java.util.List;
import java.util.Optional;

/**
 * How far every loadout of a plan reaches.
 *
 * @param scene the plan, opened
 * @param middle where the rose stands
 * @param loadouts by bearing, in the plan's order; the control and those that were asked for
 * @param area odds over the area, in the same order, and the least loadout that does the job; empty when only bearings were asked
 * @param verdicts plain words, one a loadout, in the same order
 * @param warnings everything that was doubtful
 */
public record ReachAnswer(
        Scene scene,
        Position middle,
        List<LoadoutReach> loadouts,
        Optional<AreaAnswer> area,
        List<String> verdicts,
        List<String> warnings) {
    public ReachAnswer {
        loadouts = List.copyOf(loadouts);
        verdicts = List.copyOf(verdicts);
        warnings = List.copyOf(warnings);
    }

    /** What stands in the middle while the loadouts are held against one another, in a sentence or two. */
    public String otherEnd() {
        Questions.ReachQuestion asked = scene.plan().questions().reach();
        String where = asked.from().orElse("the middle");
        if (asked.with().isPresent())
            return "At " + where + " stands " + asked.with().get() + ", whoever calls.";
        String same =
                "At " + where + " stands the same loadout as is carried: each is held against itself at both ends.";
        return asked.from()
                .flatMap(name -> scene.position(name).loadout())
                .map(own -> same + " The plan gives " + where + " its own, " + own
                        + "; for the reach to that, write with = \"" + own + "\" under [reach].")
                .orElse(same);
    }

    /** Which of {@link #loadouts} is the control. */
    public int control() {
        for (int i = 0; i < loadouts.size(); i++)
            if (loadouts.get(i).overControl().isEmpty()) return i;
        throw new IllegalStateException("no control among the loadouts");
    }

    /**
     * The area, cell by cell.
     *
     * @param odds one grid a loadout, in the plan's order
     * @param least loadouts in order of burden, and which is the least that reaches each cell
     */
    public record AreaAnswer(List<OddsGrid> odds, LeastLoadout least) {
        public AreaAnswer {
            odds = List.copyOf(odds);
        }

        /** Losses behind the odds, one for each pair of antenna heights. */
        public List<LossGrid> losses() {
            return odds.stream().map(OddsGrid::losses).distinct().toList();
        }
    }
}
