package handreach.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class RankAgreementTest {
    @ParameterizedTest
    @CsvFileSource(resources = "/handreach/uncertainty/rank-agreement-scipy.csv", useHeadersInDisplayName = true)
    void agreesWithAStatisticsLibrary(String first, String second, double kendall, double spearman) {
        RankAgreement found = RankAgreement.of(list(first), list(second));
        assertEquals(kendall, found.kendall(), 1e-11);
        assertEquals(spearman, found.spearman(), 1e-11);
    }

    /** Orders 1 2 3 4 and 1 3 2 4: five pairs agree, one does not, (5 − 1)/6; squares of ranks 0 1 1 0, 1 − 6·2/60. */
    @Test
    void oneSwapByHand() {
        RankAgreement found = RankAgreement.of(List.of(1.0, 2.0, 3.0, 4.0), List.of(10.0, 30.0, 20.0, 40.0));
        assertEquals(4.0 / 6, found.kendall(), 1e-15);
        assertEquals(0.8, found.spearman(), 1e-15);
    }

    @Test
    void onlyTheOrderCounts() {
        List<Double> level = List.of(-50.0, -42.0, -45.0, -40.0, -48.0);
        List<Double> power = level.stream().map(x -> Math.pow(10, x / 10)).toList();
        List<Double> reverse = level.stream().map(x -> -x).toList();
        assertEquals(1, RankAgreement.of(level, power).kendall(), 1e-15);
        assertEquals(-1, RankAgreement.of(level, reverse).spearman(), 1e-15);
    }

    @Test
    void noOrderIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> RankAgreement.of(List.of(1.0, 1.0), List.of(1.0, 2.0)));
        assertThrows(IllegalArgumentException.class, () -> RankAgreement.of(List.of(1.0), List.of(1.0)));
    }

    private static List<Double> list(String text) {
        return Arrays.stream(text.split(" ")).map(Double::valueOf).toList();
    }
}
