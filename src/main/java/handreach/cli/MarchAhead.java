package handreach.cli;

import handreach.reach.MarchCost;
import handreach.study.ReachOptions;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import java.lang.management.ManagementFactory;
import java.util.Optional;
import java.util.OptionalInt;

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
        Optional<MarchCost> march = ReachStudy.cost(scene, options);
        if (march.isEmpty()) return OptionalInt.empty();
        MarchCost counted = march.get();
        if (options.withArea()) {
            OptionalInt code = vectors.instead(counted.seconds());
            if (code.isPresent()) return code;
        }
        // A bound reference would set management up for every run, not for long marches alone.
        MarchCost cost = counted.isShort()
                ? counted
                : ReachStudy.triedCost(
                        scene,
                        options,
                        () -> ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime());
        json.tell(cost.sentence() + " Ctrl-C stops it, and leaves nothing half written.");
        return OptionalInt.empty();
    }
}
