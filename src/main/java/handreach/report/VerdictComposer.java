package handreach.report;

import handreach.geodesy.Compass;
import handreach.loadout.Burden;
import handreach.loadout.Loadout;
import handreach.plan.Questions.Measure;
import handreach.reach.GroundGain;
import handreach.reach.LoadoutReach;
import handreach.reach.ReachDifference;
import handreach.study.Judgement;
import handreach.study.PlacesGain;
import handreach.study.ReachAnswer;
import handreach.study.ReachVerdict;
import handreach.units.Decibels;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Whether each loadout is worth carrying, in words: the gain with its interval, what changes, what it costs. */
final class VerdictComposer {
    /** Sides of the ground that a sentence names, and the least part of the change that earns the name; our suggestion. */
    private static final int MOST_SIDES = 2;

    private static final double LEAST_PART = 0.25;
    /** Names that a sentence has room for. */
    private static final int MOST_NAMES = 5;
    /** Changes of reach below this are none, m. */
    private static final double NO_REACH_M = 1;

    private final ReachAnswer answer;
    private final Loadout control;
    private final Lengths lengths;

    VerdictComposer(ReachAnswer answer) {
        this.answer = answer;
        this.control = answer.scene().controlLoadout();
        this.lengths = answer.scene().plan().header().lengths();
    }

    /** The verdict on one loadout, by its number in the answer; its first letter is small. */
    String words(int number) {
        Optional<ReachVerdict> verdict = answer.verdicts().get(number);
        LoadoutReach reach = answer.loadouts().get(number);
        if (verdict.isEmpty()) return "The control: everything else is held against " + control.name() + ".";
        Loadout loadout = answer.scene().loadout(reach.link().name());
        return words(verdict.get(), loadout, reach);
    }

    private String words(ReachVerdict verdict, Loadout loadout, LoadoutReach reach) {
        Measure by = verdict.decidedBy();
        String places = by == verdict.asked().by() ? "" : " " + undecided(verdict) + ".";
        String cut = by != Measure.PLACES && 2 * reach.openEnded() > reach.bearings()
                ? " On most bearings the radius ends the reach: take a larger radius to see more of the difference."
                : "";
        return change(verdict, by) + ": " + judgement(verdict.judgement(by), by, loadout) + "." + places + cut;
    }

    /** What the places say where they do not settle it. */
    private String undecided(ReachVerdict verdict) {
        if (verdict.places().isEmpty()) return "Nobody else is in the plan";
        PlacesGain gain = verdict.places().get();
        String both = count(gain.reached()) + " of " + count(gain.of()) + " places, as with " + control.name();
        return switch (verdict.judgement(Measure.PLACES)) {
            case SAME -> "Reaches " + both;
            case NOT_TOLD_APART ->
                (gain.changes().isEmpty() ? "Reaches " + both : Sentences.begun(changed(gain))) + interval(gain)
                        + ", not told apart";
            default -> Sentences.begun(changed(gain)) + interval(gain) + ", too little to be felt";
        };
    }

    private String change(ReachVerdict verdict, Measure by) {
        return switch (by) {
            case PLACES ->
                verdict.places().map(gain -> changed(gain) + interval(gain)).orElseThrow();
            case GROUND -> ground(verdict);
            case REACH -> reach(verdict);
        };
    }

    private String changed(PlacesGain gain) {
        List<String> more = names(gain, true);
        List<String> fewer = names(gain, false);
        List<String> words = new ArrayList<>();
        if (!more.isEmpty()) words.add("reaches " + listed(more) + " besides");
        if (!fewer.isEmpty()) words.add("no longer reaches " + listed(fewer));
        return String.join(", but ", words) + ", " + count(gain.reached()) + " of " + count(gain.of())
                + " places against " + count(gain.control()) + " with " + control.name();
    }

    private static List<String> names(PlacesGain gain, boolean isMore) {
        return gain.changes().stream()
                .filter(one -> one.now() > one.before() == isMore)
                .map(one -> one.of() == 1
                        ? one.place()
                        : Math.abs(one.now() - one.before()) + " of " + one.of() + " points of " + one.place())
                .toList();
    }

