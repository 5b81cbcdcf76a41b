package handreach.reach;

import handreach.budget.LinkBudget;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.terrain.Cover;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/**
 * What walks have taught about the ground of a plan.
 *
 * @param calibration shifts and spread that were learned
 * @param walked the links they were learned from, as the plan has them now; may be none
 * @param bases where those stood who were called on the walks: what grows there is in the common shift already
 */
public record LearnedSite(SiteCalibration calibration, List<LinkBudget> walked, List<Position> bases) {
    /** Positions nearer to one another than this are one, m. */
    private static final double SAME_M = 1;

    public LearnedSite {
        if (calibration == null) throw new IllegalArgumentException("a calibration is expected");
        walked = List.copyOf(walked);
        bases = List.copyOf(bases);
    }

    /**
     * The lesson for a link between two carry positions.
     *
     * @shape  one link in, one lesson out; pure
     * @unit   dB
     * @valid  any carry names; unknown ones add nothing
     * @error  doubt against the nearest of the links walked, all of the link's own where none of them is left
     * @source {@link SiteCalibration}; JCGM 100:2008, 5.2.2
     */
    public SiteLesson lesson(LinkBudget budget, String carryA, String carryB) {
        double relative =
                walked.stream().mapToDouble(budget::differenceDoubtDb).min().orElse(budget.commonDoubtDb());
        return new SiteLesson(calibration, carryA, carryB, relative);
    }

    /** What stands where people are, those at a walked base left out. */
    public List<Cover> covers(Function<Position, Cover> coverAt, Position... people) {
        return Arrays.stream(people).filter(at -> !isBase(at)).map(coverAt).toList();
    }

    private boolean isBase(Position at) {
        return bases.stream().anyMatch(base -> GeodesicLine.distanceM(base, at) < SAME_M);
    }
}
