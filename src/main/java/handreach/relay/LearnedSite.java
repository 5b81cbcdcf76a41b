package handreach.relay;

import handreach.budget.LinkBudget;
import handreach.reach.SiteCalibration;
import handreach.terrain.Cover;
import java.util.Arrays;
import java.util.List;

/**
 * What walks have taught about the ground of a question.
 *
 * @param calibration shifts and spread that were learned
 * @param walked the links they were learned from, as the plan has them now; may be none
 */
public record LearnedSite(SiteCalibration calibration, List<LinkBudget> walked) {
    public LearnedSite {
        if (calibration == null) throw new IllegalArgumentException("a calibration is expected");
        walked = List.copyOf(walked);
    }

    /**
     * What it means for one hop.
     *
     * @param shiftDb added to the loss, positive weakens
     * @param commonDoubtDb doubt common to all places, dB
     * @param spreadDb spread between places, dB
     */
    record Lesson(double shiftDb, double commonDoubtDb, double spreadDb) {
        static Lesson none(LinkBudget budget) {
            return new Lesson(0, budget.commonDoubtDb(), budget.spreadDb());
        }
    }

    /**
     * The lesson for a hop between two carry positions; covers are those in which people stand, the mean of them where there are two.
     *
     * @shape  one link in, three scalars out; pure
     * @unit   dB
     * @valid  any carry names and covers; unknown ones add nothing. Between relays, without covers, only the common shift counts
     * @error  doubt: what the walk left and the doubt against the nearest link walked, in squares; never above the ledger's own
     * @source {@link SiteCalibration}; JCGM 100:2008, 5.1.2; the mean of two covers is our suggestion
     */
    Lesson lesson(LinkBudget budget, String carryA, String carryB, Cover... covers) {
        double shift = Arrays.stream(covers)
                .mapToDouble(cover -> calibration.lossShiftDb(cover, carryA, carryB))
                .average()
                .orElseGet(() -> calibration.bias().lossDb() + carryDb(carryA) + carryDb(carryB));
        double relative =
                walked.stream().mapToDouble(budget::differenceDoubtDb).min().orElse(budget.commonDoubtDb());
        double taught = Math.hypot(calibration.commonUncertaintyDb(carryA, carryB), relative);
        double spread = calibration.spreadDb() == 0 ? budget.spreadDb() : calibration.spreadDb();
        return new Lesson(shift, Math.min(budget.commonDoubtDb(), taught), spread);
    }

    private double carryDb(String name) {
        return calibration
                .biasByCarry()
                .getOrDefault(name, SiteCalibration.Shift.NONE)
                .lossDb();
    }
}
