package handreach.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumberTextTest {
    @ParameterizedTest
    @CsvSource({"12.5,12.5", " -3 ,-3", "\u22124.25,-4.25", "1e3,1000", ".5,0.5", "7.,7"})
    void plainNumbersAreRead(String typed, double value) {
        assertEquals(OptionalDouble.of(value), NumberText.parse(typed));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "x", "1,5", "1 000", "NaN", "Infinity", "1e999", "0x10", "12 dB", "\u0661"})
    void anythingElseIsNone(String typed) {
        assertTrue(NumberText.parse(typed).isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"0,0", "11000,11000", "-170,-170", "0.2,0.2", "1e6,1000000", "1e-3,0.001"})
    void aLimitIsWrittenWithoutNeedlessDigits(double value, String written) {
        assertEquals(written, NumberText.plain(value));
    }
}
