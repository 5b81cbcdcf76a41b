package handreach.bench.match;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * An antenna on one channel.
 *
 * @param channelMhz the channel
 * @param match how well it takes power there
 * @param resistanceOhm of its impedance
 * @param reactanceOhm of its impedance; positive is inductive
 * @param trim what length would bring it to the channel; none where the antenna takes hardly any power anywhere in the sweep
 */
public record ChannelMatch(
        double channelMhz, Match match, double resistanceOhm, double reactanceOhm, Optional<Trim> trim) {
    /** Off the channel by less, the length is as right as a cut makes it (our suggestion). */
    private static final double RIGHT_PERCENT = 0.5;

    public ChannelMatch {
        Objects.requireNonNull(match);
        Objects.requireNonNull(trim);
    }

    /** What to do about the length, in a sentence. */
    public String advice() {
        if (trim.isEmpty())
            return "No advice on length: hardly any power is taken anywhere in the sweep, as by an open or a short. Look at plug, cable"
                    + " and counterpoise.";
        double percent = trim.get().tooLongPercent();
        double mm = trim.get().tooLongMm();
        if (match.returnLossDb() >= MatchAnalysis.WISHED_RETURN_LOSS_DB)
            return "Leave it: a better match would win " + number(match.mismatchLossDb(), 2) + " dB at most.";
        if (Math.abs(percent) > Trim.MOST_PERCENT)
            return "Not a matter of trimming: it is tuned " + number(Math.abs(percent), 0) + " % "
                    + (percent > 0 ? "too low" : "too high") + ". Look at mounting and counterpoise first.";
        if (Math.abs(percent) < RIGHT_PERCENT)
            return "The length is right, the match is not: " + number(resistanceOhm, 0)
                    + " ohm. Look at mounting, counterpoise and matching network, not at the length.";
        return (percent > 0 ? "Cut " : "Lengthen by ") + number(Math.abs(mm), 0) + " mm (a straight quarter-wave whip; "
                + number(Math.abs(percent), 1) + " % of any other), in small steps, and sweep again.";
    }

    private static String number(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
