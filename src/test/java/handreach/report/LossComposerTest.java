package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.propagation.LossPart;
import handreach.propagation.PathLoss;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is lost beyond free space, in one sentence. */
class LossComposerTest {
    @Test
    void theLargestPartIsNamed() {
        assertEquals(
                "Beyond free space the path loses 30.0 dB, most of it to woodland (22.2 dB).",
                LossComposer.beyondFreeSpace(loss(22.2, 7.8)));
    }

    @Test
    void aPartLargerThanTheWholeIsNotMostOfIt() {
        assertEquals(
                "Beyond free space the path loses 17.8 dB: woodland takes 22.2 dB, and 4.4 dB of it come back.",
                LossComposer.beyondFreeSpace(loss(22.2, -4.4)));
    }

    private static PathLoss loss(double woodlandDb, double groundDb) {
        List<LossPart> parts = List.of(
                new LossPart("free space", 90, ""),
                new LossPart("woodland", woodlandDb, ""),
                new LossPart("ground", groundDb, ""));
        return new PathLoss("invented", 90 + woodlandDb + groundDb, 90, parts, List.of(), List.of());
    }
}
