package handreach.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;

import handreach.loadout.Carry;
import handreach.loadout.CopyQuality;
import handreach.loadout.NeededWays;
import handreach.uncertainty.Odds;
import handreach.units.Frequency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One way of a link alone: its own margin, spread and odds, whatever the other way has. */
class WaysTest {
    private static final double EXACT = 1e-9;
    private static final LinkBudget LINK = LinkBudget.between(
            PaperLink.end(PaperLink.control(5, Carry.HIP_TIGHT)),
            PaperLink.end(PaperLink.whipped(50, Carry.MAST)),
            UsualLinks.terms(new Frequency(155.16), CopyQuality.DAQ_3, 0.8));

    @ParameterizedTest
    @CsvSource({
        "CALLS,false,true,THERE",
        "CALLS,true,false,BACK",
        "HEARS,false,true,BACK",
        "HEARS,true,false,THERE",
        "CALLS,false,false,BOTH",
        "HEARS,true,true,BOTH",
        "BOTH,false,true,BOTH"
    })
    void whoCallsIsWhoIsNotTheBase(NeededWays needed, boolean isFirst, boolean isSecond, Ways asked) {
        assertEquals(asked, Ways.between(needed, isFirst, isSecond));
        assertEquals(asked.turned(), Ways.between(needed, isSecond, isFirst));
    }

    @Test
    void eachWayHasItsOwnMarginSpreadAndOdds() {
        LinkBudget there = LINK.asking(Ways.THERE);
        LinkBudget back = LINK.asking(Ways.BACK);
        double thereDb = LINK.marginThereDb(140, 1, -2);
        double backDb = LINK.marginBackDb(140, 1, -2);
        assertEquals(thereDb, there.marginDb(140, 1, -2), EXACT);
        assertEquals(backDb, back.marginDb(140, 1, -2), EXACT);
        assertEquals(LINK.spreadThereDb(), there.spreadDb(), EXACT);
        assertEquals(LINK.spreadBackDb(), back.spreadDb(), EXACT);
        assertEquals(Odds.ofMargin(thereDb, LINK.spreadThereDb()), there.odds(thereDb), EXACT);
        assertEquals(Odds.marginFor(0.8, LINK.spreadBackDb()), back.locationMarginDb(0.8), EXACT);
        assertEquals(Math.min(thereDb, backDb), LINK.marginDb(140, 1, -2), EXACT);
        assertSame(there, there.asking(Ways.THERE));
    }

    /** Asked for both ways the link has the margin of the weaker; the stronger alone has more. */
    @Test
    void theStrongerWayAloneWantsLess() {
        assertEquals(LINK.marginDb(150, 0, 0), LINK.asking(Ways.THERE).marginDb(150, 0, 0), EXACT);
        assertEquals(
                LINK.marginBackDb(150, 0, 0) - LINK.marginThereDb(150, 0, 0),
                LINK.asking(Ways.BACK).marginDb(150, 0, 0) - LINK.marginDb(150, 0, 0),
                EXACT);
        assertFalse(LINK.isBackWeaker());
    }
}
