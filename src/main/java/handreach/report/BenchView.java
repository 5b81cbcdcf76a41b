package handreach.report;

import handreach.bench.BenchAnalysis;
import handreach.bench.match.MatchAnalysis;
import handreach.report.figure.ChannelMark;
import handreach.study.HandDelta;
import java.util.List;
import java.util.Optional;

/**
 * Everything a bench answer is made of.
 *
 * @param title name of the session or plan
 * @param question what is asked of the session
 * @param analysis deltas, order, match
 * @param sweeps reflection over frequency, may be none
 * @param channels to be marked on the sweeps
 * @param costs what each antenna costs to carry, may be none
 * @param hand what deltas read clear of the body come to in the hand, may be none
 * @param imprint who made it and when
 */
public record BenchView(
        String title,
        Question question,
        BenchAnalysis analysis,
        List<MatchAnalysis> sweeps,
        List<ChannelMark> channels,
        List<AntennaCost> costs,
        List<HandDelta> hand,
        String imprint) {
    /**
     * What is asked of a session.
     *
     * @param mountOfUse the mounting in which the antennas are used; stands first
     * @param settleDb true difference of which it is said how many trials would settle it
     * @param figurePx width of figures, px
     */
    public record Question(Optional<String> mountOfUse, double settleDb, double figurePx) {
        /** What trials are asked to settle when nothing else is said (our suggestion). */
        public static final double USUAL_SETTLE_DB = 1;

        private static final double USUAL_FIGURE_PX = 820;

        /** On paper, with the usual difference to settle. */
        public static Question of(Optional<String> mountOfUse) {
            return new Question(mountOfUse, USUAL_SETTLE_DB, USUAL_FIGURE_PX);
        }

        public Question settling(double db) {
            return new Question(mountOfUse, db, figurePx);
        }

        public Question drawn(double widthPx) {
            return new Question(mountOfUse, settleDb, widthPx);
        }
    }

    public BenchView {
        sweeps = List.copyOf(sweeps);
        channels = List.copyOf(channels);
        costs = List.copyOf(costs);
        hand = List.copyOf(hand);
    }
}
