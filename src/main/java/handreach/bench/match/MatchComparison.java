package handreach.bench.match;

import handreach.bench.SessionKey;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The same antenna swept in several mountings, side by side: what the counterpoise wire, the hand, the box change. */
public final class MatchComparison {
    /**
     * One sweep against the first.
     *
     * @param name of the sweep
     * @param tunedShiftMhz how far the tuning moved; negative is lower
     * @param bandRatio width of the 3:1 band over that of the first, where both have one whole
     * @param mismatchChangeDb change of the mismatch loss on each channel that both sweeps cover, in their order; negative is
     *     better
     * @param words the same in a sentence or two
     */
    public record Change(
            String name,
            double tunedShiftMhz,
            Optional<Double> bandRatio,
            List<Double> mismatchChangeDb,
            String words) {
        public Change {
            mismatchChangeDb = List.copyOf(mismatchChangeDb);
        }
    }

    private final List<MatchAnalysis> sweeps;

    private MatchComparison(List<MatchAnalysis> sweeps) {
        this.sweeps = List.copyOf(sweeps);
    }

    /** Compares sweeps with the first of them; at least one, all over the same impedance. */
    public static MatchComparison of(List<MatchAnalysis> sweeps) {
        if (sweeps.isEmpty()) throw new IllegalArgumentException("no sweep to compare");
        for (MatchAnalysis sweep : sweeps)
            if (sweep.systemOhm() != sweeps.get(0).systemOhm())
                throw new IllegalArgumentException("sweeps over " + sweep.systemOhm() + " and "
                        + sweeps.get(0).systemOhm() + " ohm");
        return new MatchComparison(sweeps);
    }

    /** Every sweep after the first against the first. */
    public List<Change> changes() {
        return sweeps.stream()
                .skip(1)
                .map(sweep -> change(sweeps.get(0), sweep))
                .toList();
    }

    private static Change change(MatchAnalysis first, MatchAnalysis other) {
        double shift = other.main().tunedMhz() - first.main().tunedMhz();
        Optional<Double> ratio = first.main()
                .band3()
                .filter(SwrBand::isWhole)
                .flatMap(a -> other.main().band3().filter(SwrBand::isWhole).map(b -> b.widthMhz() / a.widthMhz()))
                .filter(Double::isFinite);
        List<Double> changes = new ArrayList<>();
        StringBuilder words = new StringBuilder(String.format(
                Locale.ROOT,
                "Against %s, %s is tuned %.1f MHz %s",
                first.name(),
                other.name(),
                Math.abs(shift),
                shift < 0 ? "lower" : "higher"));
        ratio.ifPresent(r -> words.append(String.format(Locale.ROOT, ", its 3:1 band is %.2f times as wide", r)));
        for (ChannelMatch channel : first.channels()) {
            Optional<Match> there = other.matchAt(channel.channelMhz());
            if (there.isEmpty()) continue;
            double change = there.get().mismatchLossDb() - channel.match().mismatchLossDb();
            changes.add(change);
            words.append(String.format(
                    Locale.ROOT,
                    "; at %s MHz SWR %.1f becomes %.1f and the mismatch loss %s by %.2f dB",
                    SessionKey.plain(channel.channelMhz()),
                    channel.match().swr(),
                    there.get().swr(),
                    change < 0 ? "falls" : "rises",
                    Math.abs(change)));
        }
        return new Change(other.name(), shift, ratio, changes, words.append('.').toString());
    }
}
