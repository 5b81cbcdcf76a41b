package handreach.reach;

import handreach.geodesy.Position;
import handreach.terrain.Cover;
import java.time.LocalDate;
import java.util.Map;

/**
 * What walks have taught about a site: a value that a person accepts into the plan, and that reach applies to margins. It never
 * changes the physics; it shifts what the physics says.
 *
 * @param bias shift of the loss at this site, positive where the site is worse than predicted
 * @param biasByCover further shift by what stands in the cell, absent where nothing was learned
 * @param biasByCarry further shift by the name of a carry position, absent where nothing was learned
 * @param spreadDb spread between places found on the walks, dB; replaces the spread of the ledger
 * @param origin which walks, when, how many independent observations
 * @param area where it holds
 */
public record SiteCalibration(
        Shift bias,
        Map<Cover, Shift> biasByCover,
        Map<String, Shift> biasByCarry,
        double spreadDb,
        Origin origin,
        Area area) {
    /**
     * A shift of the loss with what is not known about it.
     *
     * @param lossDb decibels added to the loss, positive weakens
     * @param standardUncertaintyDb standard uncertainty of the shift, dB
     */
    public record Shift(double lossDb, double standardUncertaintyDb) {
        public static final Shift NONE = new Shift(0, 0);

        public Shift {
            if (!Double.isFinite(lossDb) || !(standardUncertaintyDb >= 0) || Double.isInfinite(standardUncertaintyDb))
                throw new IllegalArgumentException("shift " + lossDb + " dB, uncertainty " + standardUncertaintyDb);
        }
    }

    /**
     * Where a calibration comes from.
     *
     * @param source name of the walk log or logs
     * @param date day of the last walk
     * @param observations number of independent observations
     */
    public record Origin(String source, LocalDate date, int observations) {
        public Origin {
            if (source == null || date == null || observations < 1)
                throw new IllegalArgumentException("a calibration names its walk, its day and its observations");
        }
    }

    /**
     * Where a calibration holds.
     *
     * @param middle middle of the walked ground
     * @param radiusM how far from there, m
     */
    public record Area(Position middle, double radiusM) {
        public Area {
            if (middle == null || !(radiusM > 0))
                throw new IllegalArgumentException("area of radius " + radiusM + " m");
        }
    }

    public SiteCalibration {
        if (!(spreadDb >= 0) || Double.isInfinite(spreadDb))
            throw new IllegalArgumentException("spread " + spreadDb + " dB");
        if (bias == null || origin == null || area == null)
            throw new IllegalArgumentException("a calibration has a bias, an origin and an area");
        biasByCover = Map.copyOf(biasByCover);
        biasByCarry = Map.copyOf(biasByCarry);
    }

    /**
     * What is added to the loss of a link with one end in this cover and these carry positions at the two ends.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   dB, positive weakens
     * @valid  every cover and every carry name; unknown ones add nothing
     * @error  {@link #uncertaintyDb}
     * @source sum of the learned shifts
     */
    public double lossShiftDb(Cover cover, String carryA, String carryB) {
        return lossShiftDb(carryA, carryB)
                + biasByCover.getOrDefault(cover, Shift.NONE).lossDb();
    }

    /** The same where no cover counts: the common shift and those of the carry positions. */
    double lossShiftDb(String carryA, String carryB) {
        return bias.lossDb() + carry(carryA).lossDb() + carry(carryB).lossDb();
    }

    /** The same for the mix of covers that was walked: what of the doubt is common to all places. */
    double commonUncertaintyDb(String carryA, String carryB) {
        return Math.hypot(
                bias.standardUncertaintyDb(),
                Math.hypot(carry(carryA).standardUncertaintyDb(), carry(carryB).standardUncertaintyDb()));
    }

    private Shift carry(String name) {
        return name == null ? Shift.NONE : biasByCarry.getOrDefault(name, Shift.NONE);
    }
}
