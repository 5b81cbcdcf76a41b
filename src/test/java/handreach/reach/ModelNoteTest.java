package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.profile.CutSettings;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.propagation.radial.Radial;
import handreach.terrain.Cover;
import handreach.terrain.LandCover;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Warnings of the model on their way from the paths of an area to its result. */
class ModelNoteTest {
    private static final Position SOURCE = new Position(46.5, 8.1);
    private static final PathConditions CHANNEL = UsualConditions.at(new Frequency(900));
    private static final double RADIUS_M = 2500;
    private static final int LOOKED = 8;

    /** The second pair stands lower than the handheld model is meant for. */
    private static final List<Terminals> HEIGHTS = List.of(new Terminals(1.6, 1.5), new Terminals(0.4, 1.5));

    @ParameterizedTest
    @CsvSource({"handheld", "p1812", "two-ray"})
    void everyWarningOfEveryPathLookedAtIsCountedOnce(String model) { // oracle: the paths asked one by one
        AreaGround ground = wild(900);
        List<BearingLosses> losses = losses(model, ground, HEIGHTS);
        TreeMap<String, TreeSet<Integer>> bearings = new TreeMap<>();
        TreeMap<String, Double> nearest = new TreeMap<>();
        for (int k = 0; k < HEIGHTS.size(); k++)
            for (int number = 0; number < 12; number++) {
                RadialLosses radial = losses.get(k).radials().get(number);
                Radial ray = ray(ground, number);
                int first = ray.known() - radial.knownCount();
                for (int step = 0; step <= LOOKED; step++) {
                    int i = step * (radial.knownCount() - 1) / LOOKED;
                    for (String said : named(model)
                            .loss(ray.profile(first + i + 1), HEIGHTS.get(k), CHANNEL)
                            .warnings()) {
                        bearings.computeIfAbsent(kind(said), s -> new TreeSet<>())
                                .add(number);
                        nearest.merge(kind(said), i == 0 ? 0 : radial.distanceM(i), Math::min);
                    }
                }
            }
        List<ModelNote> notes = ModelNote.of(losses);
        assertEquals(bearings.size(), notes.size(), notes.toString());
        assertTrue(!notes.isEmpty(), model + " warns of something on this ground");
        for (ModelNote note : notes) {
            String kind = kind(note.sentence());
            assertEquals(12, note.of());
            assertEquals(bearings.get(kind).size(), note.bearings(), kind);
            assertEquals(nearest.get(kind), note.firstM().orElse(0), kind);
        }
    }

    @Test
    void theMarchHandsOnWhatItsPathsWarnOf() {
        PathConditions channel = UsualConditions.at(new Frequency(146));
        AreaGround ground = wild(270);
        BearingRequest request = new BearingRequest(SOURCE, RADIUS_M, 30, channel, LossModels.FULL_WAVE);
        List<Terminals> one = HEIGHTS.subList(0, 1);
        List<ModelNote> notes = ModelNote.of(BearingLosses.of(request, one, ground, 2, Progress.SILENT));
        List<String> kinds = notes.stream().map(note -> kind(note.sentence())).toList();
        List<String> missing = new ArrayList<>();
        for (int number = 0; number < 12; number++) {
            Radial ray = ray(ground, number);
            for (String said : LossModels.FULL_WAVE
                    .loss(ray.profile(ray.known()), one.get(0), channel)
                    .warnings()) if (!kinds.contains(kind(said))) missing.add(said);
        }
        assertEquals(List.of(), missing);
        assertTrue(kinds.stream().anyMatch(kind -> kind.contains("slopes")), kinds.toString());
        assertTrue(kinds.stream().anyMatch(kind -> kind.startsWith("Trees and buildings")), kinds.toString());
    }

    @Test
    void aPathTooShortForTheModelIsSaidOfTheNearestOnly() { // by hand: P.1812 holds from 250 m; looked at 50 m and
        // at 313 m
        List<ModelNote> notes = ModelNote.of(losses("p1812", wild(0), HEIGHTS.subList(0, 1)));
        ModelNote shorter = notes.stream()
                .filter(note -> note.sentence().startsWith("The path length"))
                .findFirst()
                .orElseThrow();
        assertEquals(OptionalDouble.empty(), shorter.firstM());
        assertTrue(shorter.lastM().orElseThrow() < 250);
        assertTrue(!shorter.isEverywhere());
    }

    @Test
    void whatTheModelHasNoDoubtAboutLeavesNoNote() {
        AreaGround open = new AreaGround(PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 65, 0, 0.5));
        assertEquals(List.of(), ModelNote.of(losses("handheld", open, HEIGHTS.subList(0, 1))));
    }

    private static LossModel named(String word) {
        return LossModels.KEYWORD.find(word).orElseThrow();
    }

    private static String kind(String sentence) {
        return sentence.replaceAll("[0-9.]+", "#");
    }

    private static List<BearingLosses> losses(String model, AreaGround ground, List<Terminals> heights) {
        return BearingLosses.of(
                new BearingRequest(SOURCE, RADIUS_M, 30, CHANNEL, named(model)), heights, ground, 2, Progress.SILENT);
    }

    private static Radial ray(AreaGround ground, int number) {
        AreaSetting setting = new AreaSetting(SOURCE, RADIUS_M, CHANNEL, LossModels.HANDHELD, ground);
        Radial ray = new Radial();
        setting.cut(setting.sampler(), Math.toRadians(30 * number), RADIUS_M, ray);
        return ray;
    }

    /** Mountains of this relief under stripes of wood, town and open ground. */
    private static AreaGround wild(double reliefM) {
        LandCover stripes = (lat, lon, count, out) -> {
            Cover[] kinds = {Cover.OPEN, Cover.WOODLAND, Cover.SUBURBAN};
            for (int i = 0; i < count; i++) out[i] = kinds[Math.floorMod((int) Math.floor(lon[i] * 200), 3)];
        };
        return new AreaGround(
                PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 65, reliefM, 0.5), stripes, CutSettings.DEFAULT);
    }
}
