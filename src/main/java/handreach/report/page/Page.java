package handreach.report.page;

import java.util.List;

/**
 * A report as a tree of parts, before it is rendered.
 *
 * @param kind what sort of report, shown small above the title
 * @param title what it is about
 * @param question the question it answers, one sentence
 * @param answer what comes first: the answer in plain words
 * @param sections everything else
 * @param imprint who made it and when, at the foot
 */
public record Page(
        String kind, String title, String question, List<Block> answer, List<Section> sections, String imprint) {
    public Page {
        answer = List.copyOf(answer);
        sections = List.copyOf(sections);
    }
}
