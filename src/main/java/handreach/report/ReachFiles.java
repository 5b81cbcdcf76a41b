package handreach.report;

import handreach.reach.OddsGrid;
import handreach.study.ReachAnswer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.MultiPolygon;

/** Everything that {@code reach} writes into a folder: report, outlines, rasters, figures, the numbers themselves. */
public final class ReachFiles {
    private final ReachAnswer answer;
    private final Path folder;
    private final List<Path> written = new ArrayList<>();

    private ReachFiles(ReachAnswer answer, Path folder) {
        this.answer = answer;
        this.folder = folder;
    }

    /** Writes all files, each whole or not at all; returns them in the order a reader would open them. */
    public static List<Path> write(ReachAnswer answer, Path folder) {
        ReachFiles files = new ReachFiles(answer, folder);
        files.all();
        return List.copyOf(files.written);
    }

    /** Writes the report alone. */
    public static void writeReport(ReachAnswer answer, Path file) {
        writeReport(answer, List.of(), file);
    }

    /** Writes the report alone, with further sections behind the bench. */
    public static void writeReport(ReachAnswer answer, List<Section> more, Path file) {
        ReachFiles files = new ReachFiles(answer, file.toAbsolutePath().getParent());
        WholeFile.write(file, files.report(more));
    }

    private String report(List<Section> more) {
        return HtmlPage.text(new ReachPages(answer).page(more, imprint()));
    }

    private void all() {
        text("report.html", report(List.of()));
        text("reach.json", Json.text(ReachText.json(answer)));
        if (answer.area().isEmpty()) return;
        text("reach-outlines.geojson", GeoJson.text(outlines()));
        AreaFiles.of(answer).forEach((name, content) -> {
            Path file = folder.resolve(name);
            WholeFile.write(file, content);
            written.add(file);
        });
    }

    /** Who made it, from what. The day stands in the file's own date, so that the same input gives the same report. */
    private String imprint() {
        return "Made by Handreach from " + answer.scene().file().file().getFileName() + ".";
    }

    /** Two features a loadout: all ground at the target odds or better, and the part of it that hangs together from the middle. */
    private List<GeoJson.Feature> outlines() {
        List<GeoJson.Feature> features = new ArrayList<>();
        double target = answer.scene().plan().channel().wish().odds();
        for (OddsGrid odds : answer.area().orElseThrow().odds()) {
            MultiPolygon all = odds.outline(target);
            if (!all.isEmpty())
                features.add(new GeoJson.Feature(all, properties(odds.link().name(), "all")));
            odds.contiguousOutline(target)
                    .ifPresent(part -> features.add(
                            new GeoJson.Feature(part, properties(odds.link().name(), "contiguous"))));
        }
        return features;
    }

    private Map<String, Object> properties(String loadout, String what) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("loadout", loadout);
        properties.put("outline", what);
        properties.put("odds", answer.scene().plan().channel().wish().odds());
        properties.put("plan", answer.scene().plan().heading().title());
        return properties;
    }

    private void text(String name, String body) {
        Path file = folder.resolve(name);
        WholeFile.write(file, body);
        written.add(file);
    }

    /** A loadout's name as a file name: letters, digits and hyphens. */
    static String fileWord(String name) {
        String word =
                name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return word.isEmpty() ? "loadout" : word;
    }
}
