package handreach.walk;

import handreach.geodesy.Position;
import handreach.reach.Progress;
import handreach.reach.SubProgress;
import java.util.ArrayList;
import java.util.List;

/**
 * Which reports would teach most about a decision: a set of places and loadouts, chosen before anybody walks.
 *
 * @param picks reports in the order in which they were chosen, the most telling first
 * @param valueDb what all of them together are worth, dB of margin
 * @param perfectDb what it would be worth to know every shift of the loss exactly, dB of margin
 * @param answers what becomes of each question, in the order asked
 */
public record NextWalk(List<Pick> picks, double valueDb, double perfectDb, List<Answer> answers) {
    private static final int MOST_ROUNDS = 10;
    /** Share of the work after the set is grown: mostly two or three rounds of exchanges follow. */
    private static final double GROWN = 0.3;
    /** Gains below this are rounding. */
    private static final double NOTHING = 1e-12;

    /** What a report says. */
    public enum Instrument {
        /** Understood or not. */
        COPY,
        /** Level at the receiver, local mean. */
        LEVEL
    }

    /**
     * Something to be decided: is this margin above zero.
     *
     * @param kind whose shift of the loss it hangs on: row of the belief
     * @param marginDb margin beyond the wanted odds as believed now, dB
     * @param weight how much it counts, from 0
     */
    public record Question(int kind, double marginDb, double weight) {
        public Question {
            if (!Double.isFinite(marginDb) || !(weight >= 0) || Double.isInfinite(weight))
                throw new IllegalArgumentException("margin " + marginDb + " dB, weight " + weight);
        }
    }

    /**
     * A report that could be made.
     *
     * @param at where
     * @param kind whose shift of the loss it shows: row of the belief
     * @param marginDb margin of copy at the median place, dB
     * @param spreadDb spread between places, dB
     */
    public record Candidate(Position at, int kind, double marginDb, double spreadDb) {
        public Candidate {
            if (!Double.isFinite(marginDb) || !(spreadDb > 0))
                throw new IllegalArgumentException("margin " + marginDb + " dB, spread " + spreadDb + " dB");
        }
    }

    /**
     * What is believed now.
     *
     * @param shiftCovarianceDb2 covariance of the shifts of the loss, a row for each kind of link, dB²
     * @param decorrelationM distance over which the shadowing of places stays alike, m
     * @param instrument what a report says
     * @param fadingDb what is left of fading in a level, dB
     */
    public record Belief(
            List<List<Double>> shiftCovarianceDb2, double decorrelationM, Instrument instrument, double fadingDb) {
        public Belief {
            shiftCovarianceDb2 = shiftCovarianceDb2.stream().map(List::copyOf).toList();
            if (!(decorrelationM > 0) || !(fadingDb > 0))
                throw new IllegalArgumentException(
                        "decorrelation " + decorrelationM + " m, fading " + fadingDb + " dB");
            for (List<Double> row : shiftCovarianceDb2)
                if (row.size() != shiftCovarianceDb2.size()) throw new IllegalArgumentException("a square is expected");
        }

        double covariance(int a, int b) {
            return shiftCovarianceDb2.get(a).get(b);
        }

        double doubtDb(int kind) {
            return Math.sqrt(Math.max(0, covariance(kind, kind)));
        }
    }

    /**
     * One report of the proposal.
     *
     * @param candidate its number among the candidates
     * @param addsDb what it adds to those chosen before it, dB of margin
     */
    public record Pick(int candidate, double addsDb) {}

    /**
     * A question before and after the proposed reports.
     *
     * @param doubtBeforeDb standard uncertainty of its margin now, dB
     * @param doubtAfterDb the same after the reports, dB
     * @param chanceOfChange chance that the reports turn its answer round
     */
    public record Answer(double doubtBeforeDb, double doubtAfterDb, double chanceOfChange) {}

    public NextWalk {
        picks = List.copyOf(picks);
        answers = List.copyOf(answers);
    }

