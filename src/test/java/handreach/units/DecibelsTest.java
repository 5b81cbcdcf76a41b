package handreach.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DecibelsTest {
    @Test
    void noNumberIsANegativeZero() {
        assertEquals("0.0", Decibels.number(-0.04, 1));
        assertEquals("0", Decibels.number(-0.0, 0));
        assertEquals("\u22120.1", Decibels.number(-0.06, 1));
        assertEquals("-0.1 0.0", Decibels.plain(-0.06, 1) + " " + Decibels.plain(-0.04, 1));
        assertEquals("0.0", Decibels.signed(-0.04, 1));
        assertEquals("+0.1", Decibels.signed(0.06, 1));
        assertEquals("\u22120.1", Decibels.signed(-0.06, 1));
    }

    /** Against the formatter of the platform, which a cold start waits 30 ms for: also where a half is to be rounded. */
    @Test
    void numbersAreWrittenAsTheFormatterWritesThem() {
        Random random = new Random(8);
        for (int n = 0; n < 100_000; n++) {
            int decimals = random.nextInt(5);
            double value = n % 2 == 0
                    ? random.nextInt(200_000) / 2.0 / Math.pow(10, decimals)
                    : Math.exp(20 * random.nextDouble() - 10);
            assertEquals(String.format(Locale.ROOT, "%." + decimals + "f", value), Decibels.number(value, decimals));
            assertEquals("NaN Infinity", Decibels.number(Double.NaN, 1) + " " + Decibels.signed(1 / 0.0, 1));
        }
    }

    @Test
    void aSentenceCarriesATenthAndTheUnit() {
        assertEquals("0.1 dB", Decibels.text(0.10723865391773302));
        assertEquals("\u22127.2 dB", Decibels.text(-7.2));
    }
}
