package handreach.report;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.geodesy.Compass;
import handreach.plan.Plan;
import handreach.plan.Questions.Measure;
import handreach.reach.GroundGain;
import handreach.report.file.Json;
import handreach.study.PlacesAnswer;
import handreach.study.PlacesGain;
import handreach.study.ReachAnswer;
import handreach.study.ReachVerdict;
import handreach.uncertainty.Interval;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** By what a plan decides, the gains of each loadout, and who reaches whom, as JSON; keys in docs/schema. */
final class DecideJson {
    private static final double M2_PER_KM2 = 1e6;

    private DecideJson() {}

    private record Gains(String decidedBy, Optional<OfPlaces> places, OfGround ground, OfReach reach) {}

    private record OfPlaces(
            String judgement,
            double control,
            double reached,
            double gain,
            List<Double> gainInterval95,
            double of,
            List<PlacesGain.Change> changes) {}

    private record OfGround(
            String judgement,
            double controlShare,
            double share,
            double gainKm2,
            List<Double> gainInterval95Km2,
            OptionalDouble factor,
            List<Side> sides) {}

    private record Side(String of, String towards, double areaKm2) {}

    private record OfReach(
            String judgement, double gainKm, List<Double> gainInterval95Km, double mostBearingDeg, double mostGainKm) {}

    private record Felt(String by, double feltPlaces, double feltGround, double feltReachM) {}

    private record Whole(List<OfPlace> places, List<OfPair> pairs, Optional<String> base, int pairsOmitted) {}

    private record OfPlace(String name, String kind, String loadout, List<Point> points) {}

    private record Point(double latitude, double longitude, String place) {}

    private record OfPair(String a, String b, List<Double> distanceKm, Optional<Odds> odds) {}

    record Odds(List<Double> there, List<Double> back, List<Double> weaker, List<Double> pessimistic) {}

    /** The measure a plan asks for, and what is felt. */
    static JsonNode decide(Plan plan) {
        var asked = plan.questions().decide();
        return Json.tree(new Felt(asked.by().word(), asked.feltPlaces(), asked.feltGround(), asked.feltReachM()));
    }

    /** Gains over the control in each measure; null for the control itself. */
    static JsonNode gains(Optional<ReachVerdict> verdict) {
        return Json.tree(verdict.map(DecideJson::gains));
    }

    private static Gains gains(ReachVerdict verdict) {
        return new Gains(
                verdict.decidedBy().word(),
                verdict.places().map(gain -> places(verdict, gain)),
                ground(verdict),
                new OfReach(
                        verdict.judgement(Measure.REACH).word(),
                        verdict.reach().medianM() / 1000,
                        ends(verdict.reach().interval95M(), 0.001),
                        verdict.best().bearingDeg(),
                        verdict.best().gainM() / 1000));
    }

    private static OfPlaces places(ReachVerdict verdict, PlacesGain gain) {
        return new OfPlaces(
                verdict.judgement(Measure.PLACES).word(),
                gain.control(),
                gain.reached(),
                gain.gain(),
                ends(gain.gain95(), 1),
                gain.of(),
                gain.changes());
    }

    private static OfGround ground(ReachVerdict verdict) {
        GroundGain gain = verdict.ground();
        double km2 = gain.knownM2() / M2_PER_KM2;
        return new OfGround(
                verdict.judgement(Measure.GROUND).word(),
                gain.control(),
                gain.share(),
                km2 * gain.gain(),
                ends(gain.gain95(), km2),
                gain.control() > 0 ? OptionalDouble.of(gain.share() / gain.control()) : OptionalDouble.empty(),
                gain.sides().stream()
                        .map(side -> new Side(
                                verdict.named().get(side.place()),
                                Compass.word(side.bearingDeg()),
                                side.areaM2() / M2_PER_KM2))
                        .toList());
    }

    private static List<Double> ends(Interval interval, double factor) {
        return List.of(factor * interval.low(), factor * interval.high());
    }

    /** Who of the plan reaches whom. */
    static JsonNode places(ReachAnswer answer) {
        Plan plan = answer.scene().plan();
        PlacesAnswer found = answer.places();
        return Json.tree(new Whole(
                found.places().stream().map(place -> place(plan, place)).toList(),
                found.pairs().stream().map(pair -> pair(found, pair)).toList(),
                found.base().isPresent()
                        ? Optional.of(
                                found.places().get(found.base().getAsInt()).name())
                        : Optional.empty(),
                found.omitted()));
    }

    private static OfPlace place(Plan plan, PlacesAnswer.Place place) {
        return new OfPlace(
                place.name(),
                place.kind().word(),
                place.loadout().name(),
                place.points().stream()
                        .map(point -> new Point(
                                point.at().latitudeDeg(),
                                point.at().longitudeDeg(),
                                plan.header().placeForm().format(point.at())))
                        .toList());
    }

    private static OfPair pair(PlacesAnswer found, PlacesAnswer.Pair pair) {
        return new OfPair(
                found.places().get(pair.a()).name(),
                found.places().get(pair.b()).name(),
                List.of(pair.distanceM().low() / 1000, pair.distanceM().high() / 1000),
                pair.odds().map(DecideJson::odds));
    }

    static Odds odds(PlacesAnswer.Odds odds) {
        return new Odds(ends(odds.there()), ends(odds.back()), ends(odds.weaker()), ends(odds.pessimistic()));
    }

    private static List<Double> ends(PlacesAnswer.Span span) {
        return List.of(span.low(), span.high());
    }
}
