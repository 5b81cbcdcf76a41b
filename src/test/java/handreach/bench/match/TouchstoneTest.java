package handreach.bench.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.input.SourceText;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TouchstoneTest {
    private static Touchstone read(String name, String text) {
        return Touchstone.of(SourceText.of(name, text));
    }

    private static String fault(String name, String text) {
        return assertThrows(InputFault.class, () -> read(name, text)).getMessage();
    }

    /** By hand: |0.12 − j0.05| = 0.13, return loss 17.72 dB, SWR 1.13/0.87 = 1.299. */
    @Test
    void anExampleByHand() {
        Touchstone file = read("a.s1p", "! an antenna\n# MHz S RI R 50\n155.000 0.1200 -0.0500 ! here\n");
        assertEquals(1, file.count());
        assertEquals(155, file.frequencyMhz(0), 0);
        assertEquals(0.13, file.reflection(0).abs(), 1e-12);
        assertEquals(17.72, match(file).returnLossDb(), 5e-3);
        assertEquals(1.299, match(file).swr(), 5e-4);
    }

    @Test
    void allVariantsOfTheFormatGiveTheSameNumbers() {
        List<Complex> reflections = List.of(new Complex(0.6, -0.5), new Complex(-0.1, 0.02), new Complex(0.3, 0.7));
        double[] mhz = {140, 150.5, 161};
        for (String unit : List.of("Hz", "kHz", "MHz", "GHz"))
            for (String form : List.of("RI", "MA", "DB"))
                for (String parameter : List.of("S", "Y", "Z"))
                    for (double ohm : new double[] {50, 75})
                        for (boolean version2 : new boolean[] {false, true}) {
                            String text = text(reflections, mhz, unit, form, parameter, ohm, version2);
                            Touchstone file = read(version2 ? "a.ts" : "a.s1p", text);
                            assertEquals(ohm, file.referenceOhm(), 0);
                            for (int i = 0; i < 3; i++) {
                                assertEquals(mhz[i], file.frequencyMhz(i), 1e-9);
                                assertEquals(
                                        0,
                                        file.reflection(i)
                                                .subtract(reflections.get(i))
                                                .abs(),
                                        1e-10,
                                        text);
                            }
                        }
    }

    private static String text(
            List<Complex> reflections,
            double[] mhz,
            String unit,
            String form,
            String parameter,
            double ohm,
            boolean v2) {
        double scale = switch (unit) {
            case "Hz" -> 1e6;
            case "kHz" -> 1e3;
            case "MHz" -> 1;
            default -> 1e-3;
        };
        StringBuilder text = new StringBuilder();
        if (v2) text.append("[Version] 2.0\n");
        text.append("# ").append(unit).append(' ').append(parameter).append(' ').append(form);
        text.append(
                v2
                        ? "\n[Number of Ports] 1\n[Number of Frequencies] 3\n[Reference] " + ohm + "\n[Network Data]\n"
                        : " R " + ohm + "\n");
        for (int i = 0; i < mhz.length; i++) {
            Complex gamma = reflections.get(i);
            Complex z = gamma.add(1).divide(Complex.ONE.subtract(gamma));
            Complex value = switch (parameter) {
                case "Z" -> v2 ? z.multiply(ohm) : z;
                case "Y" -> v2 ? z.reciprocal().divide(ohm) : z.reciprocal();
                default -> gamma;
            };
            double first = switch (form) {
                case "RI" -> value.getReal();
                case "MA" -> value.abs();
                default -> 20 * Math.log10(value.abs());
            };
            double second = form.equals("RI") ? value.getImaginary() : Math.toDegrees(value.getArgument());
            text.append(String.format(Locale.ROOT, "%.12g %.15e %.15e%n", mhz[i] * scale, first, second));
        }
        if (v2) text.append("[End]\n");
        return text.toString();
    }

    @Test
    void optionsStandInAnyOrderAndCaseAndMayLack() {
        assertEquals(75, read("a.s1p", "# r 75 ri mhz s\n155 0.1 0\n").referenceOhm(), 0);
        Touchstone bare = read("a.s1p", "0.155 0.5 180\n");
        assertEquals(155, bare.frequencyMhz(0), 1e-12);
        assertEquals(-0.5, bare.reflection(0).getReal(), 1e-12);
        assertTrue(bare.warnings().get(0).contains("option line is missing"));
        assertEquals(155, read("a.s1p", "# \n0.155 0.5 180\n# Hz\n").frequencyMhz(0), 1e-12);
    }

    /** Two ports: S11 is the first of 11 21 12 22; noise rows of an amplifier's file end the data. */
    @Test
    void ofTwoPortsTheFirstIsUsed() {
        Touchstone file = read(
                "a.s2p",
                "# MHz S RI R 50\n150 0.1 0.2 0.9 0 0.8 0 0.3 0\n160 0.2 0.2 0.9 0 0.8 0 0.3 0\n"
                        + "100 2.0 0.5 30 0.4\n110 2.1 0.5 30 0.4\n");
        assertEquals(2, file.count());
        assertEquals(0.1, file.reflection(0).getReal(), 0);
        assertTrue(file.warnings().get(0).contains("two ports"));
    }

    /** A series 25 ohm between two ports of 50 ohm: Y = 1/25 (1 −1; −1 1), S11 = 25/125; a shunt 100 ohm: Z all 100. */
    @Test
    void twoPortYAndZBecomeS11() {
        Touchstone series = read("a.s2p", "# MHz Y RI R 50\n150 2 0 -2 0 -2 0 2 0\n");
        assertEquals(0.2, series.reflection(0).getReal(), 1e-12);
        Touchstone shunt = read("a.s2p", "# MHz Z RI R 50\n150 2 0 2 0 2 0 2 0\n");
        // 100 in parallel with 50 is 33.33: (33.33 − 50)/(33.33 + 50) = −0.2
        assertEquals(-0.2, shunt.reflection(0).getReal(), 1e-12);
    }

    @Test
    void versionTwoMayWrapRowsAndCarryInformation() {
        Touchstone file = read(
                "a.s2p",
                "! made up\n[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n"
                        + "[Number of Frequencies] 1\n[Reference]\n50 75\n[Begin Information]\n12 nonsense\n[End Information]\n"
                        + "[Network Data]\n150 0.1 0.2\n 0.9 0\n 0.8 0 0.3 0\n[End]\n");
        assertEquals(0.1, file.reflection(0).getReal(), 0);
        assertEquals(50, file.referenceOhm(), 0);
    }

    @Test
    void aLittleMoreThanTotalReflectionIsToldAndLimited() {
        Touchstone file = read("a.s1p", "# MHz S RI R 50\n150 1.01 0\n151 0.5 0\n");
        assertTrue(file.warnings().get(0).contains("1 of 2 rows"));
        assertTrue(match(file).swr() > 1e5);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a.s1p|155 0.1|line 2: has 2 numbers, but a row of 1 port has 3",
                "a.s1p|155 0.1 x|line 2: has \"x\" where a number is expected",
                "a.s1p|155 0,1 0|decimals are written with a point",
                "a.s1p|155 3 0|line 2: reflects more than it receives (|S11| 3.000)",
                "a.s1p|0 0.1 0|line 2: the frequency is \"0\"",
                "a.s1p|[Fancy] 3|the keyword [Fancy] is not known",
                "a.s1p|[Version] 3.0|versions 1 (without this line) and 2.0 are read",
                "a.s2p|155 0.1 0|a row of 2 ports has 9",
                "a.s4p|155 0.1 0|has 4 ports",
            })
    void whatCannotBeMeantIsRefused(String name, String row, String words) {
        String said = fault(name, "# MHz S RI R 50\n" + row + "\n");
        assertTrue(said.contains(words), said);
    }

    @Test
    void wrongOptionsAndOrderAreRefused() {
        assertTrue(fault("a.s1p", "# MHz H RI R 50\n155 0.1 0\n").contains("hybrid"));
        assertTrue(fault("a.s1p", "# MHz S RI R zero\n155 0.1 0\n")
                .contains("the reference impedance is expected, 0.1 to 10000 ohm"));
        assertTrue(fault("a.s1p", "# MHz S XY R 50\n155 0.1 0\n").contains("the word \"XY\""));
        assertTrue(fault("a.s1p", "155 0.1 0\n# MHz S RI R 50\n").contains("stands below data"));
        assertTrue(fault("a.s1p", "# MHz S RI R 50\n156 0.1 0\n155 0.1 0\n")
                .contains("line 3: the frequency of \"155\" MHz does not rise"));
        assertTrue(fault("a.s1p", "# MHz S RI R 50\n").contains("holds no data row"));
        assertTrue(fault("a.s1p", "# MHz S RI R 50\n155 a 0\n156 b 0\n").contains("line 3"));
        assertTrue(fault(
                        "a.ts",
                        "[Version] 2.0\n# MHz S RI\n[Number of Ports] 1\n[Number of Frequencies] 2\n[Network Data]\n155 0.1 0\n")
                .contains("says 2, but 1 rows follow"));
    }

    @Test
    void referencesThatNoLineHasAreRefused() {
        for (String ohm : List.of("9e99", "0", "1e-9", "20000"))
            assertTrue(assertThrows(
                            InputFault.class,
                            () -> Touchstone.of(SourceText.of("r.s1p", "# MHz S RI R " + ohm + "\n150 0.1 0\n")))
                    .getMessage()
                    .contains("0.1 to 10000"));
    }

    private static Match match(Touchstone file) {
        return Match.ofReflection(
                Math.min(Match.MOST_REFLECTION, file.reflection(0).abs()));
    }

    /** A sweep saved from the top down, or with decimal commas, has one cause and not one a row. */
    @Test
    void oneCauseInManyRowsIsOneLine() {
        StringBuilder falling = new StringBuilder("# MHz S RI R 50\n");
        StringBuilder commas = new StringBuilder("# MHz S RI R 50\n");
        for (int mhz = 200; mhz > 140; mhz--) {
            falling.append(mhz).append(" 0.1 0\n");
            commas.append(mhz).append(",5 0,1 0\n");
        }
        String once = fault("a.s1p", falling.toString());
        assertEquals(1, once.lines().count(), once);
        assertTrue(once.contains("And 58 more like it"), once);
        String points = fault("a.s1p", commas.toString());
        assertEquals(1, points.lines().count(), points);
        assertTrue(points.contains("decimals are written with a point") && points.contains("And 59 more"), points);
    }
}
