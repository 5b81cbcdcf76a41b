package handreach.report;

import handreach.plan.CalibrationFile;
import handreach.plan.Plan;
import handreach.report.figure.CaptionedMap;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.report.page.Drawing;
import handreach.study.Scene;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What stands over and under every map, since maps are handed on without the report: plan, place, channel, what is carried, day,
 * caution. The day and not the hour, so that the same plan gives the same files all day.
 *
 * @param scene the plan on its ground
 * @param place what the map is of, as it goes on after the plan's title
 * @param carried who carries what, in a sentence
 * @param made when it is made
 */
record MapHeading(Scene scene, String place, String carried, Instant made) {
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH).withZone(ZoneOffset.UTC);

    /** Lines under the title of a map. */
    List<String> lines() {
        Plan plan = scene.plan();
        List<String> lines = new ArrayList<>();
        lines.add(plan.header().title() + ". " + place + ".");
        lines.add(ReachComposer.channel(plan) + ". Counts as copy: " + ReachComposer.wish(plan) + ".");
        lines.add(carried);
        scene.calibration().map(CalibrationFile::words).ifPresent(lines::add);
        lines.add("Model " + ReachComposer.briefModel(scene) + ". Made on " + DAY.format(made) + " by " + Program.name()
                + ".");
        return lines;
    }

    static String caution() {
        return Cautions.brief(Caution.RELIANCE);
    }

    /** A map of a page with all of this. */
    Drawing over(Drawing map) {
        return new Drawing(CaptionedMap.of(map.figure(), lines(), caution()), map.caption());
    }
}
