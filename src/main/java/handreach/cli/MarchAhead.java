package handreach.cli;

import handreach.reach.MarchCost;
import handreach.study.ReachOptions;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import java.lang.management.ManagementFactory;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.LongSupplier;

/** What stands before a march: the program started anew where vectors pay, else a line of what it will cost. */
final class MarchAhead {
    private final VectorStart vectors;
    private final JsonOption json;

    MarchAhead(VectorStart vectors, JsonOption json) {
        this.vectors = vectors;
        this.json = json;
    }

    /** Where a march is named, before plan and ground are read: the exit code of the program started anew. */
    OptionalInt atOnce() {
        return vectors.instead(Double.POSITIVE_INFINITY);
    }

    /** The exit code of the program started anew in place of this one; else nothing, and the answer is to be worked out here. */
    OptionalInt elsewhere(Scene scene, ReachOptions options) {
        Optional<MarchCost> counted = ReachStudy.cost(scene, options, Optional.empty());
        if (counted.isEmpty()) return OptionalInt.empty();
        if (options.withArea()) {
            OptionalInt code = vectors.instead(counted.get().seconds());
            if (code.isPresent()) return code;
        }
        // A bound reference would set management up for every run, not for long marches alone.
        LongSupplier clock = () -> ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        MarchCost cost =
                (counted.get().isShort() ? counted : ReachStudy.cost(scene, options, Optional.of(clock))).orElseThrow();
        json.tell(cost.sentence() + " Ctrl-C stops it, and leaves nothing half written.");
        return OptionalInt.empty();
    }
}
