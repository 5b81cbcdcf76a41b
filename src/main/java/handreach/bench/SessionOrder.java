package handreach.bench;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.util.MathArrays;

/**
 * The order in which a session is best read: every trial is one turn through all antennas, so that what drifts is common to the
 * turn, and within each turn they stand in an order drawn by lot, so that no antenna is always read first.
 *
 * @param antennas the control first
 * @param turns one reading each, in the order to read them; mountings one after another
 */
public record SessionOrder(List<String> antennas, List<Turn> turns) {
    /** Fewer give no verdict. */
    public static final int LEAST_TRIALS = LevelSession.LEAST_TRIALS;

    public static final int MOST_TRIALS = 99;

    /** One reading to be taken. */
    public record Turn(String mount, int trial, String antenna) {}

    public SessionOrder {
        antennas = List.copyOf(antennas);
        turns = List.copyOf(turns);
    }

    /**
     * A randomised complete block design, the trial being the block.
     *
     * @shape  n antennas, m mountings, t trials in, n·m·t turns out; pure, the same lot for the same number
     * @unit   trials are counted from 1
     * @valid  two antennas or more, one mounting or more, {@link #LEAST_TRIALS} to {@link #MOST_TRIALS} trials
     * @error  none
     * @source Fisher, The Design of Experiments (1935), chapter IV: randomised blocks (from memory)
     */
    public static SessionOrder drawn(List<String> antennas, List<String> mounts, int trials, long lot) {
        if (antennas.size() < 2 || mounts.isEmpty()) throw new IllegalArgumentException(antennas + " on " + mounts);
        if (trials < LEAST_TRIALS || trials > MOST_TRIALS) throw new IllegalArgumentException(trials + " trials");
        RandomGenerator random = new Well19937c(lot);
        List<Turn> turns = new ArrayList<>();
        for (String mount : mounts)
            for (int trial = 1; trial <= trials; trial++) {
                int[] order = MathArrays.natural(antennas.size());
                MathArrays.shuffle(order, random);
                for (int antenna : order) turns.add(new Turn(mount, trial, antennas.get(antenna)));
            }
        return new SessionOrder(antennas, turns);
    }

    public String control() {
        return antennas.get(0);
    }
}
