package handreach.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import handreach.bench.match.ChannelMatch;
import handreach.bench.match.Dip;
import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.MatchComparison;
import handreach.bench.match.RadiatorLength;
import handreach.bench.match.Resonance;
import handreach.bench.match.SwrBand;
import handreach.bench.match.Trim;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One-port sweeps with the keys of the command line's contract: a single sweep lies at the top, further ones under {@code others} with what they change. */
public record MatchJson(
        String file,
        double systemOhm,
        double lowestMhz,
        double highestMhz,
        Optional<Double> resonanceMhz,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> resonanceResistanceOhm,
        double swrMinimumMhz,
        double swrMinimum,
        Optional<Double> bandwidth2Mhz,
        Optional<List<Double>> band2Mhz,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Boolean> band2Whole,
        Optional<Double> bandwidth3Mhz,
        Optional<List<Double>> band3Mhz,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Boolean> band3Whole,
        OptionalDouble q,
        List<Channel> channels,
        int dips,
        List<String> warnings,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<MatchJson> others,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<MatchComparison.Change> changes) {
    /** The sweeps, at least one. */
    public static MatchJson of(List<MatchAnalysis> sweeps) {
        List<MatchJson> others = sweeps.stream()
                .skip(1)
                .map(sweep -> of(sweep, List.of(), List.of()))
                .toList();
        return of(sweeps.get(0), others, MatchComparison.of(sweeps).changes());
    }

    private static MatchJson of(MatchAnalysis sweep, List<MatchJson> others, List<MatchComparison.Change> changes) {
        Dip main = sweep.main();
        return new MatchJson(
                sweep.name(),
                sweep.systemOhm(),
                sweep.lowestMhz(),
                sweep.highestMhz(),
                main.resonance().map(Resonance::frequencyMhz),
                main.resonance().map(Resonance::resistanceOhm),
                main.frequencyMhz(),
                main.match().swr(),
                main.band2().map(SwrBand::widthMhz),
                main.band2().map(MatchJson::edges),
                main.band2().map(SwrBand::isWhole),
                main.band3().map(SwrBand::widthMhz),
                main.band3().map(MatchJson::edges),
                main.band3().map(SwrBand::isWhole),
                sweep.qualityFromBandwidth(),
                sweep.channels().stream().map(Channel::of).toList(),
                sweep.dips().size(),
                sweep.warnings(),
                others,
                changes);
    }

    private static List<Double> edges(SwrBand band) {
        return List.of(band.lowMhz(), band.highMhz());
    }

    private record Channel(
            double channelMhz,
            double swr,
            double returnLossDb,
            double mismatchLossDb,
            double resistanceOhm,
            double reactanceOhm,
            Optional<Double> tooLongPercent,
            Optional<Double> tooLongMm,
            String advice,
            double counterpoiseMm) {
        static Channel of(ChannelMatch channel) {
            return new Channel(
                    channel.channelMhz(),
                    channel.match().swr(),
                    channel.match().returnLossDb(),
                    channel.match().mismatchLossDb(),
                    channel.resistanceOhm(),
                    channel.reactanceOhm(),
                    channel.trim().map(Trim::tooLongPercent),
                    channel.trim().map(Trim::tooLongMm),
                    channel.advice(),
                    RadiatorLength.counterpoiseMm(channel.channelMhz()));
        }
    }
}
