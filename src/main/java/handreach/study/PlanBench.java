package handreach.study;

import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.plan.Equipment;
import handreach.plan.PlanFile;

/** The readings that a plan names, against the control that it names: the same for a budget and for the answer of the bench. */
public final class PlanBench {
    private PlanBench() {}

    static BenchAnalysis of(PlanFile file, Equipment.Bench bench) {
        return of(file, bench, BenchFile.read(bench.file()));
    }

    /** The same of readings that are read already; a control that they do not have is a fault of the plan's line. */
    public static BenchAnalysis of(PlanFile file, Equipment.Bench bench, BenchFile readings) {
        if (readings.compares() && readings.antenna(bench.control()).isEmpty())
            throw file.fault(
                    "bench",
                    "control",
                    "control is \"" + bench.control() + "\", but " + readings.name() + " has no reading of it."
                            + readings.insteadOf(bench.control()));
        return BenchAnalysis.of(readings, bench.control());
    }
}
