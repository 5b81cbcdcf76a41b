package handreach.propagation;

import handreach.input.Keyword;
import handreach.propagation.handheld.Handheld;
import handreach.propagation.march.FullWave;
import handreach.propagation.p1812.P1812Model;
import java.util.List;
import java.util.function.Consumer;

/** The models, each once: two of them are the same if they are the same object. */
public final class LossModels {
    public static final LossModel FREE_SPACE = new FreeSpaceModel();
    public static final LossModel TWO_RAY = new TwoRayModel();
    public static final LossModel DELTA_BULLINGTON = new DeltaBullingtonModel();

    /** The model for people with handhelds; taken where none is named. */
    public static final LossModel HANDHELD = new Handheld();

    /** The field march: dear, so those who show a picture at once go by another. */
    public static final LossModel FULL_WAVE = new FullWave();

    private static final List<LossModel> ALL = List.of(
            FREE_SPACE,
            TWO_RAY,
            new SingleEdgeModel(),
            new EpsteinPetersonModel(),
            new DeygoutModel("deygout", Deygout.Rule.PLAIN),
            new DeygoutModel("deygout-corrected", Deygout.Rule.CORRECTED),
            new DeygoutModel("giovaneli", Deygout.Rule.GIOVANELI),
            new SmoothEarthModel(),
            new BullingtonModel(),
            DELTA_BULLINGTON,
            new P1812Model(),
            new ClutterAtEndsModel(),
            new StreetLevelModel(),
            HANDHELD,
            FULL_WAVE);

    /** Names as in {@code --model}, in the order of {@link #all}. */
    public static final Keyword<LossModel> KEYWORD = Keyword.of(ALL, LossModel::name);

    private LossModels() {}

    /** The same model; a dear one says what a single path costs before it starts. */
    public static LossModel sayingFirst(LossModel model, Consumer<String> told) {
        return model instanceof FullWave march ? march.sayingFirst(told) : model;
    }

    /** Every model, the simplest first. */
    public static List<LossModel> all() {
        return ALL;
    }
}
