package handreach.report;

import handreach.reach.OddsGrid;
import handreach.reach.Progress;
import handreach.report.file.AnswerFile;
import handreach.report.file.FileBatch;
import handreach.report.file.FolderResult;
import handreach.report.file.GeoJson;
import handreach.report.file.Json;
import handreach.report.page.HtmlPage;
import handreach.report.page.Section;
import handreach.study.ModelChoice;
import handreach.study.ReachAnswer;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.MultiPolygon;

/** Everything that {@code reach} writes into a folder: report, outlines, rasters, figures, the numbers themselves. */
public final class ReachFiles {
    private final ReachAnswer answer;
    private final Optional<ReachMaps> maps;

    private ReachFiles(ReachAnswer answer, Optional<ReachMaps> maps) {
        this.answer = answer;
        this.maps = maps;
    }

    /**
     * Writes the wanted files, each whole or not at all. Those that need an area are left out when none was computed; those of loadouts
     * that are no longer there go.
     *
     * @param made what maps and rasters are dated by
     */
    public static FolderResult write(
            ReachAnswer answer, Set<ReachPart> parts, Instant made, Path folder, Progress progress) {
        boolean draws =
                answer.area().isPresent() && (parts.contains(ReachPart.REPORT) || parts.contains(ReachPart.MAPS));
        ReachFiles files = new ReachFiles(answer, draws ? Optional.of(new ReachMaps(answer)) : Optional.empty());
        FileBatch batch = new FileBatch(folder, "reach", answer.scene().file().sources());
        files.fill(batch, parts, new ReachOrigin(answer, made));
        answer.scene()
                .choice()
                .filter(ModelChoice::isNoted)
                .map(ModelChoice::words)
                .ifPresent(batch::note);
        return batch.write(progress);
    }

    /** Writes the report alone, with further sections behind the bench. */
    public static void writeReport(ReachAnswer answer, List<Section> more, Path file) {
        AnswerFile.write(
                file,
                new ReachFiles(answer, Optional.empty()).report(more),
                answer.scene().file().sources());
    }

    private String report(List<Section> more) {
        return HtmlPage.text(ReachComposer.of(answer).report(maps, more, imprint()));
    }

    private void fill(FileBatch batch, Set<ReachPart> parts, ReachOrigin origin) {
        if (parts.contains(ReachPart.REPORT)) batch.add("report.html", () -> report(List.of()));
        if (parts.contains(ReachPart.NUMBERS)) {
            ReachNumbers numbers = ReachNumbers.of(answer);
            batch.add("reach.json", () -> Json.text(numbers));
            batch.add("reach-by-bearing.csv", () -> numbers.bearingsCsv(origin));
            RoutesComposer.of(answer).csv(origin).ifPresent(csv -> batch.add("reach-along-routes.csv", () -> csv));
        }
        if (parts.contains(ReachPart.PLACES)) {
            RoutesComposer.of(answer).gpx().ifPresent(gpx -> batch.add("reach-along-routes.gpx", () -> gpx));
        }
        if (answer.area().isEmpty()) return;
        if (parts.contains(ReachPart.OUTLINES)) batch.add("reach-outlines.geojson", () -> GeoJson.text(outlines()));
        batch.addAll(AreaFiles.of(answer, parts, maps, origin));
        if (parts.contains(ReachPart.MAPS)) batch.replacesAll(AreaFiles.MAPS);
        if (parts.contains(ReachPart.RASTERS)) batch.replacesAll(AreaFiles.RASTERS);
    }

    /** Who made it, from what. The day stands in the file's own date, so that the same input gives the same report. */
    private String imprint() {
        return "Made by Handreach from " + answer.scene().file().file().getFileName() + ".";
    }

    /** Two features a loadout: all ground at the target odds or better, and the part of it that hangs together from the middle. */
    private List<GeoJson.Feature> outlines() {
        List<GeoJson.Feature> features = new ArrayList<>();
        double target = answer.scene().plan().channel().wish().odds();
        List<OddsGrid> grids = answer.area().orElseThrow().odds();
        for (int i = 0; i < grids.size(); i++) {
            OddsGrid odds = grids.get(i);
            MultiPolygon all = odds.outline(target);
            if (!all.isEmpty())
                features.add(new GeoJson.Feature(all, properties(odds.link().name(), "all")));
            odds.contiguousOutline(target)
                    .ifPresent(part -> features.add(
                            new GeoJson.Feature(part, properties(odds.link().name(), "contiguous"))));
            AreaFiles.oneWayOutlines(answer, i)
                    .forEach((what, ground) -> features.add(
                            new GeoJson.Feature(ground, properties(odds.link().name(), what))));
        }
        return features;
    }

    private Map<String, Object> properties(String loadout, String what) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("loadout", loadout);
        properties.put("outline", what);
        properties.put("odds", answer.scene().plan().channel().wish().odds());
        PlanSubject.of(answer.scene().plan()).putInto(properties);
        return properties;
    }

    /** A loadout's name as a file name: letters, digits and hyphens. */
    static String fileWord(String name) {
        String word =
                name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return word.isEmpty() ? "loadout" : word;
    }
}
