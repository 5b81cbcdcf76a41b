package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.bench.MountKind;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class CarryTest {
    @ParameterizedTest
    @CsvSource({
        "FACE, HAND",
        "VEHICLE, HAND",
        "CHEST, BODY",
        "SHOULDER_MIC, BODY",
        "HIP_SWIVEL, BODY",
        "HIP_TIGHT, BODY",
        "ROOF, COUNTERPOISE",
        "MAST, COUNTERPOISE"
    })
    void theMountingMostLikeAPositionIsTheNearest(Carry carry, MountKind nearest) {
        assertEquals(0, carry.distance(nearest));
    }

    @ParameterizedTest
    @EnumSource
    void everyMountingHasADistanceOfItsOwn(Carry carry) {
        Set<Integer> distances =
                Arrays.stream(MountKind.values()).map(carry::distance).collect(Collectors.toSet());
        assertEquals(Set.of(0, 1, 2, 3, 4), distances);
    }

    /** Readings in the hand serve a pocket at the hip better than those on a box, and a mast the other way round. */
    @Test
    void handAndBoxChangePlacesBetweenBodyAndMast() {
        for (Carry carry : Carry.values()) {
            int hand = carry.distance(MountKind.HAND);
            int box = carry.distance(MountKind.CHASSIS);
            assertEquals(carry.isAtBody(), hand < box, carry.word());
        }
        assertEquals(
                List.of(Carry.ROOF, Carry.MAST),
                Arrays.stream(Carry.values()).filter(carry -> !carry.isAtBody()).toList());
    }
}
