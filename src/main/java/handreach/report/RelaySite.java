package handreach.report;

import handreach.geodesy.Position;
import handreach.relay.ServiceLevel;
import handreach.relay.SiteCheck;
import handreach.study.RelayAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A place for a relay, as every face names, lists and marks it.
 *
 * @param name what it is called in lists and on maps
 * @param at where
 * @param access height, slope, walk
 * @param isAdvised whether the answer rests on it; else a further site
 * @param service how the talks do over it alone; with the others, where it is listed as one of several
 * @param otherwise alone: how they do in the other mode of relaying; one of several: where this one fails
 */
public record RelaySite(
        String name,
        Position at,
        RelayAnswer.Access access,
        boolean isAdvised,
        ServiceLevel service,
        ServiceLevel otherwise) {
    /** The relays advised, then further sites for one relay, best first. */
    public static List<RelaySite> of(RelayAnswer answer) {
        List<RelaySite> all = new ArrayList<>(together(answer));
        List<Position> listed = all.stream().map(RelaySite::at).toList();
        alone(answer).stream().filter(site -> !listed.contains(site.at())).forEach(all::add);
        return all;
    }

    /** Sites for one relay, best first. */
    static List<RelaySite> alone(RelayAnswer answer) {
        List<RelayAnswer.Site> found =
                answer.found().map(RelayAnswer.Found::sites).orElse(List.of());
        List<Position> advised = answer.recommended().map(SiteCheck::sites).orElse(List.of());
        List<RelaySite> sites = new ArrayList<>();
        for (RelayAnswer.Site site : found) {
            int place = advised.indexOf(site.at());
            sites.add(new RelaySite(
                    place < 0 ? "Site " + (sites.size() + 1) : name(place, advised.size()),
                    site.at(),
                    site.access(),
                    place >= 0,
                    site.check().service(),
                    site.otherMode()));
        }
        return sites;
    }

    /** Relays that are advised together; none where one is advised, or none. */
    static List<RelaySite> together(RelayAnswer answer) {
        Optional<RelayAnswer.Together> several = answer.found().flatMap(RelayAnswer.Found::together);
        if (several.isEmpty()) return List.of();
        SiteCheck check = several.get().check();
        List<RelaySite> sites = new ArrayList<>();
        for (int i = 0; i < check.sites().size(); i++)
            sites.add(new RelaySite(
                    name(i, check.sites().size()),
                    check.sites().get(i),
                    several.get().access().get(i),
                    true,
                    check.service(),
                    several.get().choice().ifOneFails().get(i)));
        return sites;
    }

    private static String name(int index, int count) {
        return count == 1 ? "Relay" : "Relay " + (index + 1);
    }
}
