package handreach.report;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.loadout.Loadout;
import handreach.plan.Plan;
import handreach.report.file.Json;
import handreach.study.StationsAnswer;
import java.util.List;
import java.util.Optional;

/** What stands already as JSON; keys in docs/schema. */
final class StationsJson {
    private StationsJson() {}

    private record OfStation(
            String name,
            double latitude,
            double longitude,
            String place,
            Optional<String> relay,
            double receiveMhz,
            double transmitMhz,
            List<OfPlace> places,
            List<OfPair> pairs) {}

    private record OfPlace(
            String name, String loadout, List<Double> distanceKm, Optional<DecideJson.Odds> odds, List<String> with) {}

    private record OfPair(String a, String b, Optional<DecideJson.Odds> odds) {}

    static JsonNode of(StationsAnswer answer, Plan plan) {
        return Json.tree(
                answer.stations().stream().map(station -> of(station, plan)).toList());
    }

    private static OfStation of(StationsAnswer.Station station, Plan plan) {
        return new OfStation(
                station.entry().name(),
                station.entry().at().latitudeDeg(),
                station.entry().at().longitudeDeg(),
                plan.header().placeForm().format(station.entry().at()),
                station.entry().relay().map(mode -> mode.word()),
                station.receiveMhz(),
                station.transmitMhz(),
                station.places().stream()
                        .map(one -> new OfPlace(
                                one.place().name(),
                                one.place().loadout().name(),
                                List.of(
                                        one.distanceM().low() / 1000,
                                        one.distanceM().high() / 1000),
                                one.odds().map(DecideJson::odds),
                                one.with().stream().map(Loadout::name).toList()))
                        .toList(),
                station.pairs().stream()
                        .map(pair -> new OfPair(pair.a(), pair.b(), pair.odds().map(DecideJson::odds)))
                        .toList());
    }
}
