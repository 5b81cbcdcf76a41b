package handreach.desktop;

import handreach.geodesy.Position;
import handreach.relay.SiteCheck;
import handreach.study.RelayAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A place for a relay as the window lists and marks it.
 *
 * @param name what it is called in list and map
 * @param at where
 * @param access height, slope, walk
 * @param isAdvised whether the answer rests on it; else a further site
 * @param served share of the talks it serves alone; together with the others, where several are advised
 * @param worst odds of the worst talk, likewise
 */
record RelaySite(String name, Position at, RelayAnswer.Access access, boolean isAdvised, double served, double worst) {
    /** The relays advised, then further sites for one relay, best first. */
    static List<RelaySite> of(RelayAnswer answer) {
        List<RelaySite> all = new ArrayList<>();
        Optional<SiteCheck> advised = answer.recommended();
        if (advised.isEmpty()) return all;
        RelayAnswer.Found found = answer.found().orElseThrow();
        List<Position> at = advised.get().sites();
        List<RelayAnswer.Access> access = found.together()
                .map(RelayAnswer.Together::access)
                .orElseGet(() -> List.of(found.sites().get(0).access()));
        for (int i = 0; i < at.size(); i++)
            all.add(new RelaySite(
                    at.size() == 1 ? "Relay" : "Relay " + (i + 1),
                    at.get(i),
                    access.get(i),
                    true,
                    advised.get().standing().share(),
                    advised.get().standing().worstOdds()));
        int number = 0;
        for (RelayAnswer.Site site : found.sites()) {
            number++;
            if (at.contains(site.at())) continue;
            all.add(new RelaySite(
                    "Site " + number,
                    site.at(),
                    site.access(),
                    false,
                    site.check().standing().share(),
                    site.check().standing().worstOdds()));
        }
        return all;
    }
}
