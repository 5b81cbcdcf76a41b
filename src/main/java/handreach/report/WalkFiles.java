package handreach.report;

import handreach.report.figure.MapPlace;
import handreach.report.file.Csv;
import handreach.report.file.Gpx;
import handreach.report.file.Json;
import handreach.report.file.WholeFile;
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
import java.util.ArrayList;
import java.util.List;

/** Everything that {@code walk} writes into a folder. */
public final class WalkFiles {
    private WalkFiles() {}

    /** Writes the files, each whole or not at all; returns them in the order a reader would open them. */
    public static List<Path> write(WalkAnswer answer, Path folder) {
        List<Path> written = new ArrayList<>();
        Page page = WalkComposer.page(answer);
        put(written, folder.resolve("walk.html"), HtmlPage.text(page));
        put(written, folder.resolve("walk.txt"), PlainText.of(page, PlainText.USUAL_WIDTH));
        put(written, folder.resolve("walk.json"), Json.text(WalkJson.of(answer)));
        put(written, folder.resolve("walk-residuals.csv"), Csv.text(reports(answer)));
        put(written, folder.resolve("walk-odds.gpx"), gpx(answer));
        put(written, folder.resolve("calibration.toml"), answer.learned().file().text());
        return written;
    }

    private static void put(List<Path> written, Path file, String text) {
        WholeFile.write(file, text);
        written.add(file);
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
                                pair -> Decibels.number(pair.spot().at().latitudeDeg(), 6)),
                        Column.number(
                                "longitude",
                                pair -> Decibels.number(pair.spot().at().longitudeDeg(), 6)),
                        Column.number(
                                "distance_m",
                                pair -> Decibels.number(pair.spot().distanceM(), 0)),
                        Column.number(
                                "bearing_deg",
                                pair -> Decibels.number(pair.spot().bearingDeg(), 1)),
                        Column.words("cover", pair -> pair.spot().cover().word()),
                        Column.words("loadout", pair -> pair.link().loadout()),
                        Column.words("direction", pair -> pair.link().way().word()),
                        Column.words(
                                "heard", pair -> Json.tree(pair.heard().kind()).asText()),
                        Column.number(
                                "value", pair -> Decibels.number(pair.heard().value(), 1)),
                        Column.words("copy", pair -> pair.copied() ? "yes" : "no"),
                        Column.number("predicted_dbm", pair -> Decibels.number(pair.predictedDbm(), 1)),
                        Column.number("margin_db", pair -> Decibels.number(pair.marginDb(), 1)),
                        Column.number("odds", pair -> Decibels.number(pair.odds(), 3)),
                        Column.number("error_db", pair -> pair.isLevel() ? Decibels.number(pair.errorDb(), 1) : "")));
    }

    /** Waypoints with the odds as the calibration leaves them, to be carried on the next walk. */
    private static String gpx(WalkAnswer answer) {
        List<MapPlace> places = new ArrayList<>();
        for (WalkPair pair : answer.pairs()) {
            double odds = answer.learned().calibration().corrected(pair).odds();
            String label = Shares.odds(odds) + " " + pair.link().loadout();
            places.add(new MapPlace(pair.spot().at(), MapPlace.Kind.POINT, label));
        }
        return Gpx.text(places, "", List.of());
    }
}