    private static String listed(List<String> names) {
        if (names.size() == 1) return names.get(0);
        boolean isAll = names.size() <= MOST_NAMES;
        List<String> shown = isAll ? names.subList(0, names.size() - 1) : names.subList(0, MOST_NAMES);
        String last = isAll ? names.get(names.size() - 1) : names.size() - MOST_NAMES + " more";
        return String.join(", ", shown) + " and " + last;
    }

    private static String interval(PlacesGain gain) {
        String low = signed(gain.gain95().low());
        String high = signed(gain.gain95().high());
        return low.equals(high) ? "" : " (" + low + " to " + high + ")";
    }

    private static String count(double places) {
        return Math.abs(places - Math.rint(places)) < 0.05
                ? Decibels.number(Math.rint(places), 0)
                : Decibels.number(places, 1);
    }

    private static String signed(double places) {
        return (places < -0.05 ? "\u2212" : "+") + count(Math.abs(places));
    }

    /** What the bigger antenna buys over the control: the one that buys most, or that none does; empty where nothing bigger is carried. */
    Optional<String> bought() {
        Optional<String> most = Optional.empty();
        double mostGain = 0;
        boolean isBigger = false;
        for (int i = 0; i < answer.loadouts().size(); i++) {
            Optional<ReachVerdict> verdict = answer.verdicts().get(i);
            Loadout loadout =
                    answer.scene().loadout(answer.loadouts().get(i).link().name());
            if (verdict.isEmpty()
                    || !loadout.carry().carry().isAtBody()
                    || burden(loadout.antenna().burden()).isEmpty()) continue;
            isBigger = true;
            Measure by = verdict.get().decidedBy();
            double gain = verdict.get().ground().gain();
            if (verdict.get().judgement(by) != Judgement.MORE || most.isPresent() && gain <= mostGain) continue;
            mostGain = gain;
            most = Optional.of(
                    "Of the bigger antennas \"" + loadout.name() + "\" buys most: " + gain(verdict.get(), by) + ".");
        }
        if (most.isPresent() || !isBigger) return most;
        return Optional.of("No bigger antenna is seen to buy more than " + control.name() + ".");
    }

    /** The change without its doubt and its sides. */
    private String gain(ReachVerdict verdict, Measure by) {
        return switch (by) {
            case PLACES -> changed(verdict.places().orElseThrow());
            case GROUND -> opens(verdict.ground()) + times(verdict.ground());
            case REACH -> adds(verdict.reach().medianM());
        };
    }

    private String opens(GroundGain gain) {
        return (gain.gain() < 0 ? "loses " : "opens ")
                + lengths.area(gain.knownM2() * Math.abs(gain.gain()))
                + (gain.gain() < 0 ? " against " : " over ")
                + control.name();
    }

    private static String times(GroundGain gain) {
        return gain.control() > 0
                ? ", " + Decibels.number(gain.share() / gain.control(), factorDigits(gain)) + " times its ground"
                : ", which reaches none";
    }

    private String adds(double gainM) {
        return Math.abs(gainM) < NO_REACH_M
                ? "reaches as far as " + control.name()
                : (gainM > 0 ? "adds " : "loses ")
                        + lengths.text(Math.abs(gainM))
                        + (gainM > 0 ? " over " : " against ")
                        + control.name();
    }

    private String ground(ReachVerdict verdict) {
        GroundGain gain = verdict.ground();
        double known = gain.knownM2();
        if (verdict.judgement(Measure.GROUND) == Judgement.SAME) return "reaches the same ground as " + control.name();
        String interval = " ("
                + lengths.areaRange(
                        known * gain.gain95().low(), known * gain.gain95().high()) + ")";
        return opens(gain) + interval + times(gain) + sides(verdict);
    }

    private static int factorDigits(GroundGain gain) {
        double factor = gain.share() / gain.control();
        return Math.abs(factor - 1) < 0.1 || factor < 0.1 ? 2 : 1;
    }

