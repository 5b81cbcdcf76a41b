package handreach.study;

import handreach.budget.LinkEnd;
import handreach.loadout.Loadout;
import handreach.loadout.Radio;
import handreach.plan.Equipment;
import handreach.reach.LoadoutReach;
import handreach.reach.ReachLink;
import handreach.units.Dbm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;

/**
 * What a radio reaches turned down to a lower power, and how long its battery then lasts.
 *
 * @param loadout number among the loadouts of the answer
 * @param powerW turned down to
 * @param fullW the radio's own power
 * @param reach at that power; the other end as it is, unless both carry the same loadout, which is then turned down too
 * @param hours of the battery at that power, where the plan says what it draws
 * @param fullHours of the battery at full power
 */
public record PowerStep(
        int loadout, double powerW, double fullW, LoadoutReach reach, OptionalDouble hours, OptionalDouble fullHours) {

    /**
     * Every step of every loadout's radio.
     *
     * @param reachOf reach of a loadout by its number, over a link
     * @param warnings takes what is left out
     */
    static List<PowerStep> of(
            Scene scene,
            List<Loadout> loadouts,
            BiFunction<Integer, ReachLink, LoadoutReach> reachOf,
            Set<String> warnings) {
        List<PowerStep> steps = new ArrayList<>();
        for (int i = 0; i < loadouts.size(); i++) {
            Loadout loadout = loadouts.get(i);
            Equipment.RadioEntry radio = radio(scene, loadout);
            if (radio.lowerPowers().isEmpty()) continue;
            OptionalDouble full = hours(radio, radio.battery().map(Equipment.BatteryEntry::sendMa));
            for (Equipment.PowerEntry step : radio.lowerPowers()) {
                if (step.powerW() >= radio.powerW()) {
                    warnings.add("A power step of " + radio.name() + " is not below its power_w and is left out.");
                    continue;
                }
                ReachLink link = scene.link(loadout, Dbm.ofWatts(step.powerW()));
                OptionalDouble sendMa = step.sendMa();
                steps.add(new PowerStep(
                        i,
                        step.powerW(),
                        radio.powerW(),
                        reachOf.apply(i, link),
                        hours(radio, sendMa.isPresent() ? Optional.of(sendMa.getAsDouble()) : Optional.empty()),
                        full));
            }
        }
        return steps;
    }

    private static Equipment.RadioEntry radio(Scene scene, Loadout loadout) {
        for (Equipment.RadioEntry entry : scene.plan().equipment().radios())
            if (entry.name().equals(loadout.radio().name())) return entry;
        throw new IllegalStateException("no radio " + loadout.radio().name());
    }

    private static OptionalDouble hours(Equipment.RadioEntry radio, Optional<Double> sendMa) {
        if (radio.battery().isEmpty() || sendMa.isEmpty()) return OptionalDouble.empty();
        return OptionalDouble.of(radio.battery().get().battery().hours(sendMa.get()));
    }

    /** The end with its radio turned down. */
    static LinkEnd turnedDown(LinkEnd end, Dbm power) {
        Loadout full = end.loadout();
        Radio radio = new Radio(
                full.radio().name(),
                power,
                full.radio().sensitivity(),
                full.radio().modulation());
        Loadout turned = new Loadout(full.name(), radio, full.antenna(), full.carry(), full.heightM(), full.gain());
        return new LinkEnd(turned, end.noise(), end.posture(), end.extras(), end.desense());
    }
}
