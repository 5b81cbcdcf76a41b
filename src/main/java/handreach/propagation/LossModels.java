package handreach.propagation;

import java.util.List;
import java.util.Optional;

/** The models by name. */
public final class LossModels {
    private static final List<LossModel> ALL = List.of(
            new FreeSpaceModel(),
            new TwoRayModel(),
            new SingleEdgeModel(),
            new EpsteinPetersonModel(),
            new DeygoutModel("deygout", Deygout.Rule.PLAIN),
            new DeygoutModel("deygout-corrected", Deygout.Rule.CORRECTED),
            new DeygoutModel("giovaneli", Deygout.Rule.GIOVANELI),
            new SmoothEarthModel(),
            new BullingtonModel(),
            new DeltaBullingtonModel(),
            new P1812Model(),
            new ClutterAtEndsModel(),
            new StreetLevelModel(),
            new Handheld(),
            new FullWave());

    private LossModels() {}

    /** Every model, the simplest first. */
    public static List<LossModel> all() {
        return ALL;
    }

    /** Names as in {@code --model}, in the order of {@link #all}. */
    public static List<String> names() {
        return ALL.stream().map(LossModel::name).toList();
    }

    /** The model with this name; empty when there is none. */
    public static Optional<LossModel> named(String name) {
        return ALL.stream().filter(model -> model.name().equals(name)).findFirst();
    }
}
