package handreach.report;

import handreach.atlas.LoadoutFigures;
import handreach.atlas.RelayCover;
import handreach.cartography.LoadoutMark;
import handreach.geodesy.Position;
import handreach.input.Sources;
import handreach.loadout.Loadout;
import handreach.reach.CellGrid;
import handreach.reach.Progress;
import handreach.report.figure.MapPlace;
import handreach.report.file.FileBatch;
import handreach.report.file.FolderResult;
import handreach.report.file.GeoJson;
import handreach.report.file.GeoTiff;
import handreach.report.file.Georaster;
import handreach.report.file.Gpx;
import handreach.report.file.Json;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.report.page.HtmlPage;
import handreach.report.page.Page;
import handreach.report.page.PlainText;
import handreach.study.AtlasAnswer;
import handreach.study.AtlasLayer;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import java.util.function.IntUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** What follows from the blocks of an atlas, as files: page, summary, rasters, relays. */
final class AtlasFiles {
    /** Which question the folder answers, and what came out. */
    static final String SUMMARY = "atlas.json";

    private static final Pattern LAYERS = Pattern.compile(
            "(reach|targets|heard-by|talk)-[a-z0-9-]+\\.tif|(least-loadout|shadow)\\.tif(\\.aux\\.xml)?|relays\\.(geojson|gpx)");

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final AtlasAnswer answer;
    private final AtlasJson summary;
    private final List<String> names;
    private final List<String> words;
    private final Map<String, String> tags = new LinkedHashMap<>();

    AtlasFiles(AtlasAnswer answer, AtlasJson summary, Instant made) {
        this.answer = answer;
        this.summary = summary;
        this.names =
                answer.study().scene().loadouts().stream().map(Loadout::name).toList();
        this.words = AreaFiles.fileWords(names);
        tags.put("PLAN", summary.title());
        tags.put("MODEL", summary.model());
        tags.put("QUESTION", summary.question());
        tags.put("MADE_ON", DateTimeFormatter.ISO_LOCAL_DATE.format(made.atOffset(ZoneOffset.UTC)));
        tags.put("PROGRAM", Program.name());
        tags.put("CAUTION", Cautions.brief(Caution.RELIANCE));
    }

    FolderResult write(Path folder, Sources sources, Progress progress) {
        FileBatch batch = new FileBatch(folder, "atlas", sources);
        batch.replacesAll(LAYERS);
        Page page = new AtlasComposer(answer).page();
        batch.add("atlas.html", () -> HtmlPage.text(page));
        batch.add("atlas.txt", () -> PlainText.of(page, PlainText.USUAL_WIDTH));
        batch.add(SUMMARY, () -> Json.text(summary));
        if (answer.has(AtlasLayer.REACH)) reach(batch);
        if (answer.has(AtlasLayer.SHADOW)) shadow(batch);
        if (answer.has(AtlasLayer.TALK)) talk(batch);
        if (answer.study().wish().relays() > 0) {
            batch.add("relays.geojson", () -> GeoJson.text(relays()));
            batch.add("relays.gpx", () -> Gpx.text(relayPlaces(), "relays", List.of()));
        }
        return batch.write(progress);
    }

    private void reach(FileBatch batch) {
        CellGrid cells = answer.study().positions().cells();
        for (int i = 0; i < names.size(); i++) {
            String with = ", " + names.get(i);
            raster(
                    batch,
                    "reach-" + words.get(i) + "-median.tif",
                    cells,
                    "median reach" + with,
                    "m",
                    figure(i, one -> one.medianM().value()));
            raster(
                    batch,
                    "reach-" + words.get(i) + "-worst.tif",
                    cells,
                    "worst reach" + with,
                    "m",
                    figure(i, one -> one.worst().reachM().value()));
            raster(
                    batch,
                    "reach-" + words.get(i) + "-share.tif",
                    cells,
                    "share of the known ground within the radius that is reached" + with,
                    "1",
                    figure(i, one -> one.share().value()));
            raster(
                    batch,
                    "targets-" + words.get(i) + ".tif",
                    cells,
                    "targets reached" + with,
                    "1",
                    figure(i, one -> one.heard().count()));
        }
        classes(
                batch,
                "least-loadout.tif",
                cells,
                "least loadout that serves, by order of burden from 1; 0 where none does",
                "none serves",
                answer::leastServing);
    }

