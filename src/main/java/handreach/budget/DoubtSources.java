package handreach.budget;

import java.util.Map;
import java.util.TreeMap;

/**
 * Common doubt by its cause, so that what two links share cancels in their difference and what both ends of a link share
 * adds up without squares (GUM 5.2.2, full correlation within a source, none between sources).
 */
final class DoubtSources {
    private final Map<DoubtCause, Double> signedDb = new TreeMap<>();

    void add(DoubtCause cause, double signed) {
        if (signed != 0) signedDb.merge(cause, signed, Double::sum);
    }

    double combinedDb() {
        double squares = 0;
        for (double db : signedDb.values()) squares += db * db;
        return Math.sqrt(squares);
    }

    double differenceDb(DoubtSources other) {
        DoubtSources difference = new DoubtSources();
        signedDb.forEach(difference::add);
        other.signedDb.forEach((cause, db) -> difference.add(cause, -db));
        return difference.combinedDb();
    }
}
