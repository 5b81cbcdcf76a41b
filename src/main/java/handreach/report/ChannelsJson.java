package handreach.report;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.report.file.Json;
import handreach.study.ChannelsAnswer;
import handreach.study.ReachAnswer;
import java.util.List;
import java.util.OptionalDouble;

/** The channels of a plan side by side as JSON; keys in docs/schema. */
final class ChannelsJson {
    private ChannelsJson() {}

    private record OfChannel(
            String name,
            double frequencyMhz,
            long placesServed,
            int placesOf,
            OptionalDouble weakestOdds,
            double noiseDb,
            List<OfCarry> carries,
            List<OfLoadout> loadouts) {}

    private record OfCarry(String carry, double controlGainDbd) {}

    private record OfLoadout(String loadout, double medianKm, double areaShare) {}

    static JsonNode of(ReachAnswer answer) {
        double wanted = answer.scene().plan().channel().wish().odds();
        return Json.tree(answer.channels().channels().stream()
                .map(one -> of(one, wanted))
                .toList());
    }

    private static OfChannel of(ChannelsAnswer.OnChannel one, double wanted) {
        PlacesComposer.Tally tally = PlacesComposer.tally(one.places(), wanted);
        return new OfChannel(
                one.channel().name(),
                one.channel().frequency().mhz(),
                tally.served(),
                tally.of(),
                tally.weakest(),
                one.noiseDb(),
                one.carries().stream()
                        .map(carry ->
                                new OfCarry(carry.carry().word(), carry.mean().dbd()))
                        .toList(),
                one.loadouts().stream()
                        .map(reach -> new OfLoadout(
                                reach.link().name(),
                                reach.medianM().value() / 1000,
                                reach.share().value()))
                        .toList());
    }
}
