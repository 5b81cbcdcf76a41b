package handreach.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.geodesy.Compass;
import handreach.loadout.Burden;
import handreach.loadout.Loadout;
import handreach.plan.Plan;
import handreach.reach.LoadoutReach;
import handreach.reach.LossGrid;
import handreach.reach.RadialReach;
import handreach.reach.ReachDifference;
import handreach.reach.ReachEstimate;
import handreach.report.file.Json;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.report.page.TextTable;
import handreach.study.ReachAnswer;
import handreach.uncertainty.Interval;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reach of a plan's loadouts as JSON and as text. */
public final class ReachText {
    private ReachText() {}

    /** The answer with every bearing of every loadout. */
    public static ObjectNode json(ReachAnswer answer) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        Plan plan = answer.scene().plan();
        node.put("title", plan.heading().title());
        node.put("model", plan.questions().reach().model().name());
        node.put("frequency_mhz", plan.channel().frequency().mhz());
        node.put("odds", plan.channel().wish().odds());
        node.put("radius_km", plan.places().area().radiusKm());
        ObjectNode middle = node.putObject("middle");
        middle.put("latitude", answer.middle().latitudeDeg());
        middle.put("longitude", answer.middle().longitudeDeg());
        middle.put("place", plan.heading().placeForm().format(answer.middle()));
        node.put("control", answer.scene().controlLoadout().name());
        ArrayNode loadouts = node.putArray("loadouts");
        for (int i = 0; i < answer.loadouts().size(); i++) loadouts.add(loadout(answer, i));
        node.put("area_share_of", answer.area().isPresent() ? "cells" : "bearings");
        node.set("area", answer.area().map(ReachText::area).orElse(null));
        node.put("other_end", answer.otherEnd());
        CalibrationJson.put(node, answer.scene().calibration(), Optional.of(plan.heading()));
        node.set("warnings", Json.tree(answer.warnings()));
        return node;
    }

    /** How the cells were reckoned, and how far a sweep or a march differs from one exact path per cell. */
    private static JsonNode area(ReachAnswer.AreaAnswer area) {
        List<LossGrid> losses = area.losses();
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("engine", losses.get(0).engine().word());
        node.put("cell_m", losses.get(0).grid().cellM());
        node.put("known_cells", losses.get(0).knownCount());
        ArrayNode differences = node.putArray("sampling_differences");
        for (LossGrid loss : losses)
            loss.difference().ifPresent(difference -> {
                ObjectNode one = (ObjectNode) Json.tree(difference);
                one.set("terminals", Json.tree(loss.request().terminals()));
                differences.add(one);
            });
        return node;
    }

    private static ObjectNode loadout(ReachAnswer answer, int number) {
        LoadoutReach reach = answer.loadouts().get(number);
        ReachEstimate share = answer.share(number);
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("loadout", reach.link().name());
        estimate(node, "median", reach.medianM());
        estimate(node, "worst", reach.worstM());
        node.put("worst_bearing_deg", reach.worstBearingDeg());
        node.put("area_share", share.value());
        interval(node, "area_share_interval_95", share.interval95(), 1);
        if (reach.overControl().isPresent()) {
            ReachDifference difference = reach.overControl().get();
            ObjectNode against = node.putObject("against_control");
            against.put("median_km", difference.medianM() / 1000);
            interval(against, "median_interval_95_km", difference.interval95M(), 1000);
            against.put("told_apart", difference.isToldApart());
        } else node.putNull("against_control");
        Burden burden = answer.scene().loadout(reach.link().name()).antenna().burden();
        node.set("burden", Json.tree(burden));
        node.put("verdict", answer.verdicts().get(number));
        ArrayNode bearings = node.putArray("bearings");
        for (int i = 0; i < reach.bearings(); i++) bearings.add(bearing(reach, i));
        return node;
    }

    private static ObjectNode bearing(LoadoutReach loadout, int number) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        RadialReach reach = loadout.radial(number);
        node.put("bearing_deg", loadout.bearingDeg(number));
        estimate(node, "continuous", loadout.continuousM(number));
        estimate(node, "farthest", loadout.farthestM(number));
        node.put("share", reach.share());
        node.put("at_least", reach.openEnded());
        if (reach.unknownBeyondM().isPresent())
            node.put("unknown_beyond_km", reach.unknownBeyondM().getAsDouble() / 1000);
        else node.putNull("unknown_beyond_km");
        return node;
    }

    private static void estimate(ObjectNode node, String what, ReachEstimate metres) {
        node.put(what + "_km", metres.value() / 1000);
        interval(node, what + "_interval_95_km", metres.interval95(), 1000);
    }

    private static void interval(ObjectNode node, String key, Interval interval, double divisor) {
        node.putArray(key).add(interval.low() / divisor).add(interval.high() / divisor);
    }

    /** The answer for people: what was asked, the table, the verdicts, the reach by eight bearings. */
    public static String text(ReachAnswer answer) {
        Plan plan = answer.scene().plan();
        Lengths lengths = plan.heading().lengths();
        StringBuilder out = new StringBuilder();
        out.append(plan.heading().title()).append('\n');
        out.append(String.format(
                Locale.ROOT,
                "From %s, %s; %.4f MHz, %s; copy at %s with odds of %s or better; within %s; model %s.%n",
                plan.questions().reach().from().orElse("the centre of the area"),
                plan.heading().placeForm().format(answer.middle()),
                plan.channel().frequency().mhz(),
                plan.questions()
                        .reach()
                        .with()
                        .map(name -> "\"" + name + "\" stays there")
                        .orElse("both ends carry the same loadout"),
                plan.channel().wish().quality().word().toUpperCase(Locale.ROOT),
                Shares.wanted(plan.channel().wish().odds()),
                lengths.text(1000 * plan.places().area().radiusKm()),
                plan.questions().reach().model().name()));
        out.append(answer.otherEnd()).append('\n');
        out.append('\n').append(table(answer, lengths)).append('\n');
        for (int i = 0; i < answer.loadouts().size(); i++)
            out.append(answer.loadouts().get(i).link().name())
                    .append(": ")
                    .append(answer.verdicts().get(i))
                    .append('\n');
        out.append('\n').append(compass(answer, lengths));
        out.append(
                        "\nReach: continuous, up to the first stretch of more than 200 m below the target odds. In brackets the 95 % interval")
                .append(
                        " from what is\nuncertain everywhere at once (model, carry loss, bench). + means at least: the radius or unknown")
                .append(" ground ended it.\n")
                .append(
                        answer.area()
                                .map(ReachText::areaWords)
                                .orElse(
                                        "Of the ground: counted along the bearings; with maps (--out) it is counted cell by cell.\n"))
                .append(Cautions.brief(Caution.RELIANCE))
                .append('\n');
        return out.toString();
    }

    private static String areaWords(ReachAnswer.AreaAnswer area) {
        StringBuilder words = new StringBuilder();
        LossGrid first = area.losses().get(0);
        String how = switch (first.engine()) {
            case EXACT -> "one path per cell";
            case MARCH -> "the field marched along radials, cells take the nearest radial";
            case SWEEP -> "a sweep of radials";
        };
        words.append(String.format(
                Locale.ROOT,
                "Maps: %d cells of %.0f m by %s (%s).%n",
                first.knownCount(),
                first.grid().cellM(),
                how,
                first.engine().word()));
        for (LossGrid loss : area.losses())
            loss.difference()
                    .ifPresent(difference -> words.append(String.format(
                            Locale.ROOT,
                            "Antennas %.2f and %.2f m up, %s.%n",
                            loss.request().terminals().txHeightM(),
                            loss.request().terminals().rxHeightM(),
                            difference.sentence(loss.engine()))));
        return words.toString();
    }

    private static String table(ReachAnswer answer, Lengths lengths) {
        TextTable table = TextTable.of(
                "loadout", "median reach", "95 % interval", "worst bearing", "of the ground", "antenna cm", ">g");
        for (int i = 0; i < answer.loadouts().size(); i++) {
            LoadoutReach reach = answer.loadouts().get(i);
            Loadout loadout = answer.scene().loadout(reach.link().name());
            table.row(
                    reach.link().name(),
                    lengths.text(reach.medianM().value()),
                    lengths.text(reach.medianM().interval95().low()) + " to "
                            + lengths.text(reach.medianM().interval95().high()),
                    lengths.text(reach.worstM().value()) + " " + Compass.word(reach.worstBearingDeg()),
                    Shares.share(answer.share(i).value()),
                    String.format(
                            Locale.ROOT, "%.0f", loadout.antenna().burden().lengthCm()),
                    AntennaCost.side(loadout.antenna().burden().massG()));
        }
        return table.text();
    }

    private static String compass(ReachAnswer answer, Lengths lengths) {
        List<String> points =
                List.of("north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west");
        String[] heads = new String[points.size() + 1];
        heads[0] = "continuous reach towards";
        for (int i = 0; i < points.size(); i++) heads[i + 1] = points.get(i);
        TextTable table = TextTable.of(heads);
        for (LoadoutReach reach : answer.loadouts()) {
            String[] cells = new String[heads.length];
            cells[0] = reach.link().name();
            for (int i = 0; i < points.size(); i++)
                cells[i + 1] = cell(reach.radial(nearest(reach, 45.0 * i)), lengths);
            table.row(cells);
        }
        return table.text();
    }

    private static String cell(RadialReach reach, Lengths lengths) {
        return lengths.text(reach.continuousM()) + (reach.openEnded() ? "+" : "");
    }

    private static int nearest(LoadoutReach reach, double azimuthDeg) {
        int best = 0;
        for (int i = 1; i < reach.bearings(); i++)
            if (gap(reach.bearingDeg(i), azimuthDeg) < gap(reach.bearingDeg(best), azimuthDeg)) best = i;
        return best;
    }

    private static double gap(double bearingDeg, double azimuthDeg) {
        double gap = Math.abs(bearingDeg - azimuthDeg) % 360;
        return Math.min(gap, 360 - gap);
    }
}
