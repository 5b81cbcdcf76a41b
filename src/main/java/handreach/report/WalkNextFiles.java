package handreach.report;

import handreach.input.Sources;
import handreach.reach.Progress;
import handreach.report.figure.MapPlace;
import handreach.report.file.Csv;
import handreach.report.file.FileBatch;
import handreach.report.file.FolderResult;
import handreach.report.file.Gpx;
import handreach.report.file.Json;
import handreach.report.page.PlainText;
import handreach.study.WalkNextAnswer;
import handreach.units.Shares;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Everything that the proposal of a next walk writes into a folder. */
public final class WalkNextFiles {
    private WalkNextFiles() {}

    /**
     * Writes the files, each whole or not at all.
     *
     * @param sources the files that the answer was made from
     */
    public static FolderResult write(WalkNextAnswer answer, Path folder, Sources sources) {
        FileBatch files = new FileBatch(folder, "walk-next", sources);
        files.add("walk-next.txt", () -> PlainText.of(WalkNextComposer.page(answer), PlainText.USUAL_WIDTH));
        files.add("walk-next.json", () -> Json.text(WalkNextJson.of(answer)));
        List<MapPlace> stops = WalkNextComposer.waypoints(answer);
        files.add("walk-next.gpx", () -> Gpx.text(stops, "next walk", stops));
        files.add("walk-next-odds.csv", () -> Csv.text(WalkNextComposer.odds(answer)));
        files.add("walk-next-odds.gpx", () -> Gpx.text(odds(answer), "", List.of()));
        return files.write(Progress.SILENT);
    }

    /** Every place with the odds of the control and of the best loadout there. */
    private static List<MapPlace> odds(WalkNextAnswer answer) {
        String control = answer.scene().controlLoadout().name();
        List<MapPlace> places = new ArrayList<>();
        for (int s = 0; s < answer.route().spots().size(); s++) {
            int spot = s;
            List<WalkNextAnswer.Report> here = answer.route().reports().stream()
                    .filter(report -> report.spot() == spot)
                    .toList();
            WalkNextAnswer.Report best = here.get(0);
            for (WalkNextAnswer.Report report : here) if (report.odds() > best.odds()) best = report;
            String label = Shares.odds(best.odds()) + " " + best.loadout();
            for (WalkNextAnswer.Report report : here)
                if (report.loadout().equals(control) && !best.loadout().equals(control))
                    label = Shares.odds(report.odds()) + " " + control + ", " + label;
            places.add(new MapPlace(answer.route().spots().get(s).at(), MapPlace.Kind.POINT, label));
        }
        return places;
    }
}
