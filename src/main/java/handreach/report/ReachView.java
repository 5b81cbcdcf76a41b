package handreach.report;

import handreach.budget.TwoWayLedger;
import handreach.report.page.Opening;
import handreach.report.page.Section;
import handreach.units.Lengths;
import java.util.List;

/**
 * Everything a reach report shows.
 *
 * @param opening title, question, answer, facts
 * @param reach rows and the units they are written in
 * @param drawings maps, rose, profiles
 * @param links ledgers of the links worth looking at
 * @param evidence further sections, such as the bench, a relay, a walk
 * @param grounds assumptions, limits, cautions
 */
public record ReachView(
        Opening opening,
        Reach reach,
        ReachDrawings drawings,
        List<Link> links,
        List<Section> evidence,
        Grounds grounds) {
    /** Rows of the main table, least burdensome loadout first, and the units of lengths. */
    public record Reach(List<ReachLine> lines, Lengths style) {
        public Reach {
            lines = List.copyOf(lines);
        }
    }

    /** A link by name, both ways line by line. */
    public record Link(String name, TwoWayLedger ledger) {}

    public ReachView {
        links = List.copyOf(links);
        evidence = List.copyOf(evidence);
    }
}
