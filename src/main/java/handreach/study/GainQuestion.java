package handreach.study;

import handreach.input.Fault;
import handreach.input.InputFault;
import handreach.input.NumberText;
import handreach.plan.Equipment;
import handreach.plan.PlanFile;
import handreach.reach.LoadoutReach;
import handreach.reach.Progress;
import handreach.units.Lengths;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An antenna that came with a gain in decibels and no reference: refused, and beside the refusal what each answer of the seller would
 * mean on the ground of the plan.
 */
public final class GainQuestion {
    private static final Pattern GAIN = Pattern.compile("(?m)^([ \\t]*)gain_db([ \\t]*=[ \\t]*)([-+]?[0-9.]+)");

    /** A quarter wave has 5.15 dBi over a large plane (textbook), 1.9 to 2.3 dBi on a handheld's case (wire grid, computed for this project). */
    private static final double LOST_WITHOUT_PLANE_DB = 3;

    private GainQuestion() {}

    /** The refusal with a line more where gains without a reference are all that is wrong with the plan; as it was otherwise. */
    public static InputFault answered(Path planOrFolder, InputFault refused, Progress progress) {
        try {
            Optional<PlanFile> isotropic = PlanFile.openAs(planOrFolder, text -> stated(text, "gain_dbi", 0));
            Optional<PlanFile> dipole = PlanFile.openAs(planOrFolder, text -> stated(text, "gain_dbd", 0));
            Optional<PlanFile> plane =
                    PlanFile.openAs(planOrFolder, text -> stated(text, "gain_dbi", LOST_WITHOUT_PLANE_DB));
            if (isotropic.isEmpty() || dipole.isEmpty() || plane.isEmpty()) return refused;
            List<String> asked = loadouts(isotropic.get());
            if (asked.isEmpty()) return refused;
            List<Fault> faults = new ArrayList<>(refused.faults());
            Fault first = faults.get(0);
            faults.add(new Fault(
                    first.source(),
                    first.line(),
                    "on the ground of this plan " + asked.get(0) + " would reach, on the median bearing, "
                            + reach(isotropic.get(), asked, progress) + " if the figure is over isotropic, "
                            + reach(dipole.get(), asked, progress) + " if over a dipole, "
                            + reach(plane.get(), asked, progress)
                            + " if over isotropic but measured on a metal plane."));
            return new InputFault(faults);
        } catch (InputFault stillWrong) {
            return refused;
        }
    }

    /** Every gain without a reference given one, a loss taken off. */
    private static String stated(String text, String key, double lossDb) {
        return GAIN.matcher(text).replaceAll(found -> {
            OptionalDouble gain = NumberText.parse(found.group(3));
            String value = NumberText.plain(gain.orElse(0) - lossDb);
            return Matcher.quoteReplacement(found.group(1) + key + found.group(2) + value);
        });
    }

    /** Loadouts with an antenna whose gain is stated. */
    private static List<String> loadouts(PlanFile file) {
        List<String> antennas = file.plan().equipment().antennas().stream()
                .filter(antenna -> antenna.known().gain().isPresent())
                .map(Equipment.AntennaEntry::name)
                .toList();
        return file.plan().equipment().loadouts().stream()
                .filter(loadout -> antennas.contains(loadout.antenna()))
                .map(Equipment.LoadoutEntry::name)
                .toList();
    }

    private static String reach(PlanFile file, List<String> asked, Progress progress) {
        ReachOptions options = ReachOptions.ofPlan(false).only(asked.subList(0, 1));
        ReachAnswer answer = ReachStudy.run(Scene.open(file), options, progress);
        Lengths lengths = file.plan().header().lengths();
        LoadoutReach reach = answer.loadouts().stream()
                .filter(one -> one.link().name().equals(asked.get(0)))
                .findFirst()
                .orElseThrow();
        return lengths.text(reach.medianM().value());
    }
}
