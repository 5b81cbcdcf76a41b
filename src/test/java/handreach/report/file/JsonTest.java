package handreach.report.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.report.draw.Svg;
import handreach.units.Decibels;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class JsonTest {
    private enum Kind {
        TWO_RAY
    }

    private record Result(
            double lossDb, OptionalDouble heightM, Optional<String> name, Kind kind, List<Double> interval95Db) {}

    @Test
    void componentsBecomeSnakeCase() {
        assertEquals("loss_db", Json.key("lossDb"));
        assertEquals("interval_95_db", Json.key("interval95Db"));
        assertEquals("height_m", Json.key("heightM"));
        assertEquals("p1812", Json.key("p1812"));
        assertEquals("told_apart", Json.key("toldApart"));
    }

    @Test
    void optionalsAreNullAndEnumsAreWords() {
        var node = JsonText.parsed(Json.text(
                new Result(12.5, OptionalDouble.empty(), Optional.of("a \"b\""), Kind.TWO_RAY, List.of(1.0, 2.0))));
        assertEquals(12.5, node.get("loss_db").asDouble());
        assertTrue(node.get("height_m").isNull());
        assertEquals("a \"b\"", node.get("name").asText());
        assertEquals("two-ray", node.get("kind").asText());
        assertEquals(2, node.get("interval_95_db").size());
    }

    @Test
    void aNumberThatIsNotFiniteIsNeverWritten() {
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> Json.text(List.of(bad)));
            assertThrows(
                    IllegalArgumentException.class,
                    () -> Json.text(new Result(0, OptionalDouble.of(bad), Optional.empty(), Kind.TWO_RAY, List.of())));
        }
    }

    @Test
    void numbersDoNotFollowTheLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertTrue(Json.text(List.of(1.25)).contains("1.25"));
            assertEquals("12.35", Svg.n(12.346));
            assertEquals("1.3", Decibels.number(1.26, 1));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void negativeZeroIsZero() {
        assertTrue(Json.text(List.of(-0.0)).contains("0.0")
                && !Json.text(List.of(-0.0)).contains("-"));
    }
}
