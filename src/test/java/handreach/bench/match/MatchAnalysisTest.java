package handreach.bench.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.Bench;
import handreach.input.SourceText;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MatchAnalysisTest {
    private static final double STATED = 1e-3;
    /** Far above what one pass takes on a busy machine, far below what a square of rows takes. */
    private static final java.time.Duration HANG = java.time.Duration.ofSeconds(60);

    /** A sweep of an impedance given as a function of MHz, in full digits. */
    private static Touchstone sweep(
            double from, double to, double step, double ohm, DoubleFunction<Complex> impedance) {
        StringBuilder text = new StringBuilder("# MHz S RI R " + ohm + "\n");
        for (int i = 0; from + i * step <= to + 1e-9; i++) {
            double mhz = from + i * step;
            Complex z = impedance.apply(mhz);
            Complex gamma = z.subtract(ohm).divide(z.add(ohm));
            text.append(String.format(Locale.ROOT, "%.9f %.15e %.15e%n", mhz, gamma.getReal(), gamma.getImaginary()));
        }
        return Touchstone.of(SourceText.of("sweep.s1p", text.toString()));
    }

    private static Complex series(double mhz, double r, double f0, double quality) {
        return new Complex(r, quality * r * (mhz / f0 - f0 / mhz));
    }

    /** SWR 3 on R + jX with X = Q R (f/f0 − f0/f): edges f with f/f0 − f0/f = ±v, so their difference is f0 · v. */
    private static double bandMhz(double r, double f0, double quality, double swr, double ohm) {
        double s = swr;
        double ratio = r / ohm;
        double v = Math.sqrt((s - ratio) * (s * ratio - 1) / s) / ratio / quality;
        return f0 * v;
    }

    @ParameterizedTest
    @CsvSource({
        "36,155.3,7.2,50,1", "36,155.3,7.2,50,5", "36,155.3,7.2,50,9.7", "50,155.3,20,50,0.25", "50,155.3,20,50,2",
        "50,155.3,20,50,5", "50,155.3,20,50,11.3", "25,146.77,64,50,0.5", "25,146.77,64,50,3", "25,146.77,64,50,7.1",
        "75,450.2,15,75,10", "110,450.2,15,50,4", "22,162,33,50,10"
    })
    void aSeriesResonatorComesBackWithinATenthOfAPerCent(double r, double f0, double quality, double ohm, double step) {
        MatchAnalysis found =
                analysis(sweep(f0 * 0.75, f0 * 1.27, step, ohm, f -> series(f, r, f0, quality)), List.of());
        Dip dip = found.main();
        Resonance resonance = dip.resonance().orElseThrow();
        assertEquals(f0, resonance.frequencyMhz(), STATED * f0);
        assertEquals(f0, dip.frequencyMhz(), STATED * f0);
        assertTrue(resonance.isSeries());
        assertEquals(r, resonance.resistanceOhm(), STATED * r);
        assertEquals(quality, resonance.quality(), 0.01 * quality);
        double band3 = bandMhz(r, f0, quality, 3, ohm);
        assertEquals(band3, dip.band3().orElseThrow().widthMhz(), STATED * band3);
        if (Math.max(r / ohm, ohm / r) < 1.95) {
            double band2 = bandMhz(r, f0, quality, 2, ohm);
            assertEquals(band2, dip.band2().orElseThrow().widthMhz(), STATED * band2);
        }
        assertEquals(quality, found.qualityFromBandwidth().getAsDouble(), 0.01 * quality);
    }

    /** Parallel circuit: the same in admittance. */
    @Test
    void aParallelResonatorComesBackToo() {
        MatchAnalysis found = analysis(
                sweep(120, 190, 5, 50, f -> series(f, 1 / 60.0, 150, 12).reciprocal()), List.of());
        assertEquals(150, found.main().frequencyMhz(), 0.15);
        assertFalse(found.main().resonance().orElseThrow().isSeries());
        double band = bandMhz(1 / 60.0, 150, 12, 3, 1 / 50.0);
        assertEquals(band, found.main().band3().orElseThrow().widthMhz(), STATED * band);
    }

    /** 3 m of lossless line in front turn the reflection about; SWR, and with it the band, stay. */
    @Test
    void aLineInFrontMovesNoBand() {
        DoubleFunction<Complex> behindLine = f -> {
            Complex z = series(f, 50, 155, 10);
            Complex gamma = z.subtract(50).divide(z.add(50));
            double phase = -4 * Math.PI * f * 3 / (299.792458 * 0.66);
            Complex turned = gamma.multiply(new Complex(Math.cos(phase), Math.sin(phase)));
            return turned.add(1).divide(Complex.ONE.subtract(turned)).multiply(50);
        };
        MatchAnalysis found = analysis(sweep(120, 190, 1, 50, behindLine), List.of());
        assertEquals(155, found.main().frequencyMhz(), 0.16);
        double band = bandMhz(50, 155, 10, 3, 50);
        assertEquals(band, found.main().band3().orElseThrow().widthMhz(), STATED * band);
    }

    @Test
    void referenceImpedanceOfTheFileDoesNotMatterOnceRestated() {
        DoubleFunction<Complex> antenna = f -> series(f, 42, 155, 9);
        MatchAnalysis fifty = MatchAnalysis.of(sweep(130, 180, 2, 50, antenna), List.of(158.0), 50);
        MatchAnalysis other = MatchAnalysis.of(sweep(130, 180, 2, 75, antenna), List.of(158.0), 50);
        assertEquals(
                fifty.channels().get(0).match().swr(),
                other.channels().get(0).match().swr(),
                1e-6);
        assertEquals(
                fifty.main().band3().orElseThrow().widthMhz(),
                other.main().band3().orElseThrow().widthMhz(),
                1e-5);
        MatchAnalysis own = analysis(sweep(130, 180, 2, 75, antenna), List.of(158.0));
        assertTrue(Bench.together(own.warnings()).contains("over the file's own 75 ohms"));
    }

    @Test
    void channelsAreReadOffTheCurve() {
        MatchAnalysis found =
                analysis(sweep(140, 170, 5, 50, f -> series(f, 50, 150, 20)), List.of(150.0, 153.7, 199.0));
        assertEquals(2, found.channels().size());
        Complex z = series(153.7, 50, 150, 20);
        assertEquals(z.getImaginary(), found.channels().get(1).reactanceOhm(), 0.01);
        assertEquals(50, found.channels().get(1).resistanceOhm(), 0.01);
        assertEquals(
                Impedance.match(z, 50).swr(), found.channels().get(1).match().swr(), 1e-3);
        String said = Bench.together(found.warnings());
        assertTrue(said.contains("The channel 199 MHz lies outside the sweep (140 to 170 MHz)"), said);
        assertTrue(said.contains("10 dB or better is the usual wish"), said);
    }

    @Test
    void twoBandsAreFoundAndTheChannelPicksItsOwn() {
        DoubleFunction<Complex> dual = f -> {
            Complex low = series(f, 50, 155, 25).reciprocal();
            Complex high = series(f, 50, 455, 25).reciprocal();
            return low.add(high).reciprocal();
        };
        Touchstone file = sweep(120, 500, 1, 50, dual);
        MatchAnalysis found = analysis(file, List.of(455.0));
        assertEquals(2, found.dips().size());
        assertEquals(455, found.main().tunedMhz(), 3);
        assertEquals(155, analysis(file, List.of(155.0)).main().tunedMhz(), 3);
    }

    @Test
    void aDipAtTheEndOfTheSweepIsTold() {
        MatchAnalysis found = analysis(sweep(160, 190, 1, 50, f -> series(f, 50, 155, 10)), List.of());
        assertTrue(found.main().band3().orElseThrow().isOpenBelow());
        assertTrue(found.qualityFromBandwidth().isEmpty());
        assertTrue(Bench.together(found.warnings()).contains("still falling at the end of the sweep"));
    }

    @Test
    void aBadAntennaHasNoBand() {
        MatchAnalysis found = analysis(sweep(140, 170, 1, 50, f -> series(f, 5, 155, 10)), List.of());
        assertEquals(Optional.empty(), found.main().band3());
        assertTrue(Bench.together(found.warnings()).contains("The SWR never falls to 3; the least is 10.0."));
    }

    @Test
    void aConstantLoadAndShortSweepsAreNoFault() {
        MatchAnalysis flat = analysis(sweep(140, 170, 1, 50, f -> new Complex(50, 0)), List.of(150.0));
        assertEquals(1, flat.channels().get(0).match().swr(), 1e-9);
        assertTrue(flat.main().band3().orElseThrow().isOpenBelow());
        for (int rows = 1; rows <= 5; rows++) {
            MatchAnalysis few =
                    analysis(sweep(150, 150 + 2 * (rows - 1), 2, 50, f -> series(f, 50, 153, 10)), List.of(150.0));
            assertTrue(few.main().match().swr() >= 1);
        }
    }

    @Test
    void aNoisySweepStillGivesOneDip() {
        Random random = new Random(8);
        StringBuilder text = new StringBuilder("# MHz S RI R 50\n");
        for (double mhz = 140; mhz <= 170; mhz += 0.25) {
            Complex z = series(mhz, 50, 155, 15);
            Complex gamma = z.subtract(50).divide(z.add(50));
            text.append(String.format(
                    Locale.ROOT,
                    "%.3f %.5f %.5f%n",
                    mhz,
                    gamma.getReal() + 0.01 * random.nextGaussian(),
                    gamma.getImaginary() + 0.01 * random.nextGaussian()));
        }
        MatchAnalysis found = analysis(Touchstone.of(SourceText.of("n.s1p", text.toString())), List.of());
        assertEquals(1, found.dips().size());
        assertEquals(155, found.main().tunedMhz(), 0.3);
        double band = bandMhz(50, 155, 15, 3, 50);
        assertEquals(band, found.main().band3().orElseThrow().widthMhz(), 0.05 * band);
    }

    /** Tuned 5 MHz low of 155: 3.2 % too long; 71.20/150 − 71.20/155 m = 15.3 mm of a straight quarter-wave. */
    @Test
    void tooLongByHowMuch() {
        Trim trim = analysis(sweep(130, 180, 2, 50, f -> series(f, 50, 150, 10)), List.of(155.0))
                .channels()
                .get(0)
                .trim()
                .orElseThrow();
        assertEquals(3.226, trim.tooLongPercent(), 0.01);
        assertEquals(15.3, trim.tooLongMm(), 0.1);
        assertTrue(new Trim(158, 155).tooLongMm() < 0);
    }

    @Test
    void farOffTheChannelIsNoMatterOfTrimming() {
        MatchAnalysis found = analysis(sweep(120, 220, 2, 50, f -> series(f, 50, 198, 8)), List.of(155.0));
        assertTrue(Bench.together(found.warnings()).contains("28 % off 155 MHz: that is not a matter of trimming"));
    }

    /** Over-long whips by the method of moments (nec2c 1.3): 490.6 mm resonates at 146.00; longer by so many per cent at … */
    @ParameterizedTest
    @CsvSource({"1,144.57", "2,143.17", "3,141.79", "5,139.11", "10,132.85"})
    void trimAgreesWithTheMethodOfMoments(double percent, double mhz) {
        double present = 490.6 * (1 + percent / 100);
        double excess = new Trim(mhz, 146).tooLongPercent() / 100 * present;
        assertEquals(490.6 * percent / 100, excess, 0.001 * present);
    }

    /** Cutting rows, mm, from c/4f by hand. */
    @ParameterizedTest
    @CsvSource({"146,487.7,472.3", "155,459.4,444.9", "446,159.6,154.6", "465,153.1,148.3"})
    void lengthsToCut(double mhz, double bareMm, double insulatedMm) {
        assertEquals(bareMm, RadiatorLength.quarterWaveMm(mhz, RadiatorLength.BARE), 0.05);
        assertEquals(insulatedMm, RadiatorLength.counterpoiseMm(mhz), 0.05);
    }

    @Test
    void whatTheCounterpoiseWireChanges() {
        MatchAnalysis bare = analysis(sweep(120, 180, 1, 50, f -> series(f, 20, 152, 40)), List.of(155.0));
        MatchAnalysis wired = analysis(sweep(120, 180, 1, 50, f -> series(f, 40, 146, 20)), List.of(155.0));
        MatchComparison.Change change =
                MatchComparison.of(List.of(bare, wired)).changes().get(0);
        assertEquals(-6, change.tunedShiftMhz(), 0.05);
        assertTrue(change.bandRatio().orElseThrow() > 1.5);
        double expected = Impedance.match(series(155, 40, 146, 20), 50).mismatchLossDb()
                - Impedance.match(series(155, 20, 152, 40), 50).mismatchLossDb();
        assertEquals(expected, change.mismatchChangeDb().get(0), 1e-3);
        assertTrue(change.words().contains("tuned 6.0 MHz lower"), change.words());
    }

    /** Of each length of sweep that gives no length: an open, a short, an open behind a little cable loss. */
    @Test
    void whatTakesNoPowerGetsNoAdviceOnLength() {
        for (double size : new double[] {1, -1, 0.97}) {
            StringBuilder text = new StringBuilder("# MHz S RI R 50\n");
            for (int mhz = 140; mhz <= 170; mhz++) text.append(mhz + " " + size + " 0\n");
            MatchAnalysis found = analysis(Touchstone.of(SourceText.of("open.s1p", text.toString())), List.of(155.0));
            assertEquals(Optional.empty(), found.channels().get(0).trim());
            assertTrue(found.channels().get(0).advice().startsWith("No advice on length"));
        }
    }

    /** By hand: tuned at 150, wanted 155 MHz: 1 − 150/155 = 3.23 %; 74 948 · 0.95 · (1/150 − 1/155) = 15.3 mm. */
    @Test
    void theAdviceIsOnePlainSentence() {
        assertEquals(
                "Cut 15 mm (a straight quarter-wave whip; 3.2 % of any other), in small steps, and sweep again.",
                advice(150, 45));
        assertEquals(
                "Lengthen by 14 mm (a straight quarter-wave whip; 3.2 % of any other), in small steps, and sweep again.",
                advice(160, 45));
        assertTrue(advice(155, 45).startsWith("Leave it: a better match would win 0.0"), advice(155, 45));
        assertTrue(advice(155, 14).startsWith("The length is right, the match is not: 14 ohm"), advice(155, 14));
        assertTrue(advice(120, 45).startsWith("Not a matter of trimming: it is tuned 23 % too low"), advice(120, 45));
    }

    private static String advice(double tunedMhz, double ohm) {
        StringBuilder text = new StringBuilder("# MHz Z RI R 50\n");
        for (double mhz = 100; mhz <= 180; mhz += 0.5)
            text.append(String.format(
                    Locale.ROOT, "%f %f %f%n", mhz, ohm / 50, ohm / 50 * 20 * (mhz / tunedMhz - tunedMhz / mhz)));
        return analysis(Touchstone.of(SourceText.of("whip.s1p", text.toString())), List.of(155.0))
                .channels()
                .get(0)
                .advice();
    }

    /** Noise of a hundred thousand rows has some million dips; looking at each against each took a minute and a half. */
    @Test
    void aSweepOfNoiseIsLookedThroughInOnePass() {
        Random random = new Random(6);
        StringBuilder text = new StringBuilder("# MHz S RI R 50\n");
        for (int i = 0; i < 100_000; i++) {
            double size = 0.99 * random.nextDouble();
            double angle = 2 * Math.PI * random.nextDouble();
            text.append(100 + i / 1000.0)
                    .append(' ')
                    .append(size * Math.cos(angle))
                    .append(' ');
            text.append(size * Math.sin(angle)).append('\n');
        }
        Touchstone file = Touchstone.of(SourceText.of("noise.s1p", text.toString()));
        MatchAnalysis found = assertTimeoutPreemptively(HANG, () -> analysis(file, List.of(150.0)));
        assertTrue(found.dips().size() > 1000);
    }

    /** Over the file's own impedance. */
    private static MatchAnalysis analysis(Touchstone file, List<Double> channelsMhz) {
        return MatchAnalysis.of(file, channelsMhz, file.referenceOhm());
    }
}
