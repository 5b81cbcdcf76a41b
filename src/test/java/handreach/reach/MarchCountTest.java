package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.units.Frequency;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a map counts by the march: the same whenever it is asked, more where there is more to march. */
class MarchCountTest {
    private static final Position SOURCE = new Position(46.5, 8.1);
    private static final Terminals FACE = new Terminals(1.6, 1.5);
    private static final int BEARINGS = 8;

    private static MarchCount count(double radiusM, double mhz, double reliefM, Terminals... heights) {
        AreaRequest map =
                Areas.around(SOURCE, radiusM, 50, FACE, UsualConditions.at(new Frequency(mhz)), LossModels.FULL_WAVE);
        PaperGround ground = PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 65, reliefM, 0.5);
        return MarchCount.of(map, BEARINGS, List.of(heights), new AreaGround(ground));
    }

    @Test
    void itIsTheSameWheneverItIsAsked() {
        assertEquals(count(1000, 146, 40, FACE), count(1000, 146, 40, FACE));
    }

    @Test
    void moreGroundHigherFrequencyAndAnotherSourceCountMore() {
        double seconds = count(1000, 146, 40, FACE).seconds();
        assertTrue(count(2000, 146, 40, FACE).seconds() > seconds);
        assertTrue(count(1000, 446, 40, FACE).seconds() > seconds);
        assertTrue(count(1000, 146, 40, FACE, new Terminals(3, 1.5)).seconds() > seconds);
        assertEquals(
                seconds, count(1000, 146, 40, FACE, new Terminals(1.6, 1.5)).seconds(), 1e-9);
    }

    @Test
    void aMapIsShortUpToTheUsualWait() {
        assertTrue(new MarchCount(MarchCount.USUAL_WAIT_S, false).isShort());
        assertFalse(new MarchCount(MarchCount.USUAL_WAIT_S + 0.1, false).isShort());
    }

    @Test
    void steepGroundOnABearingIsSeen() {
        assertFalse(count(2000, 146, 40, FACE).meetsSteepGround());
        assertTrue(count(2000, 146, 3000, FACE).meetsSteepGround());
    }
}
