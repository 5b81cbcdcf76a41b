package handreach.reach;

import handreach.budget.Ledger;
import handreach.budget.LedgerLine;
import handreach.budget.LineKey;
import handreach.budget.TwoWayLedger;
import handreach.terrain.Cover;
import handreach.uncertainty.Doubt;
import handreach.uncertainty.Odds;
import java.util.ArrayList;
import java.util.List;

/**
 * What a calibration means for one link. Every face that tells odds takes the shift, the doubt and the spread from here.
 *
 * @param calibration from walks
 * @param carryA carry position at the first end, as the calibration names it
 * @param carryB carry position at the second end
 * @param relativeDoubtDb common doubt of this link's margin against the link that was walked, dB; 0 for that link itself
 */
public record SiteLesson(SiteCalibration calibration, String carryA, String carryB, double relativeDoubtDb) {
    public SiteLesson {
        if (calibration == null || !(relativeDoubtDb >= 0))
            throw new IllegalArgumentException("a calibration and a doubt from 0 up, not " + relativeDoubtDb);
    }

    /**
     * What is added to the loss.
     *
     * @shape  covers in, scalar out; pure
     * @unit   dB, positive weakens
     * @valid  covers in which people stand, a walked base left out: one, or two of which the mean counts; without any (between relays,
     *     or to the base from a mast) only the common shift and the carry positions
     * @error  {@link #commonDoubtDb}
     * @source {@link SiteCalibration#lossShiftDb}; the mean of two covers is our suggestion
     */
    public double shiftDb(List<Cover> covers) {
        return covers.stream()
                .mapToDouble(this::shiftDb)
                .average()
                .orElseGet(() -> calibration.lossShiftDb(carryA, carryB));
    }

    /** The same in one cover, for every cell of a map. */
    double shiftDb(Cover cover) {
        return calibration.lossShiftDb(cover, carryA, carryB);
    }

    /**
     * Doubt common to all places that is left of the ledger's.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   dB
     * @valid  every doubt from 0 up
     * @error  what the walk left and the doubt against the nearest link walked, in squares; never above the ledger's own
     * @source JCGM 100:2008, 5.1.2
     */
    public double commonDoubtDb(double ledgerDb) {
        return Math.min(ledgerDb, Math.hypot(calibration.commonUncertaintyDb(carryA, carryB), relativeDoubtDb));
    }

    /**
     * Spread between places: the one found on the walks, or the ledger's where none was found.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   standard deviation dB
     * @valid  every spread
     * @error  the doubt of the walks' own spread is not carried on
     * @source {@link SiteCalibration#spreadDb}
     */
    public double spreadDb(double ledgerDb) {
        return calibration.spreadDb() == 0 ? ledgerDb : calibration.spreadDb();
    }

    /**
     * Both directions with the shift as a line of its own behind the path, and with what is left of the doubts.
     *
     * @shape  two ledgers in, two out; pure
     * @unit   shift dB, positive weakens; odds 0 to 1, ends left out
     * @valid  ledgers that do not hold the line yet
     * @error  {@link #commonDoubtDb}, {@link #spreadDb}
     * @source sum of the ledger's lines
     */
    public TwoWayLedger over(TwoWayLedger ledger, double shiftDb, double wantedOdds) {
        return new TwoWayLedger(
                over(ledger.there(), shiftDb, wantedOdds), over(ledger.back(), shiftDb, wantedOdds), ledger.needed());
    }

    private Ledger over(Ledger ledger, double shiftDb, double wantedOdds) {
        Doubt left = new Doubt(
                commonDoubtDb(ledger.doubt().commonDb()),
                spreadDb(ledger.doubt().spreadDb()));
        List<LedgerLine> lines = new ArrayList<>(ledger.lines());
        int behind = lines.size();
        while (behind > 0 && lines.get(behind - 1).key() != LineKey.PATH) behind--;
        lines.add(behind == 0 ? lines.size() : behind, line(shiftDb));
        return new Ledger(ledger.from(), ledger.to(), lines, Odds.marginFor(wantedOdds, left.spreadDb()), left);
    }

    private LedgerLine line(double shiftDb) {
        SiteCalibration.Origin origin = calibration.origin();
        String note = calibration.spreadDb() == 0
                ? "in place of the model's common doubt"
                : "in place of the model's common doubt and of the spread of all lines";
        return new LedgerLine(
                LineKey.SITE,
                "what walks have taught about the site",
                0.0 - shiftDb,
                new Doubt(calibration.commonUncertaintyDb(carryA, carryB), calibration.spreadDb()),
                "calibration by " + origin.source() + " of " + origin.date(),
                note);
    }
}
