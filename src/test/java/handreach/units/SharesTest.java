package handreach.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SharesTest {
    @ParameterizedTest
    @CsvSource({
        "0, under 1 %, 0 %",
        "0.0049, under 1 %, under 1 %",
        "0.005, 1 %, 1 %",
        "0.234, 23 %, 23 %",
        "0.6003, 60 %, 60 %",
        "0.9949, 99 %, 99 %",
        "0.995, over 99 %, over 99 %",
        "0.99999, over 99 %, over 99 %",
        "1, over 99 %, 100 %"
    })
    void oddsAreNeverAPromiseAndSharesAreWholeOnlyWhereTheyAreSo(double share, String odds, String counted) {
        assertEquals(odds, Shares.odds(share));
        assertEquals(counted, Shares.share(share));
    }

    @Test
    void noOddsReadNoughtOrAHundred() {
        for (double odds = 0; odds <= 1; odds += 1.0 / 1024)
            assertFalse(Shares.odds(odds).matches("(0|100) %"), "at " + odds);
    }

    @Test
    void aPartOfWhatIsCountedIsNoneOrAllWhereItIsExactlyThat() {
        assertEquals("none", Shares.part(0));
        assertEquals("under 1 %", Shares.part(1e-6));
        assertEquals("17 %", Shares.part(1 / 6.0));
        assertEquals("all", Shares.part(0.1 + 0.2 + 0.3 + 0.4 - 1e-12));
    }

    @Test
    void weightsThatAddUpToAWholeBarTheirRoundingAreAWhole() {
        assertEquals("100 %", Shares.share(0.1 + 0.2 + 0.3 + 0.4 - 1e-12));
        assertEquals("over 99 %", Shares.share(1 - 1e-6));
    }

    @Test
    void intervalsNameThePerCentOnce() {
        assertEquals("99 % (60 % to over 99 %)", Shares.odds(0.99, 0.6, 0.9999));
        assertEquals("under 1 % (under 1 % to 3 %)", Shares.odds(0.001, 0, 0.03));
    }

    /** 79.7 % rounds to the wanted 80 %, and does not reach it. */
    @ParameterizedTest
    @CsvSource({
        "0.797, 0.8, just under 80 %",
        "0.8, 0.8, 80 %",
        "0.803, 0.8, 80 %",
        "0.794, 0.8, 79 %",
        "0.9899, 0.99, just under 99 %",
        "0.8999, 0.9, just under 90 %",
        "0.97, 0.975, 97 %"
    })
    void whatMissesTheWantedOddsNeverReadsAsIfItMetThem(double odds, double wanted, String words) {
        assertEquals(words, Shares.odds(odds, wanted));
    }

    @Test
    void everyRangeNamesItsUnitWhereItsEndsAreUnlike() {
        assertEquals("40 to just under 80 %", Shares.oddsRange(0.4, 0.798, 0.8));
        assertEquals("4 % to over 99 %", Shares.oddsRange(0.04, 0.999, 0.8));
        assertEquals("4 to 78 %", Shares.oddsRange(0.04, 0.78, 0.8));
    }

    @Test
    void wantedOddsAreSaidAsAsked() {
        assertEquals("80 %", Shares.wanted(0.8));
        assertEquals("99.9 %", Shares.wanted(0.999));
        assertEquals("99.95 %", Shares.wanted(0.9995));
    }
}
