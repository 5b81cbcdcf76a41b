package handreach.atlas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Parts and bridges against the plain way: take each position out and count. */
class TalkGraphTest {
    /** Sizes of the parts without one position, the largest first. */
    private static List<Integer> partsWithout(Paper paper, int out) {
        int n = paper.positions.size();
        Set<Integer> seen = new HashSet<>();
        List<Integer> sizes = new ArrayList<>();
        for (int start = 0; start < n; start++) {
            if (start == out || !seen.add(start)) continue;
            List<Integer> front = new ArrayList<>(List.of(start));
            int size = 0;
            while (!front.isEmpty()) {
                int at = front.remove(front.size() - 1);
                size++;
                for (int to = 0; to < n; to++)
                    if (to != out && paper.hears(at, to) && paper.hears(to, at) && seen.add(to)) front.add(to);
            }
            sizes.add(size);
        }
        sizes.sort(Collections.reverseOrder());
        return sizes;
    }

    @Test
    void partsAndBridgesAreThoseOfTakingEachPositionOut() {
        int bridges = 0;
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            double share = 0.06 + 0.2 * random.nextDouble();
            Paper paper = Paper.of(5, cell -> Paper.some(random, 25, share));
            TalkGraph graph = TalkGraph.of(paper.grid.cells(), paper.positions, 0);
            assertEquals(partsWithout(paper, -1), graph.sizes(), "seed " + seed);
            Map<Integer, Integer> found = new HashMap<>();
            graph.bridges().forEach(bridge -> found.put(bridge.cell(), bridge.cutOff()));
            for (int cell = 0; cell < paper.positions.size(); cell++) {
                int own = graph.sizes().get(graph.partOf(cell));
                List<Integer> rest = new ArrayList<>(partsWithout(paper, cell));
                List<Integer> others = new ArrayList<>(graph.sizes());
                others.remove((Integer) own);
                others.forEach(rest::remove);
                int cutOff = own - 1 - (rest.isEmpty() ? 0 : rest.get(0));
                assertEquals(cutOff, found.getOrDefault(cell, 0), "seed " + seed + ", cell " + cell);
                if (cutOff > 0) bridges++;
            }
        }
        assertTrue(bridges > 20, bridges + " bridges were met");
    }

    @Test
    void aTalkMustWorkFromBothEnds() {
        Paper paper = Paper.of(2, cell -> cell == 0 ? List.of(1) : List.of());
        TalkGraph graph = TalkGraph.of(paper.grid.cells(), paper.positions, 0);
        assertEquals(Collections.nCopies(paper.positions.size(), 1), graph.sizes());
    }
}
