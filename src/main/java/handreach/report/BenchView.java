package handreach.report;

import handreach.bench.BenchAnalysis;
import handreach.bench.match.MatchAnalysis;
import handreach.report.figure.ChannelMark;
import java.util.List;

/**
 * Everything a bench report shows.
 *
 * @param title name of the session or plan
 * @param analysis deltas, order, match
 * @param sweeps reflection over frequency, may be none
 * @param channels to be marked on the sweeps
 * @param costs what each antenna costs to carry, may be none
 * @param imprint who made it and when
 */
public record BenchView(
        String title,
        BenchAnalysis analysis,
        List<MatchAnalysis> sweeps,
        List<ChannelMark> channels,
        List<AntennaCost> costs,
        String imprint) {
    public BenchView {
        sweeps = List.copyOf(sweeps);
        channels = List.copyOf(channels);
        costs = List.copyOf(costs);
    }
}
