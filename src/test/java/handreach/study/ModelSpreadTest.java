package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profiles;
import handreach.propagation.LossModels;
import handreach.propagation.PathLoss;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.units.Frequency;
import java.util.List;
import org.junit.jupiter.api.Test;

class ModelSpreadTest {
    private static ModelSpread spread(double ridgeM) {
        double[] km = new double[101];
        double[] heightM = new double[101];
        for (int i = 0; i <= 100; i++) {
            km[i] = 0.03 * i;
            heightM[i] = Math.max(0, ridgeM * (1 - Math.abs(i - 50) / 15.0));
        }
        PathAnswer path = PathStudy.over(
                Profiles.of(km, heightM),
                new Terminals(1.5, 1.5),
                UsualConditions.at(new Frequency(155)),
                List.of(LossModels.HANDHELD));
        assertTrue(path.spread().isEmpty());
        return PathStudy.compared(path).spread().orElseThrow();
    }

    private static List<String> names(ModelSpread spread) {
        return spread.applicable().stream().map(PathLoss::model).toList();
    }

    private static String why(ModelSpread spread, String model) {
        return spread.leftOut().stream()
                .filter(one -> one.model().equals(model))
                .findFirst()
                .orElseThrow()
                .why();
    }

    @Test
    void overFlatGroundModelsOfEdgesAloneDoNotApply() {
        ModelSpread flat = spread(0);
        assertTrue(names(flat)
                .containsAll(List.of("two-ray", "smooth-earth", "delta-bullington", "handheld", "full-wave")));
        assertTrue(why(flat, "deygout").contains("edges alone"));
        assertTrue(why(flat, "street-level").contains("300"));
        assertEquals(
                LossModels.all().size(),
                flat.applicable().size() + flat.leftOut().size());
    }

    @Test
    void behindARidgeModelsOfSmoothGroundDoNotApply() {
        ModelSpread ridge = spread(40);
        assertTrue(names(ridge).containsAll(List.of("single-edge", "bullington", "handheld", "full-wave")));
        assertFalse(names(ridge).contains("two-ray") || names(ridge).contains("smooth-earth"));
        assertTrue(why(ridge, "smooth-earth").contains("smooth"));
        assertTrue(why(ridge, "free-space").contains("bound"));
    }

    /** By hand: 3, 4 and 8 dB above 100, one of them by two models: mean 105, squares 4 + 1 + 9, over 2, root of 7. */
    @Test
    void theDeviationCountsAMethodOnce() {
        ModelSpread made = new ModelSpread(List.of(loss(103), loss(104), loss(104), loss(108)), List.of());
        assertEquals(Math.sqrt(7), made.standardDeviationDb(), 1e-9);
        assertEquals(103, made.leastDb());
        assertEquals(108, made.mostDb());
        assertEquals(0, new ModelSpread(List.of(loss(103)), List.of()).standardDeviationDb());
    }

    private static PathLoss loss(double db) {
        return new PathLoss("model", db, db, List.of(), List.of(), List.of());
    }
}
