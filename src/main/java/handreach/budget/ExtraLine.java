package handreach.budget;

import handreach.bench.Effect;
import handreach.uncertainty.Doubt;
import handreach.units.Db;
import java.util.Optional;

/**
 * A further line that the user states.
 *
 * @param label what it is
 * @param value decibels, positive strengthens
 * @param doubt of it
 * @param source who says so
 * @param effect what it is about, so that the ledger can refuse it where the delta already holds it
 */
public record ExtraLine(String label, Db value, Doubt doubt, String source, Optional<Effect> effect) {
    public ExtraLine {
        if (!(Math.abs(value.db()) <= 200)) throw new IllegalArgumentException(label + ": " + value);
    }
}
