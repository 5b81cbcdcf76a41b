package handreach.study;

import handreach.loadout.Loadout;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import handreach.reach.AreaRequest;
import handreach.reach.BearingRequest;
import handreach.reach.CellGrid;
import handreach.reach.MarchCount;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The loss model that is taken where a plan or an option leaves that to the program: the march over bare ground as long as the map of the
 * plan counts no more than the usual wait, else the closed form. It follows from plan, tiles and counts, not from any clock, so that
 * every command and every machine chooses alike.
 *
 * @param model what was chosen
 * @param reason why
 * @param count of the map by the march; empty where something else decided
 * @param isAsked whether the plan or an option asks for a choice in so many words, and not by saying nothing
 */
public record ModelChoice(LossModel model, Reason reason, Optional<MarchCount> count, boolean isAsked) {
    /** What decided. */
    enum Reason {
        /** Bare ground, and the march is over soon. */
        BARE,
        /** Something stands on the ground, or may. */
        COVERED,
        /** Several channels are held against one another, and each would march again. */
        CHANNELS,
        /** A calibration holds for the model that it was learned with. */
        CALIBRATED,
        /** No map can be made round the middle of the plan. */
        NO_MAP,
        /** On some bearing the ground is too steep for the march to answer behind it. */
        STEEP,
        /** The march takes longer than people usually wait. */
        LONG,
        /** The search for a relay makes a map from every place of the plan. */
        RELAY,
        /** An atlas makes a map from every position of a region. */
        ATLAS
    }

    /** What a count is not. */
    private static final String AS_COUNTED =
            " (by counts on two idle threads, so that every machine chooses alike; this one may take longer)";

    private ModelChoice(LossModel model, Reason reason, Optional<MarchCount> count, Scene scene) {
        this(model, reason, count, scene.plan().questions().reach().wish().isStated());
    }

    private static ModelChoice closedForm(Reason reason, Scene scene) {
        return new ModelChoice(LossModels.HANDHELD, reason, Optional.empty(), scene);
    }

    /** The closed form all the same, for another reason. */
    ModelChoice because(Reason other) {
        return new ModelChoice(LossModels.HANDHELD, other, count, isAsked);
    }

    /** Whether the march was chosen since it is over soon. */
    public boolean isShortMarch() {
        return reason == Reason.BARE;
    }

    /**
     * Whether it is told with every answer: where somebody asked for a choice, and where it may surprise, since the march was chosen
     * or would have been. Else a plan that says nothing goes by the closed form, as most do, and its line of the model says why.
     */
    public boolean isNoted() {
        return isAsked || isMarch() || reason == Reason.RELAY || reason == Reason.ATLAS;
    }

    private boolean isMarch() {
        return model.equals(LossModels.FULL_WAVE);
    }

    /** What was chosen, why, and how to have it otherwise, in two sentences; where it is not told with every answer in a short one. */
    public String words() {
        if (!isNoted()) return "The model is " + line() + ".";
        return "The model is " + brief() + ": " + why() + more() + ". "
                + (isMarch() ? "Name handheld for the closed form" : "Name full-wave for the march")
                + " (model in [reach], or --model of reach).";
    }

    /** What was chosen, for the line that names the model: with the reason where nothing else tells it. */
    public String line() {
        return isNoted() ? brief() : model.name() + ", since " + why();
    }

    /** What was chosen, where there is little room: under a picture, in a tag. */
    public String brief() {
        return model.name() + (isNoted() ? ", chosen by the program" : "");
    }

    private String why() {
        return switch (reason) {
            case BARE ->
                "all ground is open, and the march of its map counts as " + counted()
                        + ", no more than the usual wait of " + seconds(MarchCount.USUAL_WAIT_S);
            case COVERED -> "not all ground is open";
            case CHANNELS -> "the plan has several channels";
            case CALIBRATED -> "the calibration of the plan was learned with it";
            case NO_MAP -> "no map can be made round the middle of the plan";
            case STEEP -> "on some bearing the ground is too steep for the march";
            case LONG ->
                "the march of its map counts as " + counted() + ", more than the usual wait of "
                        + seconds(MarchCount.USUAL_WAIT_S);
            case RELAY -> "a relay is looked for by a map from every place";
            case ATLAS -> "an atlas makes a map from every position";
        };
    }

    /** What goes behind the reason where there is room. */
    private String more() {
        return switch (reason) {
            case BARE, LONG -> AS_COUNTED;
            case COVERED -> ", and the march holds for bare ground";
            case CHANNELS -> ", and the march would go over the ground again for each";
            case STEEP -> ", which gives no answer behind it";
            case RELAY -> ", which the march would take minutes for, while reach and path go by full-wave";
            case ATLAS -> ", which the march would take weeks for, while reach and path go by full-wave";
            case CALIBRATED, NO_MAP -> "";
        };
    }

    private String counted() {
        return seconds(count.orElseThrow().seconds());
    }

    private static String seconds(double seconds) {
        return (long) Math.max(1, Math.ceil(seconds)) + " s";
    }

    /** The choice for a plan on its ground: for all its loadouts, whichever of them are asked for. */
    static ModelChoice of(Scene scene) {
        if (scene.calibration().isPresent())
            return new ModelChoice(scene.calibration().get().model(), Reason.CALIBRATED, Optional.empty(), scene);
        if (!scene.isOpen()) return closedForm(Reason.COVERED, scene);
        if (scene.plan().channels().size() > 1) return closedForm(Reason.CHANNELS, scene);
        Optional<MarchCount> counted = counted(scene);
        if (counted.isEmpty()) return closedForm(Reason.NO_MAP, scene);
        MarchCount count = counted.get();
        Reason reason = count.meetsSteepGround() ? Reason.STEEP : count.isShort() ? Reason.BARE : Reason.LONG;
        return new ModelChoice(
                reason == Reason.BARE ? LossModels.FULL_WAVE : LossModels.HANDHELD, reason, counted, scene);
    }

    private static Optional<MarchCount> counted(Scene scene) {
        double radiusM = 1000 * scene.plan().places().area().radiusKm();
        double cellM = scene.plan().questions().reach().cellM();
        boolean isImpossible = !CellGrid.LATITUDE.accepts(scene.middle().latitudeDeg())
                || CellGrid.refusal(scene.middle(), radiusM, cellM).isPresent()
                || scene.tiles().at(scene.middle()).isVoid();
        if (isImpossible || scene.loadouts().isEmpty()) return Optional.empty();
        Set<Terminals> heights = new LinkedHashSet<>();
        for (Loadout loadout : scene.loadouts()) heights.add(Scene.terminals(scene.middleLoadout(loadout), loadout));
        AreaRequest map = new AreaRequest(
                scene.middle(),
                CellGrid.around(scene.middle(), radiusM, cellM),
                radiusM,
                heights.iterator().next(),
                scene.conditions(scene.middle()),
                LossModels.FULL_WAVE);
        BearingRequest rose = new BearingRequest(
                scene.middle(),
                radiusM,
                scene.plan().questions().reach().bearingStepDeg(),
                map.conditions(),
                map.model());
        return Optional.of(MarchCount.of(map, rose.bearings(), List.copyOf(heights), scene.ground()));
    }
}
