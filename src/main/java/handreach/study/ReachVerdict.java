package handreach.study;

import handreach.loadout.Burden;
import handreach.loadout.Loadout;
import handreach.reach.LoadoutReach;
import handreach.reach.ReachDifference;
import handreach.units.Lengths;
import java.util.Locale;

/** Whether a loadout is worth carrying on this ground, in words. */
final class ReachVerdict {
    /** Gains below this are not felt on the ground, m; our suggestion. */
    private static final double FELT_M = 100;

    private final Loadout control;
    private final Lengths lengths;

    ReachVerdict(Loadout control, Lengths lengths) {
        this.control = control;
        this.lengths = lengths;
    }

    String words(Loadout loadout, LoadoutReach reach) {
        if (reach.overControl().isEmpty())
            return "The control: everything else is held against " + loadout.name() + ".";
        ReachDifference difference = reach.overControl().get();
        double gain = difference.medianM();
        String change = Math.abs(gain) < 1
                ? "reaches as far as " + control.name()
                : (gain > 0 ? "adds " : "loses ")
                        + length(Math.abs(gain))
                        + (gain > 0 ? " over " : " against ")
                        + control.name();
        String interval = " (" + signed(difference.interval95M().low()) + " to "
                + signed(difference.interval95M().high()) + ")";
        String cut = 2 * reach.openEnded() > reach.bearings()
                ? " On most bearings the radius ends the reach: take a larger radius to see more of the difference."
                : "";
        return change + interval + ": " + judgement(loadout, difference) + "." + cut;
    }

    private String judgement(Loadout loadout, ReachDifference difference) {
        String burden = burden(loadout.antenna().burden());
        double low = difference.interval95M().low();
        double high = difference.interval95M().high();
        if (low <= 0 && high >= 0)
            return burden.isEmpty()
                    ? "the interval includes zero, not told apart"
                    : "the interval includes zero, not worth " + burden;
        if (high < 0) return "worse on this ground" + (burden.isEmpty() ? "" : ", and it costs " + burden);
        if (difference.medianM() < FELT_M)
            return "told apart, but too little to be felt" + (burden.isEmpty() ? "" : " for " + burden);
        return burden.isEmpty() ? "worth it, " + noMore(loadout.antenna().burden()) : "more reach for " + burden;
    }

    /** "No more to carry" is said only where nothing is left open. */
    private String noMore(Burden burden) {
        boolean isKnown =
                burden.massG().isPresent() && control.antenna().burden().massG().isPresent();
        return isKnown ? "and no more to carry" : "and no longer; mass not given";
    }

    /** What it costs more than the control, as far as it is known. */
    private String burden(Burden burden) {
        Burden base = control.antenna().burden();
        double lengthCm = burden.lengthCm() - base.lengthCm();
        StringBuilder words = new StringBuilder();
        if (lengthCm > 0.5)
            words.append(
                    lengths == Lengths.IMPERIAL
                            ? String.format(Locale.ROOT, "%.0f in more", lengthCm / 2.54)
                            : String.format(Locale.ROOT, "%.0f cm more", lengthCm));
        if (burden.massG().isEmpty() || base.massG().isEmpty()) return words.toString();
        double massG = burden.massG().getAsDouble() - base.massG().getAsDouble();
        if (massG > 0.5)
            words.append(words.isEmpty() ? "" : " and ").append(String.format(Locale.ROOT, "%.0f g more", massG));
        return words.toString();
    }

    private String length(double metres) {
        return lengths.text(metres);
    }

    private String signed(double metres) {
        return lengths.signed(metres);
    }
}
