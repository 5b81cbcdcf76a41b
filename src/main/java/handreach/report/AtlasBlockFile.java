package handreach.report;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.atlas.HeardBits;
import handreach.atlas.LoadoutFigures;
import handreach.atlas.PositionFigures;
import handreach.geodesy.Position;
import handreach.input.Memory;
import handreach.reach.CellGrid;
import handreach.reach.ReachEstimate;
import handreach.uncertainty.Interval;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.BitSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;

/**
 * One block of an atlas as JSON lines: a head that names the question and the loadouts, a line for each position, and a foot with the
 * number of lines and their digest, by which a file that is not whole is known. Numbers keep all their digits.
 */
final class AtlasBlockFile {
    private static final JsonMapper JSON = new JsonMapper();

    /**
     * What stands in a block file.
     *
     * @param digest of the lines of positions
     */
    record Content(List<PositionFigures> rows, String digest) {}

    /**
     * What a block file must hold to be the one that is missing.
     *
     * @param cells of the grid of positions, in their order; empty where any will do
     * @param loadouts how many
     */
    record Expected(
            String question, Optional<List<Integer>> cells, CellGrid positions, CellGrid targets, int loadouts) {
        private boolean isMetBy(List<PositionFigures> rows) {
            if (cells.isPresent()
                    && !rows.stream().map(PositionFigures::cell).toList().equals(cells.get())) return false;
            return rows.stream()
                    .allMatch(row -> row.cell() >= 0
                            && row.cell() < positions.count()
                            && row.at().equals(positions.positionOf(row.cell()))
                            && (row.loadouts().isEmpty() || row.loadouts().size() == loadouts));
        }

        private HeardBits.Window window(JsonNode four) {
            HeardBits.Window window = new HeardBits.Window(
                    four.path(0).asInt(),
                    four.path(1).asInt(),
                    four.path(2).asInt(),
                    four.path(3).asInt());
            boolean isInside = window.row() >= 0
                    && window.column() >= 0
                    && window.rows() >= 0
                    && window.columns() >= 0
                    && (long) window.row() + window.rows() <= targets.rows()
                    && (long) window.column() + window.columns() <= targets.columns();
            if (!isInside) throw new IllegalArgumentException("a window beyond the targets");
            return window;
        }
    }

    /** No block is larger; what is was not written here. */
    private static final long MOST_BYTES = 256L << 20;
    /** Its text, its lines and what they become. */
    private static final double MEMORY_PER_BYTE = 6;

    private AtlasBlockFile() {}

    /** The text of a file. */
    static String text(String question, List<String> loadouts, List<PositionFigures> rows) {
        ObjectNode head = JSON.createObjectNode();
        head.put("question", question);
        ArrayNode names = head.putArray("loadouts");
        loadouts.forEach(names::add);
        String lines = lines(rows);
        ObjectNode foot = JSON.createObjectNode();
        foot.put("rows", rows.size());
        foot.put("sha256", digest(lines));
        return head + "\n" + lines + foot + "\n";
    }

    /** Rows as they will be read again. */
    static Content content(List<PositionFigures> rows) {
        return new Content(rows, digest(lines(rows)));
    }

    private static String lines(List<PositionFigures> rows) {
        StringBuilder text = new StringBuilder();
        for (PositionFigures row : rows) text.append(line(row)).append('\n');
        return text.toString();
    }

    private static ObjectNode line(PositionFigures row) {
        ObjectNode line = JSON.createObjectNode();
        line.put("cell", row.cell());
        line.put("latitude", row.at().latitudeDeg());
        line.put("longitude", row.at().longitudeDeg());
        boolean isOfLater = row.isOfLater();
        if (isOfLater)
            line.put("known_later", packed(row.loadouts().get(0).heard().knownLaterBytes()));
        ArrayNode loadouts = line.putArray("loadouts");
        for (LoadoutFigures one : row.loadouts()) {
            ObjectNode figures = loadouts.addObject();
            put(figures.putArray("median_m"), one.medianM());
            put(figures.putArray("worst_m"), one.worst().reachM());
            figures.put("worst_bearing_deg", one.worst().bearingDeg());
            put(figures.putArray("share"), one.share());
            figures.put("open_ended", one.openEnded());
            figures.put("unknown", one.partlyUnknown());
            if (!isOfLater) {
                figures.put("targets", one.heard().count());
                figures.put("targets_known", one.heard().known());
            }
            HeardBits.Window window = one.heard().window();
            figures.putArray("window")
                    .add(window.row())
                    .add(window.column())
                    .add(window.rows())
                    .add(window.columns());
            figures.put(isOfLater ? "heard_later" : "heard", packed(one.heard().bytes()));
        }
        return line;
    }

