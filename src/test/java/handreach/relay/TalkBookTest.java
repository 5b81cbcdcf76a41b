package handreach.relay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.budget.LinkEnd;
import handreach.loadout.Carry;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TalkBookTest {
    private static final double ROUNDING = 1e-9;
    private static final PaperWorld HILL =
            new PaperWorld((east, north) -> 100 + 150 * Math.max(0, 1 - Math.abs(east) / 800));
    private static final RelayRequest.Setting SETTING = HILL.setting("handheld");

    private static Party at(double eastM, LinkEnd end) {
        return new Party("at " + eastM, PaperWorld.at(eastM, 0), end);
    }

    @Test
    void theOddsAreThoseOfThePathAndItsLedger() {
        TalkBook book = TalkBook.of(SETTING);
        double wanted = SETTING.terms().odds();
        int sure = 0;
        for (double eastM : new double[] {-600, 300, 900, 2000, 4000})
            for (Carry carry : new Carry[] {Carry.FACE, Carry.HIP_TIGHT}) {
                Party one = at(-1500, PaperWorld.person(5, Carry.FACE));
                Party other = at(eastM, PaperWorld.person(1, carry));
                TalkBook.Talk talk = book.talk(one, other).orElseThrow();
                HopPath path = HopPath.direct(SETTING, one, other).orElseThrow();
                assertEquals(path.odds().marginDb(), talk.odds().marginDb(), ROUNDING);
                assertEquals(path.odds().standing(), talk.odds().standing(), ROUNDING);
                assertEquals(path.odds().pessimistic(), talk.odds().pessimistic(), ROUNDING);
                assertEquals(path.ledger().there().odds(), talk.odds().there(), ROUNDING);
                assertEquals(path.ledger().back().odds(), talk.odds().back(), ROUNDING);
                assertEquals(
                        Math.min(
                                path.ledger().there().marginAtOddsDb(),
                                path.ledger().back().marginAtOddsDb()),
                        talk.spareDb(),
                        ROUNDING);
                assertEquals(talk.odds().pessimistic() >= wanted, talk.sureDb() >= 0);
                assertTrue(talk.sureDb() < talk.spareDb());
                if (talk.sureDb() >= 0) sure++;
            }
        assertTrue(sure > 0 && sure < 10, "some talks are sure and some are not: " + sure);
    }

    @Test
    void fromTheOtherEndThereAndBackChangePlaces() {
        TalkBook book = TalkBook.of(SETTING);
        Party one = at(-1500, PaperWorld.person(5, Carry.FACE));
        Party other = at(900, PaperWorld.person(1, Carry.HIP_TIGHT));
        HopPath.HopOdds odds = book.talk(one, other).orElseThrow().odds();
        HopPath.HopOdds turned = book.talk(other, one).orElseThrow().odds().turned();
        assertEquals(odds.there(), turned.there(), ROUNDING);
        assertEquals(odds.back(), turned.back(), ROUNDING);
        assertTrue(odds.there() > odds.back(), "five watts are heard better than one");
    }

    /**
     * Flat ground, a base in the middle and two crews so far out that one weak end is enough but not two: the base carries the strong
     * set for both; where it must keep the weak one, both crews carry strong ones.
     */
    @Test
    void onPaperGroundTheBestIsKnown() {
        RelayRequest.Setting flat = new PaperWorld((east, north) -> 100).setting("handheld");
        List<LinkEnd> options = List.of(PaperWorld.person(0.05, Carry.FACE), PaperWorld.person(5, Carry.FACE));
        TalkBook book = TalkBook.of(flat);
        double farM = 200;
        while (sure(book, farM, options, 0, 0) >= 0) farM += 100;
        // power counts one way only: both ends must be strong beyond this
        assertTrue(sure(book, farM, options, 1, 1) >= 0);
        assertEquals(sure(book, farM, options, 1, 0), sure(book, farM, options, 0, 0), ROUNDING);
        AssignTable.Builder builder = new AssignTable.Builder();
        for (int p = 0; p < 4; p++) builder.person(new double[] {1, 2}, 0);
        double nearM = farM / 4;
        builder.talk(0, 1, spare(book, farM, options));
        builder.talk(0, 2, spare(book, nearM, options));
        builder.talk(0, 3, spare(book, farM, options));
        Assignment found = Assignment.of(builder.table());
        assertEquals(List.of(1, 1, 0, 1), found.best().orElseThrow().options());
        assertEquals(8, found.next().orElseThrow().burden());
        assertEquals(Optional.empty(), found.together());
    }

    private static double[][] spare(TalkBook book, double eastM, List<LinkEnd> options) {
        double[][] spare = new double[2][2];
        for (int a = 0; a < 2; a++) for (int b = 0; b < 2; b++) spare[a][b] = sure(book, eastM, options, a, b);
        return spare;
    }

    private static double sure(TalkBook book, double eastM, List<LinkEnd> options, int a, int b) {
        return book.talk(at(0, options.get(a)), at(eastM, options.get(b)))
                .orElseThrow()
                .sureDb();
    }
}
