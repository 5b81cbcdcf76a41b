package handreach.report;

import handreach.cartography.LoadoutMark;
import handreach.reach.CellGrid;
import handreach.reach.LeastLoadout;
import handreach.reach.LossGrid;
import handreach.reach.OddsGrid;
import handreach.study.ReachAnswer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;

/** What an area answer becomes as files for other tools, by file name. */
final class AreaFiles {
    private final ReachAnswer answer;
    private final ReachAnswer.AreaAnswer area;
    private final Map<String, WholeFile.Content> files = new LinkedHashMap<>();

    private AreaFiles(ReachAnswer answer) {
        this.answer = answer;
        this.area = answer.area().orElseThrow();
    }

    /** Rasters of loss, margin, odds and least loadout, maps as pictures, an overlay for globe viewers, waypoints. */
    static Map<String, WholeFile.Content> of(ReachAnswer answer) {
        AreaFiles files = new AreaFiles(answer);
        files.pictures();
        files.rasters();
        files.exchange();
        return files.files;
    }

    private void pictures() {
        ReachMaps maps = new ReachMaps(answer);
        int best = best();
        String word = ReachFiles.fileWord(area.odds().get(best).link().name());
        png("map-odds-" + word + ".png", maps.odds(best));
        png("map-least-loadout.png", maps.least());
    }

    private void png(String name, Drawing drawing) {
        files.put(name, out -> out.write(Picture.of(drawing.figure(), 2).png()));
    }

    private int best() {
        int best = 0;
        for (int i = 1; i < answer.loadouts().size(); i++)
            if (answer.loadouts().get(i).share().value()
                    > answer.loadouts().get(best).share().value()) best = i;
        return best;
    }

    private void rasters() {
        Map<LossGrid, String> losses = new LinkedHashMap<>();
        for (OddsGrid odds : area.odds()) {
            String name = odds.link().name();
            String word = ReachFiles.fileWord(name);
            raster(
                    "odds-" + word + ".tif",
                    new Georaster(odds.grid(), "odds of copy, " + name, known(odds, odds::odds)));
            raster(
                    "margin-" + word + ".tif",
                    new Georaster(
                            odds.grid(),
                            "margin of the weaker direction at the median place, dB, " + name,
                            known(odds, odds::marginDb)));
            losses.putIfAbsent(odds.losses(), word);
        }
        losses.forEach((loss, word) -> raster(
                losses.size() == 1 ? "loss.tif" : "loss-" + word + ".tif",
                new Georaster(
                        loss.grid(),
                        "basic transmission loss, dB, antennas "
                                + loss.request().terminals().txHeightM() + " and "
                                + loss.request().terminals().rxHeightM() + " m above ground",
                        cell -> loss.isKnown(cell) ? loss.lossDb(cell) : Double.NaN)));
        LeastLoadout least = area.least();
        raster(
                "least-loadout.tif",
                new Georaster(
                        least.grid(),
                        "least loadout, by order of burden from 1; 0 where none reaches",
                        cell -> least.at(cell) == LeastLoadout.UNKNOWN ? Double.NaN : least.at(cell) + 1));
    }

    private static java.util.function.IntToDoubleFunction known(
            OddsGrid odds, java.util.function.IntToDoubleFunction value) {
        return cell -> odds.isKnown(cell) ? value.applyAsDouble(cell) : Double.NaN;
    }

    private void raster(String name, Georaster raster) {
        files.put(name, GeoTiff.content(raster));
    }

    private void exchange() {
        List<MapPlace> places = ReachMaps.places(answer.scene().plan());
        String title = answer.scene().plan().heading().title();
        double target = answer.scene().plan().channel().wish().odds();
        List<MapOutline> outlines = new ArrayList<>();
        for (int i = 0; i < area.odds().size(); i++) {
            OddsGrid odds = area.odds().get(i);
            Geometry outline =
                    odds.contiguousOutline(target).map(part -> (Geometry) part).orElse(odds.outline(target));
            if (!outline.isEmpty())
                outlines.add(new MapOutline(LoadoutMark.of(i), odds.link().name(), outline));
        }
        OddsGrid best = area.odds().get(best());
        CellGrid grid = best.grid();
        Picture overlay = Picture.oddsOverlay(grid, cell -> best.isKnown(cell) ? best.odds(cell) : -1);
        files.put(
                "reach.kmz",
                Kml.kmz(
                        title,
                        outlines,
                        places,
                        new Kml.Overlay(
                                "odds of copy, " + best.link().name(),
                                overlay,
                                grid.northDeg(),
                                grid.southDeg(),
                                grid.westDeg(),
                                grid.eastDeg())));
        if (!places.isEmpty()) {
            String gpx = Gpx.text(places, title, List.of());
            files.put("places.gpx", out -> out.write(gpx.getBytes(java.nio.charset.StandardCharsets.UTF_8)));
        }
    }
}
