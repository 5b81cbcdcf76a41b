package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.units.Frequency;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ElevationPatternTest {
    /** What is promised against the method-of-moments code, down to 10 dB below the maximum. */
    private static final double PROMISE_DB = 0.3;

    private record Row(int elevationDeg, double gainDbi) {}

    @Test
    void agreesWithTheMethodOfMomentsBetweenTheTablesToo() throws IOException {
        Map<String, List<Row>> cases = rows();
        assertTrue(cases.size() > 90, "cases: " + cases.size());
        List<String> off = new ArrayList<>();
        cases.forEach((name, rows) -> {
            String[] part = name.split(",");
            ElevationPattern pattern = ElevationPattern.of(
                    Radiator.KEYWORD.find(part[0]).orElseThrow(),
                    Double.parseDouble(part[3]),
                    PatternMount.KEYWORD.find(part[1]).orElseThrow(),
                    new Frequency(Double.parseDouble(part[2])));
            double max = rows.stream().mapToDouble(Row::gainDbi).max().orElseThrow();
            for (Row row : rows)
                if (row.gainDbi > max - 10 && Math.abs(pattern.gainDbi(row.elevationDeg) - row.gainDbi) > PROMISE_DB)
                    off.add(name + " at " + row.elevationDeg + ": " + row.gainDbi + " against "
                            + pattern.gainDbi(row.elevationDeg));
        });
        assertTrue(
                off.isEmpty(),
                () -> off.size() + " rows off, such as " + off.get(0) + " and " + off.get(off.size() / 2));
    }

    private static Map<String, List<Row>> rows() throws IOException {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                ElevationPatternTest.class.getResourceAsStream("patterns-nec.csv"), StandardCharsets.UTF_8))) {
            return in.lines()
                    .filter(l -> !l.startsWith("#") && !l.startsWith("radiator"))
                    .map(l -> l.split(","))
                    .collect(Collectors.groupingBy(
                            c -> c[0] + "," + c[1] + "," + c[2] + "," + c[3],
                            LinkedHashMap::new,
                            Collectors.mapping(
                                    c -> new Row(Integer.parseInt(c[4]), Double.parseDouble(c[5])),
                                    Collectors.toList())));
        }
    }

    @ParameterizedTest // method of moments, a half-wave dipole of 1e-4 wavelengths radius: 2.17 dBi and its shape
    @CsvSource({"0,2.17", "10,1.97", "20,1.38", "30,0.38", "40,-1.04", "50,-2.94", "60,-5.49"})
    void theDipoleIsTheDipole(double elevationDeg, double gainDbi) {
        ElevationPattern dipole = of(Radiator.HALF_WAVE_DIPOLE, 0.5, PatternMount.FREE_SPACE, 300);
        assertEquals(gainDbi, dipole.gainDbi(elevationDeg), 0.02);
        assertEquals(gainDbi, dipole.gainDbi(-elevationDeg), 0.02);
        assertEquals(dipole, of(Radiator.HALF_WAVE_DIPOLE, 0.5, PatternMount.FREE_SPACE, 300));
    }

    @Test
    void perfectGroundDoublesThePower() { // law: image theory, 3.01 dB over two arms in free space
        for (double length : new double[] {0.1, 0.25, 0.47, 0.625, 0.9}) {
            ElevationPattern ground = of(Radiator.MONOPOLE, length, PatternMount.PERFECT_GROUND, 150);
            ElevationPattern free = of(Radiator.MONOPOLE, length, PatternMount.FREE_SPACE, 150);
            for (int e = 0; e < 90; e += 7) assertEquals(10 * Math.log10(2), ground.gainDbi(e) - free.gainDbi(e), 1e-9);
        }
    }

    @Test
    void aLosslessPatternRadiatesWhatItIsFed() { // law: power over the sphere, less the small horizontal component
        for (PatternMount mount : PatternMount.values()) {
            for (double length : new double[] {0.2, 0.33, 0.5, 0.6}) {
                double power = radiatedShare(of(Radiator.MONOPOLE, length, mount, 450));
                double ideal = mount == PatternMount.PERFECT_GROUND ? 2 : 1;
                assertTrue(power < 1.015 * ideal && power > 0.9 * ideal, mount + " " + length + ": " + power);
            }
        }
    }

    private static double radiatedShare(ElevationPattern pattern) {
        double sum = 0;
        for (double e = -89.5; e < 90; e++)
            sum += Math.pow(10, pattern.gainDbi(e) / 10) * Math.cos(Math.toRadians(e)) * Math.toRadians(1) / 2;
        return sum;
    }

    @Test
    void aLongerWhipIsNotAlwaysBetterOnABox() { // on the box a 5/8 wave has less at the horizon than a quarter wave
        double quarter =
                of(Radiator.QUARTER_WAVE, 0.2387, PatternMount.CHASSIS, 146).gainDbi(0);
        ElevationPattern longer = of(Radiator.FIVE_EIGHTHS, 0.594, PatternMount.CHASSIS, 146);
        assertEquals(1.91, quarter, 0.05);
        assertEquals(1.36, longer.gainDbi(0), 0.05);
        assertEquals(20, longer.maxElevationDeg(), 2);
    }

    @Test
    void aLoadedWhipHasItsCoilLossInIt() { // method of moments, 150 mm, coil quality 100: −1.96 dBi, with the wire
        // 0.95 dBi
        double length = 0.15 * 146 / 299.8;
        assertEquals(
                -1.96,
                of(Radiator.SHORT_HELICAL, length, PatternMount.CHASSIS, 146).gainDbi(0),
                0.1);
        assertEquals(
                0.95,
                of(Radiator.SHORT_HELICAL, length, PatternMount.CHASSIS_COUNTERPOISE, 146)
                        .gainDbi(0),
                0.1);
    }

    @Test
    void aWhipOnTheWrongBandIsSaidToSquint() { // 0.49 m: a quarter wave at 146 MHz, three quarters at 446
        ElevationPattern right = of(Radiator.QUARTER_WAVE, 0.49 * 146 / 299.8, PatternMount.CHASSIS, 146);
        ElevationPattern wrong = of(Radiator.QUARTER_WAVE, 0.49 * 446 / 299.8, PatternMount.CHASSIS, 446);
        assertFalse(String.join(" ", right.notes()).contains("squints"));
        assertTrue(String.join(" ", wrong.notes()).contains("three quarters of a wavelength"), "" + wrong.notes());
        assertTrue(wrong.maxGainDbi() - wrong.gainDbi(0) > 3);
        assertTrue(wrong.maxElevationDeg() > 10);
    }

    @Test
    void leaningTowardsThePathShiftsTheAngle() {
        ElevationPattern upright = of(Radiator.HALF_WAVE_DIPOLE, 0.5, PatternMount.FREE_SPACE, 155);
        ElevationPattern leaning = upright.tilted(30);
        assertEquals(upright.gainDbi(30), leaning.gainDbi(0), 1e-12);
        assertEquals(upright.gainDbi(0), leaning.gainDbi(-30), 1e-12);
        assertEquals(
                upright.gainDbi(80), leaning.gainDbi(70), 1e-12); // over the top: 100 degrees is 80 on the other side
        assertEquals(upright, upright.tilted(0));
    }

    @Test
    void readsBetweenTheDegreesInAStraightLine() {
        ElevationPattern pattern = of(Radiator.MONOPOLE, 0.25, PatternMount.CHASSIS, 155);
        for (double e = -89.9; e < 89; e += 3.37) {
            double floor = Math.floor(e);
            double mixed = pattern.gainDbi(floor) * (floor + 1 - e) + pattern.gainDbi(floor + 1) * (e - floor);
            assertEquals(mixed, pattern.gainDbi(e), 1e-9);
        }
        assertEquals(pattern.gainDbi(90), pattern.gainDbi(120), 0);
        assertEquals(pattern.gainDbi(-90), pattern.gainDbi(-90.5), 0);
    }

    @Test
    void nonsenseIsRefused() {
        for (double length : new double[] {0, -0.1, Double.NaN, 5})
            assertThrows(
                    IllegalArgumentException.class, () -> of(Radiator.MONOPOLE, length, PatternMount.CHASSIS, 155));
    }

    @Test
    void everyKindHasAPatternOnEveryMountAndNoNullDeeperThanFifteenDecibels() {
        for (Radiator radiator : Radiator.values())
            for (PatternMount mount : PatternMount.values())
                for (double mhz : new double[] {30, 146, 155, 223.5, 465, 868, 1300})
                    for (double length : new double[] {0.005, radiator.usualLengthWavelengths(), 0.99, 1.7}) {
                        ElevationPattern p = of(radiator, length, mount, mhz);
                        double max = p.maxGainDbi();
                        assertTrue(max > -20 && max < 10, p + ": " + max);
                        for (int e = -90; e <= 90; e++) assertTrue(p.gainDbi(e) >= max - 15 - 1e-9);
                    }
    }

    @Test
    void aUsersOwnPatternIsReadAsItStands() {
        ElevationPattern own = ElevationPattern.read(
                SourceText.of("own.csv", "# mine\nelevation_deg,gain_dbi\n-30,-2\n0,1.5\n20,0.5\n"));
        assertEquals(1.5, own.gainDbi(0), 1e-12);
        assertEquals(1.0, own.gainDbi(10), 1e-12);
        assertEquals(0.5, own.gainDbi(50), 1e-12);
        assertEquals(-2, own.gainDbi(-90), 1e-12);
        assertTrue(own.notes().toString().contains("held"));
    }

    @Test
    void everyFaultOfAPatternFileIsToldWithItsLine() {
        InputFault fault = assertThrows(
                InputFault.class,
                () -> ElevationPattern.read(SourceText.of(
                        "own.csv",
                        "elevation_deg,gain_dbi\n-30,-2\n-30,1\n95,1\n10,\n20,1,5\n30,2\n40,nan\n50,1\n60,2\n")));
        List<String> told = fault.faults().stream().map(f -> f.message()).toList();
        assertEquals(5, told.size(), () -> String.join("\n", told));
        assertTrue(told.get(0).startsWith("own.csv line 3: elevation_deg is \"-30\", it must be above"), told.get(0));
        assertTrue(told.get(1).contains("line 4: elevation_deg is \"95\", allowed is a number from -90 to 90"));
        assertTrue(told.get(3).contains("line 6: has 3 cells, the column heads are 2"), told.get(3));
    }

    @Test
    void theColumnsOfAPatternFileStandInAnyOrderAndAreRefusedByTheirNames() {
        ElevationPattern own =
                ElevationPattern.read(SourceText.of("own.csv", "gain_dbi;elevation_deg\n-2,5;-30\n1,5;0\n0,5;20\n"));
        assertEquals(1.5, own.gainDbi(0), 1e-12);
        InputFault fault = assertThrows(
                InputFault.class,
                () -> ElevationPattern.read(SourceText.of("own.csv", "elevation_deg,gain\n0,1\n1,1\n2,1\n")));
        assertTrue(
                fault.getMessage()
                        .startsWith("own.csv line 1: there is no column \"gain\". Did you mean gain_dbi? Columns are"),
                fault.getMessage());
    }

    @Test
    void aPatternWithoutTheHorizonIsRefused() {
        InputFault fault = assertThrows(
                InputFault.class,
                () -> ElevationPattern.read(SourceText.of("own.csv", "elevation_deg,gain_dbi\n10,1\n20,1\n30,2\n")));
        assertTrue(fault.getMessage().contains("does not reach the horizon"), fault.getMessage());
        assertThrows(InputFault.class, () -> ElevationPattern.read(SourceText.of("own.csv", "")));
    }

    private static ElevationPattern of(Radiator radiator, double length, PatternMount mount, double mhz) {
        return ElevationPattern.of(radiator, length, mount, new Frequency(mhz));
    }
}
