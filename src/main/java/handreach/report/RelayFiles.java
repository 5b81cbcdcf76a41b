package handreach.report;

import handreach.geodesy.Position;
import handreach.reach.Progress;
import handreach.relay.Party;
import handreach.relay.SiteCheck;
import handreach.report.draw.Picture;
import handreach.report.figure.MapPlace;
import handreach.report.file.FileBatch;
import handreach.report.file.FolderResult;
import handreach.report.file.GeoJson;
import handreach.report.file.Gpx;
import handreach.report.file.Json;
import handreach.report.page.HtmlPage;
import handreach.report.page.Page;
import handreach.report.page.PlainText;
import handreach.study.RelayAnswer;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** Everything that {@code relay} writes into a folder: report, text and JSON, waypoints, features. */
public final class RelayFiles {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final RelayAnswer answer;

    private RelayFiles(RelayAnswer answer) {
        this.answer = answer;
    }

    /** Writes all files, each whole or not at all. */
    public static FolderResult write(RelayAnswer answer, Instant made, Path folder) {
        FileBatch files = new FileBatch(folder, "relay", answer.scene().file().sources());
        Page page = new RelayComposer(answer).page(made);
        files.add("relay.html", () -> HtmlPage.text(page));
        answer.recommended()
                .map(check -> new RelayMap(answer, check))
                .ifPresent(map -> files.add(
                        "map-relay.png",
                        out -> out.write(
                                Picture.of(map.sheet(made), AreaFiles.PNG_SCALE).png())));
        files.add("relay.txt", () -> PlainText.of(page, PlainText.USUAL_WIDTH));
        files.add("relay.json", () -> Json.text(RelayJson.of(answer)));
        files.add("relay-sites.gpx", () -> Gpx.text(places(answer), "relay", List.of()));
        files.add("relay.geojson", () -> GeoJson.text(new RelayFiles(answer).features()));
        return files.write(Progress.SILENT);
    }

    /** People and sites for a map or a navigator; the recommended relays first in name. */
    static List<MapPlace> places(RelayAnswer answer) {
        List<MapPlace> places = new ArrayList<>();
        for (Party demand : answer.question().demands())
            places.add(new MapPlace(demand.at(), MapPlace.Kind.PERSON, demand.name()));
        for (RelaySite site : RelaySite.of(answer))
            places.add(new MapPlace(site.at(), MapPlace.Kind.RELAY, site.name()));
        return places;
    }

    private List<GeoJson.Feature> features() {
        List<GeoJson.Feature> features = new ArrayList<>();
        for (Party demand : answer.question().demands()) {
            Map<String, Object> properties = new LinkedHashMap<>();
            properties.put("kind", "demand");
            properties.put("name", demand.name());
            properties.put("loadout", demand.end().loadout().name());
            subject().putInto(properties);
            features.add(new GeoJson.Feature(GEOMETRY.createPoint(coordinate(demand.at())), properties));
        }
        answer.found().ifPresent(found -> {
            int rank = 1;
            for (RelayAnswer.Site site : found.sites()) features.add(site(site, rank++));
        });
        answer.recommended().ifPresent(best -> {
            for (Optional<SiteCheck.Hop> hop : best.hops()) hop.ifPresent(one -> features.add(hop(best, one)));
        });
        return features;
    }

    private PlanSubject subject() {
        return PlanSubject.of(answer.scene().plan());
    }

    private GeoJson.Feature site(RelayAnswer.Site site, int rank) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("kind", "site");
        properties.put("rank", rank);
        properties.put("share", site.check().service().share());
        properties.put("worst_odds", site.check().service().worstOdds());
        if (site.access().heightM().isPresent())
            properties.put("height_m", site.access().heightM().getAsDouble());
        subject().putInto(properties);
        return new GeoJson.Feature(GEOMETRY.createPoint(coordinate(site.at())), properties);
    }

    private GeoJson.Feature hop(SiteCheck best, SiteCheck.Hop hop) {
        Party demand = answer.question().demands().get(hop.demand());
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("kind", "hop");
        properties.put("name", demand.name());
        properties.put("odds", hop.path().odds().weaker());
        subject().putInto(properties);
        Coordinate[] ends = {coordinate(demand.at()), coordinate(best.sites().get(hop.site()))};
        return new GeoJson.Feature(GEOMETRY.createLineString(ends), properties);
    }

    private static Coordinate coordinate(Position at) {
        return new Coordinate(at.longitudeDeg(), at.latitudeDeg());
    }
}
