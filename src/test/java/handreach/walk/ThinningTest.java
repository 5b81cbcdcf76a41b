package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.reach.Progress;
import handreach.terrain.Cover;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The quick sums over near places against the plain sums over all pairs. */
class ThinningTest {
    /** As {@link Thinning#weights} says in its @error. */
    private static final double TOLERANCE = 1e-6;

    private static final Position CAMP = new Position(36.27, -84.21);
    private static final double[] DECORRELATIONS_M = {5, 20, 50, 400};

    private static WalkPair at(Position at, int line, double errorDb) {
        WalkPair.Spot spot = new WalkPair.Spot(line, at, line, 0, 1000, Cover.OPEN);
        WalkPair.Link link = new WalkPair.Link("l", Direction.TO_WALKER, "face", "face", -110, 8);
        return new WalkPair(spot, link, 0, new Reception(Reception.Kind.LEVEL, -110 - errorDb), errorDb <= 0);
    }

    /** A walk that turns at random, a report each step. */
    private static List<Position> wandering(Random random, Position start, int steps, double stepM) {
        List<Position> walk = new ArrayList<>();
        Position here = start;
        double bearing = 360 * random.nextDouble();
        for (int i = 0; i < steps; i++) {
            walk.add(here);
            bearing += 25 * random.nextGaussian();
            here = GeodesicLine.destination(here, bearing, stepM);
        }
        return walk;
    }

    private static List<Position> straight(Position start, int steps, double stepM) {
        List<Position> walk = new ArrayList<>();
        for (int i = 0; i < steps; i++) walk.add(GeodesicLine.destination(start, 80, i * stepM));
        return walk;
    }

    /** A figure of eight walked three times: it crosses itself, and goes over its own places again. */
    private static List<Position> crossing() {
        List<Position> walk = new ArrayList<>();
        for (int i = 0; i < 600; i++) {
            double t = 2 * Math.PI * (i % 200) / 200;
            walk.add(new Position(
                    CAMP.latitudeDeg() + 0.004 * Math.sin(2 * t), CAMP.longitudeDeg() + 0.009 * Math.sin(t)));
        }
        return walk;
    }

    /** Standing still as a receiver sees it: some metres of scatter. */
    private static List<Position> scattered(Random random, Position middle, int count) {
        List<Position> places = new ArrayList<>();
        for (int i = 0; i < count; i++)
            places.add(GeodesicLine.destination(middle, 360 * random.nextDouble(), 4 * random.nextDouble()));
        return places;
    }

    private static List<Position> both(List<Position> one, List<Position> other) {
        return Stream.concat(one.stream(), other.stream()).toList();
    }

    private static Stream<Arguments> walks() {
        Random random = new Random(20260504);
        Position far = GeodesicLine.destination(CAMP, 40, 60_000);
        List<Position> crowd = scattered(random, CAMP, 400);
        // one place alone, where the correlation with each of a crowd is just below 1e-6 for 20 m: 400 of them still
        // count
        List<Position> alone = List.of(GeodesicLine.destination(CAMP, 90, 14 * 20));
        return Stream.of(
                Arguments.of("random, 1 m steps", wandering(random, CAMP, 500, 1)),
                Arguments.of("random, 10 m steps", wandering(random, CAMP, 500, 10)),
                Arguments.of("random, 90 m steps", wandering(random, CAMP, 300, 90)),
                Arguments.of("crossing itself", crossing()),
                Arguments.of("all in one place", java.util.Collections.nCopies(300, CAMP)),
                Arguments.of("standing still", crowd),
                Arguments.of("a crowd and one alone", both(crowd, alone)),
                Arguments.of(
                        "two walks far apart", both(wandering(random, CAMP, 200, 10), wandering(random, far, 200, 10))),
                Arguments.of("over the date line", straight(new Position(-17, 179.995), 300, 10)),
                Arguments.of("far north", wandering(random, new Position(79.9, 15), 300, 10)),
                Arguments.of("one report", List.of(CAMP)));
    }

    private static List<WalkPair> pairs(List<Position> walk) {
        Random random = new Random(walk.size());
        List<WalkPair> pairs = new ArrayList<>();
        for (Position at : walk) pairs.add(at(at, pairs.size(), 8 * random.nextGaussian()));
        return pairs;
    }

    private static double apartM(WalkPair a, WalkPair b) {
        return Neighbourhood.apartM(a.spot().at(), b.spot().at());
    }

