package handreach.study;

import handreach.loadout.CarryLoss;
import handreach.loadout.Loadout;
import handreach.plan.Channel;
import handreach.reach.MapEngine;
import handreach.reach.Progress;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Computes the rose and the places of a plan again on its other channels. */
final class ChannelStudy {
    private ChannelStudy() {}

    /** Beside an answer that is there; with a march, which takes minutes each, they are left out. */
    static ChannelsAnswer run(ReachAnswer answer, ReachOptions options, Progress progress) {
        Scene scene = answer.scene();
        List<Channel> all = scene.plan().channels();
        if (all.size() < 2) return ChannelsAnswer.none();
        if (MapEngine.MARCH.goesBy(scene.model()))
            return new ChannelsAnswer(
                    List.of(),
                    List.of("With " + scene.model().name()
                            + " the other channels are not reckoned beside this one: each would march again. Ask for one with"
                            + " --channel, or take another model."));
        List<ChannelsAnswer.OnChannel> channels = new ArrayList<>();
        Set<String> warnings = new LinkedHashSet<>();
        for (Channel channel : all) {
            ReachAnswer on = channel.equals(scene.plan().channel())
                    ? answer
                    : ReachStudy.single(
                            scene.on(channel), ReachOptions.ofPlan(false).only(options.loadouts()), progress);
            channels.add(on(channel, on));
            on.warnings().stream()
                    .filter(note -> !answer.warnings().contains(note))
                    .forEach(note -> warnings.add(channel.name() + ": " + note));
        }
        return new ChannelsAnswer(channels, List.copyOf(warnings));
    }

    private static ChannelsAnswer.OnChannel on(Channel channel, ReachAnswer answer) {
        Map<String, CarryLoss> carries = new LinkedHashMap<>();
        for (Loadout loadout : answer.scene().loadouts())
            carries.putIfAbsent(loadout.carry().carry().word(), loadout.carry());
        return new ChannelsAnswer.OnChannel(
                channel,
                answer.loadouts(),
                answer.places(),
                answer.scene().noise().medianDb(),
                List.copyOf(carries.values()));
    }
}
