package handreach.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import handreach.geodesy.GeodesicLine;
import handreach.propagation.Foliage;
import handreach.propagation.LossPart;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import handreach.report.file.Json;
import handreach.study.ModelSpread;
import handreach.study.PathAnswer;
import handreach.study.Turning;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One path with the keys of the command line's contract. What the question did not ask for is left out; {@code diffractionDb} and
 * {@code excessDb} are told by one model each. Steps and obstacles are trees, in which a whole number has no decimal point, as it
 * always was.
 */
public record PathJson(
        String model,
        double distanceKm,
        double frequencyMhz,
        double lossDb,
        double freeSpaceDb,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> diffractionDb,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> excessDb,
        List<LossPart> parts,
        Geometry geometry,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<List<Model>> models,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<String> reading,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<JsonNode> steps,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<LedgerJson> ledger,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<String> ledgerModel,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Turn> turnings,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Spread> modelSpread,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Trees> foliage,
        Optional<CalibrationJson> calibration,
        List<String> warnings) {
    record Turn(
            String position,
            String towards,
            double headingDeg,
            double pathFromFrontDeg,
            double bestHeadingDeg,
            double gainDb,
            String sentence) {
        static Turn of(Turning turning) {
            return new Turn(
                    turning.who(),
                    turning.other(),
                    turning.headingDeg(),
                    turning.fromFrontDeg(),
                    turning.bestHeadingDeg(),
                    turning.gainDb(),
                    turning.words());
        }
    }

    /** State of the trees where they are not in leaf; what woods take is left out by models that know no leaves. */
    record Trees(
            String word,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> woodlandDb,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> inLeafDb) {
        static Optional<Trees> of(PathAnswer answer) {
            Foliage foliage = answer.link().conditions().foliage();
            return only(
                    foliage != Foliage.IN_LEAF,
                    new Trees(
                            foliage.word(),
                            FoliageComposer.woodlandDb(answer.loss()),
                            FoliageComposer.inLeafDb(answer)));
        }
    }

    record Model(String model, double lossDb, List<LossPart> parts) {
        static Model of(PathLoss loss) {
            return new Model(loss.model(), loss.lossDb(), loss.parts());
        }
    }

    /** How far the models that apply are apart, and which do not and why. */
    record Spread(
            List<String> models,
            double standardDeviationDb,
            double leastDb,
            double mostDb,
            List<ModelSpread.LeftOut> leftOut) {
        static Spread of(ModelSpread spread) {
            return new Spread(
                    spread.applicable().stream().map(PathLoss::model).toList(),
                    spread.standardDeviationDb(),
                    spread.leastDb(),
                    spread.mostDb(),
                    spread.leftOut());
        }
    }

    record Geometry(
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> azimuthDeg,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> finalAzimuthDeg,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> lengthM,
            int samples,
            boolean lineOfSight,
            double departureDeg,
            double arrivalDeg,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Clearance> worstClearance,
            JsonNode obstacles) {
        static Geometry of(PathAnswer answer) {
            PathGeometry geometry = answer.geometry();
            Optional<GeodesicLine> line = answer.link().line();
            return new Geometry(
                    line.map(GeodesicLine::azimuthDeg),
                    line.map(GeodesicLine::finalAzimuthDeg),
                    line.map(GeodesicLine::lengthM),
                    answer.profile().count(),
                    geometry.lineOfSight(),
                    geometry.departureDeg(),
                    geometry.arrivalDeg(),
                    geometry.worstClearance().map(Clearance::of),
                    Json.tree(geometry.obstacles()));
        }
    }

    record Clearance(double distanceKm, double clearanceM, double fresnelRadiusM, double inFresnelRadii) {
        static Clearance of(PathGeometry.Clearance worst) {
            return new Clearance(
                    worst.distanceKm(), worst.clearanceM(), worst.fresnelRadiusM(), worst.inFresnelRadii());
        }
    }

    /** The answer; intermediate values when asked to explain. */
    public static PathJson of(PathAnswer answer, boolean explain) {
        PathLoss loss = answer.loss();
        boolean isMany = answer.losses().size() > 1;
        return new PathJson(
                loss.model(),
                answer.profile().lengthKm(),
                answer.link().conditions().frequency().mhz(),
                loss.lossDb(),
                loss.freeSpaceDb(),
                only(loss.model().equals("delta-bullington"), diffractionDb(loss)),
                only(loss.model().equals("two-ray"), loss.excessDb()),
                loss.parts(),
                Geometry.of(answer),
                only(isMany, answer.losses().stream().map(Model::of).toList()),
                only(isMany, LossComposer.reading(answer.losses())),
                only(explain, Json.tree(loss.steps())),
                answer.ledger().map(LedgerJson::of),
                answer.ledger().map(ledger -> loss.model()),
                answer.turnings().stream().map(Turn::of).toList(),
                answer.spread().map(Spread::of),
                Trees.of(answer),
                CalibrationJson.of(answer.calibration(), Optional.empty()),
                answer.warnings());
    }

    private static <T> Optional<T> only(boolean isAsked, T value) {
        return isAsked ? Optional.of(value) : Optional.empty();
    }

    private static double diffractionDb(PathLoss loss) {
        List<LossPart> named = loss.parts().stream()
                .filter(part -> part.name().toLowerCase(Locale.ROOT).contains("diffraction"))
                .toList();
        return named.isEmpty()
                ? loss.excessDb()
                : named.stream().mapToDouble(LossPart::db).sum();
    }
}
