package handreach.report;

import handreach.study.ReachAnswer;
import java.util.Locale;

/** Pieces of a reach answer for a window: the rose, and its figures as short words. */
public final class ReachFigures {
    private static final double WINDOW_RADIUS_PX = 150;

    private ReachFigures() {}

    /** Reach by bearing of the loadouts that the report would draw. */
    public static RoseFigure rose(ReachAnswer answer) {
        ReachPages pages = new ReachPages(answer);
        return pages.rose(pages.drawn()).sized(WINDOW_RADIUS_PX).beside();
    }

    /** Share of the ground that one loadout reaches, with its interval: {@code 24 % (11 to 43)}. */
    public static String share(ReachAnswer answer, int loadout) {
        handreach.reach.ReachEstimate share = answer.loadouts().get(loadout).share();
        return String.format(
                Locale.ROOT,
                "%.0f %% (%.0f to %.0f)",
                100 * share.value(),
                100 * share.interval95().low(),
                100 * share.interval95().high());
    }
}
