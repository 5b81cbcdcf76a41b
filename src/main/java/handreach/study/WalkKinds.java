package handreach.study;

import handreach.loadout.Loadout;
import handreach.reach.ReachLink;
import handreach.reach.SiteCalibration;
import handreach.terrain.Cover;
import handreach.walk.Priors;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Links between loadouts over covers, numbered as they are met, and what their shifts of the loss have in common. */
final class WalkKinds {
    private final Scene scene;
    private final Map<List<String>, ReachLink> links = new LinkedHashMap<>();
    private final Map<Kind, Integer> numbers = new LinkedHashMap<>();

    private record Kind(List<String> ends, Cover cover) {}

    WalkKinds(Scene scene) {
        this.scene = scene;
    }

    /** The link between two loadouts, with what walks have taught. */
    ReachLink link(Loadout near, Loadout far) {
        return links.computeIfAbsent(List.of(near.name(), far.name()), ends -> scene.link(near, far));
    }

    /** Number of the shift that a link with its far end in this cover hangs on. */
    int kind(Loadout near, Loadout far, Cover cover) {
        link(near, far);
        return numbers.computeIfAbsent(new Kind(List.of(near.name(), far.name()), cover), kind -> numbers.size());
    }

    /**
     * Covariance of the shifts, from the doubts of the ledgers.
     *
     * @shape  a square, a row for each kind; pure
     * @unit   dB²
     * @valid  all kinds met so far
     * @error  sources of doubt count as wholly shared or not at all, as in the ledgers
     * @source 2 Cov(a, b) = Var a + Var b − Var(a − b), JCGM 100:2008 (GUM) 5.2.2; a further shift is common to all links of one
     *     cover
     */
    List<List<Double>> covarianceDb2() {
        List<List<Double>> rows = new ArrayList<>();
        for (Kind a : numbers.keySet()) {
            List<Double> row = new ArrayList<>();
            for (Kind b : numbers.keySet()) row.add(covariance(a, b));
            rows.add(row);
        }
        return rows;
    }

    private double covariance(Kind a, Kind b) {
        ReachLink one = links.get(a.ends());
        ReachLink other = links.get(b.ends());
        double first = one.commonDoubtDb();
        double second = other.commonDoubtDb();
        double apart = a.ends().equals(b.ends()) ? 0 : one.differenceDoubtDb(other);
        double shared = (first * first + second * second - apart * apart) / 2;
        double most = first * second;
        double sum = Math.max(0, Math.min(most, shared));
        return a.cover() == b.cover() ? sum + coverVarianceDb2(a.cover()) : sum;
    }

    private double coverVarianceDb2(Cover cover) {
        double doubt = scene.calibration()
                .map(file -> file.site().biasByCover().getOrDefault(cover, SiteCalibration.Shift.NONE))
                .map(SiteCalibration.Shift::standardUncertaintyDb)
                .orElse(Priors.USUAL.coverDb());
        return doubt * doubt;
    }
}
