package handreach.walk;

/**
 * What is believed before the walk, in standard deviations; our suggestion.
 *
 * @param biasDb of the shift common to the area
 * @param coverDb of the further shift of one cover
 * @param carryDb of the error of the carry loss of one position
 * @param spreadLog of the logarithm of the spread between places, about the ledger's own
 */
public record Priors(double biasDb, double coverDb, double carryDb, double spreadLog) {
    public static final Priors USUAL = new Priors(6, 3, 3, 0.3);

    public Priors {
        if (!(biasDb > 0 && coverDb > 0 && carryDb > 0 && spreadLog > 0))
            throw new IllegalArgumentException("priors are above zero");
    }
}
