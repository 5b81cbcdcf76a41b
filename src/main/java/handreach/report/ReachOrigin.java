package handreach.report;

import handreach.plan.CalibrationFile;
import handreach.plan.Plan;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.study.ReachAnswer;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
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
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH).withZone(ZoneOffset.UTC);

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
        List<String> lines = new ArrayList<>();
        lines.add(plan.heading().title() + ". From " + words.from() + ".");
        lines.add(words.channel() + ". Counts as copy: " + words.wish() + ".");
        lines.add(words.farEnd());
        answer.scene().calibration().map(CalibrationFile::words).ifPresent(lines::add);
        lines.add("Model " + plan.questions().reach().model().name() + ". Made on " + DAY.format(made) + " by "
                + Program.name() + ".");
        return lines;
    }

    static String caution() {
        return Cautions.brief(Caution.RELIANCE);
    }

    /** Names and values for the tags of a raster. */
    Map<String, String> tags() {
        Map<String, String> tags = new LinkedHashMap<>();
        tags.put("PLAN", plan.heading().title());
        tags.put("FROM", words.from());
        tags.put("OTHER_END", words.farEnd());
        tags.put("CHANNEL", words.channel());
        tags.put("COUNTS_AS_COPY", words.wish());
        tags.put("MODEL", plan.questions().reach().model().name());
        tags.put(
                "CALIBRATION",
                answer.scene().calibration().map(CalibrationFile::words).orElse("none"));
        tags.put("MADE_ON", DateTimeFormatter.ISO_LOCAL_DATE.format(made.atOffset(ZoneOffset.UTC)));
        tags.put("PROGRAM", Program.name());
        tags.put("CAUTION", caution());
        return tags;
    }
}
