package handreach.atlas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The lazy search against the plain greedy one and against every set there is. */
class RelayCoverTest {
    private static BitSet reached(Paper paper, int position) {
        BitSet bits = new BitSet();
        for (int to = 0; to < paper.positions.size(); to++)
            if (to == position || paper.hears(position, to)) bits.set(to);
        return bits;
    }

    private static int best(Paper paper, int from, int wanted, BitSet covered) {
        if (wanted == 0) return covered.cardinality();
        int most = covered.cardinality();
        for (int i = from; i < paper.positions.size(); i++) {
            BitSet with = (BitSet) covered.clone();
            with.or(reached(paper, i));
            most = Math.max(most, best(paper, i + 1, wanted - 1, with));
        }
        return most;
    }

    private static int plainGreedy(Paper paper, int wanted) {
        BitSet covered = new BitSet();
        for (int k = 0; k < wanted; k++) {
            BitSet best = covered;
            for (int i = 0; i < paper.positions.size(); i++) {
                BitSet with = (BitSet) covered.clone();
                with.or(reached(paper, i));
                if (with.cardinality() > best.cardinality()) best = with;
            }
            covered = best;
        }
        return covered.cardinality();
    }

    @Test
    void theLazySearchIsTheGreedyOneAndKeepsItsBound() {
        int better = 0;
        for (int seed = 0; seed < 60; seed++) {
            Random random = new Random(seed);
            double share = 0.05 + 0.25 * random.nextDouble();
            Paper paper = Paper.of(5, cell -> Paper.some(random, 25, share));
            int wanted = 1 + random.nextInt(3);
            RelayCover found = RelayCover.greedy(paper.grid, paper.positions, 0, wanted);
            int covered = found.picks().isEmpty()
                    ? 0
                    : found.picks().get(found.picks().size() - 1).covered();
            int optimum = best(paper, 0, wanted, new BitSet());
            assertEquals(plainGreedy(paper, wanted), covered, "seed " + seed);
            assertTrue(found.most() >= optimum, "seed " + seed + ": bound " + found.most() + ", best " + optimum);
            assertTrue(covered >= (1 - Math.pow(1 - 1.0 / wanted, wanted)) * optimum, "seed " + seed);
            if (optimum > covered) better++;
        }
        assertTrue(better > 0, "some set must beat the greedy one, or the bound is not tried");
    }

    @Test
    void whoeverAddsNothingIsNotTaken() {
        Paper paper = Paper.of(4, cell -> cell == 5 ? Paper.some(new Random(1), 30, 1) : List.of());
        RelayCover found = RelayCover.greedy(paper.grid, paper.positions, 0, 3);
        assertEquals(1, found.picks().size());
        assertEquals(5, found.picks().get(0).position());
        assertEquals(paper.positions.size(), found.picks().get(0).covered());
        assertEquals(paper.positions.size(), found.most());
    }
}
