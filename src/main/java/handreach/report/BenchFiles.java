package handreach.report;

import handreach.bench.BenchAnalysis;
import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.Touchstone;
import handreach.plan.Channel;
import handreach.plan.Kit;
import handreach.plan.PlanFile;
import handreach.report.figure.ChannelMark;
import handreach.report.file.WholeFile;
import handreach.report.page.HtmlPage;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The bench report as a file. */
public final class BenchFiles {
    private BenchFiles() {}

    /** Writes the report; channel and burden come from the plan where there is one. */
    public static void write(BenchAnalysis analysis, List<Path> sweeps, Optional<PlanFile> plan, Path file) {
        List<Double> channelsMhz =
                plan.map(p -> List.of(p.plan().channel().frequency().mhz())).orElse(List.of());
        List<MatchAnalysis> curves = sweeps.stream()
                .map(sweep -> MatchAnalysis.of(Touchstone.read(sweep), channelsMhz, 50))
                .toList();
        List<ChannelMark> marks =
                plan.map(p -> List.of(mark(p.plan().channel()))).orElse(List.of());
        List<AntennaCost> costs = plan.map(p -> AntennaCost.of(p.plan())).orElse(List.of());
        String title =
                plan.map(p -> p.plan().heading().title()).orElse(analysis.file().name());
        BenchView view = new BenchView(
                title,
                analysis,
                curves,
                marks,
                costs,
                "Made by Handreach from " + analysis.file().name() + ".");
        WholeFile.write(
                file,
                HtmlPage.text(BenchReport.page(
                        view, plan.flatMap(p -> p.plan().kit().bench()).map(Kit.Bench::mount))));
    }

    /** Where a channel stands on a sweep. */
    public static ChannelMark mark(Channel channel) {
        return new ChannelMark(channel.name(), channel.frequency().mhz());
    }
}
