package handreach.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.geodesy.Compass;
import handreach.reach.SiteCalibration;
import handreach.report.file.Csv;
import handreach.report.file.Json;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.report.page.TextTable;
import handreach.study.WalkAnswer;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import handreach.walk.BlockedCheck;
import handreach.walk.Comparison;
import handreach.walk.CopyTable;
import handreach.walk.WalkPair;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** A walk beside its prediction, as text and as JSON. */
public final class WalkText {
    private WalkText() {}

    /** The answer for people: false hopes first. */
    public static String text(WalkAnswer answer) {
        Lengths lengths = answer.scene().plan().heading().lengths();
        Comparison comparison = answer.comparison();
        CopyTable all = comparison.all().copies();
        StringBuilder out = new StringBuilder();
        out.append(answer.scene().plan().heading().title()).append('\n');
        say(
                out,
                "%d reports beside the prediction: %d false hopes (copy promised, not found), %d false fears (copy found, not"
                        + " promised), %d right.%n%n",
                all.count(),
                all.falseHopes(),
                all.falseFears(),
                all.kept() + all.rightlyDoubted());
        out.append(groups(comparison)).append('\n');
        out.append("Odds promised and copy found:\n")
                .append(reliability(comparison))
                .append('\n');
        out.append("Range by bearing from the base:\n")
                .append(sectors(comparison, lengths))
                .append('\n');
        if (!comparison.worst().isEmpty())
            out.append("Farthest from their prediction, to be looked at with handreach path:\n")
                    .append(worst(answer, lengths))
                    .append('\n');
        out.append(learned(answer)).append('\n');
        out.append(
                        "Error is predicted minus walked: positive where the prediction was too hopeful. Promised counts from odds of one half.\n")
                .append(Cautions.brief(Caution.RELIANCE))
                .append('\n');
        return out.toString();
    }

