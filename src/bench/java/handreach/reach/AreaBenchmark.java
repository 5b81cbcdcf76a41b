package handreach.reach;

import handreach.geodesy.Position;
import handreach.propagation.LossModels;
import handreach.propagation.UsualConditions;
import handreach.terrain.TileFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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

/**
 * Loss to every cell of 30 m by both engines, and what more loadouts cost on top: odds share, least loadout and outline for each.
 * The brute-force engine is left out beyond 20 km, where it takes minutes.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 4)
@Measurement(iterations = 3, time = 3)
@Fork(value = 1, jvmArgs = "-Xmx4g")
public class AreaBenchmark {
    private static final Path SAMPLES = Path.of("elevation-samples");

    /** Posts of 1 and of 3 arc-seconds. */
    @Param({"invented-valley", "high-mountains"})
    public String ground;

    @Param({"5", "10", "20", "50"})
    public int radiusKm;

    @Param({"1", "2"})
    public int threads;

    private AreaGround tiles;
    private AreaRequest request;
    private List<ReachLink> links;
    private LossGrid kept;

    @Setup
    public void open() {
        boolean isValley = ground.equals("invented-valley");
        Position source = isValley ? new Position(44.5, -29.5) : new Position(37.5, -105);
        tiles = new AreaGround(TileFolder.open(SAMPLES.resolve(ground).resolve("tiles")));
        request = Areas.around(
                source,
                1000.0 * radiusKm,
                30,
                PaperLinks.HEIGHTS,
                UsualConditions.at(PaperLinks.CHANNEL),
                LossModels.HANDHELD);
        links = new ArrayList<>(List.of(PaperLinks.control()));
        for (int k = 1; k < 8; k++) links.add(PaperLinks.whip(k, 0.6));
        kept = new SweepArea(threads).losses(request, tiles, Progress.SILENT);
    }

    @Benchmark
    public LossGrid sweep() {
        return new SweepArea(threads).losses(request, tiles, Progress.SILENT);
    }

    @Benchmark
    public LossGrid exact() {
        if (radiusKm > 20) throw new IllegalStateException("exact is not timed beyond 20 km");
        return new ExactArea(threads).losses(request, tiles, Progress.SILENT);
    }

    @Benchmark
    public double sweepAndOneLoadout() {
        return odds(sweep(), 1);
    }

    @Benchmark
    public double sweepAndFourLoadouts() {
        return odds(sweep(), 4);
    }

    @Benchmark
    public double sweepAndEightLoadouts() {
        return odds(sweep(), 8);
    }

    /** What switching a loadout costs once the losses are kept. */
    @Benchmark
    public double oneLoadoutOnKeptLosses() {
        return OddsGrid.of(kept, links.get(3)).shareEstimate(0.9).value();
    }

    private double odds(LossGrid losses, int loadouts) {
        List<OddsGrid> grids = new ArrayList<>();
        for (ReachLink link : links.subList(0, loadouts)) grids.add(OddsGrid.of(losses, link));
        return LeastLoadout.of(grids, 0.9).shareOfNone();
    }
}
