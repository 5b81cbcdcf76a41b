package handreach.loadout;

import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What it costs to carry an antenna. What nobody stated stays empty: it is not known to be nothing.
 *
 * @param lengthCm length beyond the radio, cm
 * @param lengthIsUsual whether nobody stated the length, and that usual for its radiator stands for it
 * @param massG mass, g
 * @param price in the user's own currency
 * @param stiffness 0 limp to 10 rigid
 */
public record Burden(
        double lengthCm, boolean lengthIsUsual, OptionalDouble massG, OptionalDouble price, OptionalDouble stiffness) {
    /** Said where a length is told that nobody stated. */
    public static final String USUAL_LENGTH = "usual length taken";

    /** Said where what it weighs was not stated. */
    public static final String NO_MASS = "mass not given";

    /** One side of a burden, with the amount that counts as one. */
    public enum Aspect {
        LENGTH(30),
        MASS(50),
        PRICE(30),
        STIFFNESS(2.5);

        private final double one;

        Aspect(double one) {
            this.one = one;
        }
    }

    public static final List<Aspect> USUAL_RANKING =
            List.of(Aspect.LENGTH, Aspect.MASS, Aspect.PRICE, Aspect.STIFFNESS);

    public Burden {
        for (double part : new double[] {lengthCm, massG.orElse(0), price.orElse(0), stiffness.orElse(0)})
            if (!(part >= 0) || Double.isInfinite(part)) throw new IllegalArgumentException("burden below 0: " + part);
    }

    /** With every side stated. */
    public Burden(double lengthCm, double massG, double price, double stiffness) {
        this(lengthCm, false, OptionalDouble.of(massG), OptionalDouble.of(price), OptionalDouble.of(stiffness));
    }

    /**
     * One number to order loadouts by: the sides in units of a usual whip, weighted by their rank.
     *
     * @shape  four sides in, scalar out; pure
     * @unit   ranking from the heaviest concern down, each side at most once; result without unit, more is more burden
     * @valid  any ranking; a side left out counts nothing, and so does one that nobody stated
     * @error  none; an order, not a measure
     * @source rank-sum weights 4, 3, 2, 1; units 30 cm, 50 g, 30 of money, 2.5 steps of stiffness: our suggestion
     */
    public double score(List<Aspect> ranking) {
        if (ranking.size() != EnumSet.copyOf(ranking).size())
            throw new IllegalArgumentException("ranked twice: " + ranking);
        double sum = 0;
        for (int i = 0; i < ranking.size(); i++) {
            Aspect aspect = ranking.get(i);
            sum += (Aspect.values().length - i) * amount(aspect) / aspect.one;
        }
        return sum;
    }

    private double amount(Aspect aspect) {
        return switch (aspect) {
            case LENGTH -> lengthCm;
            case MASS -> massG.orElse(0);
            case PRICE -> price.orElse(0);
            case STIFFNESS -> stiffness.orElse(0);
        };
    }
}
