package handreach.study;

import handreach.loadout.CarryLoss;
import handreach.plan.Channel;
import handreach.reach.LoadoutReach;
import java.util.List;

/**
 * The same ground on every channel of a plan.
 *
 * @param channels in the plan's order; none where the plan has only one, or they were not computed
 * @param warnings what was doubtful about the others than the one that was asked for
 */
public record ChannelsAnswer(List<OnChannel> channels, List<String> warnings) {
    /**
     * One channel.
     *
     * @param channel which
     * @param loadouts reach by bearing, in the order of the answer's loadouts
     * @param places who reaches whom
     * @param noiseDb noise of the ground's surroundings over thermal noise at 290 K, dB
     * @param carries what the body leaves of the control antenna in each position that loadouts are carried in
     */
    public record OnChannel(
            Channel channel,
            List<LoadoutReach> loadouts,
            PlacesAnswer places,
            double noiseDb,
            List<CarryLoss> carries) {
        public OnChannel {
            loadouts = List.copyOf(loadouts);
            carries = List.copyOf(carries);
        }
    }

    public ChannelsAnswer {
        channels = List.copyOf(channels);
        warnings = List.copyOf(warnings);
    }

    static ChannelsAnswer none() {
        return new ChannelsAnswer(List.of(), List.of());
    }
}
