package handreach.report;

import handreach.cartography.DifferenceMarks;
import handreach.cartography.LoadoutMark;
import handreach.loadout.NeededWays;
import handreach.reach.CellGrid;
import handreach.reach.LeastLoadout;
import handreach.reach.LoadoutDifference;
import handreach.reach.LossGrid;
import handreach.reach.ModelDifference;
import handreach.reach.OddsGrid;
import handreach.reach.OneWayGround;
import handreach.reach.ReachOutline;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Picture;
import handreach.report.figure.CaptionedMap;
import handreach.report.figure.MapKey;
import handreach.report.figure.MapOutline;
import handreach.report.figure.MapPlace;
import handreach.report.file.AnswerFile;
import handreach.report.file.GeoTiff;
import handreach.report.file.Georaster;
import handreach.report.file.Gpx;
import handreach.report.file.Kml;
import handreach.report.page.Drawing;
import handreach.study.ReachAnswer;
import handreach.units.Shares;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;

/** What an area answer becomes as files for other tools, by file name. */
final class AreaFiles {
    /** Names of pictures and rasters that a change of loadouts changes. */
    static final Pattern MAPS = Pattern.compile("map-[a-z0-9-]+\\.png");

    static final Pattern RASTERS = Pattern.compile(
            "(loss|(loss|odds|margin)-[a-z0-9-]+|model-difference)\\.tif|one-way-[a-z0-9-]+\\.tif(\\.aux\\.xml)?");

    /** Pixels of a map for each px it is drawn in: sharp on paper as on a screen. */
    static final double PNG_SCALE = 2;

    private final ReachAnswer answer;
    private final ReachAnswer.AreaAnswer area;
    private final List<String> words;
    private final Map<String, AnswerFile.Content> files = new LinkedHashMap<>();

    private final ReachOrigin origin;

