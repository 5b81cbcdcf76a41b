package handreach.desktop;

import handreach.geodesy.Compass;
import handreach.report.WalkText;
import handreach.report.figure.Axis;
import handreach.study.WalkAnswer;
import handreach.units.Lengths;
import handreach.units.Shares;
import handreach.walk.Comparison;
import handreach.walk.CopyTable;
import handreach.walk.WalkPair;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.VBox;

/** One comparison of walks as words and figures. */
final class WalkSheet {
    private final Session session;
    private final WalkAnswer answer;
    private final Lengths lengths;

    WalkSheet(Session session, WalkAnswer answer) {
        this.session = session;
        this.answer = answer;
        this.lengths = answer.scene().plan().heading().lengths();
    }

    List<Node> parts(String headline) {
        List<Node> parts = new ArrayList<>();
        parts.add(Words.line(headline, "strong"));
        parts.add(Words.line(
                "A false hope is copy promised and not found; a false fear is copy found and not promised.", "quiet"));
        parts.add(Words.line("By loadout and direction", "panel-head"));
        for (Comparison.Score score : answer.comparison().groups()) parts.add(score(name(score), score));
        if (answer.comparison().groups().size() > 1)
            parts.add(score("all together", answer.comparison().all()));
        parts.add(Words.line("Odds promised, copy found", "panel-head"));
        for (Comparison.Reliability bin : answer.comparison().reliability())
            parts.add(Words.line(
                    String.format(
                            Locale.ROOT,
                            "promised %s on average, found %s in %d reports",
                            Shares.odds(bin.meanOdds()),
                            Shares.share(bin.shareFound()),
                            bin.count()),
                    "plain"));
        if (!answer.worst().isEmpty()) parts.add(Words.line("Farthest from the prediction", "panel-head"));
        int number = 0;
        for (WalkAnswer.Seen seen : answer.worst()) parts.add(worst(seen, ++number));
        parts.add(Words.line("What the walks teach", "panel-head"));
        parts.add(Words.line(WalkText.learned(answer), "plain"));
        if (!answer.warnings().isEmpty()) {
            VBox doubts = new VBox(4);
            for (String warning : answer.warnings()) doubts.getChildren().add(Words.line(warning, "quiet"));
            TitledPane pane = new TitledPane("Doubtful (" + answer.warnings().size() + ")", doubts);
            pane.setExpanded(false);
            pane.setAnimated(false);
            parts.add(pane);
        }
        return parts;
    }

    private static String name(Comparison.Score score) {
        return score.loadout()
                + score.way().map(way -> ", " + way.word().replace('-', ' ')).orElse("");
    }

    private static Node score(String name, Comparison.Score score) {
        CopyTable copies = score.copies();
        String words = String.format(
                Locale.ROOT,
                "%d reports, %s right; %d false hopes, %d false fears; Brier %.3f",
                copies.count(),
                Shares.share(copies.shareRight().orElse(0)),
                copies.falseHopes(),
                copies.falseFears(),
                score.brier());
        String levels = score.levels()
                .map(level -> String.format(
                        Locale.ROOT,
                        "; %d levels, predicted minus walked %s dB on average, sd %.1f dB",
                        level.count(),
                        Axis.signed(level.meanDb(), 1),
                        level.standardDeviationDb()))
                .orElse("");
        return new VBox(1, Words.line(name, "plain"), Words.line(words + levels, "quiet"));
    }

    private Node worst(WalkAnswer.Seen seen, int number) {
        WalkPair pair = seen.pair();
        String where =
                answer.scene().plan().heading().placeForm().format(pair.spot().at());
        Button link = Words.link(where, () -> pull(seen));
        link.setId("walk-worst-" + number);
        link.setAccessibleText("Show the path to " + where);
        String found = pair.isLevel()
                ? String.format(
                        Locale.ROOT,
                        "predicted %.0f dBm, walked %.0f dBm",
                        pair.predictedDbm(),
                        pair.heard().value())
                : "odds " + Shares.odds(pair.odds()) + ", " + (pair.copied() ? "copy" : "no copy");
        String words = lengths.text(pair.spot().distanceM()) + " "
                + Compass.word(pair.spot().bearingDeg()) + " of the base, "
                + pair.link().loadout() + ": " + found + " (line " + pair.spot().line() + " of the log)";
        VBox row = new VBox(1, link, Words.line(words, "quiet"));
        row.getStyleClass().add("relay-site");
        return row;
    }

    private void pull(WalkAnswer.Seen seen) {
        session.pulled()
                .set(Optional.of(new PulledPath(
                        new PulledPath.End(
                                seen.base().at(),
                                seen.base().name(),
                                Optional.of(seen.base().loadout().name())),
                        new PulledPath.End(
                                seen.pair().spot().at(),
                                Optional.empty(),
                                Optional.of(seen.pair().link().loadout())),
                        true)));
    }
}
