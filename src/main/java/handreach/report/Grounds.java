package handreach.report;

import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Sheet;
import java.util.ArrayList;
import java.util.List;

/**
 * What a result rests on and where it ends.
 *
 * @param assumptions each with its source
 * @param limits what the result does not say
 * @param warnings what was doubtful in this run
 * @param cautions which cautions concern the reader
 */
public record Grounds(
        List<Assumption> assumptions, List<String> limits, List<String> warnings, List<Caution> cautions) {
    /**
     * Something taken as given.
     *
     * @param what name of the setting
     * @param value what was taken, with its unit
     * @param source document, measurement, or whose choice
     */
    public record Assumption(String what, String value, String source) {}

    public Grounds {
        assumptions = List.copyOf(assumptions);
        limits = List.copyOf(limits);
        warnings = List.copyOf(warnings);
        cautions = List.copyOf(cautions);
    }

    /** Sections at the end of a report: assumptions, limits with warnings, cautions. */
    List<Section> sections() {
        List<Section> sections = new ArrayList<>();
        if (!assumptions.isEmpty()) {
            List<Sheet.Row> rows = assumptions.stream()
                    .map(a -> Sheet.Row.of(a.what(), a.value(), a.source()))
                    .toList();
            sections.add(Section.of(
                    "What this assumes",
                    new Sheet(
                            "",
                            List.of(
                                    Sheet.Column.words("what"),
                                    Sheet.Column.words("taken as"),
                                    Sheet.Column.words("source")),
                            rows)));
        }
        List<Block> blocks = new ArrayList<>();
        for (String warning : warnings) blocks.add(Paragraph.warning(warning));
        blocks.add(new Bullets(limits));
        if (!limits.isEmpty() || !warnings.isEmpty()) sections.add(new Section("Limits of this result", blocks));
        if (!cautions.isEmpty()) sections.add(Section.of("Cautions", new CautionBlock(cautions)));
        return sections;
    }
}
