package handreach.relay;

import handreach.reach.CellGrid;
import java.util.Arrays;

/** How one relay in each cell of the searched ground would do, as swept; for a map. Immutable. */
public final class SiteMap {
    private final AllowedGround ground;
    private final ServiceLevel without;
    private final float[] share;
    private final float[] pessimisticShare;

    private SiteMap(AllowedGround ground, ServiceLevel without, float[] share, float[] pessimisticShare) {
        this.ground = ground;
        this.without = without;
        this.share = share;
        this.pessimisticShare = pessimisticShare;
    }

    /** Scores of those cells in which a relay helps; in all others it does as well as none. */
    static SiteMap of(AllowedGround ground, ServiceLevel without, SiteScore... scores) {
        float[] share = new float[ground.grid().count()];
        float[] sure = new float[ground.grid().count()];
        Arrays.fill(share, (float) without.share());
        Arrays.fill(sure, (float) without.pessimisticShare());
        for (SiteScore score : scores) {
            share[score.cell()] = (float) score.service().share();
            sure[score.cell()] = (float) score.service().pessimisticShare();
        }
        return new SiteMap(ground, without, share, sure);
    }

    public CellGrid grid() {
        return ground.grid();
    }

    /** Whether a relay may stand in a cell at all. */
    public boolean isAllowed(int cell) {
        return ground.isAllowed(cell);
    }

    /** How the talks do without any relay. */
    public ServiceLevel without() {
        return without;
    }

    /** Weighted share of the talks at the wanted odds with one relay in this cell, 0 to 1. */
    public double share(int cell) {
        return share[cell];
    }

    /** The same at the pessimistic end of the doubt that is common to all places. */
    public double pessimisticShare(int cell) {
        return pessimisticShare[cell];
    }
}
