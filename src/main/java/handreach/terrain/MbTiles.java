package handreach.terrain;

import handreach.input.InputFault;
import handreach.input.NumberText;
import handreach.input.Unseen;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.apache.commons.text.StringEscapeUtils;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteConfig;

/**
 * A map in tiles of PNG or JPEG in one SQLite file. Opened read-only and shut again each time; what a file says to be run in it is not
 * trusted, and may not run for long.
 */
final class MbTiles implements GroundPicture {
    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final int TILE_PX = 256;
    private static final int WIDEST_PX = 2048;
    private static final int LARGEST_TILE = 4 << 20;
    private static final int DEEPEST = 22;
    /** Where a tile is missing, the one above it, so many times. */
    private static final int LEVELS_UP = 3;
    /** Tiles of one window; where it would take more, coarser ones are taken. */
    private static final int MOST_TILES = 400;
    /** Kept unpacked: 40 MiB of usual ones. */
    private static final int KEPT_TILES = 160;
    /** Steps of the database between two looks at the clock, and how long it may take over one question. */
    private static final int STEPS = 10_000;

    private static final long PATIENCE_NS = 5_000_000_000L;
    private static final Pattern MARKUP = Pattern.compile("<[^>]{0,300}>");
    private static final int LONGEST_WORDS = 300;