    private AreaFiles(ReachAnswer answer, ReachOrigin origin) {
        this.answer = answer;
        this.origin = origin;
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
    static Map<String, AnswerFile.Content> of(
            ReachAnswer answer, Set<ReachPart> parts, Optional<ReachMaps> maps, ReachOrigin origin) {
        AreaFiles files = new AreaFiles(answer, origin);
        if (parts.contains(ReachPart.MAPS)) files.pictures(maps.orElseGet(() -> new ReachMaps(answer)));
        if (parts.contains(ReachPart.RASTERS)) files.rasters();
        if (parts.contains(ReachPart.OVERLAY)) files.overlay();
        if (parts.contains(ReachPart.PLACES)) files.places();
        return files.files;
    }

    private void pictures(ReachMaps maps) {
        for (int i = 0; i < words.size(); i++) {
            int loadout = i;
            png("map-odds-" + words.get(i) + ".png", () -> maps.odds(loadout));
        }
        png("map-least-loadout.png", maps::least);
        maps.models().ifPresent(drawing -> png("map-models.png", () -> drawing));
        for (int i = 0; i < answer.oneWay().size(); i++) {
            int loadout = i;
            png("map-one-way-" + words.get(i) + ".png", () -> maps.oneWay(loadout));
        }
    }

    private void png(String name, Supplier<Drawing> drawing) {
        files.put(
                name,
                out -> out.write(Picture.of(
                                CaptionedMap.of(drawing.get().figure(), origin.lines(), ReachOrigin.caution()),
                                PNG_SCALE)
                        .png()));
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
                        decibels(
                                "basic transmission loss, antennas "
                                        + loss.request().terminals().txHeightM() + " and "
                                        + loss.request().terminals().rxHeightM() + " m above ground",
                                origin.tags()),
                        cell -> loss.isKnown(cell) ? loss.lossDb(cell) : Double.NaN,
                        Georaster.STEP_DB)));
        for (int i = 0; i < area.odds().size(); i++) {
            Margins margins = new Margins(area.odds().get(i));
            String name = margins.odds.link().name();
            raster(
                    "odds-" + words.get(i) + ".tif",
                    new Georaster(
                            margins.odds.grid(),
                            Georaster.Layer.of("odds of copy, " + name, "1", tags(name)),
                            margins::odds,
                            Georaster.STEP_ODDS));
            raster(
                    "margin-" + words.get(i) + ".tif",
                    new Georaster(
                            margins.odds.grid(),
                            decibels("margin of the " + ruling() + " at the median place, " + name, tags(name)),
                            margins::db,
                            Georaster.STEP_DB));
        }
        LeastLoadout least = area.least();
        Georaster raster = new Georaster(
                least.grid(),
                new Georaster.Layer(
                        "least loadout, by order of burden from 1; 0 where none reaches",
                        "",
                        kinds(least),
                        origin.tags()),
                cell -> least.at(cell) == LeastLoadout.UNKNOWN ? Double.NaN : least.at(cell) + 1);
        raster("least-loadout.tif", raster);
        files.put("least-loadout.tif.aux.xml", GeoTiff.classes(raster));
        for (int i = 0; i < answer.oneWay().size(); i++) oneWay(i);
        ModelsComposer.of(answer).ifPresent(this::models);
    }

    private void models(ModelsComposer words) {
        ModelDifference difference = words.difference();
        raster(
                "model-difference.tif",
                new Georaster(
                        difference.grid(),
                        decibels(words.layer(), origin.tags()),
                        cell -> difference.isCompared(cell) ? difference.db(cell) : Double.NaN,
                        Georaster.STEP_DB));
    }

    private void oneWay(int loadout) {
        OddsGrid odds = area.odds().get(loadout);
        LoadoutDifference places = OneWayGround.places(odds, target());
        String name = odds.link().name();
        String middle = OneWayComposer.middle(answer);
        Georaster raster = new Georaster(
                odds.grid(),
                new Georaster.Layer(
                        "which ways have the wanted odds, " + name,
                        "",
                        List.of(
                                new Georaster.Layer.Kind("neither way", 0xFFFFFF),
                                new Georaster.Layer.Kind("both ways", DifferenceMarks.BOTH.rgb()),
                                new Georaster.Layer.Kind("hears " + middle + " only", DifferenceMarks.BOUGHT.rgb()),
                                new Georaster.Layer.Kind("heard at " + middle + " only", DifferenceMarks.LOST.rgb())),
                        tags(name)),
                cell -> switch (places.at(cell)) {
                    case UNKNOWN -> Double.NaN;
                    case NEITHER -> 0;
                    case BOTH -> 1;
                    case BOUGHT -> 2;
                    case LOST -> 3;
                });
        String file = "one-way-" + words.get(loadout) + ".tif";
        raster(file, raster);
        files.put(file + ".aux.xml", GeoTiff.classes(raster));
    }

    private String ruling() {
        boolean isBoth = answer.scene().plan().channel().wish().ways() == NeededWays.BOTH;
        return isBoth ? "weaker direction" : "direction that counts";
    }

    private double target() {
        return answer.scene().plan().channel().wish().odds();
    }

    /** Ground on which one way alone works, by what works there, as outlines; none where it is not asked for. */
    static Map<String, Geometry> oneWayOutlines(ReachAnswer answer, int loadout) {
        Map<String, Geometry> outlines = new LinkedHashMap<>();
        if (answer.oneWay().isEmpty()) return outlines;
        OddsGrid odds = answer.area().orElseThrow().odds().get(loadout);
        LoadoutDifference places =
                OneWayGround.places(odds, answer.scene().plan().channel().wish().odds());
        outlines.put(
                "hears-only", ReachOutline.of(odds.grid(), cell -> places.at(cell) == LoadoutDifference.Place.BOUGHT));
        outlines.put(
                "heard-only", ReachOutline.of(odds.grid(), cell -> places.at(cell) == LoadoutDifference.Place.LOST));
        outlines.values().removeIf(Geometry::isEmpty);
        return outlines;
    }

    private static Georaster.Layer decibels(String name, Map<String, String> about) {
        return Georaster.Layer.of(name, "dB", about);
    }

    private Map<String, String> tags(String loadout) {
        Map<String, String> tags = new LinkedHashMap<>(origin.tags());
        tags.put("LOADOUT", loadout);
        return tags;
    }

    /** What the numbers of the least loadout stand for, in the colours of the maps. */
    private List<Georaster.Layer.Kind> kinds(LeastLoadout least) {
        List<Georaster.Layer.Kind> kinds = new ArrayList<>();
        kinds.add(new Georaster.Layer.Kind("none reaches", 0xFFFFFF));
        least.links()
                .forEach(link -> kinds.add(
                        new Georaster.Layer.Kind(link.name(), mark(link.name()).rgb())));
        return kinds;
    }

    private LoadoutMark mark(String loadout) {
        for (int i = 0; i < answer.loadouts().size(); i++)
            if (answer.loadouts().get(i).link().name().equals(loadout)) return LoadoutMark.of(i);
        throw new IllegalArgumentException("no loadout " + loadout);
    }

    /** Margins of a link in all cells, NaN where nothing is known; computed once for the two rasters made of them. */
    private static final class Margins {
        /** Odds that are written as none. */
        private static final double NOTHING = Georaster.STEP_ODDS / 4;

        private final OddsGrid odds;
        private final double nothingDb;
        private volatile float[] db;

        Margins(OddsGrid odds) {
            this.odds = odds;
            this.nothingDb = odds.link().thresholdDb(NOTHING);
        }

        float db(int cell) {
            return (db == null ? all() : db)[cell];
        }

        private synchronized float[] all() {
            if (db == null) db = computed(odds);
            return db;
        }

        double odds(int cell) {
            float margin = db(cell);
            if (Float.isNaN(margin)) return Double.NaN;
            // most ground is out of reach by far, and the normal law is dear there
            return margin < nothingDb ? 0 : odds.link().odds(margin);
        }

        private static float[] computed(OddsGrid odds) {
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
                oneWayOutlines(answer, i)
                        .forEach((what, ground) -> outlines.add(new MapOutline(
                                what.equals("hears-only") ? DifferenceMarks.BOUGHT : DifferenceMarks.LOST,
                                odds.link().name() + ", " + what,
                                ground)));
            }
            Kml.kmz(
                            answer.scene().plan().header().title(),
                            outlines,
                            ReachMaps.places(answer.scene().plan()),
                            new Kml.Pictures(overlays(), key(outlines)))
                    .writeTo(out);
        });
    }

    /** Odds of copy, one picture a loadout; the one that reaches most ground first, which is the one shown. */
    private List<Kml.Overlay> overlays() {
        int best = best();
        return IntStream.range(0, area.odds().size())
                .boxed()
                .sorted(Comparator.comparing(i -> i != best))
                .map(i -> overlay(area.odds().get(i)))
                .toList();
    }

    private static Kml.Overlay overlay(OddsGrid odds) {
        CellGrid grid = odds.grid();
        return new Kml.Overlay(
                "odds of copy, " + odds.link().name(),
                () -> Picture.oddsOverlay(grid, cell -> odds.isKnown(cell) ? odds.odds(cell) : -1),
                grid.northDeg(),
                grid.southDeg(),
                grid.westDeg(),
                grid.eastDeg());
    }

    /** What the outlines and the colours mean, with place, channel, day and caution. */
    private Picture key(List<MapOutline> outlines) {
        List<LegendEntry> entries = new ArrayList<>();
        for (MapOutline outline : outlines) entries.add(LegendEntry.line(outline.mark(), outline.name()));
        entries.addAll(ReachMaps.oddsKey());
        String title = "Reach at "
                + Shares.wanted(answer.scene().plan().channel().wish().odds()) + " or better";
        return Picture.of(CaptionedMap.of(new MapKey(title, entries), origin.lines(), ReachOrigin.caution()), 1);
    }

    private void places() {
        List<MapPlace> places = ReachMaps.places(answer.scene().plan());
        if (places.isEmpty()) return;
        String gpx = Gpx.text(places, answer.scene().plan().header().title(), List.of());
        files.put("places.gpx", out -> out.write(gpx.getBytes(StandardCharsets.UTF_8)));
    }
}
