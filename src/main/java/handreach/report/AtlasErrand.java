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
 */
record AtlasErrand(String question, List<String> loadouts, double gridM, double targetsM, boolean isRegionDrawn)
        implements Errand, Serializable {
    /** Names of what travels. */
    static final String PLAN = "plan.toml";

    static final String REGION = "atlas-region.geojson";

    private static final long serialVersionUID = 1L;

    AtlasErrand {
        loadouts = new ArrayList<>(loadouts);
    }

    @Override
    public BlockWork open(Path shipped) {
        AtlasStudy study = AtlasStudy.of(
                Scene.open(PlanFile.open(shipped.resolve(PLAN))),
                new AtlasOptions(
                        gridM,
                        OptionalDouble.of(targetsM),
                        isRegionDrawn ? Optional.of(shipped.resolve(REGION)) : Optional.empty(),
                        Set.of(),
                        0,
                        OptionalDouble.empty()));
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
