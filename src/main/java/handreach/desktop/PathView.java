package handreach.desktop;

import handreach.propagation.PathGeometry;
import handreach.report.LedgerPair;
import handreach.report.LedgerSheet;
import handreach.report.PathText;
import handreach.report.page.Sheet;
import handreach.study.PathAnswer;
import java.util.List;

/**
 * A path answered, with everything the pane shows of it made ready away from the screen thread.
 *
 * @param ends what was asked
 * @param answer loss, geometry over bare ground, ledgers
 * @param overTops geometry over what stands on the ground
 * @param pairs lines of both directions
 * @param sheet the same as a table, sums last
 * @param description the cut in words
 */
record PathView(
        PathEnds ends,
        PathAnswer answer,
        PathGeometry overTops,
        List<LedgerPair> pairs,
        Sheet sheet,
        String description) {
    static PathView of(PathEnds ends) {
        return of(ends, ends.answer());
    }

    /** Of a path that is answered already. */
    static PathView of(PathEnds ends, PathAnswer answer) {
        return new PathView(
                ends,
                answer,
                PathGeometry.overClutter(
                        answer.profile(),
                        answer.link().terminals(),
                        answer.link().conditions().atmosphere(),
                        answer.link().conditions().frequency()),
                LedgerPair.of(answer.ledger().orElseThrow()),
                LedgerSheet.of(answer.ledger().orElseThrow()),
                PathText.figure(answer, ends.from().words(), ends.to().words()).description());
    }

    /** Rows of the table that sum up. */
    List<Sheet.Row> sums() {
        return sheet.rows().subList(pairs.size(), sheet.rows().size());
    }
}
