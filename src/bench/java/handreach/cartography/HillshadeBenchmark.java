package handreach.cartography;

import handreach.geodesy.Position;
import handreach.terrain.TileFolder;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The relief of a map of 700 by 700 pixels over real tiles; the goal is 100 ms. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class HillshadeBenchmark {
    private final TileFolder tiles = TileFolder.open(Path.of("elevation-samples/forest-hills/tiles"));
    private final MapFrame frame = MapFrame.around(new Position(36.3, -84.24), 5000, 700, 700);

    @Benchmark
    public Hillshade oneSun() {
        return Hillshade.shaded(tiles, frame, 1, new Hillshade.Light(Sun.USUAL));
    }

    @Benchmark
    public Hillshade manySides() {
        return Hillshade.fromManySides(tiles, frame, 1.6);
    }

    @Benchmark
    public List<Contour> contours() {
        return Contours.of(HeightLattice.over(tiles, frame, 3, 1), 50);
    }
}
