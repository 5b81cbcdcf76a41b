package handreach.bench;

import handreach.bench.Declarations.TrialOrder;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Readings of two antennas taken in turns, matched by trial number.
 *
 * @param first levels of the first antenna
 * @param second levels of the second antenna, in the same order of trials
 * @param left numbers of the trials that only one of them was read in
 * @param apart how many readings later the first was read than the second, pair by pair
 */
record TrialPairs(List<Double> first, List<Double> second, List<Integer> left, List<Double> apart) {
    /** Below this share of common trials the readings are not a series of pairs with a few lost, but something else. */
    private static final double COMMON_SHARE = 0.8;

    private record Pair(int first, int second, double from, double to) {}

    /**
     * The pairs, if the trials were interleaved: every reading numbered, at least two and four fifths of the trials common to
     * both, and all readings of one trial before those of the next in the file, or the file declares the order.
     */
    static Optional<TrialPairs> of(AntennaReadings first, AntennaReadings second, Optional<TrialOrder> declared) {
        if (declared.equals(Optional.of(TrialOrder.BLOCKS))) return Optional.empty();
        if (!first.isNumbered() || !second.isNumbered()) return Optional.empty();
        List<Pair> pairs = common(first, second);
        List<Integer> left = unpaired(first, second);
        double needed = COMMON_SHARE * Math.max(first.n(), second.n());
        if (pairs.size() < 2 || pairs.size() < needed) return Optional.empty();
        if (declared.isEmpty() && !areInTurns(pairs)) return Optional.empty();
        List<Double> apart = new ArrayList<>();
        List<Double> firstLevels = new ArrayList<>();
        List<Double> secondLevels = new ArrayList<>();
        for (Pair pair : pairs) {
            firstLevels.add(first.levels().get(pair.first()));
            secondLevels.add(second.levels().get(pair.second()));
            apart.add(first.places().get(pair.first()) - second.places().get(pair.second()));
        }
        return Optional.of(new TrialPairs(firstLevels, secondLevels, left, apart));
    }

    /** Whether the two share trial numbers that the order of rows does not bear out. */
    static boolean areNumberedAlikeInBlocks(AntennaReadings first, AntennaReadings second) {
        if (!first.isNumbered() || !second.isNumbered()) return false;
        List<Pair> pairs = common(first, second);
        return pairs.size() >= 2
                && pairs.size() >= COMMON_SHARE * Math.max(first.n(), second.n())
                && !areInTurns(pairs);
    }

    /** Numbers of the trials that one was read in and the other was not, if both are numbered and have any in common. */
    static List<Integer> unpaired(AntennaReadings first, AntennaReadings second) {
        if (!first.isNumbered() || !second.isNumbered()) return List.of();
        Set<Integer> unpaired = new TreeSet<>(first.indexOfTrial().keySet());
        unpaired.addAll(second.indexOfTrial().keySet());
        boolean isCommon = unpaired.removeIf(trial ->
                first.indexOfTrial().containsKey(trial) && second.indexOfTrial().containsKey(trial));
        return isCommon ? List.copyOf(unpaired) : List.of();
    }

    private static List<Pair> common(AntennaReadings first, AntennaReadings second) {
        List<Pair> pairs = new ArrayList<>();
        first.indexOfTrial().forEach((trial, i) -> {
            Integer j = second.indexOfTrial().get(trial);
            if (j == null) return;
            double a = first.places().get(i);
            double b = second.places().get(j);
            pairs.add(new Pair(i, j, Math.min(a, b), Math.max(a, b)));
        });
        pairs.sort(Comparator.comparingDouble(Pair::from));
        return pairs;
    }

    private static boolean areInTurns(List<Pair> pairs) {
        for (int i = 1; i < pairs.size(); i++)
            if (pairs.get(i).from() < pairs.get(i - 1).to()) return false;
        return true;
    }
}