    private static void put(ArrayNode cells, ReachEstimate estimate) {
        cells.add(estimate.value())
                .add(estimate.interval95().low())
                .add(estimate.interval95().high());
    }

    /** The loadouts that a file names in its head; nothing where it is not there or of another question. */
    static Optional<List<String>> loadouts(Path file, String question) {
        try (BufferedReader lines = Files.newBufferedReader(file)) {
            String line = lines.readLine();
            JsonNode head = line == null ? JSON.createObjectNode() : JSON.readTree(line);
            if (!head.path("question").asText().equals(question)) return Optional.empty();
            List<String> names = new ArrayList<>();
            head.path("loadouts").forEach(name -> names.add(name.asText()));
            return Optional.of(names).filter(all -> !all.isEmpty());
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }

    /** What stands in a file; nothing where it is not there, not whole, of another question or another block. */
    static Optional<Content> read(Path file, Expected expected) {
        String text;
        try {
            if (!Files.isRegularFile(file) || Files.size(file) > Memory.most(MOST_BYTES, MEMORY_PER_BYTE))
                return Optional.empty();
            text = Files.readString(file);
        } catch (IOException unreadable) {
            return Optional.empty();
        }
        return content(text, expected);
    }

    /** The same of the text of a file. */
    static Optional<Content> content(String text, Expected expected) {
        String[] lines = text.split("\n", -1);
        if (lines.length < 3 || !lines[lines.length - 1].isEmpty()) return Optional.empty();
        try {
            if (!JSON.readTree(lines[0]).path("question").asText().equals(expected.question())) return Optional.empty();
            JsonNode foot = JSON.readTree(lines[lines.length - 2]);
            int from = lines[0].length() + 1;
            String rows = text.substring(from, text.length() - lines[lines.length - 2].length() - 1);
            String digest = digest(rows);
            if (foot.path("rows").asInt(-1) != lines.length - 3
                    || !foot.path("sha256").asText().equals(digest)) return Optional.empty();
            List<PositionFigures> figures = new ArrayList<>();
            for (int i = 1; i < lines.length - 2; i++) figures.add(row(JSON.readTree(lines[i]), expected));
            return expected.isMetBy(figures) ? Optional.of(new Content(figures, digest)) : Optional.empty();
        } catch (JacksonException | IllegalArgumentException damaged) {
            return Optional.empty();
        }
    }

    private static PositionFigures row(JsonNode line, Expected expected) {
        List<LoadoutFigures> loadouts = new ArrayList<>();
        BitSet knownLater = null;
        for (JsonNode one : line.path("loadouts")) {
            HeardBits.Window window = expected.window(one.path("window"));
            if (line.has("known_later") && knownLater == null)
                knownLater = BitSet.valueOf(unpacked(line.path("known_later"), window));
            loadouts.add(new LoadoutFigures(
                    estimate(one.path("median_m")),
                    new LoadoutFigures.Worst(estimate(one.path("worst_m")), finite(one.path("worst_bearing_deg"))),
                    estimate(one.path("share")),
                    one.path("open_ended").asInt(),
                    one.path("unknown").asInt(),
                    knownLater == null
                            ? HeardBits.of(
                                    window,
                                    unpacked(one.path("heard"), window),
                                    one.path("targets_known").asInt())
                            : HeardBits.ofLater(
                                    window, BitSet.valueOf(unpacked(one.path("heard_later"), window)), knownLater)));
        }
        return new PositionFigures(
                line.path("cell").asInt(-1),
                new Position(finite(line.path("latitude")), finite(line.path("longitude"))),
                loadouts);
    }

    private static double finite(JsonNode number) {
        double value = number.isNumber() ? number.asDouble() : Double.NaN;
        if (!Double.isFinite(value)) throw new IllegalArgumentException("no number");
        return value;
    }

    private static ReachEstimate estimate(JsonNode cells) {
        return new ReachEstimate(finite(cells.path(0)), new Interval(finite(cells.path(1)), finite(cells.path(2))));
    }

    /** Bits as the deflate format packs them, in base 64. */
    private static String packed(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream zipped = new DeflaterOutputStream(out)) {
            zipped.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Base64.getEncoder().encodeToString(out.toByteArray());
    }

    private static byte[] unpacked(JsonNode text, HeardBits.Window window) {
        int mostBytes = window.rows() * window.columns() / 8 + 1;
        byte[] packed = Base64.getDecoder().decode(text.asText());
        try (InflaterInputStream zipped = new InflaterInputStream(new ByteArrayInputStream(packed))) {
            byte[] bytes = zipped.readNBytes(mostBytes + 1);
            if (bytes.length > mostBytes) throw new IllegalArgumentException("more bits than targets");
            return bytes;
        } catch (IOException e) {
            throw new IllegalArgumentException("bits that are not packed by deflate", e);
        }
    }

    static String digest(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
