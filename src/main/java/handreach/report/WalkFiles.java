package handreach.report;

import handreach.report.figure.MapPlace;
import handreach.report.file.Gpx;
import handreach.report.file.Json;
import handreach.report.file.WholeFile;
import handreach.report.page.HtmlPage;
import handreach.study.WalkAnswer;
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
        put(written, folder.resolve("walk.html"), HtmlPage.text(WalkPages.page(answer)));
        put(written, folder.resolve("walk.txt"), WalkText.text(answer));
        put(written, folder.resolve("walk.json"), Json.text(WalkText.json(answer)));
        put(written, folder.resolve("walk-residuals.csv"), WalkText.csv(answer));
        put(written, folder.resolve("walk-odds.gpx"), gpx(answer));
        put(written, folder.resolve("calibration.toml"), answer.learned().file().text());
        return written;
    }

    private static void put(List<Path> written, Path file, String text) {
        WholeFile.write(file, text);
        written.add(file);
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
