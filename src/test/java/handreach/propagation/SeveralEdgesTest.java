package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class SeveralEdgesTest {
    @ParameterizedTest
    @CsvFileSource(resources = "several-edges-methods.csv", useHeadersInDisplayName = true)
    void agreesWithTheRows(
            String distances,
            String heights,
            double wavelengthM,
            double exactDb,
            double epsteinPetersonDb,
            double deygoutDb,
            double giovaneliDb,
            Double correctedDb) {
        double[] d = PaperGround.list(distances);
        double[] y = PaperGround.list(heights);
        assertEquals(epsteinPetersonDb, epsteinPeterson(d, y, wavelengthM), 0.0006);
        assertEquals(deygoutDb, deygout(d, y, wavelengthM, Deygout.Rule.PLAIN), 0.0006);
        assertEquals(giovaneliDb, deygout(d, y, wavelengthM, Deygout.Rule.GIOVANELI), 0.006);
        double corrected = deygout(d, y, wavelengthM, Deygout.Rule.CORRECTED);
        if (correctedDb != null) assertEquals(correctedDb, corrected, 0.006);
        assertTrue(Math.abs(corrected - exactDb) < Math.abs(deygoutDb - exactDb) + 1e-9, "correction " + corrected);
    }

    @Test
    void theMethodsKeepTheirStatedErrors() throws IOException {
        // Oracle: repeated Fresnel integrals over 120 seeded paths of 2 to 4 edges, mean and standard deviation of each
        // method.
        assertError(-0.96, 3.73, SeveralEdgesTest::epsteinPeterson);
        assertError(2.76, 3.68, (d, y, w) -> deygout(d, y, w, Deygout.Rule.PLAIN));
        assertError(1.56, 3.39, (d, y, w) -> deygout(d, y, w, Deygout.Rule.CORRECTED));
        assertError(1.75, 3.39, (d, y, w) -> deygout(d, y, w, Deygout.Rule.GIOVANELI));
        assertError(-6.28, 5.11, (d, y, w) -> KnifeEdge.lossDb(Bullington.nu(d, y, 0, 0, 1e12, w)));
        assertError(3.39, 4.96, (d, y, w) -> Bullington.lossDb(Bullington.nu(d, y, 0, 0, 1e12, w), d[d.length - 1]));
    }

    @Test
    void edgesInLineAtEqualSpacingLoseAsTheClosedFormForOne() {
        // Closed form 20 log(N + 1) for N edges in line (Vogler 1982): one edge exactly, two within the error of the
        // sum.
        double[] d = {0, 5, 10};
        assertEquals(20 * Math.log10(2), epsteinPeterson(d, new double[3], 1), 0.02);
        double two = epsteinPeterson(new double[] {0, 5, 10, 15}, new double[4], 1);
        assertEquals(20 * Math.log10(3), two, 2.6);
    }

    @Test
    void turningThePathRoundChangesNothing() {
        double[] d = {0, 2, 3.1, 7, 9, 11};
        double[] y = {0, 40, 70, 55, 66, 0};
        double[] back = {0, 2, 4, 7.9, 9, 11};
        double[] turned = {0, 66, 55, 70, 40, 0};
        for (Deygout.Rule rule : Deygout.Rule.values())
            assertEquals(deygout(d, y, 2, rule), deygout(back, turned, 2, rule), 1e-9, rule.name());
        assertEquals(epsteinPeterson(d, y, 2), epsteinPeterson(back, turned, 2), 1e-9);
    }

    @Test
    void aSecondEdgeThatIsTheFirstAgainAddsNothing() {
        // Limit: two like edges almost at one place are one edge; Tc takes the second away.
        double[] d = {0, 5, 5.001, 10};
        double[] y = {0, 60, 60, 0};
        double one = KnifeEdge.lossDb(KnifeEdge.nu(60, 5, 5, 2));
        assertEquals(one, deygout(d, y, 2, Deygout.Rule.CORRECTED), 0.25);
        assertEquals(one + 6, deygout(d, y, 2, Deygout.Rule.PLAIN), 0.25);
    }

    @Test
    void spreadingIsTheCascadeOfTheText() {
        // Rec. ITU-R P.526-15 section 4.4: −20 log C_N for two edges is 10 log[(a+b)(b+c)/(b(a+b+c))]; by hand, a = b =
        // c: 10 log(4/3).
        assertEquals(10 * Math.log10(4.0 / 3), EpsteinPeterson.spreadingDb(3, 3, 3), 1e-12);
    }

    @Test
    void aRoundedHillCountsOnceOnSampledGround() {
        int n = 400;
        double[] d = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            d[i] = 10.0 * i / (n - 1);
            y[i] = 60 * Math.exp(-Math.pow((d[i] - 5) / 0.6, 2)) + 60 * Math.exp(-Math.pow((d[i] - 8) / 0.3, 2));
        }
        int[] edges = EpsteinPeterson.edges(d, y, 2);
        assertEquals(4, edges.length, "ends and two hills");
        assertEquals(5, d[edges[1]], 0.2);
        assertEquals(8, d[edges[2]], 0.2);
        assertTrue(
                Deygout.edges(d, y, 2, Deygout.Rule.PLAIN, Deygout.levelsFor(n)).size() <= 3);
    }

    @Test
    void theStringTouchesWhatItShould() {
        double[] d = {0, 1, 2, 3, 4};
        assertArrayEquals(new int[] {0, 2, 4}, Hull.of(d, new double[] {0, 1, 10, 4, 0}));
        assertArrayEquals(new int[] {0, 4}, Hull.of(d, new double[] {5, 1, 2, 1, 5}));
        assertArrayEquals(new int[] {0, 1, 2, 3, 4}, Hull.of(d, new double[5]));
    }

    private interface Method {
        double lossDb(double[] d, double[] y, double wavelengthM);
    }

    private static void assertError(double meanDb, double spreadDb, Method method) throws IOException {
        SummaryStatistics errors = new SummaryStatistics();
        for (String line : exactRows()) {
            String[] cell = line.split(",");
            double loss =
                    method.lossDb(PaperGround.list(cell[0]), PaperGround.list(cell[1]), Double.parseDouble(cell[2]));
            errors.addValue(loss - Double.parseDouble(cell[3]));
        }
        assertEquals(120, errors.getN());
        assertEquals(meanDb, errors.getMean(), 0.01);
        assertEquals(spreadDb, errors.getStandardDeviation(), 0.01);
    }

    private static List<String> exactRows() throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                SeveralEdgesTest.class.getResourceAsStream("several-edges-exact.csv"), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("distance"))
                    .toList();
        }
    }

    private static double epsteinPeterson(double[] d, double[] y, double wavelengthM) {
        return EpsteinPeterson.lossDb(d, y, EpsteinPeterson.edges(d, y, wavelengthM), wavelengthM);
    }

    private static double deygout(double[] d, double[] y, double wavelengthM, Deygout.Rule rule) {
        return Deygout.edges(d, y, wavelengthM, rule, d.length).stream()
                .mapToDouble(Deygout.Edge::lossDb)
                .sum();
    }
}
