package handreach.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import handreach.loadout.NeededWays;
import handreach.plan.Channel;
import handreach.plan.Channel.CopyWish;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.propagation.Foliage;
import handreach.reach.LoadoutReach;
import handreach.reach.LossGrid;
import handreach.reach.ModelDifference;
import handreach.reach.RadialReach;
import handreach.reach.ReachDifference;
import handreach.reach.ReachEstimate;
import handreach.reach.SamplingDifference;
import handreach.report.file.Json;
import handreach.study.ModelChoice;
import handreach.study.PowerStep;
import handreach.study.ReachAnswer;
import handreach.uncertainty.Interval;
import handreach.units.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The numbers of a reach answer as {@code reach --json} writes them: component names are its keys, see docs/schema. Lengths are km,
 * intervals a low and a high end.
 */
public record ReachNumbers(
        String title,
        String model,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<String> modelChoice,
        String channel,
        double frequencyMhz,
        String quality,
        double odds,
        SomeCopy someCopy,
        double radiusKm,
        Middle middle,
        String control,
        List<OfLoadout> loadouts,
        String areaShareOf,
        Optional<Area> area,
        String otherEnd,
        JsonNode decide,
        JsonNode whoReachesWhom,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<String> neededWays,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<JsonNode> oneWay,
        JsonNode stations,
        JsonNode channels,
        JsonNode alongRoutes,
        List<LowerPower> lowerPowers,
        JsonNode noise,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Trees> foliage,
        JsonNode calibration,
        List<String> warnings) {
    private static final List<String> CSV_HEADER = List.of(
            "loadout",
            "bearing_deg",
            "continuous_km",
            "continuous_low_95_km",
            "continuous_high_95_km",
            "at_least",
            "farthest_km",
            "farthest_low_95_km",
            "farthest_high_95_km",
            "share",
            "unknown_beyond_km");

    /**
     * Where the rose stands.
     *
     * @param name the position of the plan that stands there; empty for the bare middle of the area
     * @param loadout what stays there whoever calls; empty where both ends carry the same
     */
    public record Middle(
            double latitude, double longitude, String place, Optional<String> name, Optional<String> loadout) {}

    /** What counts as some copy, beside what the plan wants. */
    public record SomeCopy(String quality, String fading, double odds) {
        static final SomeCopy ASKED = new SomeCopy(
                CopyWish.SOME_COPY.quality().word(), CopyWish.SOME_COPY.fading().word(), CopyWish.SOME_COPY.odds());
    }

    /** One loadout; in the median direction also to some copy. */
    public record OfLoadout(
            String loadout,
            double medianKm,
            List<Double> medianInterval95Km,
            double worstKm,
            List<Double> worstInterval95Km,
            double worstBearingDeg,
            double someCopyMedianKm,
            List<Double> someCopyMedianInterval95Km,
            double areaShare,
            List<Double> areaShareInterval95,
            Optional<Against> againstControl,
            JsonNode burden,
            String verdict,
            JsonNode gains,
            List<OnBearing> bearings) {}

    /** What a loadout adds to the control. */
    public record Against(double medianKm, List<Double> medianInterval95Km, boolean toldApart) {}

    /** One loadout along one bearing. */
    public record OnBearing(
            double bearingDeg,
            double continuousKm,
            List<Double> continuousInterval95Km,
            double farthestKm,
            List<Double> farthestInterval95Km,
            double share,
            boolean atLeast,
            OptionalDouble unknownBeyondKm) {}

    /** A loadout with its radio turned down. */
    public record LowerPower(
            String loadout, double powerW, double medianKm, double areaShare, OptionalDouble batteryHours) {
        static LowerPower of(ReachAnswer answer, PowerStep step) {
            return new LowerPower(
                    answer.loadouts().get(step.loadout()).link().name(),
                    step.powerW(),
                    step.reach().medianM().value() / 1000,
                    step.reach().share().value(),
                    step.hours());
        }
    }

    /** State of the trees where the plan has them out of leaf, wet or under snow, and every loadout with them in leaf. */
    public record Trees(String word, double factor, List<Double> deepEndDb, String source, List<InLeaf> inLeaf) {
        static Optional<Trees> of(ReachAnswer answer) {
            Foliage foliage = answer.scene().foliage();
            if (foliage == Foliage.IN_LEAF) return Optional.empty();
            Channel channel = answer.scene().plan().channel();
            double[] deep = foliage.deepEndDb(channel.frequency(), channel.polarization());
            return Optional.of(new Trees(
                    foliage.word(),
                    foliage.factor(channel.frequency()),
                    List.of(deep[0], deep[1]),
                    foliage.source(),
                    answer.inLeaf().stream()
                            .map(reach -> new InLeaf(
                                    reach.link().name(),
                                    reach.medianM().value() / 1000,
                                    reach.share().value()))
                            .toList()));
        }
    }

    /** One loadout with the trees in leaf. */
    public record InLeaf(String loadout, double medianKm, double areaShare) {}

    /** How the cells were computed, and how far a sweep or a march differs from one exact path per cell. */
    public record Area(
            String engine,
            double cellM,
            int knownCells,
            List<Sampling> samplingDifferences,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Models> modelDifference) {}

    /** {@link ModelDifference}: shares of the known ground. */
    public record Models(
            String other,
            double feltDb,
            double moreShare,
            double lessShare,
            double lostShare,
            double moreKm2,
            double lessKm2) {
        static Models of(ModelDifference difference) {
            return new Models(
                    difference.other(),
                    ModelDifference.FELT_DB,
                    difference.share(ModelDifference.Kind.MORE),
                    difference.share(ModelDifference.Kind.LESS),
                    difference.share(ModelDifference.Kind.LOST),
                    difference.areaM2(ModelDifference.Kind.MORE) / 1e6,
                    difference.areaM2(ModelDifference.Kind.LESS) / 1e6);
        }
    }

    /** {@link SamplingDifference} for one pair of antenna heights. */
    public record Sampling(
            int cells, double meanDb, double rmsDb, double p99Db, double largestDb, JsonNode terminals) {}

    /** The answer with every bearing of every loadout. */
    public static ReachNumbers of(ReachAnswer answer) {
        Plan plan = answer.scene().plan();
        return new ReachNumbers(
                plan.header().title(),
                plan.questions().reach().model().name(),
                answer.scene().choice().map(ModelChoice::words),
                plan.channel().name(),
                plan.channel().frequency().mhz(),
                plan.channel().wish().quality().word(),
                plan.channel().wish().odds(),
                SomeCopy.ASKED,
                plan.places().area().radiusKm(),
                new Middle(
                        answer.middle().latitudeDeg(),
                        answer.middle().longitudeDeg(),
                        plan.header().placeForm().format(answer.middle()),
                        answer.scene().middlePosition().map(Places.PositionEntry::name),
                        answer.scene().middleLoadoutName()),
                answer.scene().controlLoadout().name(),
                IntStream.range(0, answer.loadouts().size())
                        .mapToObj(number -> loadout(answer, number))
                        .toList(),
                answer.area().isPresent() ? "cells" : "bearings",
                answer.area().map(ReachNumbers::area),
                answer.otherEnd(),
                DecideJson.decide(plan),
                DecideJson.places(answer),
                Optional.of(plan.channel().wish().ways())
                        .filter(ways -> ways != NeededWays.BOTH)
                        .map(NeededWays::word),
                new OneWayComposer(answer).json(),
                StationsJson.of(answer.stations(), plan),
                ChannelsJson.of(answer),
                RoutesJson.of(answer.routes()),
                answer.powerSteps().stream()
                        .map(step -> LowerPower.of(answer, step))
                        .toList(),
                Json.tree(NoiseComposer.all(answer.scene())),
                Trees.of(answer),
                CalibrationJson.tree(answer.scene().calibration(), Optional.of(plan.header())),
                answer.warnings());
    }

    /** Every loadout on every bearing, a row each; lengths to a metre, which is finer than they are known. */
    String bearingsCsv(ReachOrigin origin) {
        List<List<String>> rows = new ArrayList<>();
        for (OfLoadout one : loadouts)
            for (OnBearing at : one.bearings())
                rows.add(List.of(
                        one.loadout(),
                        decimals(at.bearingDeg(), 1),
                        decimals(at.continuousKm(), 3),
                        decimals(at.continuousInterval95Km().get(0), 3),
                        decimals(at.continuousInterval95Km().get(1), 3),
                        String.valueOf(at.atLeast()),
                        decimals(at.farthestKm(), 3),
                        decimals(at.farthestInterval95Km().get(0), 3),
                        decimals(at.farthestInterval95Km().get(1), 3),
                        decimals(at.share(), 3),
                        at.unknownBeyondKm().isPresent()
                                ? decimals(at.unknownBeyondKm().getAsDouble(), 3)
                                : ""));
        return origin.csv(CSV_HEADER, rows);
    }

    private static String decimals(double value, int decimals) {
        return Decibels.plain(value, decimals);
    }

    private static OfLoadout loadout(ReachAnswer answer, int number) {
        LoadoutReach reach = answer.loadouts().get(number);
        ReachEstimate some = answer.someCopy().get(number).medianM();
        return new OfLoadout(
                reach.link().name(),
                reach.medianM().value() / 1000,
                kilometres(reach.medianM().interval95()),
                reach.worstM().value() / 1000,
                kilometres(reach.worstM().interval95()),
                reach.worstBearingDeg(),
                some.value() / 1000,
                kilometres(some.interval95()),
                answer.share(number).value(),
                ends(answer.share(number).interval95(), 1),
                reach.overControl().map(ReachNumbers::against),
                Json.tree(answer.scene().loadout(reach.link().name()).antenna().burden()),
                new VerdictComposer(answer).words(number),
                DecideJson.gains(answer.verdicts().get(number)),
                IntStream.range(0, reach.bearings())
                        .mapToObj(bearing -> onBearing(reach, bearing))
                        .toList());
    }

    private static Against against(ReachDifference difference) {
        return new Against(difference.medianM() / 1000, kilometres(difference.interval95M()), difference.isToldApart());
    }

    private static OnBearing onBearing(LoadoutReach loadout, int number) {
        RadialReach reach = loadout.radial(number);
        OptionalDouble unknown = reach.unknownBeyondM();
        return new OnBearing(
                loadout.bearingDeg(number),
                loadout.continuousM(number).value() / 1000,
                kilometres(loadout.continuousM(number).interval95()),
                loadout.farthestM(number).value() / 1000,
                kilometres(loadout.farthestM(number).interval95()),
                reach.share(),
                reach.openEnded(),
                unknown.isPresent() ? OptionalDouble.of(unknown.getAsDouble() / 1000) : unknown);
    }

    private static Area area(ReachAnswer.AreaAnswer area) {
        List<Sampling> differences = new ArrayList<>();
        for (LossGrid loss : area.losses())
            loss.difference()
                    .ifPresent(one -> differences.add(new Sampling(
                            one.cells(),
                            one.meanDb(),
                            one.rmsDb(),
                            one.p99Db(),
                            one.largestDb(),
                            Json.tree(loss.request().terminals()))));
        LossGrid first = area.losses().get(0);
        return new Area(
                first.engine().word(),
                first.grid().cellM(),
                first.knownCount(),
                differences,
                area.models().map(Models::of));
    }

    private static List<Double> kilometres(Interval metres) {
        return ends(metres, 1000);
    }

    private static List<Double> ends(Interval interval, double divisor) {
        return List.of(interval.low() / divisor, interval.high() / divisor);
    }
}
