package handreach.study;

import handreach.input.Faults;
import handreach.input.NearestWord;
import handreach.plan.Equipment;
import handreach.plan.ModelWish;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.plan.Questions;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.Standing;
import handreach.reach.AreaRequest;
import handreach.reach.MapEngine;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is asked of {@link ReachStudy} beyond what the plan says.
 *
 * @param withArea whether the loss to every cell is computed too, for maps
 * @param engine the engine for the map; empty takes {@link MapEngine#usual}
 * @param model loss model in place of the plan's, or that the program chooses it
 * @param standing where the field march counts woods and towns, in place of what the plan says
 * @param radiusKm radius in place of the plan's, km
 * @param cellM cell of the maps in place of the plan's, m
 * @param loadouts names of the loadouts wanted beside the control; empty for all of the plan
 */
public record ReachOptions(
        boolean withArea,
        Optional<MapEngine> engine,
        Optional<ModelWish> model,
        Optional<Standing> standing,
        OptionalDouble radiusKm,
        OptionalDouble cellM,
        List<String> loadouts) {

    private static final String MARCH_OR_NOT = "Add --engine march or --model full-wave, or leave it out.";

    public ReachOptions {
        loadouts = List.copyOf(loadouts);
    }

    /** What the plan says, nothing else. */
    public static ReachOptions ofPlan(boolean withArea) {
        return new ReachOptions(
                withArea,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of());
    }

    /** The same for these loadouts beside the control. */
    ReachOptions only(List<String> names) {
        return new ReachOptions(withArea, engine, model, standing, radiusKm, cellM, names);
    }

    /** The same with woods and towns counted elsewhere by the field march. */
    ReachOptions counting(Standing where) {
        return new ReachOptions(withArea, engine, model, Optional.of(where), radiusKm, cellM, loadouts);
    }

    /** All faults at once, each named by the option that set it. */
    void check(Plan plan) {
        Faults faults = new Faults();
        radiusKm.ifPresent(km -> AreaRequest.RADIUS.check(faults, "--radius-km", km));
        cellM.ifPresent(m -> AreaRequest.CELL.check(faults, "--cell-m", m));
        List<String> known = plan.equipment().loadouts().stream()
                .map(Equipment.LoadoutEntry::name)
                .toList();
        for (String name : loadouts)
            if (!known.contains(name))
                faults.add(
                        "--loadout",
                        0,
                        "\"" + name + "\" is not in the plan." + NearestWord.hint(name, known) + " It has: "
                                + String.join(", ", known) + ".");
        LossModel wanted = modelFor(plan).model();
        engine.filter(one -> !one.goesBy(wanted))
                .ifPresent(
                        one -> faults.add(
                                "--engine",
                                0,
                                one == MapEngine.MARCH
                                        ? "is march, which goes by full-wave and not by " + wanted.name()
                                                + ". Leave --model out."
                                        : "is " + one.word()
                                                + ", but full-wave goes along whole radials. Take --engine march, or another --model."));
        if (standing.isPresent() && !wanted.equals(LossModels.FULL_WAVE))
            faults.add(
                    "--woods-and-towns", 0, "is for the march alone, not for " + wanted.name() + ". " + MARCH_OR_NOT);
        faults.throwIfAny();
    }

    /** An engine that is named goes before a choice of the program. */
    private ModelWish modelFor(Plan plan) {
        ModelWish wanted = model.orElse(plan.questions().reach().wish());
        if (engine.isEmpty() || !wanted.isChosen() && model.isPresent()) return wanted;
        if (engine.get() == MapEngine.MARCH) return ModelWish.named(LossModels.FULL_WAVE);
        return wanted.isChosen() ? ModelWish.named(LossModels.HANDHELD) : wanted;
    }

    private Standing standingFor(Plan plan) {
        return standing.orElse(plan.questions().reach().standing());
    }

    /** Whether this asks for nothing that the plan says otherwise. */
    boolean leaves(Plan plan) {
        return radiusKm.orElse(plan.places().area().radiusKm())
                        == plan.places().area().radiusKm()
                && cellM.orElse(plan.questions().reach().cellM())
                        == plan.questions().reach().cellM()
                && leavesModel(plan)
                && standingFor(plan) == plan.questions().reach().standing();
    }

    private boolean leavesModel(Plan plan) {
        ModelWish wanted = modelFor(plan);
        ModelWish planned = plan.questions().reach().wish();
        return wanted.isChosen()
                ? planned.isChosen() && planned.isStated() == wanted.isStated()
                : wanted.equals(planned);
    }

    /** The plan with the options in place of what it says. */
    Plan over(Plan plan) {
        Questions asked = plan.questions();
        Questions.ReachQuestion reach =
                asked.reach().with(cellM.orElse(asked.reach().cellM()), modelFor(plan), standingFor(plan));
        Places.Area area = plan.places().area();
        Places places = new Places(
                new Places.Area(area.centre(), radiusKm.orElse(area.radiusKm()), area.polygon()),
                plan.places().positions(),
                plan.places().routes(),
                plan.places().sectors(),
                plan.places().stations());
        return new Plan(plan.header(), plan.channel(), plan.channels(), plan.ground(), plan.equipment(), places, asked)
                .asking(reach);
    }
}
