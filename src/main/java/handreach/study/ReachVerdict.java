package handreach.study;

import handreach.plan.Questions;
import handreach.plan.Questions.Measure;
import handreach.reach.GroundGain;
import handreach.reach.ReachDifference;
import java.util.List;
import java.util.Optional;

/**
 * Whether a loadout is worth carrying: what it adds to the control in each measure, and which of them decides.
 *
 * @param asked by what the plan decides, and what is felt
 * @param places who is reached; empty where the plan has nobody to reach
 * @param ground how much of the ground is reached, and where the difference lies
 * @param named the places by which sides of the ground are told, in the order of their numbers
 * @param reach median continuous reach
 * @param best the bearing on which continuous reach changes most, the way the median does
 */
public record ReachVerdict(
        Questions.DecideQuestion asked,
        Optional<PlacesGain> places,
        GroundGain ground,
        List<String> named,
        ReachDifference reach,
        OnBearing best) {
    /**
     * Change of the continuous reach along one bearing.
     *
     * @param bearingDeg degrees from true north
     * @param gainM m
     */
    public record OnBearing(double bearingDeg, double gainM) {}

    public ReachVerdict {
        named = List.copyOf(named);
    }

    /** What the gain in one measure comes to. */
    public Judgement judgement(Measure by) {
        return switch (by) {
            case PLACES ->
                places.map(gain -> Judgement.of(gain.gain(), gain.gain95(), asked.feltPlaces()))
                        .orElse(Judgement.SAME);
            case GROUND -> Judgement.of(ground.gain(), ground.gain95(), asked.feltGround() * ground.control());
            case REACH -> Judgement.of(reach.medianM(), reach.interval95M(), asked.feltReachM());
        };
    }

    /** The measure that settles it: the plan's, but the ground where the same or too few more places are reached for that to tell. */
    public Measure decidedBy() {
        if (asked.by() != Measure.PLACES) return asked.by();
        Judgement found = judgement(Measure.PLACES);
        return found == Judgement.MORE || found == Judgement.WORSE ? Measure.PLACES : Measure.GROUND;
    }
}