    private String sides(ReachVerdict verdict) {
        List<GroundGain.Side> all = verdict.ground().sides();
        double sum = 0;
        for (GroundGain.Side side : all) sum += side.areaM2();
        List<String> named = new ArrayList<>();
        for (GroundGain.Side side : all)
            if (named.size() < MOST_SIDES && side.areaM2() >= LEAST_PART * sum)
                named.add(Compass.word(side.bearingDeg()) + " of "
                        + verdict.named().get(side.place()) + " (" + lengths.area(side.areaM2()) + ")");
        if (!named.isEmpty()) return ", chiefly " + String.join(" and ", named);
        return all.isEmpty() ? "" : ", scattered over " + all.size() + " sides";
    }

    private String reach(ReachVerdict verdict) {
        ReachDifference difference = verdict.reach();
        double gainM = difference.medianM();
        String change = adds(gainM);
        String interval = " (" + lengths.signed(difference.interval95M().low()) + " to "
                + lengths.signed(difference.interval95M().high()) + ")";
        ReachVerdict.OnBearing best = verdict.best();
        String most = Math.abs(best.gainM()) < NO_REACH_M || best.gainM() > 0 != gainM > 0
                ? ""
                : ", most towards the " + Compass.word(best.bearingDeg()) + " (" + lengths.signed(best.gainM()) + ")";
        return change + interval + most;
    }

    private String judgement(Judgement found, Measure by, Loadout loadout) {
        boolean isWorn = loadout.carry().carry().isAtBody();
        String burden = isWorn ? burden(loadout.antenna().burden()) : "";
        return switch (found) {
            case SAME -> burden.isEmpty() ? "no difference" : "not worth " + burden;
            case NOT_TOLD_APART ->
                burden.isEmpty()
                        ? "the interval includes zero, not told apart"
                        : "the interval includes zero, not worth " + burden;
            case WORSE -> "worse on this ground" + (burden.isEmpty() ? "" : ", and it costs " + burden);
            case TOO_LITTLE -> "told apart, but too little to be felt" + (burden.isEmpty() ? "" : " for " + burden);
            case MORE ->
                !isWorn
                        ? "more " + what(by) + " from a mast or vehicle, which nobody wears"
                        : burden.isEmpty()
                                ? "worth it, " + noMore(loadout.antenna().burden())
                                : "more " + what(by) + ", worth it if " + burden + " can be carried";
        };
    }

    private static String what(Measure by) {
        return switch (by) {
            case PLACES -> "people reached";
            case GROUND -> "ground";
            case REACH -> "reach";
        };
    }

    /** "No more to carry" is said only where nothing is left open. */
    private String noMore(Burden burden) {
        boolean isKnown =
                burden.massG().isPresent() && control.antenna().burden().massG().isPresent();
        return isKnown ? "and no more to carry" : "and no longer; " + Burden.NO_MASS;
    }

    /** What it costs more than the control, as far as it is known. */
    private String burden(Burden burden) {
        Burden base = control.antenna().burden();
        double lengthCm = burden.lengthCm() - base.lengthCm();
        String length = lengthCm <= 0.5 ? "" : lengths.antenna(lengthCm) + " more";
        double massG = burden.massG().isEmpty() || base.massG().isEmpty()
                ? 0
                : burden.massG().getAsDouble() - base.massG().getAsDouble();
        String mass = massG <= 0.5 ? "" : lengths.mass(massG) + " more";
        String more = String.join(
                " and ", Stream.of(length, mass).filter(part -> !part.isEmpty()).toList());
        if (more.isEmpty()) return more;
        String open = String.join(
                ", ",
                Stream.of(
                                burden.lengthIsUsual() || base.lengthIsUsual() ? Burden.USUAL_LENGTH : "",
                                burden.massG().isEmpty() || base.massG().isEmpty() ? Burden.NO_MASS : "")
                        .filter(part -> !part.isEmpty())
                        .toList());
        return open.isEmpty() ? more : more + " (" + open + ")";
    }
}
