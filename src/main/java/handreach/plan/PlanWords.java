package handreach.plan;

import handreach.loadout.Carry;
import handreach.loadout.CopyQuality;
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.terrain.Cover;
import handreach.terrain.CoverLegend;
import handreach.terrain.Surface;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** Words with which the plan file names things of other rooms. */
final class PlanWords {
    static final List<String> MODULATIONS = Modulation.words();
    static final List<String> QUALITIES = CopyQuality.words();
    static final List<String> RADIATORS = Radiator.words();
    static final List<String> CARRIES =
            Stream.concat(Carry.words().stream(), Stream.of("hip")).toList();
    static final List<String> COVERS =
            Arrays.stream(Cover.values()).map(Cover::word).toList();
    static final List<String> SURFACES =
            Arrays.stream(Surface.values()).map(Surface::word).toList();
    static final List<String> LEGENDS =
            Arrays.stream(CoverLegend.values()).map(CoverLegend::word).toList();
    static final List<String> NOISES = List.of("city", "residential", "rural", "quiet-rural");

    private PlanWords() {}
}