    private final Path file;
    private final String name;
    private final String attribution;
    private final TileBounds bounds;
    private final int coarsest;
    private final int finest;
    private final Map<Address, Optional<PicturePixels>> kept = new LinkedHashMap<>(2 * KEPT_TILES, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Address, Optional<PicturePixels>> eldest) {
            return size() > KEPT_TILES;
        }
    };

    /** A tile, counted from the north-west. */
    private record Address(int level, int column, int row) {
        Address above() {
            return new Address(level - 1, column >> 1, row >> 1);
        }

        boolean isOnEarth() {
            return row >= 0 && row < 1 << level;
        }
    }

    private interface Question<T> {
        T asked(Connection database) throws SQLException;
    }

    private MbTiles(Path file) {
        this.file = file;
        this.name = String.valueOf(file.getFileName());
        Map<String, String> said = asked(MbTiles::metadata);
        int[] levels = asked(MbTiles::levels);
        if (levels.length == 0) throw fault("holds no tile. Fetch it again.");
        this.coarsest = levels[0];
        this.finest = levels[1];
        if (coarsest < 0 || finest > DEEPEST)
            throw fault("holds tiles of level " + coarsest + " to " + finest + "; 0 to " + DEEPEST
                    + " can be used. Fetch it again.");
        String words = MARKUP.matcher(said.getOrDefault("attribution", "")).replaceAll("");
        String plain = Unseen.oneLine(StringEscapeUtils.unescapeHtml4(words)).strip();
        this.attribution = plain.length() > LONGEST_WORDS ? plain.substring(0, LONGEST_WORDS) + "\u2026" : plain;
        this.bounds = bounds(said.getOrDefault("bounds", ""));
        byte[] first = asked(database -> firstTile(database, finest));
        pixels(first);
    }

    static MbTiles open(Path file) throws IOException {
        byte[] start;
        try (InputStream in = Files.newInputStream(file)) {
            start = in.readNBytes(SQLITE.length);
        }
        if (!Arrays.equals(start, SQLITE))
            throw new InputFault(
                    String.valueOf(file.getFileName()),
                    0,
                    "is not an MBTiles file: it is no SQLite file. Fetch it again.");
        return new MbTiles(file);
    }

    private <T> T asked(Question<T> question) {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        try (Connection database = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath())) {
            long end = System.nanoTime() + PATIENCE_NS;
            ProgressHandler.setHandler(database, STEPS, new ProgressHandler() {
                @Override
                protected int progress() {
                    return System.nanoTime() > end ? 1 : 0;
                }
            });
            try (Statement own = database.createStatement()) {
                own.execute("PRAGMA trusted_schema = OFF");
            }
            return question.asked(database);
        } catch (SQLException e) {
            throw fault("cannot be read as MBTiles (" + TileFiles.reason(e) + "). Fetch it again.");
        }
    }

    private static Map<String, String> metadata(Connection database) throws SQLException {
        Map<String, String> said = new HashMap<>();
        try (Statement ask = database.createStatement();
                ResultSet rows = ask.executeQuery("SELECT name, substr(value, 1, 4000) FROM metadata LIMIT 200")) {
            while (rows.next()) said.put(String.valueOf(rows.getString(1)), String.valueOf(rows.getString(2)));
        }
        return said;
    }

    /** Coarsest and finest; nothing where there is no tile. */
    private static int[] levels(Connection database) throws SQLException {
        int[] levels = new int[2];
        try (Statement ask = database.createStatement()) {
            for (int i = 0; i < 2; i++)
                try (ResultSet found = ask.executeQuery(
                        i == 0 ? "SELECT min(zoom_level) FROM tiles" : "SELECT max(zoom_level) FROM tiles")) {
                    levels[i] = found.next() ? found.getInt(1) : 0;
                    if (found.wasNull()) return new int[0];
                }
        }
        return levels;
    }

    private static byte[] firstTile(Connection database, int level) throws SQLException {
        try (PreparedStatement ask = database.prepareStatement(
                "SELECT tile_data FROM tiles WHERE zoom_level = ? AND length(tile_data) <= ? LIMIT 1")) {
            ask.setInt(1, level);
            ask.setInt(2, LARGEST_TILE);
            try (ResultSet found = ask.executeQuery()) {
                byte[] packed = found.next() ? found.getBytes(1) : null;
                return packed == null ? new byte[0] : packed;
            }
        }
    }

    /** The tile's pixels; a fault where it is no picture that can be read. */
    private PicturePixels pixels(byte[] packed) {
        String kind = kind(packed);
        ImageReader reader = ImageIO.getImageReadersByFormatName(kind).next();
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(packed))) {
            reader.setInput(in, true, true);
            if (reader.getWidth(0) > WIDEST_PX || reader.getHeight(0) > WIDEST_PX)
                throw fault("has a tile of " + reader.getWidth(0) + " by " + reader.getHeight(0) + " pixels, at most "
                        + WIDEST_PX + " each way can be used. Fetch it again.");
            return PicturePixels.of(reader.read(0));
        } catch (IOException | RuntimeException e) {
            if (e instanceof InputFault fault) throw fault;
            throw fault("has a tile that cannot be unpacked (" + TileFiles.reason(e) + "). Fetch it again.");
        } finally {
            reader.dispose();
        }
    }

    private String kind(byte[] packed) {
        if (packed.length > 3 && (packed[0] & 0xFF) == 0x89 && packed[1] == 'P') return "png";
        if (packed.length > 3 && (packed[0] & 0xFF) == 0xFF && (packed[1] & 0xFF) == 0xD8) return "jpeg";
        boolean isWebp = packed.length > 11 && packed[0] == 'R' && packed[1] == 'I' && packed[8] == 'W';
        boolean isPacked = packed.length > 1 && (packed[0] & 0xFF) == 0x1F && (packed[1] & 0xFF) == 0x8B;
        throw fault("holds " + (isWebp ? "WebP tiles" : isPacked ? "vector tiles" : "tiles of an unknown kind")
                + "; PNG and JPEG tiles can be shown. Make or fetch it with those.");
    }

    private TileBounds bounds(String words) {
        double[] box = Arrays.stream(words.split(","))
                .mapToDouble(each -> NumberText.parse(each.strip()).orElse(Double.NaN))
                .toArray();
        boolean isBox = box.length == 4
                && Math.abs(box[0]) <= 180
                && Math.abs(box[2]) <= 180
                && Math.abs(box[1]) <= 90
                && box[1] <= box[3]
                && box[3] <= 90;
        return isBox ? new TileBounds(box[1], box[0], box[3], box[2]) : new TileBounds(-85, -180, 85, 180);
    }

    private InputFault fault(String text) {
        return new InputFault(name, 0, text);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public String attribution() {
        return attribution;
    }

    @Override
    public TileBounds bounds() {
        return bounds;
    }

    @Override
    public int[] argb(PictureWindow window, Runnable goOn) {
        int level = level(window);
        double tiles = 1 << level;
        return asked(database -> {
            int[] argb = new int[window.columns() * window.rows()];
            if (across(window, level) * (long) down(window, level) > MOST_TILES) return argb;
            for (int row = 0; row < window.rows(); row++) {
                double y = tiles * mercator(window.latitudeDeg(row + 0.5));
                if (!(y >= 0) || y >= tiles) continue;
                if (row % 16 == 0) goOn.run();
                Address last = null;
                Optional<Drawn> drawn = Optional.empty();
                for (int column = 0; column < window.columns(); column++) {
                    double turns = (window.longitudeDeg(column + 0.5) + 180) / 360;
                    double x = tiles * (turns - Math.floor(turns));
                    if (last == null || last.column() != (int) x) {
                        last = new Address(level, (int) x, (int) y);
                        drawn = drawn(database, last);
                    }
                    if (drawn.isPresent())
                        argb[row * window.columns() + column] = drawn.get().at(x, y, level);
                }
            }
            return argb;
        });
    }

    /** The level whose pixels are nearest to those of the window. */
    private int level(PictureWindow window) {
        double wanted = Math.log(360 / window.longitudeStepDeg() / TILE_PX) / Math.log(2);
        int level = (int) Math.max(coarsest, Math.min(finest, Math.rint(wanted)));
        while (level > coarsest && across(window, level) * (long) down(window, level) > MOST_TILES) level--;
        return level;
    }

    private static int across(PictureWindow window, int level) {
        return (int) Math.ceil(window.columns() * window.longitudeStepDeg() / 360 * (1 << level)) + 1;
    }

    private static int down(PictureWindow window, int level) {
        double high = mercator(window.latitudeDeg(window.rows())) - mercator(window.northDeg());
        return (int) Math.ceil(high * (1 << level)) + 1;
    }

    /** Way from the north of the square of the spherical Mercator projection to its south, 0 to 1. */
    private static double mercator(double latitudeDeg) {
        double sine = Math.sin(Math.toRadians(Math.max(-89.9, Math.min(89.9, latitudeDeg))));
        return 0.5 - Math.log((1 + sine) / (1 - sine)) / (4 * Math.PI);
    }

    /** A tile, or the part of one above it that stands in for it. */
    private record Drawn(Address address, PicturePixels pixels) {
        int at(double x, double y, int level) {
            double scale = 1.0 / (1 << level - address.level());
            return pixels.at(
                    (x * scale - address.column()) * pixels.width(), (y * scale - address.row()) * pixels.height());
        }
    }

    private Optional<Drawn> drawn(Connection database, Address wanted) throws SQLException {
        Address here = wanted;
        for (int up = 0; up <= LEVELS_UP && here.level() >= coarsest && here.isOnEarth(); up++) {
            Optional<PicturePixels> found = tile(database, here);
            if (found.isPresent()) return Optional.of(new Drawn(here, found.get()));
            if (here.level() == 0) break;
            here = here.above();
        }
        return Optional.empty();
    }

    /** One tile; a damaged one is as if it were not there. */
    private Optional<PicturePixels> tile(Connection database, Address address) throws SQLException {
        synchronized (kept) {
            Optional<PicturePixels> known = kept.get(address);
            if (known != null) return known;
        }
        Optional<PicturePixels> fresh = Optional.empty();
        try (PreparedStatement ask = database.prepareStatement("SELECT tile_data FROM tiles WHERE zoom_level = ?"
                + " AND tile_column = ? AND tile_row = ? AND length(tile_data) <= ? LIMIT 1")) {
            ask.setInt(1, address.level());
            ask.setInt(2, address.column());
            ask.setInt(3, (1 << address.level()) - 1 - address.row());
            ask.setInt(4, LARGEST_TILE);
            try (ResultSet found = ask.executeQuery()) {
                byte[] packed = found.next() ? found.getBytes(1) : null;
                if (packed != null) fresh = Optional.of(pixels(packed));
            }
        } catch (InputFault damaged) {
            fresh = Optional.empty();
        }
        synchronized (kept) {
            kept.put(address, fresh);
        }
        return fresh;
    }
}
