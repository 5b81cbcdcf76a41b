package handreach.terrain;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.profile.CutSettings;
import handreach.profile.PathCut;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What one height costs, along lines as paths need them, and what the lines themselves cost. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class GroundBenchmark {
    private static final int LINES = 50;
    private static final int SAMPLES = 900;
    private static final Position CENTRE = new Position(44.5, -29.5);

    private final double[][] lat = new double[LINES][SAMPLES];
    private final double[][] lon = new double[LINES][SAMPLES];
    private final Position[] ends = new Position[LINES];
    private final double[] heightM = new double[SAMPLES];
    private final boolean[] isVoid = new boolean[SAMPLES];
    private TileFolder folder;
    private GroundWindow window;
    private TileFolder projected;

    @Setup
    public void open() {
        folder = TileFolder.open(Path.of("elevation-samples/invented-valley/tiles"));
        window = GroundWindow.over(folder, CENTRE, 12_000);
        projected = TileFolder.open(Path.of("elevation-samples/urban-coast/tiles"));
        Random random = new Random(1);
        for (int k = 0; k < LINES; k++) {
            ends[k] = GeodesicLine.destination(CENTRE, random.nextDouble() * 360, 9_900);
            GeodesicLine.between(CENTRE, ends[k]).fill(SAMPLES, lat[k], lon[k]);
        }
    }

    @Benchmark
    @OperationsPerInvocation(LINES * SAMPLES)
    public double folderHeight() {
        return sampled(folder);
    }

    @Benchmark
    @OperationsPerInvocation(LINES * SAMPLES)
    public double windowHeight() {
        return sampled(window);
    }

    private double sampled(Elevation elevation) {
        double sum = 0;
        for (int k = 0; k < LINES; k++) {
            elevation.heights(lat[k], lon[k], SAMPLES, heightM, isVoid);
            sum += heightM[SAMPLES / 2];
        }
        return sum;
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public double projectedHeight() {
        GeodesicLine.between(new Position(-8.03, -34.91), new Position(-7.96, -34.83)).fill(SAMPLES, lat[0], lon[0]);
        projected.heights(lat[0], lon[0], SAMPLES, heightM, isVoid);
        return heightM[SAMPLES / 2];
    }

    @Benchmark
    @OperationsPerInvocation(LINES)
    public double lineAndItsPositions() {
        double sum = 0;
        for (int k = 0; k < LINES; k++) {
            GeodesicLine.between(CENTRE, ends[k]).fill(SAMPLES, lat[k], lon[k]);
            sum += lat[k][SAMPLES / 2];
        }
        return sum;
    }

    @Benchmark
    @OperationsPerInvocation(LINES)
    public double wholePathCut() {
        double sum = 0;
        LandCover open = LandCover.uniform(Cover.OPEN);
        for (int k = 0; k < LINES; k++)
            sum += PathCut.between(window, open, CENTRE, ends[k], CutSettings.DEFAULT).profile().orElseThrow().count();
        return sum;
    }
}
