package handreach.reach;

import handreach.budget.LinkBudget;
import handreach.budget.LinkEnd;
import handreach.budget.LinkTerms;
import handreach.budget.Ways;

/** A link from somebody who faces a known way, over the bearings of the other end. */
public final class TurnedEnd {
    private static final int STEP_DEG = 5;

    private final LinkBudget[] budgets;
    private final Ways ways;
    private final double[] gainDb = new double[360 / STEP_DEG + 1];

    private TurnedEnd(LinkBudget[] budgets, Ways ways) {
        this.budgets = budgets;
        this.ways = ways;
        for (int i = 0; i < budgets.length; i++)
            gainDb[i] =
                    budgets[i].asking(ways).marginDb(0, 0, 0) - facingNorth().marginDb(0, 0, 0);
        gainDb[budgets.length] = gainDb[0];
    }

    /**
     * The link between somebody who faces this way and an end of unknown heading.
     *
     * @shape  two ends and a heading in; 72 budgets, pure
     * @unit   heading clockwise from true north, degrees
     * @valid  every finite heading
     * @error  0.01 dB between the 72 bearings that are computed; the odds of the two ways are held against each other as on the bearing north
     * @source the budget of {@link LinkEnd#facing} on every bearing
     */
    public static TurnedEnd of(LinkEnd near, double headingDeg, LinkEnd far, LinkTerms terms) {
        LinkBudget[] budgets = new LinkBudget[360 / STEP_DEG];
        for (int i = 0; i < budgets.length; i++)
            budgets[i] = LinkBudget.between(near.facing(STEP_DEG * i - headingDeg), far, terms);
        return new TurnedEnd(budgets, Ways.BOTH);
    }

    /** The same where these directions alone must work. */
    TurnedEnd asking(Ways needed) {
        return new TurnedEnd(budgets, needed);
    }

    /** The link to the north. */
    LinkBudget facingNorth() {
        return budgets[0].asking(ways);
    }

    /** What a bearing has over the bearing north, dB. */
    double gainDb(double bearingDeg) {
        double at = ((bearingDeg % 360) + 360) % 360 / STEP_DEG;
        int below = Math.min((int) at, gainDb.length - 2);
        return gainDb[below] + (at - below) * (gainDb[below + 1] - gainDb[below]);
    }
}
