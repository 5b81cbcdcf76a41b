package handreach.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BearingsTest {
    /** By hand: magnetic is true less an easterly declination, more by a westerly one. */
    @ParameterizedTest
    @CsvSource({
        "45, 7, 045° true (038° magnetic), 045° (038° M)",
        "45, -7, 045° true (052° magnetic), 045° (052° M)",
        "3, 7, 003° true (356° magnetic), 003° (356° M)",
        "359.6, 0, 000° true (000° magnetic), 000° (000° M)",
        "-10, -12.5, 350° true (003° magnetic), 350° (003° M)",
        "355, -8, 355° true (003° magnetic), 355° (003° M)"
    })
    void magneticStandsBesideTrue(double trueDeg, double declinationDeg, String text, String brief) {
        Bearings bearings = new Bearings(OptionalDouble.of(declinationDeg));
        assertEquals(text, bearings.text(trueDeg));
        assertEquals(brief, bearings.brief(trueDeg));
    }

    @Test
    void aSectorHasBothItsBearingsInBothWays() {
        assertEquals("050° to 120° true, 039° to 109° magnetic", new Bearings(OptionalDouble.of(11)).range(50, 120));
        assertEquals("350° to 010° true", Bearings.TRUE.range(350, 10));
    }

    @Test
    void withoutADeclinationThereIsNoMagneticFigure() {
        assertEquals("007° true", Bearings.TRUE.text(7));
        assertEquals("007°", Bearings.TRUE.brief(367));
        assertEquals("007.2° true", Bearings.TRUE.text(7.24, 1));
        assertEquals("000.0° true", Bearings.TRUE.text(359.96, 1));
    }
}