    /** One over the sum over all pairs. */
    private static double plainWeight(WalkPair of, List<WalkPair> all, double decorrelationM) {
        double sum = 0;
        for (WalkPair other : all) sum += Math.exp(-apartM(of, other) / decorrelationM);
        return 1 / sum;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("walks")
    void quickWeightsAreThoseOfAllPairs(String name, List<Position> walk) {
        List<WalkPair> pairs = pairs(walk);
        for (double decorrelationM : DECORRELATIONS_M) {
            double[] weight = Thinning.weights(pairs, decorrelationM, Progress.SILENT);
            for (int i = 0; i < weight.length; i++) {
                double plain = plainWeight(pairs.get(i), pairs, decorrelationM);
                assertEquals(plain, weight[i], TOLERANCE * plain, name + ", " + decorrelationM + " m, report " + i);
            }
        }
    }

    /** Five sets, of which some reports are in none and some in all. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("walks")
    void setsWeighedTogetherWeighAsTheyDoAlone(String name, List<Position> walk) {
        List<WalkPair> pairs = pairs(walk);
        Neighbourhood near = Neighbourhood.of(pairs);
        Random random = new Random(5);
        int[] ofPlace = random.ints(near.places(), 0, 32).toArray();
        int[] sets = new int[pairs.size()];
        Arrays.setAll(sets, i -> ofPlace[near.place(i)]);
        double[][] weight = Thinning.weights(near, sets, 5, 20, Progress.SILENT);
        for (int s = 0; s < 5; s++) {
            List<WalkPair> members = new ArrayList<>();
            for (int i = 0; i < sets.length; i++) if ((sets[i] >> s & 1) == 1) members.add(pairs.get(i));
            for (int i = 0; i < sets.length; i++) {
                double plain = (sets[i] >> s & 1) == 1 ? plainWeight(pairs.get(i), members, 20) : 0;
                assertEquals(plain, weight[s][i], TOLERANCE * plain, name + ", set " + s + ", report " + i);
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("walks")
    void eachTwoNearPlacesMeetOnce(String name, List<Position> walk) {
        Neighbourhood near = Neighbourhood.of(pairs(walk));
        List<Position> places = walk.stream().distinct().toList();
        for (double reachM : new double[] {3, 100, 1500}) {
            int[][] met = new int[places.size()][places.size()];
            near.within(reachM, Progress.SILENT, "", (a, b, apartM) -> {
                met[a][b]++;
                met[b][a]++;
                assertEquals(Neighbourhood.apartM(places.get(a), places.get(b)), apartM, 1e-7 * apartM + 1e-6, name);
            });
            for (int a = 0; a < places.size(); a++)
                for (int b = 0; b < places.size(); b++) {
                    double apartM = Neighbourhood.apartM(places.get(a), places.get(b));
                    if (Math.abs(apartM - reachM) < 1e-6) continue;
                    assertEquals(a != b && apartM < reachM ? 1 : 0, met[a][b], name + ", " + reachM + " m");
                }
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("walks")
    void distancesOverThePlaneAreNearlyGeodesic(String name, List<Position> walk) {
        Position first = walk.get(0);
        for (Position at : walk.stream()
                .filter(p -> GeodesicLine.distanceM(first, p) < 3000)
                .toList()) {
            double geodesicM = GeodesicLine.distanceM(first, at);
            assertEquals(geodesicM, Neighbourhood.apartM(first, at), 0.006 * geodesicM + 1e-6, name);
        }
    }

    /** Each stretch predicted by a calibration of its own from the reports that lie far enough, found one by one. */
    @Test
    void theHeldBackCheckIsThatOfFiveCalibrations() {
        Random random = new Random(6);
        List<WalkPair> pairs = pairs(both(crossing(), wandering(random, CAMP, 300, 40)));
        BlockedCheck check =
                BlockedCheck.of(pairs, 50, Priors.USUAL, Progress.SILENT).orElseThrow();
        List<WalkPair> after = new ArrayList<>();
        int used = 0;
        for (int s = 0; s < 5; s++) {
            List<WalkPair> held = pairs.subList(pairs.size() * s / 5, pairs.size() * (s + 1) / 5);
            List<WalkPair> learned = pairs.stream()
                    .filter(pair -> held.stream().allMatch(other -> apartM(pair, other) >= 50))
                    .toList();
            if (learned.isEmpty()) continue;
            used++;
            Calibration calibration = Calibration.of(learned, 50, Priors.USUAL, List.of(), Progress.SILENT);
            for (WalkPair pair : held) after.add(calibration.corrected(pair));
        }
        double square = after.stream()
                .mapToDouble(pair -> pair.errorDb() * pair.errorDb())
                .average()
                .orElseThrow();
        assertEquals(used, check.stretches());
        assertEquals(after.size(), check.reports());
        assertEquals(Math.sqrt(square), check.rmseAfterDb().orElseThrow(), 1e-4);
        assertEquals(Comparison.brier(after), check.brierAfter(), 1e-5);
    }
}
