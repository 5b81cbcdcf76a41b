package handreach.cli;

import handreach.reach.MarchCost;
import handreach.study.ReachOptions;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import java.lang.management.ManagementFactory;
import java.util.Optional;
import java.util.function.LongSupplier;

/** What stands before a march: a line of what it will cost. */
final class MarchAhead {
    private MarchAhead() {}

    static void tell(Scene scene, ReachOptions options, JsonOption json) {
        Optional<MarchCost> counted = ReachStudy.cost(scene, options, Optional.empty());
        if (counted.isEmpty()) return;
        // A bound reference would set management up for every run, not for long marches alone.
        LongSupplier clock = () -> ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        MarchCost cost =
                (counted.get().isShort() ? counted : ReachStudy.cost(scene, options, Optional.of(clock))).orElseThrow();
        json.tell(cost.sentence() + " Ctrl-C stops it, and leaves nothing half written.");
    }
}