    /**
     * Proposes reports.
     *
     * <p>Shifts of the loss are normal; a report shows the shift of its link plus the shadowing of its place, which near-by places
     * share as exp(−distance/d), plus fading, or, for copies, a noise that stands for an outcome of yes or no. The value of a set of
     * reports is Σ w s L(|m|/s) over the questions, s² being the part of a margin's variance which the set takes away, c K⁻¹ c. The
     * set is grown by the report that adds most, then reports are exchanged as long as that gains.
     *
     * @shape  q questions, n candidates, r reports; O(r n (r² + q)) a round of exchanges, at most 10 rounds; pure;
     *     stops between candidates where nobody wants it
     * @unit   dB, m
     * @valid  at least one question with a weight and one candidate, reports from 1; outside: IllegalArgumentException
     * @error  greedy with exchange: the best of all sets in at least 9 of 10 small random cases, never below 90 % of it (test)
     * @source {@link ReportValue#expectedDb}; variance taken away: conditioning of the normal law; ρ: Gudmundson 1991 (from memory);
     *     exchange: Fedorov, Theory of Optimal Experiments (1972), chapter 3 (from memory)
     */
    public static NextWalk of(
            List<Question> questions, List<Candidate> candidates, Belief belief, int reports, Progress progress) {
        if (candidates.isEmpty() || reports < 1) throw new IllegalArgumentException("no report to choose");
        Choice choice = new Choice(questions, candidates, belief, progress);
        List<Integer> chosen = choice.grown(
                Math.min(reports, candidates.size()), new SubProgress(progress, "choosing reports", 0, GROWN));
        SubProgress exchanging = new SubProgress(progress, "exchanging reports", GROWN, 1);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double start = (double) round / MOST_ROUNDS;
            if (!choice.exchange(chosen, exchanging.part(start, start + 1.0 / MOST_ROUNDS))) break;
        }
        exchanging.done(1);
        return choice.walk(chosen);
    }

    /** The questions and candidates at work. */
    private static final class Choice {
        private final List<Question> questions;
        private final List<Candidate> candidates;
        private final Belief belief;
        private final Progress progress;
        private final double[] weight;
        private final double[] noiseDb2;

        Choice(List<Question> questions, List<Candidate> candidates, Belief belief, Progress progress) {
            this.questions = questions;
            this.candidates = candidates;
            this.belief = belief;
            this.progress = progress;
            double sum = questions.stream().mapToDouble(Question::weight).sum();
            if (!(sum > 0)) throw new IllegalArgumentException("nothing to decide");
            weight = questions.stream().mapToDouble(q -> q.weight() / sum).toArray();
            noiseDb2 = candidates.stream().mapToDouble(this::noise).toArray();
        }

        /** What a report shows besides the shift and the shadowing of its place. */
        private double noise(Candidate one) {
            if (belief.instrument() == Instrument.LEVEL) return belief.fadingDb() * belief.fadingDb();
            double shadowing = one.spreadDb() * one.spreadDb();
            return ReportValue.copyVarianceDb2(one.marginDb(), one.spreadDb(), belief.doubtDb(one.kind())) - shadowing;
        }

        List<Integer> grown(int reports, SubProgress growing) {
            List<Integer> chosen = new ArrayList<>();
            while (chosen.size() < reports) {
                chosen.add(best(set(chosen), chosen));
                growing.done((double) chosen.size() / reports);
            }
            return chosen;
        }

        /** The candidate that adds most; where nothing adds value yet, the one that takes most doubt away. */
        private int best(SiteBias set, List<Integer> chosen) {
            double now = value(set);
            int best = -1;
            double most = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < candidates.size(); i++) {
                progress.goOn();
                if (chosen.contains(i)) continue;
                SiteBias more = with(set, i);
                double gain = value(more) - now;
                double merit = gain > NOTHING ? 1 + gain : 1 - 1 / (1 + doubtTaken(more));
                if (merit > most) {
                    most = merit;
                    best = i;
                }
            }
            return best;
        }

        /** Exchanges each chosen report for a better one, if there is; tells whether there was. */
        boolean exchange(List<Integer> chosen, SubProgress round) {
            boolean found = false;
            for (int k = 0; k < chosen.size(); k++) {
                round.done((double) k / chosen.size());
                List<Integer> others = new ArrayList<>(chosen);
                int old = others.remove(k);
                SiteBias set = set(others);
                double kept = value(with(set, old));
                int other = best(set, others);
                if (other == old || value(with(set, other)) <= kept * (1 + 1e-9) + NOTHING) continue;
                chosen.set(k, other);
                found = true;
            }
            return found;
        }

        NextWalk walk(List<Integer> chosen) {
            List<Integer> left = new ArrayList<>(chosen);
            List<Pick> picks = new ArrayList<>();
            SiteBias set = set(List.of());
            while (!left.isEmpty()) {
                int next = left.get(0);
                for (int i : left) if (value(with(set, i)) > value(with(set, next))) next = i;
                double before = value(set);
                set = with(set, next);
                picks.add(new Pick(next, Math.max(0, value(set) - before)));
                left.remove((Integer) next);
            }
            List<Answer> answers = new ArrayList<>();
            double perfect = 0;
            for (int q = 0; q < questions.size(); q++) {
                Question question = questions.get(q);
                double before = belief.doubtDb(question.kind());
                double taken = set.takenDb2(question.kind());
                perfect += weight[q] * ReportValue.expectedDb(question.marginDb(), before);
                answers.add(new Answer(
                        before,
                        Math.sqrt(Math.max(0, before * before - taken)),
                        ReportValue.chanceOfChange(question.marginDb(), Math.sqrt(taken))));
            }
            return new NextWalk(picks, value(set), perfect, answers);
        }

        private SiteBias set(List<Integer> chosen) {
            SiteBias set = new SiteBias(belief);
            for (int i : chosen) set = with(set, i);
            return set;
        }

        private SiteBias with(SiteBias set, int candidate) {
            return set.plus(candidates.get(candidate), noiseDb2[candidate]);
        }

        private double value(SiteBias set) {
            double[] movementDb = set.movementsDb();
            double sum = 0;
            for (int q = 0; q < weight.length; q++)
                sum += weight[q]
                        * ReportValue.expectedDb(
                                questions.get(q).marginDb(),
                                movementDb[questions.get(q).kind()]);
            return sum;
        }

        private double doubtTaken(SiteBias set) {
            double sum = 0;
            for (int q = 0; q < weight.length; q++)
                sum += weight[q] * set.takenDb2(questions.get(q).kind());
            return sum;
        }
    }
}
