package handreach.desktop;

import handreach.propagation.PathGeometry;
import handreach.report.LedgerComposer;
import handreach.report.LedgerRow;
import handreach.report.PathComposer;
import handreach.report.figure.ProfileFigure;
import handreach.report.page.Table;
import handreach.study.PathAnswer;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;

/**
 * A path answered, with everything the pane shows of it made ready away from the screen thread.
 *
 * @param ends what was asked
 * @param answer loss, geometry over bare ground, ledgers
 * @param overTops geometry over what stands on the ground
 * @param ledger both directions line by line, sums last
 * @param meanings what each line of it means
 * @param figure the cut, as the report draws it
 */
record PathView(
        PathEnds ends,
        PathAnswer answer,
        PathGeometry overTops,
        Table<LedgerRow> ledger,
        List<String> meanings,
        ProfileFigure figure) {
    static PathView of(PathEnds ends) {
        return of(ends, ends.answer());
    }

    Lengths lengths() {
        return ends.scene().plan().header().lengths();
    }

    /** Of a path that is answered already. */
    static PathView of(PathEnds ends, PathAnswer answer) {
        Table<LedgerRow> ledger = LedgerComposer.table(answer.ledger().orElseThrow());
        List<String> meanings = new ArrayList<>();
        for (int row = 0; row < ledger.rowCount(); row++)
            meanings.add(ledger.row(row).meaning());
        return new PathView(
                ends,
                answer,
                PathGeometry.overClutter(
                        answer.profile(),
                        answer.link().terminals(),
                        answer.link().conditions().atmosphere(),
                        answer.link().conditions().frequency()),
                ledger,
                List.copyOf(meanings),
                PathComposer.profile(
                        answer,
                        ends.from().words(),
                        ends.to().words(),
                        ends.scene().plan().header().lengths()));
    }
}
