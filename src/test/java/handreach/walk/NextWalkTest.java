package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.reach.Progress;
import handreach.walk.NextWalk.Belief;
import handreach.walk.NextWalk.Candidate;
import handreach.walk.NextWalk.Instrument;
import handreach.walk.NextWalk.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class NextWalkTest {
    private static final double DECORRELATION_M = 50;
    private static final double FADING_DB = 2;
    /** Rounding of two ways to invert the same matrix. */
    private static final double ROUNDING = 1e-9;

    private static final Position START = new Position(45, 7);

    private static Position at(double metres) {
        return GeodesicLine.destination(START, 90, metres);
    }

    private static Belief belief(double doubtDb, Instrument instrument) {
        return new Belief(List.of(List.of(doubtDb * doubtDb)), DECORRELATION_M, instrument, FADING_DB);
    }

    private static Candidate candidate(double metres, double marginDb) {
        return new Candidate(at(metres), 0, marginDb, 8);
    }

    private static NextWalk even(double doubtDb, Instrument instrument, int reports, Candidate... candidates) {
        return NextWalk.of(
                List.of(new Question(0, 0, 1)),
                List.of(candidates),
                belief(doubtDb, instrument),
                reports,
                Progress.SILENT);
    }

    /**
     * By hand: shift 6 dB, spread 8 dB, fading 2 dB. One level: s² = 36²/(36 + 64 + 4) = 12.4615. Two at one place share the
     * shadowing: 2·36²/(104 + 100) = 12.7059. Two far apart: 2·36²/(104 + 36) = 18.5143. Each times φ(0) = 0.398942 of its root.
     */
    @Test
    void levelsAreWorthWhatWasDerivedByHand() {
        assertEquals(1.40830, even(6, Instrument.LEVEL, 1, candidate(0, 3)).valueDb(), 1e-5);
        assertEquals(
                1.42204,
                even(6, Instrument.LEVEL, 2, candidate(0, 3), candidate(0, 3)).valueDb(),
                1e-5);
        assertEquals(
                1.71657,
                even(6, Instrument.LEVEL, 2, candidate(0, 3), candidate(9000, 3))
                        .valueDb(),
                1e-5);
        assertEquals(2.39365, even(6, Instrument.LEVEL, 1, candidate(0, 3)).perfectDb(), 1e-5);
    }

    @Test
    void twoNearPointsDoNotCountTwice() {
        NextWalk walk = even(6, Instrument.LEVEL, 2, candidate(0, 0), candidate(5, 0), candidate(4000, 0));
        List<Integer> chosen =
                walk.picks().stream().map(NextWalk.Pick::candidate).toList();
        assertTrue(chosen.contains(2), chosen.toString());
        double near = even(6, Instrument.LEVEL, 2, candidate(0, 0), candidate(5, 0))
                .picks()
                .get(1)
                .addsDb();
        double far = even(6, Instrument.LEVEL, 2, candidate(0, 0), candidate(4000, 0))
                .picks()
                .get(1)
                .addsDb();
        assertTrue(near < 0.2 * far, near + " and " + far);
    }

    @Test
    void moreDoubtMakesAReportWorthMore() {
        double last = 0;
        for (double doubt = 1; doubt < 15; doubt++) {
            double value = even(doubt, Instrument.COPY, 1, candidate(0, 2)).valueDb();
            assertTrue(value > last, doubt + " dB");
            last = value;
        }
    }

    @Test
    void aPlaceWhoseCopyIsCertainTeachesNothingAndIsNotChosen() {
        assertTrue(even(6, Instrument.COPY, 1, candidate(0, 90)).valueDb() < 1e-4);
        assertTrue(even(6, Instrument.COPY, 1, candidate(0, -90)).valueDb() < 1e-4);
        NextWalk walk = even(6, Instrument.COPY, 1, candidate(0, 90), candidate(2000, 4), candidate(4000, -90));
        assertEquals(1, walk.picks().get(0).candidate());
        double level = even(6, Instrument.LEVEL, 1, candidate(0, 90)).valueDb();
        assertTrue(level > 1, "a level teaches even where copy is certain");
    }

    /** Limits: no report is worth more than to know; many reports far apart come near it. */
    @Test
    void manyReportsComeNearToKnowing() {
        Candidate[] many = new Candidate[60];
        for (int i = 0; i < many.length; i++) many[i] = candidate(1000 * i, 0);
        NextWalk walk = even(6, Instrument.LEVEL, 60, many);
        assertTrue(walk.valueDb() < walk.perfectDb());
        assertTrue(walk.valueDb() > 0.97 * walk.perfectDb());
        assertTrue(walk.answers().get(0).doubtAfterDb() < 1.2);
        assertEquals(6, walk.answers().get(0).doubtBeforeDb(), 1e-12);
    }

    @Test
    void aSettledQuestionIsWorthNothingAndTheAnswerWillNotChange() {
        NextWalk walk = NextWalk.of(
                List.of(new Question(0, 60, 1)),
                List.of(candidate(0, 0), candidate(2000, 0)),
                belief(6, Instrument.LEVEL),
                2,
                Progress.SILENT);
        assertTrue(walk.valueDb() < 1e-9);
        assertTrue(walk.answers().get(0).chanceOfChange() < 1e-9);
        assertEquals(2, walk.picks().size());
    }

    /** Two kinds of link that share nothing: only the one in question is asked about. */
    @Test
    void onlyReportsThatBearOnTheQuestionAreChosen() {
        Belief apart = new Belief(
                List.of(List.of(36.0, 0.0), List.of(0.0, 36.0)), DECORRELATION_M, Instrument.LEVEL, FADING_DB);
        List<Candidate> candidates = List.of(
                new Candidate(at(0), 0, 0, 8), new Candidate(at(1000), 0, 0, 8), new Candidate(at(2000), 1, 0, 8));
        NextWalk walk = NextWalk.of(List.of(new Question(1, 0, 1)), candidates, apart, 1, Progress.SILENT);
        assertEquals(2, walk.picks().get(0).candidate());
    }

    /** A random small case: kinds with shared and own doubt, places on a line. */
    private record Case(List<Question> questions, List<Candidate> candidates, Belief belief) {
        static Case drawn(Random random, Instrument instrument) {
            int kinds = 3;
            double common = 1 + 50 * random.nextDouble();
            double own = 1 + 20 * random.nextDouble();
            List<List<Double>> covariance = new ArrayList<>();
            for (int a = 0; a < kinds; a++) {
                List<Double> row = new ArrayList<>();
                for (int b = 0; b < kinds; b++) row.add(common + (a == b ? own : 0));
                covariance.add(row);
            }
            List<Question> questions = new ArrayList<>();
            for (int q = 0; q < 4; q++)
                questions.add(
                        new Question(random.nextInt(kinds), 8 * random.nextGaussian(), 0.2 + random.nextDouble()));
            List<Candidate> candidates = new ArrayList<>();
            for (int i = 0; i < 9; i++)
                candidates.add(new Candidate(
                        at(400 * random.nextDouble()),
                        random.nextInt(kinds),
                        12 * random.nextGaussian(),
                        6 + 4 * random.nextDouble()));
            return new Case(questions, candidates, new Belief(covariance, DECORRELATION_M, instrument, FADING_DB));
        }

        /** Value of a set by the full matrices: the plain way. */
        double value(int... set) {
            int n = set.length;
            RealMatrix k = new Array2DRowRealMatrix(n, n);
            for (int i = 0; i < n; i++)
                for (int j = 0; j < n; j++) {
                    Candidate a = candidates.get(set[i]);
                    Candidate b = candidates.get(set[j]);
                    double metres = Neighbourhood.apartM(a.at(), b.at());
                    double alike = i == j ? 1 : Math.exp(-metres / DECORRELATION_M);
                    double sum = shared(a.kind(), b.kind()) + a.spreadDb() * b.spreadDb() * alike;
                    if (i == j) sum += noise(a);
                    k.setEntry(i, j, sum);
                }
            RealMatrix inverse = new LUDecomposition(k).getSolver().getInverse();
            double sum = 0;
            double weights = 0;
            for (Question q : questions) {
                double[] c = new double[n];
                for (int i = 0; i < n; i++)
                    c[i] = shared(q.kind(), candidates.get(set[i]).kind());
                double taken = 0;
                for (int i = 0; i < n; i++) for (int j = 0; j < n; j++) taken += c[i] * inverse.getEntry(i, j) * c[j];
                sum += q.weight() * ReportValue.expectedDb(q.marginDb(), Math.sqrt(Math.max(0, taken)));
                weights += q.weight();
            }
            return sum / weights;
        }

        private double shared(int a, int b) {
            return belief.shiftCovarianceDb2().get(a).get(b);
        }

        private double noise(Candidate a) {
            if (belief.instrument() == Instrument.LEVEL) return FADING_DB * FADING_DB;
            double doubt = Math.sqrt(shared(a.kind(), a.kind()));
            return ReportValue.copyVarianceDb2(a.marginDb(), a.spreadDb(), doubt) - a.spreadDb() * a.spreadDb();
        }
    }

    @Test
    void itsSetsAreAsGoodAsTheBestOfAllSets() {
        Random random = new Random(11);
        int best = 0;
        int cases = 60;
        for (int c = 0; c < cases; c++) {
            Case one = Case.drawn(random, c % 2 == 0 ? Instrument.COPY : Instrument.LEVEL);
            NextWalk walk = NextWalk.of(one.questions(), one.candidates(), one.belief(), 3, Progress.SILENT);
            int[] set = walk.picks().stream().mapToInt(NextWalk.Pick::candidate).toArray();
            assertEquals(one.value(set), walk.valueDb(), ROUNDING);
            assertEquals(
                    walk.valueDb(),
                    walk.picks().stream().mapToDouble(NextWalk.Pick::addsDb).sum(),
                    1e-9);
            double most = 0;
            for (int i = 0; i < 9; i++)
                for (int j = 0; j < i; j++) for (int k = 0; k < j; k++) most = Math.max(most, one.value(i, j, k));
            assertTrue(walk.valueDb() >= 0.9 * most, walk.valueDb() + " of " + most);
            if (walk.valueDb() >= most * (1 - 1e-6)) best++;
        }
        assertTrue(best >= 0.9 * cases, best + " of " + cases);
    }

    /** The plain way: draw a site, walk the levels, believe by Bayes' rule, decide; against deciding at once. */
    @Test
    void theValueOfLevelsIsWhatWalkersGain() {
        Random random = new Random(5);
        double doubt = 6;
        double marginDb = 2.5;
        Candidate[] places = {candidate(0, 0), candidate(30, 0), candidate(3000, 0)};
        NextWalk walk = NextWalk.of(
                List.of(new Question(0, marginDb, 1)),
                List.of(places),
                belief(doubt, Instrument.LEVEL),
                3,
                Progress.SILENT);
        double rho = Math.exp(-30 / DECORRELATION_M);
        double[][] k = {
            {36 + 64 + 4, 36 + 64 * rho, 36}, {36 + 64 * rho, 36 + 64 + 4, 36}, {36, 36, 36 + 64 + 4},
        };
        double[] gain = new LUDecomposition(new Array2DRowRealMatrix(k))
                .getSolver()
                .getInverse()
                .operate(new double[] {36, 36, 36});
        int draws = 200_000;
        double later = 0;
        for (int i = 0; i < draws; i++) {
            double shift = doubt * random.nextGaussian();
            double first = 8 * random.nextGaussian();
            double second = rho * first + Math.sqrt(1 - rho * rho) * 8 * random.nextGaussian();
            double[] seen = {shift + first, shift + second, shift + 8 * random.nextGaussian()};
            double believed = 0;
            for (int j = 0; j < 3; j++) believed += gain[j] * (seen[j] + FADING_DB * random.nextGaussian());
            if (marginDb - believed > 0) later += marginDb - shift;
        }
        assertEquals(later / draws - marginDb, walk.valueDb(), 0.04);
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> even(6, Instrument.COPY, 0, candidate(0, 0)));
        assertThrows(IllegalArgumentException.class, () -> even(6, Instrument.COPY, 1));
        assertThrows(IllegalArgumentException.class, () -> new Candidate(START, 0, Double.NaN, 8));
        assertThrows(IllegalArgumentException.class, () -> new Question(0, Double.POSITIVE_INFINITY, 1));
        assertFalse(even(6, Instrument.COPY, 3, candidate(0, 0)).picks().size() > 1);
    }
}
