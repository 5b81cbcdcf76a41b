package handreach.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.bench.AntennaResult;
import handreach.bench.BenchAnalysis;
import handreach.bench.MeterResult;
import handreach.bench.MeterScale;
import handreach.bench.MountResult;
import handreach.bench.match.MatchReadings;
import handreach.report.file.Json;
import handreach.report.page.TextTable;
import handreach.uncertainty.Interval;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A bench session as JSON and as text. */
public final class BenchText {
    private BenchText() {}

    /** The analysis with the keys of the command line's contract. */
    public static ObjectNode json(BenchAnalysis analysis, double settleDb) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("control", analysis.control().orElse(null));
        ArrayNode mounts = node.putArray("mounts");
        for (MountResult mount : analysis.mounts()) mounts.add(mount(mount, settleDb));
        ArrayNode meters = node.putArray("field_meter");
        for (MeterResult meter : analysis.meters()) meters.add(meter(meter, settleDb));
        ArrayNode matches = node.putArray("match");
        for (MatchReadings match : analysis.matches()) matches.add(match(match));
        node.set("warnings", Json.tree(analysis.warnings()));
        return node;
    }

    private static ObjectNode mount(MountResult mount, double settleDb) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("mount", mount.mounting().name());
        node.put("mount_kind", mount.mounting().kind().name().toLowerCase(Locale.ROOT));
        put(node, "frequency_mhz", mount.frequencyMhz());
        ObjectNode control = node.putObject("control");
        control.put("n", mount.control().n());
        control.put("mean_dbm", mount.control().mean());
        put(control, "standard_deviation_db", mount.control().standardDeviationDb());
        ArrayNode antennas = node.putArray("antennas");
        for (AntennaResult result : mount.antennas()) antennas.add(antenna(result, settleDb));
        node.set("alike", Json.tree(mount.alike()));
        mount.drift().ifPresent(drift -> {
            ObjectNode one = node.putObject("drift");
            one.put("db_per_reading", drift.dbPerReading());
            one.put("p", drift.p());
            one.put("significant", drift.significant());
            one.put("basis", drift.basis().name().toLowerCase(Locale.ROOT));
        });
        return node;
    }

    private static ObjectNode antenna(AntennaResult result, double settleDb) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("antenna", result.antenna());
        node.put("n", result.n());
        node.put("mean_dbm", result.level().mean());
        node.put("delta_db", result.delta().db());
        put(node, "standard_uncertainty_db", result.delta().standardUncertaintyDb());
        Optional<Interval> interval = result.delta().interval95();
        if (interval.isPresent())
            node.putArray("interval_95_db")
                    .add(interval.get().low())
                    .add(interval.get().high());
        else node.putNull("interval_95_db");
        node.put("told_apart", result.toldApart());
        node.put("verdict", result.finding().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        node.put("reason", result.reason());
        Optional<Interval> together = result.intervalTogether();
        if (together.isPresent())
            node.putArray("interval_95_together_db")
                    .add(together.get().low())
                    .add(together.get().high());
        else node.putNull("interval_95_together_db");
        result.delta()
                .estimate()
                .ifPresent(estimate -> putFinite(node, "degrees_of_freedom", estimate.degreesOfFreedom()));
        node.put("method", result.method().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        result.verdict().ifPresent(verdict -> {
            node.put("p", verdict.p());
            node.put("adjusted_p", verdict.adjustedP());
        });
        result.detection().ifPresent(limit -> {
            putFinite(node, "minimum_difference_db", limit.minimumDifferenceDb());
            OptionalInt trials = limit.trialsFor(settleDb);
            ObjectNode settle = node.putObject("settle");
            settle.put("difference_db", settleDb);
            if (trials.isPresent()) settle.put("trials", trials.getAsInt());
            else settle.putNull("trials");
        });
        node.set(
                "already_holds",
                Json.tree(result.delta().effects().effects().stream().sorted().toList()));
        return node;
    }

    private static ObjectNode meter(MeterResult meter, double settleDb) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("mount", meter.mounting().name());
        put(node, "frequency_mhz", meter.frequencyMhz());
        node.put("basis", meter.basis().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        ArrayNode ranks = node.putArray("ranks");
        for (MeterResult.Rank rank : meter.ranks()) {
            ObjectNode one = ranks.addObject();
            one.put("antenna", rank.antenna());
            one.put("rank", rank.rank());
            one.put("n", rank.n());
            one.put("median_ua", rank.medianMicroamps());
            rank.bracketDb()
                    .ifPresent(b -> one.putArray("bracket_db").add(b.low()).add(b.high()));
        }
        meter.agreement().ifPresent(agreement -> node.set("agreement", Json.tree(agreement)));
        ArrayNode deltas = node.putArray("deltas");
        for (AntennaResult result : meter.deltas()) deltas.add(antenna(result, settleDb));
        return node;
    }

    private static ObjectNode match(MatchReadings match) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("antenna", match.antenna());
        node.put("mount", match.mounting().name());
        put(node, "resonance_mhz", match.resonanceMhz());
        put(node, "bandwidth_mhz", match.bandwidthMhz());
        ArrayNode points = node.putArray("points");
        for (MatchReadings.Point point : match.points()) {
            ObjectNode one = points.addObject();
            one.put("frequency_mhz", point.frequencyMhz());
            putFinite(one, "swr", point.match().swr());
            putFinite(one, "return_loss_db", point.match().returnLossDb());
            putFinite(one, "mismatch_loss_db", point.match().mismatchLossDb());
        }
        return node;
    }

    private static void put(ObjectNode node, String key, OptionalDouble value) {
        if (value.isPresent()) putFinite(node, key, value.getAsDouble());
        else node.putNull(key);
    }

    private static void putFinite(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) node.put(key, value);
        else node.putNull(key);
    }

    /** The analysis for people: one table a mounting, and what it means in words. */
    public static String text(BenchAnalysis analysis, double settleDb) {
        StringBuilder out = new StringBuilder();
        analysis.control()
                .ifPresent(control -> out.append("Control: ").append(control).append("\n"));
        for (MountResult mount : analysis.mounts()) {
            out.append('\n').append(title(mount)).append('\n').append(table(mount, settleDb));
            out.append(BenchWords.ranking(mount)).append('\n');
            for (List<String> group : mount.alike())
                out.append("Cannot be told apart: ")
                        .append(String.join(", ", group))
                        .append(".\n");
        }
        for (MeterResult meter : analysis.meters())
            out.append('\n')
                    .append(meter.basis() == MeterScale.Basis.UNDECLARED ? ranks(meter) : decibels(meter))
                    .append(BenchWords.meter(meter))
                    .append('\n');
        TextTable match = TextTable.of("match", "mount", "MHz", "SWR", "return loss dB", "mismatch dB");
        for (MatchReadings readings : analysis.matches())
            for (MatchReadings.Point point : readings.points())
                match.row(
                        readings.antenna(),
                        readings.mounting().name(),
                        number(point.frequencyMhz(), 3),
                        number(point.match().swr(), 2),
                        number(point.match().returnLossDb(), 1),
                        number(point.match().mismatchLossDb(), 2));
        if (match.rowCount() > 0)
            out.append('\n')
                    .append(match.text())
                    .append("Match explains a delta of the same mounting; it is never a second loss.\n");
        return out.toString();
    }

    private static String ranks(MeterResult meter) {
        TextTable table =
                TextTable.of("field meter, " + meter.mounting().name(), "rank", "n", "median uA", "between dB");
        for (MeterResult.Rank rank : meter.ranks())
            table.row(
                    rank.antenna(),
                    Integer.toString(rank.rank()),
                    Integer.toString(rank.n()),
                    number(rank.medianMicroamps(), 1),
                    rank.bracketDb()
                            .map(b -> number(b.low(), 1) + " to " + number(b.high(), 1))
                            .orElse(""));
        return table.text();
    }

    private static String decibels(MeterResult meter) {
        TextTable table = TextTable.of(
                "field meter, " + meter.mounting().name(),
                "rank",
                "n",
                "median uA",
                "delta dB",
                "u dB",
                "95 % interval",
                "told apart");
        for (MeterResult.Rank rank : meter.ranks()) {
            Optional<AntennaResult> result = meter.antenna(rank.antenna());
            table.row(
                    rank.antenna(),
                    Integer.toString(rank.rank()),
                    Integer.toString(rank.n()),
                    number(rank.medianMicroamps(), 1),
                    result.map(BenchText::delta).orElse("-"),
                    result.map(BenchText::doubt).orElse("-"),
                    result.map(BenchText::interval).orElse("-"),
                    result.map(BenchText::told).orElse("-"));
        }
        return table.text();
    }

    private static String delta(AntennaResult result) {
        return String.format(Locale.ROOT, "%+.2f", result.delta().db());
    }

    private static String doubt(AntennaResult result) {
        OptionalDouble u = result.delta().standardUncertaintyDb();
        return u.isPresent() ? number(u.getAsDouble(), 2) : "-";
    }

    private static String interval(AntennaResult result) {
        return result.delta()
                .interval95()
                .map(i -> String.format(Locale.ROOT, "%+.2f to %+.2f", i.low(), i.high()))
                .orElse("-");
    }

    private static String title(MountResult mount) {
        String at = mount.frequencyMhz().isPresent()
                ? " at " + number(mount.frequencyMhz().getAsDouble(), 3) + " MHz"
                : "";
        return "In mounting \"" + mount.mounting().name() + "\"" + at + ", control "
                + number(mount.control().mean(), 2) + " dBm from "
                + mount.control().n() + " readings";
    }

    private static String table(MountResult mount, double settleDb) {
        TextTable table = TextTable.of(
                "antenna",
                "n",
                "delta dB",
                "u dB",
                "95 % interval",
                "told apart",
                "least seen dB",
                "trials for " + number(settleDb, 1) + " dB");
        for (AntennaResult result : mount.antennas())
            table.row(
                    result.antenna(),
                    Integer.toString(result.n()),
                    delta(result),
                    doubt(result),
                    interval(result),
                    told(result),
                    result.detection()
                            .map(limit -> number(limit.minimumDifferenceDb(), 2))
                            .orElse("-"),
                    result.detection()
                            .map(limit -> limit.trialsFor(settleDb))
                            .map(trials -> trials.isPresent() ? Integer.toString(trials.getAsInt()) : "never")
                            .orElse("-"));
        return table.text();
    }

    private static String told(AntennaResult result) {
        return switch (result.finding()) {
            case TOLD_APART -> "yes";
            case NOT_TOLD_APART -> "no";
            case TOO_FEW_TRIALS, NO_SCATTER -> "cannot say";
        };
    }

    private static String number(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
