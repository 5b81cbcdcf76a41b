package handreach.report;

import handreach.atlas.AtlasBlock;
import handreach.atlas.spread.BlockWork;
import handreach.atlas.spread.Errand;
import handreach.input.InputFault;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.study.AtlasOptions;
import handreach.study.AtlasStudy;
import handreach.study.BlockFault;
import handreach.study.Scene;
import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What a worker is told of an atlas; the plan and all it names travel beside it.
 *
 * @param question digest of the question, which goes into every block
 * @param loadouts their names, likewise
 * @param gridM from position to position, m
 * @param targetsM from target to target, m
 * @param isRegionDrawn whether polygons travel along
 * @param shipped digest of all that travels, by {@link #digest}
 */
record AtlasErrand(
        String question, List<String> loadouts, double gridM, double targetsM, boolean isRegionDrawn, String shipped)
        implements Errand, Serializable {
    /** Names of what travels. */
    static final String PLAN = PlanFile.USUAL_NAME;

    static final String REGION = "atlas-region.geojson";

    private static final long serialVersionUID = 1L;

    AtlasErrand {
        loadouts = new ArrayList<>(loadouts);
    }

    /** A digest of a plan, all that it names and the polygons, wherever they lie. */
    static String digest(PlanFile plan, Optional<Path> region) {
        return plan.sources().and(region.map(List::of).orElse(List.of())).digest();
    }

    @Override
    public BlockWork open(Path folder) {
        PlanFile plan = PlanFile.open(folder.resolve(PLAN));
        Optional<Path> region = isRegionDrawn ? Optional.of(folder.resolve(REGION)) : Optional.empty();
        // A tile that is not there is unknown ground, and its rows would look as good as any.
        if (!digest(plan, region).equals(shipped))
            throw new InputFault(
                    "the plan, its tiles and what else it names",
                    0,
                    "did not arrive whole on this worker. Look at its free space and its log, then start the same command again.");
        AtlasStudy study = AtlasStudy.ofBlocks(
                Scene.open(plan),
                new AtlasOptions(gridM, OptionalDouble.of(targetsM), region, Set.of(), 0, OptionalDouble.empty()));
        List<AtlasBlock> blocks = study.positions().blocks();
        return block -> rows(study, blocks.get(block));
    }

    private byte[] rows(AtlasStudy study, AtlasBlock block) {
        List<byte[]> text = new ArrayList<>();
        List<BlockFault> faults = study.run(
                List.of(block),
                1,
                (same, rows) ->
                        text.add(AtlasBlockFile.text(question, loadouts, rows).getBytes(StandardCharsets.UTF_8)),
                Progress.SILENT);
        if (!faults.isEmpty()) throw new InputFault("block", 0, faults.get(0).words());
        return text.get(0);
    }
}
