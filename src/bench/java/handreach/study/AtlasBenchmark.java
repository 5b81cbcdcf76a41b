package handreach.study;

import handreach.atlas.AtlasBlock;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
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

/** One block of an atlas from the middle of a region, on one thread, by ground and grid; the score divided by its positions is what one costs. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 4)
@Measurement(iterations = 3, time = 4)
@Fork(value = 1, jvmArgs = "-Xmx1g")
public class AtlasBenchmark {
    @Param({"forest-hills", "invented-valley"})
    public String ground;

    @Param({"300", "600"})
    public int gridM;

    private AtlasStudy study;
    private List<AtlasBlock> block;

    @Setup
    public void open() {
        study = AtlasStudy.of(
                Scene.open(PlanFile.open(Path.of("elevation-samples").resolve(ground))),
                new AtlasOptions(gridM, OptionalDouble.empty(), Optional.empty(), Set.of(), 0, OptionalDouble.empty()));
        List<AtlasBlock> all = study.positions().blocks();
        block = List.of(all.get(all.size() / 2));
    }

    @Benchmark
    public int block() {
        AtomicInteger positions = new AtomicInteger();
        study.run(block, 1, (same, rows) -> positions.addAndGet(rows.size()), Progress.SILENT);
        return positions.get();
    }
}
