package handreach.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import handreach.budget.Ledger;
import handreach.budget.LedgerLine;
import handreach.budget.TwoWayLedger;
import handreach.budget.Ways;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Both directions of a link line by line, as every answer's JSON says them. */
record LedgerJson(
        Way there,
        Way back,
        String weaker,
        double marginDb,
        double oddsOfCopy,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<String> asked) {
    record Way(
            String from,
            String to,
            List<Line> lines,
            double marginDb,
            double locationMarginDb,
            double marginAtOddsDb,
            double commonDoubtDb,
            double spreadDb,
            double oddsOfCopy) {
        static Way of(Ledger ledger) {
            return new Way(
                    ledger.from(),
                    ledger.to(),
                    ledger.lines().stream().map(Line::of).toList(),
                    ledger.marginDb(),
                    ledger.locationMarginDb(),
                    ledger.marginAtOddsDb(),
                    ledger.doubt().commonDb(),
                    ledger.doubt().spreadDb(),
                    ledger.odds());
        }
    }

    record Line(
            String key, String label, double db, double commonDoubtDb, double spreadDb, String source, String note) {
        static Line of(LedgerLine line) {
            return new Line(
                    line.word(),
                    line.wayLabel(),
                    line.valueDb(),
                    line.doubt().commonDb(),
                    line.doubt().spreadDb(),
                    line.source(),
                    line.note());
        }
    }

    static LedgerJson of(TwoWayLedger ledger) {
        return new LedgerJson(
                Way.of(ledger.there()),
                Way.of(ledger.back()),
                ledger.isBackWeaker() ? "back" : "there",
                ledger.marginDb(),
                ledger.odds(),
                Optional.of(ledger.needed())
                        .filter(ways -> ways != Ways.BOTH)
                        .map(ways -> ways.name().toLowerCase(Locale.ROOT)));
    }
}
