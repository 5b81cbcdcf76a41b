package handreach.propagation.march;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.propagation.PathConditions;
import handreach.propagation.UsualConditions;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One march along a radial: 10 km at 30 m, level and over hills, one thread. The goals are 300 ms at 146 MHz, 1 s at 446 MHz. Beside it
 * sixteen neighbouring radials in lockstep with vectors, whose goal is a quarter of the time a radial.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(value = 1, jvmArgs = "--add-modules=jdk.incubator.vector")
public class FullWaveBenchmark {
    @Param({"146", "446"})
    double mhz;

    @Param({"level", "hills"})
    String ground;

    @Param({"10", "30"})
    double lengthKm;

    private Profile profile;
    private List<Profile> neighbours;
    private PathConditions conditions;

    @Setup
    public void lay() {
        int n = (int) Math.round(lengthKm / 0.03) + 1;
        Random random = new Random(1);
        double[] d = new double[n];
        double[] h = new double[n];
        double[] phase = random.doubles(12, 0, 2 * Math.PI).toArray();
        for (int i = 0; i < n; i++) {
            d[i] = i * 0.03;
            if (ground.equals("hills"))
                for (int w = 1; w <= phase.length; w++)
                    h[i] += 60 / Math.pow(w, 1.3) * Math.sin(phase[w - 1] + 2 * Math.PI * w * d[i] / 8);
        }
        profile = Profiles.of(d, h);
        neighbours = new ArrayList<>();
        for (int p = 0; p < LaneMath.LANES; p++) {
            double[] beside = h.clone();
            for (int i = 1; i < n; i++) beside[i] += 0.2 * p * Math.sin(2 * Math.PI * d[i] / 3);
            neighbours.add(Profiles.of(d, beside));
        }
        conditions = UsualConditions.at(new Frequency(mhz));
    }

    @Benchmark
    public double oneRadial() {
        FullWaveRadial radial = FieldMarch.along(profile, 1.5, 1.5, conditions);
        return radial.meanLossDb(radial.count() - 1);
    }

    @Benchmark
    @OperationsPerInvocation(LaneMath.LANES)
    public double oneRadialOfSixteen() {
        FullWaveRadial radial = FieldMarch.bundle(neighbours, 1.5, new double[] {1.5}, conditions, share -> true)
                .get(0)
                .get(0);
        return radial.meanLossDb(radial.count() - 1);
    }
}