    private static void say(StringBuilder out, String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values));
    }

    private static String groups(Comparison comparison) {
        TextTable table = TextTable.of(
                "loadout",
                "direction",
                "reports",
                "false hopes",
                "false fears",
                "right",
                "Brier",
                "levels",
                "mean error dB",
                "sd dB",
                "RMSE dB");
        for (Comparison.Score score : comparison.groups()) row(table, score);
        if (comparison.groups().size() > 1) row(table, comparison.all());
        return table.text();
    }

    private static void row(TextTable table, Comparison.Score score) {
        CopyTable copies = score.copies();
        table.row(
                score.loadout().isEmpty() ? "all" : score.loadout(),
                score.way().map(way -> way.word()).orElse(""),
                String.valueOf(copies.count()),
                String.valueOf(copies.falseHopes()),
                String.valueOf(copies.falseFears()),
                Shares.share(copies.shareRight().orElse(0)),
                Decibels.number(score.brier(), 3),
                score.levels().map(l -> String.valueOf(l.count())).orElse(""),
                score.levels().map(l -> Decibels.signed(l.meanDb(), 1)).orElse(""),
                score.levels()
                        .map(l -> Decibels.number(l.standardDeviationDb(), 1))
                        .orElse(""),
                score.levels().map(l -> Decibels.number(l.rmseDb(), 1)).orElse(""));
    }

    private static String reliability(Comparison comparison) {
        TextTable table = TextTable.of("odds", "reports", "promised", "found");
        for (Comparison.Reliability bin : comparison.reliability())
            table.row(
                    Decibels.number(100 * bin.low(), 0) + " to " + Decibels.number(100 * bin.high(), 0) + " %",
                    String.valueOf(bin.count()),
                    Shares.odds(bin.meanOdds()),
                    Shares.share(bin.shareFound()));
        return table.text();
    }

    private static String sectors(Comparison comparison, Lengths lengths) {
        TextTable table = TextTable.of("towards", "reports", "farthest copy", "nearest failure", "farthest promise");
        for (Comparison.Sector sector : comparison.sectors())
            table.row(
                    Compass.word(sector.bearingDeg()),
                    String.valueOf(sector.reports()),
                    length(sector.farthestCopyM(), lengths),
                    length(sector.nearestFailureM(), lengths),
                    length(sector.farthestPromiseM(), lengths));
        return table.text();
    }

    public static String length(OptionalDouble metres, Lengths lengths) {
        return metres.isPresent() ? lengths.text(metres.getAsDouble()) : "none";
    }

    private static String worst(WalkAnswer answer, Lengths lengths) {
        TextTable table = TextTable.of("line", "place", "from base", "loadout", "odds", "found", "error dB");
        for (WalkPair pair : answer.comparison().worst())
            table.row(
                    String.valueOf(pair.spot().line()),
                    answer.scene()
                            .plan()
                            .heading()
                            .placeForm()
                            .format(pair.spot().at()),
                    lengths.text(pair.spot().distanceM()) + " "
                            + Compass.word(pair.spot().bearingDeg()),
                    pair.link().loadout(),
                    Shares.odds(pair.odds()),
                    pair.copied() ? "copy" : "no copy",
                    pair.isLevel() ? Decibels.signed(pair.errorDb(), 1) : "");
        return table.text();
    }

    /** What was learned and whether it helps, in two sentences. */
    public static String learned(WalkAnswer answer) {
        StringBuilder out = new StringBuilder();
        WalkAnswer.Learned learned = answer.learned();
        SiteCalibration.Shift bias = learned.file().site().bias();
        say(
                out,
                "Learned from %.0f independent reports (decorrelation distance %.0f m, %s): the site is %.1f dB %s than predicted,"
                        + " ± %.1f dB; spread between places %.1f dB (95 %%: %.1f to %.1f). ",
                learned.calibration().effectiveCount(),
                learned.decorrelationM(),
                learned.estimated() ? "estimated" : "usual value",
                Math.abs(bias.lossDb()),
                bias.lossDb() >= 0 ? "worse" : "better",
                bias.standardUncertaintyDb(),
                learned.calibration().spreadDb(),
                learned.calibration().spread95Db().low(),
                learned.calibration().spread95Db().high());
        if (answer.check().isEmpty()) {
            out.append(
                    "The walk is too short to hold stretches back: nothing can be said of whether this helps elsewhere.");
            return out.toString();
        }
        BlockedCheck check = answer.check().get();
        say(
                out,
                "On held-back stretches (%d of them, %d reports) the Brier score goes from %.3f to %.3f",
                check.stretches(),
                check.reports(),
                check.brierBefore(),
                check.brierAfter());
        if (check.rmseBeforeDb().isPresent() && check.rmseAfterDb().isPresent())
            say(
                    out,
                    ", the RMSE of the levels from %.1f to %.1f dB",
                    check.rmseBeforeDb().getAsDouble(),
                    check.rmseAfterDb().getAsDouble());
        out.append(helps(check));
        return out.toString();
    }

    /** Help is claimed only where nothing that was measured became worse. */
    static String helps(BlockedCheck check) {
        boolean oddsBetter = check.brierAfter() < check.brierBefore();
        if (check.rmseBeforeDb().isEmpty() || check.rmseAfterDb().isEmpty())
            return oddsBetter ? ": it helps there." : ": it does not help there.";
        boolean levelsBetter =
                check.rmseAfterDb().getAsDouble() < check.rmseBeforeDb().getAsDouble();
        if (oddsBetter && levelsBetter) return ": it helps there.";
        if (!oddsBetter && !levelsBetter) return ": it does not help there.";
        return oddsBetter
                ? ": it helps the odds there, and makes the levels worse."
                : ": it helps the levels there, and makes the odds worse.";
    }

    /** The answer with every report. */
    public static ObjectNode json(WalkAnswer answer) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("title", answer.scene().plan().heading().title());
        node.put("model", answer.scene().plan().questions().reach().model().name());
        Comparison comparison = answer.comparison();
        node.set("all", Json.tree(comparison.all()));
        node.set("groups", Json.tree(comparison.groups()));
        node.set("reliability", Json.tree(comparison.reliability()));
        node.set("sectors", Json.tree(comparison.sectors()));
        ArrayNode worst = node.putArray("worst_lines");
        comparison.worst().forEach(pair -> worst.add(pair.spot().line()));
        ObjectNode learned = node.putObject("learned");
        SiteCalibration site = answer.learned().file().site();
        learned.set("bias", Json.tree(site.bias()));
        learned.put("spread_db", site.spreadDb());
        learned.set(
                "spread_interval_95_db",
                Json.tree(answer.learned().calibration().spread95Db()));
        learned.put("independent_reports", answer.learned().calibration().effectiveCount());
        learned.put("decorrelation_m", answer.learned().decorrelationM());
        learned.put("decorrelation_estimated", answer.learned().estimated());
        if (answer.check().isPresent())
            node.set("held_back", Json.tree(answer.check().get()));
        else node.putNull("held_back");
        ArrayNode reports = node.putArray("reports");
        for (WalkPair pair : answer.pairs()) reports.add(report(pair));
        node.set("warnings", Json.tree(answer.warnings()));
        return node;
    }

    private static ObjectNode report(WalkPair pair) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("line", pair.spot().line());
        node.put("latitude", pair.spot().at().latitudeDeg());
        node.put("longitude", pair.spot().at().longitudeDeg());
        node.put("bearing_deg", pair.spot().bearingDeg());
        node.put("distance_m", pair.spot().distanceM());
        node.put("cover", pair.spot().cover().word());
        node.put("loadout", pair.link().loadout());
        node.put("direction", pair.link().way().word());
        node.put("margin_db", pair.marginDb());
        node.put("predicted_dbm", pair.predictedDbm());
        node.put("odds", pair.odds());
        node.put("heard", pair.heard().kind().name().toLowerCase(Locale.ROOT));
        node.put("value", pair.heard().value());
        node.put("copy", pair.copied());
        if (pair.isLevel()) node.put("error_db", pair.errorDb());
        else node.putNull("error_db");
        return node;
    }

    /** Every report with its prediction, for a spreadsheet. */
    static String csv(WalkAnswer answer) {
        List<String> head = List.of(
                "line",
                "latitude",
                "longitude",
                "distance_m",
                "bearing_deg",
                "cover",
                "loadout",
                "direction",
                "heard",
                "value",
                "copy",
                "predicted_dbm",
                "margin_db",
                "odds",
                "error_db");
        List<List<String>> rows = answer.pairs().stream()
                .map(pair -> List.of(
                        String.valueOf(pair.spot().line()),
                        Decibels.number(pair.spot().at().latitudeDeg(), 6),
                        Decibels.number(pair.spot().at().longitudeDeg(), 6),
                        Decibels.number(pair.spot().distanceM(), 0),
                        Decibels.number(pair.spot().bearingDeg(), 1),
                        pair.spot().cover().word(),
                        pair.link().loadout(),
                        pair.link().way().word(),
                        pair.heard().kind().name().toLowerCase(Locale.ROOT),
                        Decibels.number(pair.heard().value(), 1),
                        pair.copied() ? "yes" : "no",
                        Decibels.number(pair.predictedDbm(), 1),
                        Decibels.number(pair.marginDb(), 1),
                        Decibels.number(pair.odds(), 3),
                        pair.isLevel() ? Decibels.number(pair.errorDb(), 1) : ""))
                .toList();
        return Csv.text(head, rows);
    }
}
