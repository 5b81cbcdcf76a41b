package handreach.report;

import handreach.bench.BenchAnalysis;
import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.Touchstone;
import handreach.input.Sources;
import handreach.plan.Channel;
import handreach.plan.Kit;
import handreach.plan.Plan;
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

    /** The answer of a session; channel, burden and mounting of use come from the plan where there is one. */
    public static BenchComposer composer(
            BenchAnalysis analysis, double settleDb, List<Path> sweeps, Optional<PlanFile> file) {
        Optional<Plan> plan = file.map(PlanFile::plan);
        List<Double> channelsMhz =
                plan.map(p -> List.of(p.channel().frequency().mhz())).orElse(List.of());
        return BenchComposer.of(new BenchView(
                plan.map(p -> p.heading().title()).orElse(analysis.file().name()),
                BenchView.Question.of(plan.flatMap(p -> p.kit().bench()).map(Kit.Bench::mount))
                        .settling(settleDb),
                analysis,
                sweeps.stream()
                        .map(sweep -> MatchAnalysis.of(Touchstone.read(sweep), channelsMhz, 50))
                        .toList(),
                plan.map(p -> List.of(mark(p.channel()))).orElse(List.of()),
                plan.map(AntennaCost::of).orElse(List.of()),
                "Made by Handreach from " + analysis.file().name() + "."));
    }

    /** Writes the report, over none of the files that it was made from. */
    public static void write(BenchComposer composer, Path file, Sources sources) {
        WholeFile.write(file, HtmlPage.text(composer.page()), sources);
    }

    /** Where a channel stands on a sweep. */
    public static ChannelMark mark(Channel channel) {
        return new ChannelMark(channel.name(), channel.frequency().mhz());
    }
}
