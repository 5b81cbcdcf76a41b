package handreach.report;

import handreach.report.figure.RoseFigure;
import handreach.study.ReachAnswer;
import java.util.List;

/** Pieces of a reach answer for a window. */
public final class ReachFigures {
    private static final double WINDOW_RADIUS_PX = 150;

    private ReachFigures() {}

    /** Reach by bearing of some loadouts, by their numbers in the plan. */
    public static RoseFigure rose(ReachAnswer answer, List<Integer> which) {
        return new ReachPages(answer).rose(which).sized(WINDOW_RADIUS_PX).beside();
    }
}
