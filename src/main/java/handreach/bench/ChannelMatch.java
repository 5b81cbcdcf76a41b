package handreach.bench;

import java.util.Objects;

/**
 * An antenna on one channel.
 *
 * @param channelMhz the channel
 * @param match how well it takes power there
 * @param resistanceOhm of its impedance
 * @param reactanceOhm of its impedance; positive is inductive
 * @param trim what length would bring it to the channel
 */
public record ChannelMatch(double channelMhz, Match match, double resistanceOhm, double reactanceOhm, Trim trim) {
    public ChannelMatch {
        Objects.requireNonNull(match);
        Objects.requireNonNull(trim);
    }
}
