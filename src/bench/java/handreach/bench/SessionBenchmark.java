package handreach.bench;

import handreach.input.SourceText;
import java.util.Locale;
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

/** Goal: a session of 10 000 readings read and analysed in under a second, detection limits included, cold too. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 0)
@Measurement(iterations = 8)
@Fork(3)
public class SessionBenchmark {
    private static final int READINGS = 10_000;

    @Param({"5", "20", "100"})
    private int antennas;

    private SourceText text;

    @Setup
    public void write() {
        Random random = new Random(1);
        StringBuilder rows = new StringBuilder("antenna,mount,quantity,value,unit,frequency_mhz,trial\n");
        for (int i = 0; i < READINGS; i++) {
            int antenna = i % antennas;
            double level = -42 + 0.05 * antenna + random.nextGaussian();
            rows.append(String.format(
                    Locale.ROOT, "a%d,box,received_level,%.2f,dBm,155,%d%n", antenna, level, i / antennas));
        }
        text = SourceText.of("bench.csv", rows.toString());
    }

    @Benchmark
    public double session() {
        BenchAnalysis analysis = BenchAnalysis.of(BenchFile.of(text), "a0");
        double sum = 0;
        for (MountResult mount : analysis.mounts())
            for (AntennaResult antenna : mount.antennas())
                sum += antenna.detection().orElseThrow().minimumDifferenceDb()
                        + antenna.detection().orElseThrow().trialsFor(3).orElse(0);
        return sum;
    }
}
