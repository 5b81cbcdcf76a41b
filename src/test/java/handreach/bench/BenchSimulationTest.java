package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Sessions drawn at random from a known truth: how often a 95 % interval holds it, and how often a
 * session says "told apart" of antennas that are alike. Seeds are fixed; the bands are several standard errors of the count.
 */
class BenchSimulationTest {
    private static final SessionKey KEY = new SessionKey(Mounting.of("hand"), OptionalDouble.of(155));
    private static final int SESSIONS = 400;
    /** Where the share of sessions itself is asked for: standard error 0.004. */
    private static final int MANY_SESSIONS = 2500;

    /** Asked of the 95 % intervals: 2400 intervals a scenario and more, standard error 0.005 where antennas share the control. */
    private static final double LEAST_COVERAGE = 0.93;

    private static final double MOST_COVERAGE = 0.97;
    /** Asked of the session as a whole: at most 5 % by the method if degrees of freedom were exact, 5.1 % found in 15 000 sessions of four turns; standard error of 2500 sessions 0.004. */
    private static final double MOST_FALSE_SESSIONS = 0.06;
    /** Drift taken out and its doubt carried. */
    private static final double LEAST_COVERAGE_UNDER_DRIFT = 0.92;

    /**
     * A kind of session: antennas all alike, each turn in the same order, the control first.
     *
     * @param others antennas beside the control
     * @param trials turns
     * @param scatterDb of a single reading
     * @param trialDb scatter common to a turn
     * @param driftDb from reading to reading
     * @param stepDb step in which levels are written
     */
    private record Scenario(int others, int trials, double scatterDb, double trialDb, double driftDb, double stepDb) {
        MountResult draw(Random random) {
            LevelSession session = new LevelSession(Bench.declaringNothing());
            for (int trial = 1, place = 0; trial <= trials; trial++) {
                double turn = trialDb * random.nextGaussian();
                for (int k = 0; k <= others; k++) {
                    double level = -42 + turn + driftDb * place++ + scatterDb * random.nextGaussian();
                    double shown = stepDb * Math.rint(level / stepDb);
                    session.add(
                            new Reading(
                                    "a" + k,
                                    KEY.mounting(),
                                    new Reading.Measured(Quantity.RECEIVED_LEVEL, shown, stepDb),
                                    KEY.frequencyMhz(),
                                    OptionalInt.of(trial),
                                    new Reading.Row(place, "")),
                            shown,
                            stepDb);
                }
            }
            session.setControl("a0");
            return new MountResult(KEY, session, LevelComparison.compared(KEY, session, "a0", new ArrayList<>()));
        }
    }

    private record Tally(double coverage, double falseSessions, double winner, double together, double corrected) {
        static Tally of(Scenario scenario, int sessions, long start) {
            Random random = new Random(start);
            int held = 0;
            int intervals = 0;
            int wrong = 0;
            int winner = 0;
            int together = 0;
            int corrected = 0;
            for (int i = 0; i < sessions; i++) {
                MountResult mount = scenario.draw(random);
                for (AntennaResult a : mount.antennas()) {
                    intervals++;
                    if (a.delta().interval95().orElseThrow().contains(0)) held++;
                }
                if (mount.antennas().stream().anyMatch(AntennaResult::toldApart)) wrong++;
                if (mount.drift().map(ControlDrift::significant).orElse(false)) corrected++;
                AntennaResult best = mount.antennas().stream()
                        .max(Comparator.comparingDouble(a -> a.delta().db()))
                        .orElseThrow();
                if (best.delta().interval95().orElseThrow().contains(0)) winner++;
                if (best.intervalTogether().orElseThrow().contains(0)) together++;
            }
            return new Tally(
                    (double) held / intervals,
                    (double) wrong / sessions,
                    (double) winner / sessions,
                    (double) together / sessions,
                    (double) corrected / sessions);
        }
    }

    @Test
    void pairsOfFourTrialsAndMoreCoverAndSeldomTellAlikeApart() {
        for (int trials : List.of(4, 6, 10)) {
            Tally tally = Tally.of(new Scenario(6, trials, 1, 1, 0, 0.1), MANY_SESSIONS, 400 + trials);
            assertTrue(
                    tally.coverage() >= LEAST_COVERAGE && tally.coverage() <= MOST_COVERAGE,
                    trials + " trials " + tally);
            assertTrue(tally.falseSessions() <= MOST_FALSE_SESSIONS, trials + " trials " + tally);
        }
    }

    /** Two or three turns: the interval is honest, and of alike antennas nothing is ever told apart. */
    @Test
    void fewerThanFourTrialsGiveNoVerdict() {
        for (int trials : List.of(2, 3)) {
            Tally tally = Tally.of(new Scenario(6, trials, 0.3, 0.5, 0, 0.1), SESSIONS, 40 + trials);
            assertTrue(tally.coverage() >= LEAST_COVERAGE, trials + " trials " + tally);
            assertEquals(0, tally.falseSessions(), 0);
        }
    }

    /** 0.15 dB a reading, the same order each turn: without correction 0.74 of the intervals hold for six turns, 0.57 for ten. */
    @Test
    void driftThatIsSeenIsTakenOutAndItsDoubtCarried() {
        for (int trials : List.of(6, 10)) {
            Tally tally = Tally.of(new Scenario(6, trials, 1, 0, 0.15, 0.01), SESSIONS, 60 + trials);
            assertTrue(tally.coverage() >= LEAST_COVERAGE_UNDER_DRIFT, trials + " trials " + tally);
            assertTrue(tally.falseSessions() <= MOST_FALSE_SESSIONS + 0.02, trials + " trials " + tally);
        }
    }

    /** The best of many looks better than it is; the interval for all of them together holds for the one picked. */
    @Test
    void theWinnersOwnIntervalIsTooNarrowAndTheCommonOneIsNot() {
        for (int others : List.of(7, 20)) {
            Tally tally = Tally.of(new Scenario(others, 6, 1, 0.5, 0, 0.01), SESSIONS, 80 + others);
            assertTrue(tally.winner() < 0.93, others + " antennas " + tally);
            assertTrue(tally.together() >= 0.94, others + " antennas " + tally);
        }
    }
}
