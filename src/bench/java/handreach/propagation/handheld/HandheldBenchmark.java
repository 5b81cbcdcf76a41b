package handreach.propagation.handheld;

import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.units.Frequency;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One path of 10 km at 30 m spacing, and a radial walked once with a loss at every sample. Aim: 50 µs a path. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class HandheldBenchmark {
    private static final int SAMPLES = 334;

    /** Invented ground: hills hide the far end, a valley shows all of it, a plain needs the exact smooth-earth field. */
    @Param({"hills", "valley", "plain"})
    public String ground;

    private final double[] distanceM = new double[SAMPLES];
    private final double[] groundM = new double[SAMPLES];
    private final StretchedString string = new StretchedString(SAMPLES);
    private HandheldTerms terms;
    private WholePathTerms wholePath;

    @Setup
    public void layTheGround() {
        Random random = new Random(1);
        double[] phase = random.doubles(12).toArray();
        double end = 30.0 * (SAMPLES - 1);
        for (int i = 0; i < SAMPLES; i++) {
            double x = 30.0 * i;
            distanceM[i] = x;
            groundM[i] = switch (ground) {
                case "valley" -> 400 * (2 * x / end - 1) * (2 * x / end - 1);
                case "hills" -> hills(x, phase);
                default -> 0;
            };
        }
        PathConditions conditions = UsualConditions.at(new Frequency(146));
        terms = HandheldTerms.of(conditions, new Terminals(1.5, 1.5));
        wholePath = WholePathTerms.of(conditions, new Terminals(1.5, 1.5));
    }

    private static double hills(double x, double[] phase) {
        double sum = 0;
        for (int k = 0; k < phase.length; k++) {
            double length = 6000 / Math.pow(1.4, k);
            sum += length / 200 * Math.cos(2 * Math.PI * (x / length + phase[k]));
        }
        return sum;
    }

    @Benchmark
    public double onePath() {
        string.start(terms.effectiveRadiusM(), groundM[0], terms.terminals().txHeightM());
        for (int i = 1; i < SAMPLES; i++) string.add(distanceM[i], groundM[i]);
        return terms.excessDb(string, terms.near(), terms.far());
    }

    @Benchmark
    public double everySampleOfARadial() {
        string.start(terms.effectiveRadiusM(), groundM[0], 1.5);
        double sum = 0;
        for (int i = 1; i < SAMPLES; i++) {
            string.add(distanceM[i], groundM[i]);
            sum += terms.excessDb(string, terms.near(), terms.far());
        }
        return sum;
    }

    /** The same without the ground around each antenna by itself: {@link #everySampleOfARadial} over this is what that costs. */
    @Benchmark
    public double everySampleByTheWholePathAlone() {
        string.start(terms.effectiveRadiusM(), groundM[0], 1.5);
        double sum = 0;
        for (int i = 1; i < SAMPLES; i++) {
            string.add(distanceM[i], groundM[i]);
            sum += wholePath.excessDb(string);
        }
        return sum;
    }
}
