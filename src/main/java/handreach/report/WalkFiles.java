package handreach.report;

import handreach.input.InputFault;
import handreach.input.Sources;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.report.figure.MapPlace;
import handreach.report.file.Csv;
import handreach.report.file.FileBatch;
import handreach.report.file.FolderResult;
import handreach.report.file.Gpx;
import handreach.report.file.Json;
import handreach.report.page.Column;
import handreach.report.page.HtmlPage;
import handreach.report.page.Page;
import handreach.report.page.PlainText;
import handreach.report.page.Table;
import handreach.study.WalkAnswer;
import handreach.units.Decibels;
import handreach.units.Shares;
import handreach.walk.WalkPair;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Everything that {@code walk} writes into a folder. */
public final class WalkFiles {
    private static final String CALIBRATION = "calibration.toml";

    private WalkFiles() {}

    /**
     * Writes the files, each whole or not at all.
     *
     * @param sources what must not be written over, from {@link #sources}
     */
    public static FolderResult write(WalkAnswer answer, Instant made, Path folder, Sources sources) {
        FileBatch files = new FileBatch(folder, "walk", sources);
        Page page = WalkComposer.page(answer, made);
        files.add("walk.html", () -> HtmlPage.text(page));
        files.add("walk.txt", () -> PlainText.of(page, PlainText.USUAL_WIDTH));
        files.add("walk.json", () -> Json.text(WalkJson.of(answer)));
        files.add("walk-residuals.csv", () -> Csv.text(reports(answer)));
        files.add("walk-odds.gpx", () -> gpx(answer));
        if (answer.learned().refusal().isEmpty())
            files.add(CALIBRATION, () -> answer.learned().file().text());
        return files.write(Progress.SILENT);
    }

    /**
     * What must not be written over in this folder. A calibration that the plan names changes its answers, so it is among them unless it
     * is to be replaced; a fault where it stands in the way.
     */
    public static Sources sources(PlanFile plan, Path folder, boolean replaces) {
        Sources all = plan.sources();
        Path target = folder.resolve(CALIBRATION);
        Optional<Path> accepted = plan.plan()
                .questions()
                .calibration()
                .filter(file -> Sources.NONE.and(List.of(file)).has(target));
        if (accepted.isEmpty()) return all;
        if (!replaces)
            throw new InputFault(
                    target.toString(),
                    0,
                    "is the calibration that the plan names, and its answers would change with it. Name another folder,"
                            + " or add --replace. What is there is unchanged.");
        return all.without(target);
    }

    /** Every report with its prediction, for a spreadsheet. */
    private static Table<WalkPair> reports(WalkAnswer answer) {
        return Table.of(
                "",
                answer.pairs(),
                List.of(
                        Column.number("line", pair -> String.valueOf(pair.spot().line())),
                        Column.number(
                                "latitude",
                                pair -> Decibels.plain(pair.spot().at().latitudeDeg(), 6)),
                        Column.number(
                                "longitude",
                                pair -> Decibels.plain(pair.spot().at().longitudeDeg(), 6)),
                        Column.number(
                                "distance_m", pair -> Decibels.plain(pair.spot().distanceM(), 0)),
                        Column.number(
                                "bearing_deg",
                                pair -> Decibels.plain(pair.spot().bearingDeg(), 1)),
                        Column.words("cover", pair -> pair.spot().cover().word()),
                        Column.words("loadout", pair -> pair.link().loadout()),
                        Column.words("direction", pair -> pair.link().way().word()),
                        Column.words(
                                "heard", pair -> Json.tree(pair.heard().kind()).asText()),
                        Column.number(
                                "value", pair -> Decibels.plain(pair.heard().value(), 1)),
                        Column.words("copy", pair -> pair.copied() ? "yes" : "no"),
                        Column.number("predicted_dbm", pair -> Decibels.plain(pair.predictedDbm(), 1)),
                        Column.number("margin_db", pair -> Decibels.plain(pair.marginDb(), 1)),
                        Column.number("odds", pair -> Decibels.plain(pair.odds(), 3)),
                        Column.number("error_db", pair -> pair.isLevel() ? Decibels.plain(pair.errorDb(), 1) : "")));
    }

    /** Waypoints with the odds as the calibration leaves them, or as predicted where none is had, to be carried on the next walk. */
    private static String gpx(WalkAnswer answer) {
        List<MapPlace> places = new ArrayList<>();
        for (WalkPair pair : answer.pairs()) {
            boolean isTaught = answer.learned().refusal().isEmpty();
            double odds = (isTaught ? answer.learned().calibration().corrected(pair) : pair).odds();
            String label = Shares.odds(odds) + " " + pair.link().loadout();
            places.add(new MapPlace(pair.spot().at(), MapPlace.Kind.POINT, label));
        }
        return Gpx.text(places, "", List.of());
    }
}
