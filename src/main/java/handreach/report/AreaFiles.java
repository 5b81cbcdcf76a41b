package handreach.report;

import handreach.cartography.LoadoutMark;
import handreach.reach.CellGrid;
import handreach.reach.LeastLoadout;
import handreach.reach.LossGrid;
import handreach.reach.OddsGrid;
import handreach.report.draw.Picture;
import handreach.report.figure.MapOutline;
import handreach.report.figure.MapPlace;
import handreach.report.file.GeoTiff;
import handreach.report.file.Georaster;
import handreach.report.file.Gpx;
import handreach.report.file.Kml;
import handreach.report.file.WholeFile;
import handreach.report.page.Drawing;
import handreach.study.ReachAnswer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.locationtech.jts.geom.Geometry;

/** What an area answer becomes as files for other tools, by file name. */
final class AreaFiles {
    /** Names of pictures and rasters that a change of loadouts changes. */
    static final Pattern MAPS = Pattern.compile("map-[a-z0-9-]+\\.png");

    static final Pattern RASTERS = Pattern.compile("(loss|(loss|odds|margin)-[a-z0-9-]+)\\.tif");

    private final ReachAnswer answer;
    private final ReachAnswer.AreaAnswer area;
    private final List<String> words;
    private final Map<String, WholeFile.Content> files = new LinkedHashMap<>();

    private AreaFiles(ReachAnswer answer) {
        this.answer = answer;
        this.area = answer.area().orElseThrow();
        this.words =
                fileWords(area.odds().stream().map(odds -> odds.link().name()).toList());
    }

    /** File words of several loadouts; names that would look alike as file names get a number. */
    public static List<String> fileWords(List<String> names) {
        Set<String> words = new LinkedHashSet<>();
        for (String name : names) {
            String word = ReachFiles.fileWord(name);
            String free = word;
            for (int number = 2; !words.add(free); number++) free = word + "-" + number;
        }
        return List.copyOf(words);
    }

    /** Rasters of loss, margin, odds and least loadout, maps as pictures, an overlay for globe viewers, waypoints. */
    static Map<String, WholeFile.Content> of(ReachAnswer answer, Set<ReachPart> parts, Optional<ReachMaps> maps) {
        AreaFiles files = new AreaFiles(answer);
        if (parts.contains(ReachPart.MAPS)) files.pictures(maps.orElseGet(() -> new ReachMaps(answer)));
        if (parts.contains(ReachPart.RASTERS)) files.rasters();
        if (parts.contains(ReachPart.OVERLAY)) files.overlay();
        if (parts.contains(ReachPart.PLACES)) files.places();
        return files.files;
    }

    private void pictures(ReachMaps maps) {
        int best = best();
        png("map-odds-" + words.get(best) + ".png", () -> maps.odds(best));
        png("map-least-loadout.png", maps::least);
    }

    private void png(String name, Supplier<Drawing> drawing) {
        files.put(name, out -> out.write(Picture.of(drawing.get().figure(), 2).png()));
    }

    private int best() {
        int best = 0;
        for (int i = 1; i < answer.loadouts().size(); i++)
            if (answer.share(i).value() > answer.share(best).value()) best = i;
        return best;
    }

    private void rasters() {
        Map<LossGrid, String> losses = new LinkedHashMap<>();
        for (int i = 0; i < area.odds().size(); i++)
            losses.putIfAbsent(area.odds().get(i).losses(), words.get(i));
        losses.forEach((loss, word) -> raster(
                losses.size() == 1 ? "loss.tif" : "loss-" + word + ".tif",
                new Georaster(
                        loss.grid(),
                        "basic transmission loss, dB, antennas "
                                + loss.request().terminals().txHeightM() + " and "
                                + loss.request().terminals().rxHeightM() + " m above ground",
                        cell -> loss.isKnown(cell) ? loss.lossDb(cell) : Double.NaN,
                        Georaster.STEP_DB)));
        for (int i = 0; i < area.odds().size(); i++) {
            Margins margins = new Margins(area.odds().get(i));
            String name = margins.odds.link().name();
            raster(
                    "odds-" + words.get(i) + ".tif",
                    new Georaster(margins.odds.grid(), "odds of copy, " + name, margins::odds, Georaster.STEP_ODDS));
            raster(
                    "margin-" + words.get(i) + ".tif",
                    new Georaster(
                            margins.odds.grid(),
                            "margin of the weaker direction at the median place, dB, " + name,
                            margins::db,
                            Georaster.STEP_DB));
        }
        LeastLoadout least = area.least();
        raster(
                "least-loadout.tif",
                new Georaster(
                        least.grid(),
                        "least loadout, by order of burden from 1; 0 where none reaches",
                        cell -> least.at(cell) == LeastLoadout.UNKNOWN ? Double.NaN : least.at(cell) + 1));
    }

    /** Margins of a link in all cells, NaN where nothing is known; reckoned once for the two rasters made of them. */
    private static final class Margins {
        private final OddsGrid odds;
        private volatile float[] db;

        Margins(OddsGrid odds) {
            this.odds = odds;
        }

        float db(int cell) {
            return (db == null ? all() : db)[cell];
        }

        private synchronized float[] all() {
            if (db == null) db = reckoned(odds);
            return db;
        }

        double odds(int cell) {
            float margin = db(cell);
            return Float.isNaN(margin) ? Double.NaN : odds.link().odds(margin);
        }

        private static float[] reckoned(OddsGrid odds) {
            CellGrid grid = odds.grid();
            float[] db = new float[grid.count()];
            double[] row = new double[grid.columns()];
            for (int first = 0; first < db.length; first += row.length) {
                odds.marginsDb(first, row.length, row);
                narrow(row, db, first);
            }
            return db;
        }

        private static void narrow(double[] row, float[] all, int at) {
            for (int i = 0; i < row.length; i++) all[at + i] = (float) row[i];
        }
    }

    private void raster(String name, Georaster raster) {
        files.put(name, GeoTiff.content(raster));
    }

    private void overlay() {
        double target = answer.scene().plan().channel().wish().odds();
        files.put("reach.kmz", out -> {
            List<MapOutline> outlines = new ArrayList<>();
            for (int i = 0; i < area.odds().size(); i++) {
                OddsGrid odds = area.odds().get(i);
                Geometry outline = odds.contiguousOutline(target)
                        .map(part -> (Geometry) part)
                        .orElse(odds.outline(target));
                if (!outline.isEmpty())
                    outlines.add(new MapOutline(LoadoutMark.of(i), odds.link().name(), outline));
            }
            OddsGrid best = area.odds().get(best());
            CellGrid grid = best.grid();
            Kml.kmz(
                            answer.scene().plan().heading().title(),
                            outlines,
                            ReachMaps.places(answer.scene().plan()),
                            new Kml.Overlay(
                                    "odds of copy, " + best.link().name(),
                                    Picture.oddsOverlay(grid, cell -> best.isKnown(cell) ? best.odds(cell) : -1),
                                    grid.northDeg(),
                                    grid.southDeg(),
                                    grid.westDeg(),
                                    grid.eastDeg()))
                    .writeTo(out);
        });
    }

    private void places() {
        List<MapPlace> places = ReachMaps.places(answer.scene().plan());
        if (places.isEmpty()) return;
        String gpx = Gpx.text(places, answer.scene().plan().heading().title(), List.of());
        files.put("places.gpx", out -> out.write(gpx.getBytes(StandardCharsets.UTF_8)));
    }
}
