package handreach.report;

import handreach.budget.LedgerLine;
import handreach.budget.TwoWayLedger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The same line in both directions of a link.
 *
 * @param there as it stands from the first end to the second, if it does
 * @param back as it stands the other way, if it does
 */
public record LedgerPair(Optional<LedgerLine> there, Optional<LedgerLine> back) {
    public LedgerPair {
        if (there.isEmpty() && back.isEmpty()) throw new IllegalArgumentException("a pair without a line");
    }

    /** All lines of a link, in the order of the way there; what only the way back has comes last. */
    public static List<LedgerPair> of(TwoWayLedger ledger) {
        List<LedgerPair> pairs = new ArrayList<>();
        List<LedgerLine> back = new ArrayList<>(ledger.back().lines());
        for (LedgerLine line : ledger.there().lines())
            pairs.add(new LedgerPair(
                    Optional.of(line), taken(back, line, ledger.there().lines())));
        for (LedgerLine line : back) pairs.add(new LedgerPair(Optional.empty(), Optional.of(line)));
        return pairs;
    }

    /** The line of the other direction that says the same thing, else one of the same kind that no other line here claims. */
    private static Optional<LedgerLine> taken(List<LedgerLine> others, LedgerLine line, List<LedgerLine> all) {
        for (LedgerLine other : others)
            if (isLike(other, line)) {
                others.remove(other);
                return Optional.of(other);
            }
        for (LedgerLine other : others)
            if (other.isLike(line) && all.stream().noneMatch(one -> isLike(one, other))) {
                others.remove(other);
                return Optional.of(other);
            }
        return Optional.empty();
    }

    private static boolean isLike(LedgerLine a, LedgerLine b) {
        return a.isLike(b) && a.label().equals(b.label());
    }

    /** The line there, or the one back where there is none. */
    public LedgerLine first() {
        return there.or(() -> back).orElseThrow();
    }

    /** The line back, or the one there where there is none. */
    public LedgerLine second() {
        return back.or(() -> there).orElseThrow();
    }
}
