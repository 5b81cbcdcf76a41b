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
    void weightsThatAddUpToAWholeBarTheirRoundingAreAWhole() {
        assertEquals("100 %", Shares.share(0.1 + 0.2 + 0.3 + 0.4 - 1e-12));
        assertEquals("over 99 %", Shares.share(1 - 1e-6));
    }

    @Test
    void intervalsNameThePerCentOnce() {
        assertEquals("99 % (60 to over 99 %)", Shares.odds(0.99, 0.6, 0.9999));
        assertEquals("under 1 % (under 1 % to 3 %)", Shares.odds(0.001, 0, 0.03));
    }

    @Test
    void wantedOddsAreSaidAsAsked() {
        assertEquals("80 %", Shares.wanted(0.8));
        assertEquals("99.9 %", Shares.wanted(0.999));
        assertEquals("99.95 %", Shares.wanted(0.9995));
    }
}
