package handreach.report;

import handreach.budget.SiteNoise;
import handreach.loadout.Loadout;
import handreach.plan.Equipment;
import handreach.plan.NoiseChoice;
import handreach.plan.Plan;
import handreach.propagation.NoiseEnvironment;
import handreach.study.Scene;
import handreach.units.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What noise from outside is taken at which end, what it varies by, and what of that is counted. */
final class NoiseComposer {
    private static final String NO_HOUR =
            "no hour of the day: P.372 gives man-made noise none at VHF and UHF; deciles within the hour from memory";

    private NoiseComposer() {}

    /**
     * Noise at one kind of end; the component names are keys of the JSON.
     *
     * @param at name of the loadout that has noise of its own, or "every other end"
     * @param label kind of surroundings, or the floor as measured
     * @param medianOverKtDb as a lossless short antenna receives it
     * @param placeSpreadDb standard deviation between places, counted
     * @param hourUpDb by which it rises within an hour at a place a tenth of the time, not counted
     * @param hourDownDb by which it falls likewise
     * @param source document or measurement
     */
    record At(
            String at,
            String label,
            double medianOverKtDb,
            double placeSpreadDb,
            double hourUpDb,
            double hourDownDb,
            String source) {
        private static At of(String at, SiteNoise noise, NoiseChoice choice) {
            NoiseEnvironment surroundings = choice.surroundings();
            return new At(
                    at,
                    noise.label(),
                    noise.medianDb(),
                    noise.spreadDb(),
                    surroundings.hourUpDb(),
                    surroundings.hourDownDb(),
                    noise.source());
        }

        /** What is taken, and how it varies. */
        String words() {
            return String.format(
                    Locale.ROOT,
                    "%s, %s dB over kT; places differ by %.1f dB (standard deviation, counted); within an hour it rises by %.1f and"
                            + " falls by %.1f dB a tenth of the time (not counted: a call is repeated)",
                    label,
                    Decibels.number(medianOverKtDb, 1),
                    placeSpreadDb,
                    hourUpDb,
                    hourDownDb);
        }

        String sourceWords() {
            return source + "; " + NO_HOUR;
        }
    }

    /** The noise of the plan first, then of every loadout with noise of its own. */
    static List<At> all(Scene scene) {
        Plan plan = scene.plan();
        List<At> all = new ArrayList<>();
        all.add(At.of("every other end", scene.noise(), plan.ground().noise()));
        for (Equipment.LoadoutEntry entry : plan.equipment().loadouts()) {
            Loadout loadout = scene.loadout(entry.name());
            entry.noise()
                    .ifPresent(own ->
                            all.add(At.of(entry.name(), scene.end(loadout).noise(), own)));
        }
        return all;
    }
}
