package handreach.study;

import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.plan.Questions;
import handreach.reach.LeastLoadout;
import handreach.reach.LoadoutReach;
import handreach.reach.LossGrid;
import handreach.reach.ModelDifference;
import handreach.reach.OddsGrid;
import handreach.reach.OneWayGround;
import handreach.reach.ReachEstimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How far every loadout of a plan reaches.
 *
 * @param scene the plan, opened
 * @param middle where the rose stands
 * @param loadouts by bearing, in the plan's order; the control and those that were asked for
 * @param someCopy the same loadouts, asked for no more than {@link handreach.plan.Channel.CopyWish#SOME_COPY}
 * @param powerSteps what lower powers of their radios reach, where the plan has any
 * @param inLeaf the same loadouts with the trees in leaf, in the same order; empty where they are, or where the model heeds no leaves
 * @param oneWay where one way alone works, in the same order; empty where the plan does not ask for it
 * @param area odds over the area, in the same order, and the least loadout that does the job; empty when only bearings were asked
 * @param places who of the plan reaches whom
 * @param stations what stands already, and whom it serves
 * @param channels the same ground on every channel of the plan
 * @param routes contact along the routes that say when people go
 * @param verdicts whether it is worth carrying, one a loadout, in the same order; empty for the control
 * @param warnings everything that was doubtful
 */
public record ReachAnswer(
        Scene scene,
        Position middle,
        List<LoadoutReach> loadouts,
        List<LoadoutReach> someCopy,
        List<PowerStep> powerSteps,
        List<LoadoutReach> inLeaf,
        List<OneWayGround> oneWay,
        Optional<AreaAnswer> area,
        PlacesAnswer places,
        StationsAnswer stations,
        ChannelsAnswer channels,
        RoutesAnswer routes,
        List<Optional<ReachVerdict>> verdicts,
        List<String> warnings) {
    public ReachAnswer {
        loadouts = List.copyOf(loadouts);
        someCopy = List.copyOf(someCopy);
        powerSteps = List.copyOf(powerSteps);
        inLeaf = List.copyOf(inLeaf);
        oneWay = List.copyOf(oneWay);
        verdicts = List.copyOf(verdicts);
        warnings = List.copyOf(warnings);
    }

    /** The same with the other channels beside it. */
    ReachAnswer beside(ChannelsAnswer others) {
        return new ReachAnswer(
                scene,
                middle,
                loadouts,
                someCopy,
                powerSteps,
                inLeaf,
                oneWay,
                area,
                places,
                stations,
                others,
                routes,
                verdicts,
                warnings);
    }

    /** What stands in the middle while the loadouts are held against one another, and which ways count, in a sentence or two. */
    public String otherEnd() {
        return middleEnd()
                + scene.plan()
                        .channel()
                        .wish()
                        .ways()
                        .sentence()
                        .map(one -> " " + one)
                        .orElse("");
    }

    private String middleEnd() {
        Questions.ReachQuestion asked = scene.plan().questions().reach();
        String where = scene.middlePosition().map(Places.PositionEntry::name).orElse("the middle");
        Optional<String> stays = scene.middleLoadoutName();
        if (stays.isEmpty())
            return "At " + where + " stands the same loadout as is carried: each is held against itself at both ends.";
        if (asked.with().isPresent()) return "At " + where + " stands " + stays.get() + ", whoever calls.";
        String kind =
                scene.middlePosition().filter(Places.PositionEntry::base).isPresent() ? "Crew to base: at " : "At ";
        return kind + where + " stands " + stays.get()
                + ", as the plan has it, whoever calls. With alike = true under [reach] both ends carry the same.";
    }

    /** Which of {@link #loadouts} is the control. */
    public int control() {
        for (int i = 0; i < loadouts.size(); i++)
            if (loadouts.get(i).overControl().isEmpty()) return i;
        throw new IllegalStateException("no control among the loadouts");
    }

    /**
     * Share of the known ground within the radius that one of the loadouts reaches with the wanted odds: of the cells where they were
     * computed, else of the bearings. Every face reads it here, so that a table and the map under it agree.
     */
    public ReachEstimate share(int loadout) {
        return area.map(cells -> cells.shares().get(loadout))
                .orElseGet(() -> loadouts.get(loadout).share());
    }

    /**
     * The area, cell by cell.
     *
     * @param odds one grid a loadout, in the plan's order
     * @param shares share of the known cells at the wanted odds or better, in the same order
     * @param least loadouts in order of burden, and which is the least that reaches each cell
     * @param models where a march and the closed form differ, for the control's antenna heights; empty where the map is no march
     */
    public record AreaAnswer(
            List<OddsGrid> odds, List<ReachEstimate> shares, LeastLoadout least, Optional<ModelDifference> models) {
        public AreaAnswer {
            odds = List.copyOf(odds);
            shares = List.copyOf(shares);
        }

        static AreaAnswer of(
                List<OddsGrid> odds, List<OddsGrid> byBurden, double targetOdds, Optional<ModelDifference> models) {
            LeastLoadout least = LeastLoadout.of(byBurden, targetOdds);
            List<ReachEstimate> shares = new ArrayList<>();
            for (OddsGrid one : odds) shares.add(least.share(byBurden.indexOf(one)));
            return new AreaAnswer(odds, shares, least, models);
        }

        /** Losses behind the odds, one for each pair of antenna heights. */
        public List<LossGrid> losses() {
            return odds.stream().map(OddsGrid::losses).distinct().toList();
        }
    }
}
