package handreach.cli;

import handreach.input.InputFault;
import handreach.input.NearestWord;
import handreach.input.Target;
import handreach.plan.PlanFile;
import handreach.report.CardFiles;
import handreach.report.card.CardSize;
import handreach.study.ReachAnswer;
import handreach.study.ReachStudy;
import handreach.study.RelayAnswer;
import handreach.study.RelayStudy;
import handreach.study.Scene;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The printed field card. */
@Command(
        name = "card",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "The field card: one printable page (PDF) with loadouts, reach rose, dead ground, fallback and cautions.",
        footer = {
            "",
            "Worked example:",
            "  handreach card elevation-samples/forest-hills --out field-card.pdf",
            "",
            "The card shows odds, not promises: carry a second means of calling for help."
        })
final class CardCommand implements Callable<Integer> {
    private static final Map<String, CardSize> PAPERS = Map.of("a4", CardSize.A4, "letter", CardSize.LETTER);

    @Parameters(index = "0", paramLabel = "PLAN", description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    @Option(names = "--out", paramLabel = "FILE.pdf", description = "Where to write it. Default: field-card.pdf.")
    private Path out = Path.of("field-card.pdf");

    @Option(names = "--paper", paramLabel = "WORD", description = "a4 (default) or letter.")
    private String paper = "a4";

    @Option(names = "--fold", description = "Four small pages on one sheet, to be folded to pocket size.")
    private boolean fold;

    @Option(names = "--relay", description = "Also put on it whether a relay is needed, and where.")
    private boolean relay;

    @Mixin
    private JsonOption json;

    private record Answer(String file, String paper, boolean fold, List<String> warnings) {}

    @Override
    public Integer call() {
        CardSize size = PAPERS.get(paper.toLowerCase(Locale.ROOT));
        if (size == null)
            throw new InputFault(
                    "--paper",
                    0,
                    "is " + paper + ", allowed is a4 or letter." + NearestWord.hint(paper, PAPERS.keySet()));
        PlanFile file = PlanFile.open(plan);
        Target.look(out, ".pdf", file.sources());
        Scene scene = Scene.open(file);
        ReachAnswer answer;
        Optional<RelayAnswer> sites = Optional.empty();
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            answer = ReachStudy.run(scene, false, progress);
            if (relay) sites = Optional.of(RelayStudy.run(scene, progress));
        }
        json.warn(answer.warnings());
        CardFiles.write(answer, sites, Instant.now(), size, fold, out);
        if (json.isWanted()) json.print(new Answer(out.toString(), paper, fold, answer.warnings()));
        else json.written(out);
        return 0;
    }
}
