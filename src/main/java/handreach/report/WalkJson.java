package handreach.report;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.JsonNode;
import handreach.report.file.Json;
import handreach.study.SilentLogging;
import handreach.study.WalkAnswer;
import handreach.walk.Comparison;
import handreach.walk.Direction;
import handreach.walk.MarginTrend;
import handreach.walk.Reception;
import handreach.walk.SilentCalls;
import handreach.walk.WalkPair;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A walk beside its prediction with every report, as its JSON object holds it; the schema says what each key means. Scores are
 * trees, which write whole numbers without a fraction.
 */
public record WalkJson(
        @JsonUnwrapped PlanSubject subject,
        String model,
        JsonNode all,
        JsonNode groups,
        JsonNode reliability,
        JsonNode sectors,
        List<Integer> worstLines,
        Optional<Learned> learned,
        Optional<String> refused,
        Silent silentCalls,
        Trend marginTrend,
        Optional<JsonNode> heldBack,
        List<Report> reports,
        List<String> warnings) {
    /** What the walks teach. */
    record Learned(
            JsonNode bias,
            double spreadDb,
            JsonNode spreadInterval95Db,
            double independentReports,
            double decorrelationM,
            boolean decorrelationEstimated) {
        static Learned of(WalkAnswer.Learned learned) {
            return new Learned(
                    Json.tree(learned.file().site().bias()),
                    learned.file().site().spreadDb(),
                    Json.tree(learned.calibration().spread95Db()),
                    learned.calibration().effectiveCount(),
                    learned.decorrelationM(),
                    learned.estimated());
        }
    }

    /** Calls without an answer, counted as independent reports. */
    record Silent(SilentLogging.Said said, double expected, double found, double deviation, boolean tooFew) {
        static Silent of(SilentLogging logging) {
            SilentCalls calls = logging.calls();
            return new Silent(logging.said(), calls.expected(), calls.found(), calls.deviation(), calls.isTooFew());
        }
    }

    /** How the errors go with the predicted margin. */
    record Trend(double slope, double standardUncertainty, boolean seen) {
        static Trend of(MarginTrend trend) {
            return new Trend(trend.slope(), trend.standardUncertainty(), trend.isSeen());
        }
    }

    /** A report beside its prediction. */
    record Report(
            int line,
            double latitude,
            double longitude,
            double bearingDeg,
            double distanceM,
            String cover,
            String loadout,
            Direction direction,
            double marginDb,
            double predictedDbm,
            double odds,
            Reception.Kind heard,
            double value,
            boolean copy,
            OptionalDouble errorDb) {
        static Report of(WalkPair pair) {
            WalkPair.Spot spot = pair.spot();
            return new Report(
                    spot.line(),
                    spot.at().latitudeDeg(),
                    spot.at().longitudeDeg(),
                    spot.bearingDeg(),
                    spot.distanceM(),
                    spot.cover().word(),
                    pair.link().loadout(),
                    pair.link().way(),
                    pair.marginDb(),
                    pair.predictedDbm(),
                    pair.odds(),
                    pair.heard().kind(),
                    pair.heard().value(),
                    pair.copied(),
                    pair.isLevel() ? OptionalDouble.of(pair.errorDb()) : OptionalDouble.empty());
        }
    }

    /** The object of an answer. */
    public static WalkJson of(WalkAnswer answer) {
        Comparison comparison = answer.comparison();
        return new WalkJson(
                PlanSubject.of(answer.scene().plan()),
                answer.scene().plan().questions().reach().model().name(),
                Json.tree(comparison.all()),
                Json.tree(comparison.groups()),
                Json.tree(comparison.reliability()),
                Json.tree(comparison.sectors()),
                comparison.worst().stream().map(pair -> pair.spot().line()).toList(),
                Optional.of(answer.learned())
                        .filter(learned -> learned.refusal().isEmpty())
                        .map(Learned::of),
                answer.learned().refusal(),
                Silent.of(answer.learned().logging()),
                Trend.of(answer.learned().trend()),
                answer.check()
                        .filter(check -> answer.learned().refusal().isEmpty())
                        .map(Json::tree),
                answer.pairs().stream().map(Report::of).toList(),
                answer.warnings());
    }
}
