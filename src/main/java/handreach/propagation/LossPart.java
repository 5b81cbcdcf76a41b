package handreach.propagation;

/**
 * One part of a loss; the parts of a {@link PathLoss} add up to it.
 *
 * @param name what it is, in terms of the trade
 * @param db decibels, positive weakens
 * @param source document and section, or what kind of statement it is
 */
public record LossPart(String name, double db, String source) {
    public LossPart {
        if (!Double.isFinite(db)) throw new IllegalArgumentException(name + " is not a finite loss");
    }
}
