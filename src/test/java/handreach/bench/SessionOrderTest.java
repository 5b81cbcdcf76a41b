package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.SessionOrder.Turn;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SessionOrderTest {
    private static final List<String> ANTENNAS = List.of("helical", "whip", "half-wave", "stub");

    @Test
    void everyTurnHoldsEachAntennaOnce() {
        List<Turn> turns =
                SessionOrder.drawn(ANTENNAS, List.of("hand", "box"), 6, 7).turns();
        assertEquals(48, turns.size());
        for (int i = 0; i < turns.size(); i += 4) {
            Set<String> names = new HashSet<>();
            for (Turn turn : turns.subList(i, i + 4)) {
                names.add(turn.antenna());
                assertEquals(turns.get(i).trial(), turn.trial());
                assertEquals(i < 24 ? "hand" : "box", turn.mount());
            }
            assertEquals(Set.copyOf(ANTENNAS), names);
        }
    }

    /** Over many lots each antenna stands first in a quarter of the turns: 1000 of 4000, standard deviation 27. */
    @Test
    void noAntennaIsFavoured() {
        Map<String, Integer> first = new HashMap<>();
        for (long lot = 0; lot < 1000; lot++) {
            List<Turn> turns =
                    SessionOrder.drawn(ANTENNAS, List.of("hand"), 4, lot).turns();
            for (int i = 0; i < turns.size(); i += 4) first.merge(turns.get(i).antenna(), 1, Integer::sum);
        }
        for (String antenna : ANTENNAS) assertTrue(Math.abs(first.get(antenna) - 1000) < 5 * 27, first::toString);
    }

    @Test
    void theSameLotGivesTheSameOrder() {
        assertEquals(
                SessionOrder.drawn(ANTENNAS, List.of("hand"), 6, 3),
                SessionOrder.drawn(ANTENNAS, List.of("hand"), 6, 3));
        assertNotEquals(
                SessionOrder.drawn(ANTENNAS, List.of("hand"), 6, 3),
                SessionOrder.drawn(ANTENNAS, List.of("hand"), 6, 4));
    }

    @Test
    void fewerTrialsThanAVerdictNeedsAreADefect() {
        assertThrows(IllegalArgumentException.class, () -> SessionOrder.drawn(ANTENNAS, List.of("hand"), 3, 1));
    }
}
