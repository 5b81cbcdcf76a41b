package handreach.relay;

import handreach.geodesy.Position;
import java.util.List;
import java.util.Optional;

/** Odds between demands and relays, and among relays where they pass to one another; [kind][from][to]. */
final class HopMatrix {
    private static final int MEDIAN = 0;
    private static final int PESSIMISTIC = 1;

    private final double[][][] hop;
    private final double[][][] link;
    /** Product of the odds of the links on the way that is best by its weakest link. */
    private final double[][] linkProduct;

    private HopMatrix(double[][][] hop, double[][][] link, double[][] linkProduct) {
        this.hop = hop;
        this.link = link;
        this.linkProduct = linkProduct;
    }

    static HopMatrix of(
            RelayRequest question, RelayEquipment relay, List<Position> sites, List<List<Optional<HopPath>>> paths) {
        int n = sites.size();
        double[][][] hop = new double[2][paths.size()][n];
        for (int d = 0; d < paths.size(); d++)
            for (int s = 0; s < n; s++) {
                Optional<HopPath> path = paths.get(d).get(s);
                hop[MEDIAN][d][s] = path.map(p -> p.odds().weaker()).orElse(0.0);
                hop[PESSIMISTIC][d][s] = path.map(p -> p.odds().pessimistic()).orElse(0.0);
            }
        double[][][] link = new double[2][n][n];
        double[][] product = new double[n][n];
        for (int i = 0; i < n; i++) {
            link[MEDIAN][i][i] = 1;
            link[PESSIMISTIC][i][i] = 1;
            product[i][i] = 1;
            for (int j = 0; relay.chained() && j < i; j++) {
                Optional<HopPath> path = HopPath.betweenRelays(question.setting(), sites.get(i), sites.get(j), relay);
                double odds = path.map(p -> p.odds().weaker()).orElse(0.0);
                double sure = path.map(p -> p.odds().pessimistic()).orElse(0.0);
                link[MEDIAN][i][j] = link[MEDIAN][j][i] = odds;
                link[PESSIMISTIC][i][j] = link[PESSIMISTIC][j][i] = sure;
                product[i][j] = product[j][i] = odds;
            }
        }
        for (int k = 0; k < n; k++)
            for (int i = 0; i < n; i++)
                for (int j = 0; j < n; j++) {
                    double over = Math.min(link[MEDIAN][i][k], link[MEDIAN][k][j]);
                    if (over > link[MEDIAN][i][j]) {
                        link[MEDIAN][i][j] = over;
                        product[i][j] = product[i][k] * product[k][j];
                    }
                    double sure = Math.min(link[PESSIMISTIC][i][k], link[PESSIMISTIC][k][j]);
                    link[PESSIMISTIC][i][j] = Math.max(link[PESSIMISTIC][i][j], sure);
                }
        return new HopMatrix(hop, link, product);
    }

    SiteCheck.TalkOdds odds(Conversation talk, DirectLink direct) {
        double straight = DirectVerdict.odds(direct);
        double straightSure = DirectVerdict.sureOdds(direct);
        double weaker = 0;
        double sure = 0;
        double product = 0;
        int n = linkProduct.length;
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++) {
                double over = over(MEDIAN, talk, i, j);
                if (over > weaker) {
                    weaker = over;
                    product = hop[MEDIAN][talk.a()][i] * linkProduct[i][j] * hop[MEDIAN][talk.b()][j];
                }
                sure = Math.max(sure, over(PESSIMISTIC, talk, i, j));
            }
        boolean isDirect = straight >= weaker;
        return new SiteCheck.TalkOdds(
                Math.max(straight, weaker),
                isDirect ? straight : product,
                weaker,
                Math.max(sure, straightSure),
                isDirect);
    }

    private double over(int kind, Conversation talk, int i, int j) {
        return Math.min(link[kind][i][j], Math.min(hop[kind][talk.a()][i], hop[kind][talk.b()][j]));
    }
}