    private IntToDoubleFunction figure(int loadout, ToDoubleFunction<LoadoutFigures> figure) {
        return cell -> answer.at(cell, loadout).map(figure::applyAsDouble).orElse(Double.NaN);
    }

    private void shadow(FileBatch batch) {
        CellGrid cells = answer.study().targets().cells();
        for (int i = 0; i < names.size(); i++) {
            int loadout = i;
            raster(
                    batch,
                    "heard-by-" + words.get(i) + ".tif",
                    cells,
                    "number of positions that reach the place, " + names.get(i),
                    "1",
                    target -> answer.leastHeard(target) == AtlasAnswer.UNKNOWN
                            ? Double.NaN
                            : answer.heardBy(target, loadout));
        }
        classes(
                batch,
                "shadow.tif",
                cells,
                "least loadout with which anybody hears the place, by order of burden from 1; 0 where nobody does",
                "nobody hears",
                answer::leastHeard);
    }

    private void talk(FileBatch batch) {
        for (int i = 0; i < names.size(); i++) {
            int loadout = i;
            raster(
                    batch,
                    "talk-" + words.get(i) + ".tif",
                    answer.study().positions().cells(),
                    "part of the region within which all can talk over others, from 1, the largest first, "
                            + names.get(i),
                    "1",
                    cell -> answer.talk(loadout).partOf(cell) < 0
                            ? Double.NaN
                            : answer.talk(loadout).partOf(cell) + 1);
        }
    }

    private void raster(
            FileBatch batch, String file, CellGrid cells, String what, String unit, IntToDoubleFunction values) {
        batch.add(file, GeoTiff.cloud(new Georaster(cells, Georaster.Layer.of(what, unit, tags), values)));
    }

    /** A raster of loadouts by their order of burden, with names and colours beside it. */
    private void classes(
            FileBatch batch, String file, CellGrid cells, String what, String none, IntUnaryOperator loadoutAt) {
        List<Integer> byBurden = answer.study().byBurden();
        List<Georaster.Layer.Kind> kinds = new ArrayList<>();
        kinds.add(new Georaster.Layer.Kind(none, 0xFFFFFF));
        for (int loadout : byBurden)
            kinds.add(new Georaster.Layer.Kind(
                    names.get(loadout), LoadoutMark.of(loadout).rgb()));
        Georaster raster = new Georaster(cells, new Georaster.Layer(what, "", kinds, tags), cell -> {
            int loadout = loadoutAt.applyAsInt(cell);
            if (loadout == AtlasAnswer.UNKNOWN) return Double.NaN;
            return loadout == AtlasAnswer.NOBODY ? 0 : byBurden.indexOf(loadout) + 1;
        });
        batch.add(file, GeoTiff.cloud(raster));
        batch.add(file + ".aux.xml", GeoTiff.classes(raster));
    }

    private List<GeoJson.Feature> relays() {
        List<GeoJson.Feature> features = new ArrayList<>();
        double all = answer.study().targets().count();
        for (int loadout : answer.study().byBurden()) {
            int number = 1;
            for (RelayCover.Pick pick : answer.cover(loadout).picks()) {
                Position at = answer.positions().get(pick.position()).at();
                Map<String, Object> properties = new LinkedHashMap<>();
                properties.put("kind", "relay");
                properties.put("loadout", names.get(loadout));
                properties.put("number", number++);
                properties.put("share_gained", pick.gained() / all);
                properties.put("share_together", pick.covered() / all);
                features.add(new GeoJson.Feature(
                        GEOMETRY.createPoint(new Coordinate(at.longitudeDeg(), at.latitudeDeg())), properties));
            }
        }
        return features;
    }

    private List<MapPlace> relayPlaces() {
        List<MapPlace> places = new ArrayList<>();
        for (int loadout : answer.study().byBurden()) {
            int number = 1;
            for (RelayCover.Pick pick : answer.cover(loadout).picks())
                places.add(new MapPlace(
                        answer.positions().get(pick.position()).at(),
                        MapPlace.Kind.RELAY,
                        "Relay " + number++ + ", " + names.get(loadout)));
        }
        return places;
    }
}
