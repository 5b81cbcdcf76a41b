package handreach.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.bench.match.Band;
import handreach.bench.match.ChannelMatch;
import handreach.bench.match.Dip;
import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.MatchComparison;
import handreach.bench.match.RadiatorLength;
import handreach.bench.match.Trim;
import handreach.report.file.Json;
import handreach.report.page.TextTable;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One-port sweeps as JSON and as text. */
public final class MatchText {
    private MatchText() {}

    /** One object; a single sweep lies at the top, further ones under {@code others} with what they change. */
    public static ObjectNode json(List<MatchAnalysis> sweeps) {
        ObjectNode node = sweep(sweeps.get(0));
        if (sweeps.size() > 1) {
            ArrayNode others = node.putArray("others");
            sweeps.stream().skip(1).forEach(sweep -> others.add(sweep(sweep)));
            node.set("changes", Json.tree(MatchComparison.of(sweeps).changes()));
        }
        return node;
    }

    private static ObjectNode sweep(MatchAnalysis sweep) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("file", sweep.name());
        node.put("system_ohm", sweep.systemOhm());
        node.put("lowest_mhz", sweep.lowestMhz());
        node.put("highest_mhz", sweep.highestMhz());
        Dip main = sweep.main();
        if (main.resonance().isPresent()) {
            node.put("resonance_mhz", main.resonance().get().frequencyMhz());
            node.put("resonance_resistance_ohm", main.resonance().get().resistanceOhm());
        } else node.putNull("resonance_mhz");
        node.put("swr_minimum_mhz", main.frequencyMhz());
        node.put("swr_minimum", main.match().swr());
        band(node, "bandwidth_2_mhz", "band_2_mhz", main.band2());
        band(node, "bandwidth_3_mhz", "band_3_mhz", main.band3());
        if (sweep.qualityFromBandwidth().isPresent())
            node.put("q", sweep.qualityFromBandwidth().getAsDouble());
        else node.putNull("q");
        ArrayNode channels = node.putArray("channels");
        for (ChannelMatch channel : sweep.channels()) channels.add(channel(channel));
        node.put("dips", sweep.dips().size());
        node.set("warnings", Json.tree(sweep.warnings()));
        return node;
    }

    private static void band(ObjectNode node, String width, String edges, Optional<Band> band) {
        if (band.isPresent()) {
            node.put(width, band.get().widthMhz());
            node.putArray(edges).add(band.get().lowMhz()).add(band.get().highMhz());
            node.put(edges.replace("_mhz", "_whole"), band.get().isWhole());
        } else {
            node.putNull(width);
            node.putNull(edges);
        }
    }

    private static ObjectNode channel(ChannelMatch channel) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("channel_mhz", channel.channelMhz());
        node.put("swr", channel.match().swr());
        double returnLoss = channel.match().returnLossDb();
        if (Double.isFinite(returnLoss)) node.put("return_loss_db", returnLoss);
        else node.putNull("return_loss_db");
        node.put("mismatch_loss_db", channel.match().mismatchLossDb());
        node.put("resistance_ohm", channel.resistanceOhm());
        node.put("reactance_ohm", channel.reactanceOhm());
        node.put("too_long_percent", channel.trim().map(Trim::tooLongPercent).orElse(null));
        node.put("too_long_mm", channel.trim().map(Trim::tooLongMm).orElse(null));
        node.put("advice", channel.advice());
        node.put("counterpoise_mm", RadiatorLength.counterpoiseMm(channel.channelMhz()));
        return node;
    }

    /** The sweeps for people. */
    public static String text(List<MatchAnalysis> sweeps) {
        StringBuilder out = new StringBuilder();
        for (MatchAnalysis sweep : sweeps) out.append(one(sweep)).append('\n');
        if (sweeps.size() > 1)
            MatchComparison.of(sweeps)
                    .changes()
                    .forEach(change -> out.append(change.words()).append('\n'));
        return out.toString();
    }

    private static String one(MatchAnalysis sweep) {
        Dip main = sweep.main();
        StringBuilder out = new StringBuilder(sweep.name() + ", over " + number(sweep.systemOhm(), 0) + " ohm\n");
        out.append("Resonance (reactance zero): ")
                .append(main.resonance()
                        .map(r -> number(r.frequencyMhz(), 3) + " MHz, " + number(r.resistanceOhm(), 1) + " ohm")
                        .orElse("none in the sweep"))
                .append("\nLeast SWR: ")
                .append(number(main.match().swr(), 2))
                .append(" at ")
                .append(number(main.frequencyMhz(), 3))
                .append(" MHz\n2:1 bandwidth: ")
                .append(band(main.band2()))
                .append("\n3:1 bandwidth: ")
                .append(band(main.band3()))
                .append('\n');
        if (!sweep.channels().isEmpty()) {
            TextTable table = TextTable.of(
                    "channel MHz",
                    "SWR",
                    "return loss dB",
                    "mismatch dB",
                    "R ohm",
                    "X ohm",
                    "too long %",
                    "straight whip mm",
                    "counterpoise mm");
            for (ChannelMatch c : sweep.channels())
                table.row(
                        number(c.channelMhz(), 3),
                        number(c.match().swr(), 2),
                        number(c.match().returnLossDb(), 1),
                        number(c.match().mismatchLossDb(), 2),
                        number(c.resistanceOhm(), 1),
                        number(c.reactanceOhm(), 1),
                        c.trim()
                                .map(trim -> String.format(Locale.ROOT, "%+.2f", trim.tooLongPercent()))
                                .orElse("-"),
                        c.trim()
                                .map(trim -> String.format(Locale.ROOT, "%+.1f", trim.tooLongMm()))
                                .orElse("-"),
                        number(RadiatorLength.counterpoiseMm(c.channelMhz()), 0));
            out.append(table.text());
            for (ChannelMatch c : sweep.channels())
                out.append(number(c.channelMhz(), 3))
                        .append(" MHz: ")
                        .append(c.advice())
                        .append('\n');
        }
        return out.toString();
    }

    private static String band(Optional<Band> band) {
        return band.map(b -> number(b.widthMhz(), 3) + " MHz, " + number(b.lowMhz(), 3) + " to "
                        + number(b.highMhz(), 3) + (b.isWhole() ? "" : " (cut off by the sweep)"))
                .orElse("none");
    }

    private static String number(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
