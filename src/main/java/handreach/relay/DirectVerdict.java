package handreach.relay;

import handreach.budget.LinkEnd;
import handreach.loadout.Loadout;
import handreach.reach.Progress;
import handreach.uncertainty.Odds;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What everybody gets without a relay.
 *
 * @param links one a talk, as the people are loaded, in the question's order
 * @param everybody the same if everybody who carries a radio on the body carried this, in the given order
 * @param service with the plan's loadouts
 */
public record DirectVerdict(List<DirectLink> links, List<IfCarried> everybody, ServiceLevel service) {
    /**
     * If everybody carried this.
     *
     * @param loadout what
     * @param service how the talks would do
     */
    public record IfCarried(Loadout loadout, ServiceLevel service) {}

    public DirectVerdict {
        links = List.copyOf(links);
        everybody = List.copyOf(everybody);
    }

    /**
     * Computes every talk exactly, as loaded and with each of the given loadouts.
     *
     * @shape  talks times (1 + loadouts) paths
     * @unit   standings without unit, odds 0 to 1
     * @valid  a talk over unknown ground counts as not served
     * @error  that of the model and of the ledgers
     * @source {@link HopPath}
     */
    public static DirectVerdict of(RelayRequest question, List<LinkEnd> loadouts, Progress progress) {
        int passes = 1 + loadouts.size();
        List<DirectLink> links = links(question, progress, 0, passes);
        List<IfCarried> everybody = new ArrayList<>();
        for (int i = 0; i < loadouts.size(); i++) {
            LinkEnd end = loadouts.get(i);
            List<Party> loaded = question.demands().stream()
                    .map(demand -> demand.end().loadout().carry().carry().isAtBody() ? demand.carrying(end) : demand)
                    .toList();
            RelayRequest other = new RelayRequest(loaded, question.talks(), question.setting());
            everybody.add(new IfCarried(end.loadout(), service(other, links(other, progress, i + 1, passes))));
        }
        return new DirectVerdict(links, everybody, service(question, links));
    }

    private static List<DirectLink> links(RelayRequest question, Progress progress, int pass, int passes) {
        List<DirectLink> links = new ArrayList<>();
        for (Conversation talk : question.talks()) {
            progress.goOn();
            links.add(link(question, talk));
            progress.done(
                    "straight paths",
                    (pass + (double) links.size() / question.talks().size()) / passes);
        }
        return links;
    }

    private static DirectLink link(RelayRequest question, Conversation talk) {
        Party a = question.demands().get(talk.a());
        Party b = question.demands().get(talk.b());
        Optional<HopPath> path = HopPath.direct(question.setting(), a, b);
        if (path.isEmpty()) return new DirectLink(talk, path, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY);
        HopBudget budget = HopBudget.direct(question.setting(), a, b);
        double standing = path.get().odds().standing();
        return new DirectLink(talk, path, standing, standing - budget.pessimism());
    }

    private static ServiceLevel service(RelayRequest question, List<DirectLink> links) {
        double wanted = HopBudget.wanted(question.setting().terms().odds());
        double[] shares = TalkTable.shares(question);
        double share = 0;
        double sure = 0;
        double worst = Double.POSITIVE_INFINITY;
        for (int t = 0; t < links.size(); t++) {
            DirectLink link = links.get(t);
            worst = Math.min(worst, link.standing());
            if (link.standing() >= wanted) share += shares[t];
            if (link.pessimisticStanding() >= wanted) sure += shares[t];
        }
        return new ServiceLevel(share, sure, worst);
    }

    /**
     * The same with the help of what stands already: each talk by the better of its straight path and this.
     *
     * @param question whose talks they are
     * @param over odds of each talk by way of what stands already, in the question's order; empty where it has none
     */
    public DirectVerdict helped(RelayRequest question, List<Optional<HopPath.HopOdds>> over) {
        List<DirectLink> helped = new ArrayList<>();
        for (int t = 0; t < links.size(); t++) {
            DirectLink link = links.get(t);
            double standing = over.get(t).map(HopPath.HopOdds::standing).orElse(Double.NEGATIVE_INFINITY);
            double sure = over.get(t)
                    .map(odds -> HopBudget.standingOf(odds.pessimistic()))
                    .orElse(Double.NEGATIVE_INFINITY);
            helped.add(new DirectLink(
                    link.talk(),
                    link.path(),
                    Math.max(link.standing(), standing),
                    Math.max(link.pessimisticStanding(), sure)));
        }
        return new DirectVerdict(helped, everybody, service(question, helped));
    }

    /** Whether nobody needs a relay as they are loaded. */
    public boolean isEnough() {
        return service.servesAll();
    }

    /** The first of the given loadouts with which nobody needs a relay. */
    public Optional<IfCarried> enoughIfCarried() {
        return everybody.stream().filter(one -> one.service().servesAll()).findFirst();
    }

    /** The talk with the lowest odds. */
    public Optional<DirectLink> weakest() {
        return links.stream().min(java.util.Comparator.comparingDouble(DirectLink::standing));
    }

    /** Odds of a link's weaker direction at the pessimistic end of the common doubt. */
    static double sureOdds(DirectLink link) {
        return oddsOf(link.pessimisticStanding());
    }

    private static double oddsOf(double standing) {
        return standing == Double.NEGATIVE_INFINITY ? 0 : Odds.ofMargin(standing, 1);
    }

    /**
     * Odds of a link's weaker direction.
     *
     * @shape  one link in, scalar out; pure
     * @unit   0 to 1
     * @valid  every link; 0 where the ground is unknown
     * @error  that of the link's margin over its spread
     * @source normal spread between places, {@link Odds}
     */
    public static double odds(DirectLink link) {
        return oddsOf(link.standing());
    }
}
