package handreach.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LengthsTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0 m, 0 ft",
        "444, 440 m, 1460 ft",
        "447, 450 m, 1470 ft",
        "804, 800 m, 2640 ft",
        "805, 800 m, 0.50 mi",
        "944, 940 m, 0.59 mi",
        "950, 1.0 km, 0.59 mi",
        "960, 1.0 km, 0.60 mi",
        "1440, 1.4 km, 0.89 mi",
        "120000, 120.0 km, 74.6 mi"
    })
    void aLengthIsToldToTenMetresOrToATenthOfAKilometre(double metres, String metric, String imperial) {
        assertEquals(metric, Lengths.METRIC.text(metres));
        assertEquals(imperial, Lengths.IMPERIAL.text(metres));
    }

    @Test
    void aRangeNamesTheUnitOnceWhereItIsTheSame() {
        assertEquals("340 to 780 m", Lengths.METRIC.range(340, 780));
        assertEquals("450 m to 1.4 km", Lengths.METRIC.range(450, 1400));
        assertEquals("1.4 to 2.5 km", Lengths.METRIC.range(1400, 2500));
        assertEquals("620 m", Lengths.METRIC.range(619, 621));
        assertEquals("0.28 to 0.59 mi", Lengths.IMPERIAL.range(447, 950));
        assertEquals("1470 to 2620 ft", Lengths.IMPERIAL.range(447, 800));
    }

    @Test
    void aColumnInOneUnitSaysWhatTheTextSays() {
        assertEquals("0.45", Lengths.METRIC.longNumber(447));
        assertEquals("1.4", Lengths.METRIC.longNumber(1440));
        assertEquals("0.28", Lengths.IMPERIAL.longNumber(447));
        assertEquals("0.60", Lengths.IMPERIAL.longNumber(960));
    }

    /** A rounded length read back and written again is the same length: no face can round twice into another figure. */
    @Test
    void roundingTwiceChangesNothing() {
        for (double metres = 0; metres < 3000; metres += 0.7) {
            String text = Lengths.METRIC.text(metres);
            double back = Double.parseDouble(text.substring(0, text.indexOf(' '))) * (text.endsWith("km") ? 1000 : 1);
            // Half a step below the change of units 949 m reads 950 m, which is the first that reads 1.0 km.
            if (!text.equals("950 m")) assertEquals(text, Lengths.METRIC.text(back));
        }
    }

    @Test
    void signsAndHeightsCarryATrueMinus() {
        assertEquals("+90 m", Lengths.METRIC.signed(90));
        assertEquals("\u22121.2 km", Lengths.METRIC.signed(-1200));
        assertEquals("\u221212 m", Lengths.METRIC.heightText(-12.2));
        assertEquals("0 m", Lengths.METRIC.heightText(-0.2));
        assertEquals("4068 ft", Lengths.IMPERIAL.heightText(1240));
    }

    @Test
    void lengthsInOneColumnHaveOneUnitAndTheRoundingOfTheSentence() {
        Lengths.OneUnit mixed = Lengths.METRIC.together(DoubleStream.of(523, 1270));
        assertEquals("km", mixed.unit());
        assertEquals(List.of("0.52", "1.3"), List.of(mixed.number(523), mixed.number(1270)));
        assertEquals("0.52 to 1.3", mixed.range(523, 1270));
        Lengths.OneUnit near = Lengths.METRIC.together(DoubleStream.of(523, 70));
        assertEquals("m", near.unit());
        assertEquals(List.of("520", "70"), List.of(near.number(523), near.number(70)));
        assertEquals("70", near.range(68, 72));
        assertEquals("520 m", mixed.text(523));
        Lengths.OneUnit miles = Lengths.IMPERIAL.together(DoubleStream.of(523, 1270));
        assertEquals("0.33 mi", miles.text(523));
        assertEquals("0.33 to 0.79 mi", miles.rangeText(523, 1270));
        assertEquals("1720 ft", Lengths.IMPERIAL.together(DoubleStream.of(523)).text(523));
    }

    @Test
    void areasAreToldInTheSquareOfTheLongUnit() {
        assertEquals("5.7 km\u00b2", Lengths.METRIC.area(5.71e6));
        assertEquals("0.24 km\u00b2", Lengths.METRIC.area(2.4e5));
        assertEquals("120 km\u00b2", Lengths.METRIC.area(1.2e8));
        // a square mile is 2.589988 km\u00b2, exact by definition of the mile
        assertEquals("2.0 mi\u00b2", Lengths.IMPERIAL.area(2 * 2.589988e6));
        assertEquals("\u22121.0 to +7.2 km\u00b2", Lengths.METRIC.areaRange(-1e6, 7.2e6));
    }

    @Test
    void anAntennaIsWeighedInTheUnitsOfThePlan() {
        assertEquals("16 g", Lengths.METRIC.mass(16));
        // 28.349523125 g an ounce, exact by definition of the pound
        assertEquals("0.6 oz", Lengths.IMPERIAL.mass(16));
        assertEquals("10.0", Lengths.IMPERIAL.massNumber(283.49523125));
    }
}
