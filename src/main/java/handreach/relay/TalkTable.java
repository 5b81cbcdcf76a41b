package handreach.relay;

import handreach.reach.Progress;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The talks as plain arrays, with what they get without a relay: what the search over all cells runs on. */
final class TalkTable {
    private static final int MOST_LINKS = 24;

    private final HopSurvey survey;
    private final int[] a;
    private final int[] b;
    private final double[] share;
    private final double[] direct;
    private final double[] directPessimistic;
    private final double wanted;
    private final double linkPessimism;
    /** The links last asked for; more would fill the memory of a large area. */
    private final Map<Integer, float[]> links = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, float[]> eldest) {
            return size() > MOST_LINKS;
        }
    };

    TalkTable(HopSurvey survey, DirectVerdict verdict) {
        RelayRequest question = survey.question();
        List<Conversation> talks = question.talks();
        this.survey = survey;
        this.a = talks.stream().mapToInt(Conversation::a).toArray();
        this.b = talks.stream().mapToInt(Conversation::b).toArray();
        this.share = shares(question);
        this.direct = verdict.links().stream().mapToDouble(DirectLink::standing).toArray();
        this.directPessimistic = verdict.links().stream()
                .mapToDouble(DirectLink::pessimisticStanding)
                .toArray();
        this.wanted = HopBudget.wanted(question.setting().terms().odds());
        this.linkPessimism = survey.linkPessimism();
    }

    /** Weights of the talks, together 1; all alike where all are 0. */
    static double[] shares(RelayRequest question) {
        double[] share = question.talks().stream()
                .mapToDouble(talk -> talk.weight(question.demands()))
                .toArray();
        double sum = 0;
        for (double one : share) sum += one;
        for (int t = 0; t < share.length; t++) share[t] = sum > 0 ? share[t] / sum : 1.0 / share.length;
        return share;
    }

    int count() {
        return a.length;
    }

    int demands() {
        return survey.question().demands().size();
    }

    int a(int talk) {
        return a[talk];
    }

    int b(int talk) {
        return b[talk];
    }

    double share(int talk) {
        return share[talk];
    }

    double wanted() {
        return wanted;
    }

    double[] direct(boolean pessimistic) {
        return (pessimistic ? directPessimistic : direct).clone();
    }

    double hop(int demand, int cell, boolean pessimistic) {
        double standing = survey.standings(demand)[cell];
        return pessimistic ? standing - survey.pessimism(demand) : standing;
    }

    boolean isChained() {
        return survey.relay().chained();
    }

    double linkPessimism() {
        return linkPessimism;
    }

    float[] links(int cell, Progress progress) {
        float[] known = links.get(cell);
        if (known != null) return known;
        float[] swept = survey.fromRelay(cell, progress);
        links.put(cell, swept);
        return swept;
    }

    /** Demands that a relay in this cell serves at the wanted odds, one bit each. */
    long served(int cell) {
        long mask = 0;
        for (int d = 0; d < demands(); d++) if (survey.standings(d)[cell] >= wanted) mask |= 1L << d;
        return mask;
    }
}
