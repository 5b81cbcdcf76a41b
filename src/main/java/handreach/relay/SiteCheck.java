package handreach.relay;

import handreach.geodesy.Position;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Relays at given places, every hop computed exactly.
 *
 * @param sites where
 * @param hops one a demand: over the relay that serves it best; empty where the ground is unknown
 * @param talks odds of each talk, in the question's order
 * @param service of all talks
 */
public record SiteCheck(List<Position> sites, List<Optional<Hop>> hops, List<TalkOdds> talks, ServiceLevel service) {
    /**
     * A demand and the relay that serves it best.
     *
     * @param demand number of the demand
     * @param site number of the relay
     * @param path between them
     */
    public record Hop(int demand, int site, HopPath path) {}

    /**
     * Odds of a talk.
     *
     * @param weaker by the weakest hop and direction, as if both hops failed together; straight, where that is better
     * @param product as if they failed apart
     * @param overRelays the best way over these relays alone, by its weakest hop; 0 where there is none
     * @param pessimistic weaker, at the pessimistic end of the common doubt
     * @param isDirect whether it needs none of these relays: straight, or over one that stands already
     */
    public record TalkOdds(double weaker, double product, double overRelays, double pessimistic, boolean isDirect) {}

    public SiteCheck {
        sites = List.copyOf(sites);
        hops = List.copyOf(hops);
        talks = List.copyOf(talks);
    }

    /**
     * Computes all hops to these places, and between them where relays pass to one another.
     *
     * @shape  demands times relays paths, and relays squared for a chain
     * @unit   odds 0 to 1
     * @valid  1 to 4 places; unknown ground counts as no hop
     * @error  that of the model; no sampling is left
     * @source {@link HopPath}
     */
    public static SiteCheck of(
            RelayRequest question, RelayEquipment relay, List<Position> sites, DirectVerdict verdict) {
        int demands = question.demands().size();
        List<List<Optional<HopPath>>> paths = new ArrayList<>();
        for (int d = 0; d < demands; d++) {
            List<Optional<HopPath>> row = new ArrayList<>();
            for (Position site : sites) row.add(HopPath.toRelay(question, d, site, relay));
            paths.add(row);
        }
        List<Optional<Hop>> hops = new ArrayList<>();
        for (int d = 0; d < demands; d++) {
            int number = d;
            hops.add(java.util.stream.IntStream.range(0, sites.size())
                    .boxed()
                    .flatMap(s -> paths.get(number).get(s).map(path -> new Hop(number, s, path)).stream())
                    .max(Comparator.comparingDouble(hop -> hop.path().odds().marginDb())));
        }
        HopMatrix matrix = HopMatrix.of(question, relay, sites, paths);
        List<TalkOdds> talks = new ArrayList<>();
        for (int t = 0; t < question.talks().size(); t++)
            talks.add(matrix.odds(question.talks().get(t), verdict.links().get(t)));
        return new SiteCheck(sites, hops, talks, service(question, talks));
    }

    private static ServiceLevel service(RelayRequest question, List<TalkOdds> talks) {
        double wanted = question.setting().terms().odds();
        double[] shares = TalkTable.shares(question);
        double share = 0;
        double sure = 0;
        double worst = 1;
        for (int t = 0; t < talks.size(); t++) {
            worst = Math.min(worst, talks.get(t).weaker());
            if (talks.get(t).weaker() >= wanted) share += shares[t];
            if (talks.get(t).pessimistic() >= wanted) sure += shares[t];
        }
        return new ServiceLevel(share, sure, HopBudget.standingOf(worst));
    }

    /** The hop with the least margin over its spread. */
    public Optional<Hop> weakest() {
        return hops.stream()
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(hop -> hop.path().odds().weaker()));
    }

    /**
     * Odds of a demand: the least of its talks.
     *
     * @shape  one question and a demand in, scalar out; pure
     * @unit   0 to 1
     * @valid  demands of that question; 1 for one without a talk
     * @error  that of the talks
     * @source minimum
     */
    public double demandOdds(RelayRequest question, int demand) {
        double least = 1;
        for (int t = 0; t < talks.size(); t++) {
            Conversation talk = question.talks().get(t);
            if (talk.a() == demand || talk.b() == demand)
                least = Math.min(least, talks.get(t).weaker());
        }
        return least;
    }

    /** Demands that have a talk below the wanted odds, because their own hop is. */
    public List<Integer> unserved(RelayRequest question) {
        double wanted = question.setting().terms().odds();
        List<Integer> unserved = new ArrayList<>();
        for (int d = 0; d < question.demands().size(); d++) {
            Optional<Hop> hop = hops.get(d);
            boolean hopFails = hop.isEmpty() || hop.get().path().odds().weaker() < wanted;
            if (hopFails && demandOdds(question, d) < wanted) unserved.add(d);
        }
        return unserved;
    }
}
