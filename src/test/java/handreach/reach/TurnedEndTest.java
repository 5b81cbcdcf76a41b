package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.budget.LinkBudget;
import handreach.budget.LinkEnd;
import handreach.budget.LinkTerms;
import handreach.budget.UsualLinks;
import handreach.loadout.CopyQuality;
import handreach.units.Frequency;
import org.junit.jupiter.api.Test;

class TurnedEndTest {
    private static final LinkTerms TERMS = UsualLinks.terms(new Frequency(155), CopyQuality.DAQ_3_4, 0.9);
    /** A cosine of 3 dB between bearings 5° apart is off by 3 (1 − cos 2.5°) dB. */
    private static final double BETWEEN_BEARINGS_DB = 0.003;

    private static LinkEnd end() {
        return PaperLinks.person();
    }

    /** By hand, VHF at the face: 3.0 dB · cos(ψ − 5°), ψ the bearing less the heading; no outside noise, so both ways alike. */
    @Test
    void everyBearingHasTheCosineOfItsAngleFromTheFront() {
        TurnedEnd turned = TurnedEnd.of(end(), 70, end(), TERMS);
        for (double bearing = -180; bearing < 540; bearing += 7.3) {
            double byHand = 3 * Math.cos(Math.toRadians(bearing - 70 - 5)) - 3 * Math.cos(Math.toRadians(-75));
            assertEquals(byHand, turned.gainDb(bearing), 2 * BETWEEN_BEARINGS_DB, bearing + "°");
        }
    }

    @Test
    void aLinkSeesTheHeadingOnItsBearing() {
        ReachLink plain = ReachLink.of("p", LinkBudget.between(end(), end(), TERMS), PaperLinks.HEIGHTS);
        ReachLink turned = ReachLink.of("t", TurnedEnd.of(end(), 0, end(), TERMS), PaperLinks.HEIGHTS);
        assertEquals(0, plain.turnedDb(123), 0);
        double front = turned.budget().marginDb(120, 0, 0) + turned.turnedDb(5);
        double back = turned.budget().marginDb(120, 0, 0) + turned.turnedDb(185);
        assertEquals(3, front - plain.budget().marginDb(120, 0, 0), 1e-9);
        assertEquals(6, front - back, 1e-9);
        assertTrue(turned.spreadDb() < plain.spreadDb()); // what headings spread is known now
    }
}
