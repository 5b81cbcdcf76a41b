package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class BurdenTest {
    private static final Burden STUBBY = new Burden(15, 25, 0, 1);
    private static final Burden WHIP = new Burden(48, 40, 25, 1);

    @Test
    void weighsTheSidesByTheirRank() { // by hand: 4·15/30 + 3·25/50 + 2·0/30 + 1·1/2.5
        assertEquals(2 + 1.5 + 0.4, STUBBY.score(Burden.USUAL_RANKING), 1e-12);
    }

    @Test
    void moreOfAnythingIsMoreBurden() {
        double before = STUBBY.score(Burden.USUAL_RANKING);
        assertTrue(WHIP.score(Burden.USUAL_RANKING) > before);
        assertTrue(new Burden(15, 25, 1, 1).score(Burden.USUAL_RANKING) > before);
        assertTrue(new Burden(15, 25, 0, 2).score(Burden.USUAL_RANKING) > before);
    }

    @Test
    void theUsersRankingDecides() {
        Burden longLight = new Burden(60, 10, 0, 0);
        Burden shortHeavy = new Burden(10, 90, 0, 0);
        List<Burden.Aspect> massFirst = List.of(Burden.Aspect.MASS, Burden.Aspect.LENGTH);
        assertTrue(longLight.score(Burden.USUAL_RANKING) > shortHeavy.score(Burden.USUAL_RANKING));
        assertTrue(new Burden(30, 10, 0, 0).score(massFirst) < shortHeavy.score(massFirst));
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Burden(-1, 0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new Burden(0, Double.NaN, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> WHIP.score(List.of(Burden.Aspect.MASS, Burden.Aspect.MASS)));
    }
}
