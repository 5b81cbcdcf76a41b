package handreach.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import handreach.report.file.Json;
import handreach.study.RoutesAnswer;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Contact along the routes as JSON; keys in docs/schema. */
final class RoutesJson {
    private RoutesJson() {}

    /** Routes that are never on the way at once are left out where there are none. */
    private record Whole(
            List<OfRoute> routes,
            List<OfMeeting> meetings,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<List<String>> apart,
            List<String> warnings) {}

    private record OfRoute(String name, String loadout, boolean utc, List<OfPoint> points, List<OfStretch> stretches) {}

    private record OfPoint(
            Optional<String> time,
            OptionalDouble timeS,
            double km,
            double latitude,
            double longitude,
            OptionalDouble there,
            OptionalDouble back,
            OptionalDouble pessimistic,
            String contact) {}

    private record OfStretch(
            String contact,
            Optional<String> from,
            Optional<String> to,
            double fromKm,
            double toKm,
            OptionalDouble minutes,
            OptionalDouble nextSureKm) {}

    private record OfMeeting(String a, String b, String from, String to, List<OfWindow> windows) {}

    private record OfWindow(String from, String to) {}

    static JsonNode of(RoutesAnswer answer) {
        return Json.tree(new Whole(
                answer.routes().stream().map(RoutesJson::of).toList(),
                answer.meetings().stream()
                        .map(meeting -> new OfMeeting(
                                meeting.a(),
                                meeting.b(),
                                RoutesComposer.clock(meeting.fromS(), meeting.isUtc()),
                                RoutesComposer.clock(meeting.toS(), meeting.isUtc()),
                                meeting.windows().stream()
                                        .map(window -> new OfWindow(
                                                RoutesComposer.clock(window.fromS(), meeting.isUtc()),
                                                RoutesComposer.clock(window.toS(), meeting.isUtc())))
                                        .toList()))
                        .toList(),
                answer.apart().stream().map(one -> List.of(one.a(), one.b())).toList(),
                answer.warnings()));
    }

    private static OfRoute of(RoutesAnswer.Route route) {
        return new OfRoute(
                route.name(),
                route.loadout(),
                route.isUtc(),
                route.points().stream()
                        .map(point -> new OfPoint(
                                clock(route, point),
                                point.timeS(),
                                point.alongM() / 1000,
                                point.at().latitudeDeg(),
                                point.at().longitudeDeg(),
                                figure(point.odds().map(odds -> odds.there())),
                                figure(point.odds().map(odds -> odds.back())),
                                figure(point.odds().map(odds -> odds.pessimistic())),
                                point.contact().word()))
                        .toList(),
                route.stretches().stream().map(one -> of(route, one)).toList());
    }

    private static OfStretch of(RoutesAnswer.Route route, RoutesAnswer.Stretch stretch) {
        boolean isTimed =
                stretch.from().timeS().isPresent() && stretch.to().timeS().isPresent();
        return new OfStretch(
                stretch.contact().word(),
                clock(route, stretch.from()),
                clock(route, stretch.to()),
                stretch.from().alongM() / 1000,
                stretch.to().alongM() / 1000,
                isTimed
                        ? OptionalDouble.of((stretch.to().timeS().getAsDouble()
                                        - stretch.from().timeS().getAsDouble())
                                / 60)
                        : OptionalDouble.empty(),
                figure(route.nextSure(stretch.to().alongM()).map(point -> point.alongM() / 1000)));
    }

    private static OptionalDouble figure(Optional<Double> value) {
        return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }

    private static Optional<String> clock(RoutesAnswer.Route route, RoutesAnswer.Point point) {
        return point.timeS().isPresent()
                ? Optional.of(RoutesComposer.clock(point.timeS().getAsDouble(), route.isUtc()))
                : Optional.empty();
    }
}
