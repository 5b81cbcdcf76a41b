package handreach.report;

import handreach.plan.CalibrationFile;
import handreach.plan.Plan;
import handreach.report.file.Csv;
import handreach.study.ReachAnswer;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What maps and rasters of a reach answer say of themselves, since they are handed on without the report. They carry the day and
 * not the hour, so that the same plan gives the same files all day.
 */
final class ReachOrigin {
    private final ReachAnswer answer;
    private final Plan plan;
    private final Instant made;
    private final ReachComposer words;

    ReachOrigin(ReachAnswer answer, Instant made) {
        this.answer = answer;
        this.plan = answer.scene().plan();
        this.made = made;
        this.words = ReachComposer.of(answer);
    }

    /** Lines under the title of a map. */
    List<String> lines() {
        return new MapHeading(answer.scene(), "From " + words.from(), words.farEnd(), made).lines();
    }

    static String caution() {
        return MapHeading.caution();
    }

    /** Names and values for the tags of a raster. */
    Map<String, String> tags() {
        Map<String, String> tags = new LinkedHashMap<>();
        tags.put("PLAN", plan.header().title());
        tags.put("FROM", words.from());
        tags.put("OTHER_END", words.farEnd());
        tags.put("CHANNEL", ReachComposer.channel(plan));
        tags.put("COUNTS_AS_COPY", ReachComposer.wish(plan));
        tags.put("MODEL", ReachComposer.briefModel(answer.scene()));
        tags.put(
                "CALIBRATION",
                answer.scene().calibration().map(CalibrationFile::words).orElse("none"));
        tags.put("MADE_ON", made.atOffset(ZoneOffset.UTC).toLocalDate().toString());
        tags.put("PROGRAM", Program.name());
        tags.put("CAUTION", caution());
        return tags;
    }

    /** The same as columns of a table of numbers, beside the rows as they are; the caution has no room there. */
    String csv(List<String> header, List<List<String>> rows) {
        Map<String, String> about = tags();
        about.remove("CAUTION");
        List<String> heads = new ArrayList<>(header);
        about.keySet().forEach(tag -> heads.add(tag.toLowerCase(Locale.ROOT)));
        List<List<String>> all = new ArrayList<>();
        for (List<String> row : rows) {
            List<String> cells = new ArrayList<>(row);
            cells.addAll(about.values());
            all.add(cells);
        }
        return Csv.text(heads, all);
    }
}
