package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every model promises, held against all of them. The field march has its own, slower checks. */
class LossModelsTest {
    private static final double RECIPROCITY_DB = 1e-6;

    /** In step with free space doubled: no ground gives more. */
    private static final double MOST_GAIN_DB = 7;

    static Stream<LossModel> models() {
        return LossModels.all().stream().filter(model -> !model.name().equals("full-wave"));
    }

    @ParameterizedTest
    @MethodSource("models")
    void partsAddUpAndFreeSpaceComesFirst(LossModel model) {
        Random random = new Random(1);
        for (int i = 0; i < 100; i++) {
            PathLoss loss = model.loss(PaperGround.rolling(random), terminals(random), conditions(random));
            assertEquals(model.name(), loss.model());
            assertEquals(
                    loss.lossDb(),
                    loss.parts().stream().mapToDouble(LossPart::db).sum(),
                    1e-9);
            assertEquals("free space", loss.parts().get(0).name());
            assertEquals(loss.freeSpaceDb(), loss.parts().get(0).db(), 1e-9);
            assertTrue(
                    loss.steps().stream().allMatch(step -> Double.isFinite(step.value())),
                    loss.steps().toString());
        }
    }

    @ParameterizedTest
    @MethodSource("models")
    void swappingTheEndsChangesNothing(LossModel model) {
        Random random = new Random(2);
        for (int i = 0; i < 150; i++) {
            Profile profile = PaperGround.rolling(random);
            Terminals terminals = terminals(random);
            PathConditions there = conditions(random);
            PathConditions back = new PathConditions(
                    there.frequency(),
                    there.polarization(),
                    there.ground(),
                    there.atmosphere(),
                    Swapped.climate(there.climate()));
            double one = model.loss(profile, terminals, there).lossDb();
            double other = model.loss(Profiles.reversed(profile), Swapped.ends(terminals), back)
                    .lossDb();
            assertEquals(one, other, RECIPROCITY_DB, "path " + i);
        }
    }

    @ParameterizedTest
    @MethodSource("models")
    void noGroundMakesASignalStrongerThanTwiceTheField(LossModel model) {
        Random random = new Random(3);
        for (int i = 0; i < 200; i++) {
            PathLoss loss = model.loss(PaperGround.rolling(random), terminals(random), conditions(random));
            assertTrue(loss.excessDb() > -MOST_GAIN_DB, model.name() + " gains " + -loss.excessDb() + " on path " + i);
        }
    }

    @ParameterizedTest
    @MethodSource("models")
    void everyShapeOfProfileIsAnswered(LossModel model) {
        PathConditions conditions = UsualConditions.at(new Frequency(150));
        Terminals hands = new Terminals(1.5, 1.5);
        int many = 200_000;
        double[] d = new double[many];
        double[] h = new double[many];
        Random random = new Random(4);
        for (int i = 0; i < many; i++) {
            d[i] = i * 0.0003;
            h[i] = 50 * Math.sin(i / 9000.0) + random.nextDouble();
        }
        double[] low = {-430, -431, -429, -420, -430};
        List<Profile> shapes = List.of(
                PaperGround.flat(0.05, 2),
                PaperGround.flat(5, 2),
                PaperGround.flat(12, 400),
                PaperGround.flat(500, 3000),
                PaperGround.flat(60, many),
                Profiles.of(new double[] {0, 1, 2, 3, 4}, low),
                Profiles.of(new double[] {0, 2, 4}, new double[] {0, 8000, 0}),
                Profiles.of(d, h));
        for (Profile shape : shapes)
            assertTrue(Double.isFinite(model.loss(shape, hands, conditions).lossDb()));
    }

    @ParameterizedTest
    @MethodSource("models")
    void whatNoModelCanAnswerIsRefusedInPlainWords(LossModel model) {
        PathConditions conditions = UsualConditions.at(new Frequency(150));
        Terminals hands = new Terminals(1.5, 1.5);
        for (Profile nonsense : List.of(
                PaperGround.flat(0.049, 4),
                PaperGround.flat(30_000, 4),
                Profiles.of(new double[] {0, 1, 2}, new double[] {0, 50_000, 0}))) {
            NoAnswer fault = assertThrows(NoAnswer.class, () -> model.loss(nonsense, hands, conditions), model.name());
            assertTrue(fault.getMessage().matches("the .*\\."), fault.getMessage());
        }
    }

    @ParameterizedTest
    @MethodSource("models")
    void theAnswerIsTheSameInEveryLocaleAndThread(LossModel model) {
        Profile profile = PaperGround.tenKilometres(true);
        PathConditions conditions = UsualConditions.at(new Frequency(446));
        PathLoss here = model.loss(profile, new Terminals(1.5, 1.5), conditions);
        List<PathLoss> elsewhere = Stream.generate(() -> profile)
                .limit(64)
                .parallel()
                .map(p -> model.loss(p, new Terminals(1.5, 1.5), conditions))
                .toList();
        assertEquals(new HashSet<>(List.of(here)), new HashSet<>(elsewhere));
    }

    @Test
    void everyNameFindsItsModelAndNothingElseDoes() {
        assertEquals(LossModels.all().size(), new HashSet<>(LossModels.KEYWORD.words()).size());
        for (String name : LossModels.KEYWORD.words()) {
            assertEquals(name, LossModels.KEYWORD.find(name).orElseThrow().name());
            assertEquals(name, name.toLowerCase(Locale.ROOT));
        }
        assertEquals(Optional.empty(), LossModels.KEYWORD.find("free space"));
        assertTrue(LossModels.KEYWORD
                .words()
                .containsAll(Arrays.asList(
                        "free-space", "two-ray", "single-edge", "deygout", "bullington", "delta-bullington", "p1812")));
    }

    private static Terminals terminals(Random random) {
        return new Terminals(0.8 + random.nextDouble() * 12, 0.8 + random.nextDouble() * 2.2);
    }

    private static PathConditions conditions(Random random) {
        return new PathConditions(
                new Frequency(30 + random.nextDouble() * 900),
                Polarization.values()[random.nextInt(2)],
                GroundType.values()[random.nextInt(7)].ground(),
                Atmosphere.ofGradient(20 + random.nextDouble() * 60, 325),
                new Climate(
                        1 + random.nextDouble() * 49,
                        50,
                        random.nextDouble() * 120 - 60,
                        random.nextDouble() * 5,
                        random.nextDouble() * 5));
    }
}
