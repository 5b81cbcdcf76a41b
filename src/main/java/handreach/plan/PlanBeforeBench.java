package handreach.plan;

import handreach.input.SourceText;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a blank sheet for the bench takes from a plan. The rest of the plan may still be marked to be filled in, or be wrong, and none
 * of the files that it names need be there: people go to the bench first.
 *
 * @param file the plan
 * @param frequencyMhz of its first channel; none while the plan has none
 * @param bench readings that are named, to be taken yet
 * @param antennas as written
 * @param antennasLine where the first of them stands in the file
 */
public record PlanBeforeBench(
        Path file,
        OptionalDouble frequencyMhz,
        Optional<Equipment.Bench> bench,
        List<Equipment.AntennaEntry> antennas,
        int antennasLine) {
    public PlanBeforeBench {
        antennas = List.copyOf(antennas);
    }

    /** Opens a plan file, or the {@code plan.toml} of a folder. */
    public static PlanBeforeBench open(Path planOrFolder) {
        SourceText text = PlanFile.source(planOrFolder);
        return PlanReader.readBeforeBench(text, PlanFile.named(planOrFolder));
    }
}
