package handreach.reach;

import handreach.input.Keyword;
import handreach.profile.CutSettings;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;

/** The engines a person can ask for, and the one taken when nobody asks. */
public enum MapEngine {
    /** One path per cell. */
    EXACT,
    /** Cells off shared radials. */
    SWEEP,
    /** The field marched along radials, model {@code full-wave}. */
    MARCH;

    /** How files and options name them. */
    public static final Keyword<MapEngine> KEYWORD = Keyword.of(List.of(values()), MapEngine::word);

    /**
     * Samples of ground that one path per cell may read in all before a sweep is taken instead: about three seconds on two
     * threads, which is 10 km in cells of 30 m over posts of one second of arc.
     */
    private static final double AFFORDABLE_SAMPLES = 180e6;

    /** As people write it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The engine for a map when none is asked for: one path per cell as long as that stays affordable, else a sweep; the march
     * where the model is the march.
     *
     * @shape  scalars in, one word out; the ground is asked for its spacing only
     * @unit   as the request
     * @valid  every request
     * @error  the bound counts samples; time for one is good to a factor of 2 between machines
     * @source measured, docs/performance.md
     */
    public static MapEngine usual(AreaRequest request, AreaGround ground) {
        if (request.model().equals(LossModels.FULL_WAVE)) return MARCH;
        return exactSamples(request, ground) <= AFFORDABLE_SAMPLES ? EXACT : SWEEP;
    }

    /** Samples read by one path per cell: cells in the circle, each at two thirds of the radius on average, two samples a post. */
    private static double exactSamples(AreaRequest request, AreaGround ground) {
        double postM = ground.elevation()
                .postSpacingM(
                        request.source().latitudeDeg(), request.source().longitudeDeg(), CutSettings.USUAL_POST_M);
        double acrossCells = request.radiusM() / request.grid().cellM();
        double samplesEach = 2 * request.radiusM() / 3 / (postM / 2);
        return Math.PI * acrossCells * acrossCells * samplesEach;
    }

    /** Whether this engine can go by a model. */
    public boolean goesBy(LossModel model) {
        return (this == MARCH) == model.equals(LossModels.FULL_WAVE);
    }

    /** The engine itself, set up for a map of this request. */
    public AreaEngine engine(AreaRequest request, int threads) {
        return switch (this) {
            case EXACT -> new ExactArea(threads);
            case SWEEP -> new SweepArea(threads);
            case MARCH -> new MarchArea(threads, marchArcM(request));
        };
    }

    /** One path to each of some cells, by their index in the grid of the request; the others are left outside, as beyond the radius. */
    public static AreaEngine exactTo(IntPredicate wanted, int threads) {
        return new ExactArea(threads, wanted);
    }

    private static double marchArcM(AreaRequest request) {
        return MarchArea.arcOfAMapM(request.radiusM(), request.grid().cellM());
    }
}
