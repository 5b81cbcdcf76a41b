package handreach.terrain;

import handreach.geodesy.UtmZone;
import handreach.input.InputFault;
import handreach.input.NumberText;
import handreach.input.Range;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Elevation as an Esri ASCII grid: a few header lines, then the heights row by row from the north. {@code xllcorner} names the
 * corner of the south-west cell, {@code xllcenter} its centre. Source: format documentation of its maker <em>from memory</em>.
 */
final class EsriGrid implements PostSource {
    private static final Set<String> KEYS = Set.of(
            "ncols",
            "nrows",
            "xllcorner",
            "yllcorner",
            "xllcenter",
            "yllcenter",
            "cellsize",
            "dx",
            "dy",
            "nodata_value");
    private static final Range SIDE = new Range("ncols, nrows", 2, 1_000_000, "", "Mend the header.");
    private static final long MOST_POSTS = 32L << 20;
    private static final int LONGEST_TOKEN = 40;
    private static final Pattern GEOGRAPHIC = Pattern.compile(
            "(?s)GEOGCS\\[\"(GCS_)?(WGS_1984|WGS 84|North_American_1983|NAD83|ETRS_1989|ETRS89|GDA_1994).*");
    private static final Pattern UTM = Pattern.compile(
            "(?s)PROJCS\\[\"(?:WGS_1984|WGS 84|NAD_1983|NAD83|ETRS_1989|ETRS89)[_ /]*UTM[_ ]zone[_ ](\\d{1,2})([NS]).*",
            Pattern.CASE_INSENSITIVE);

    private final Path file;
    private final String name;
    private final int columns;
    private final int rows;
    private final double nodata;
    private final GridFit fit;

    private EsriGrid(Path file, int columns, int rows, double nodata, GridFit fit) {
        this.file = file;
        this.name = String.valueOf(file.getFileName());
        this.columns = columns;
        this.rows = rows;
        this.nodata = nodata;
        this.fit = fit;
    }

    /** Reads the header lines and a {@code .prj} file beside the grid. */
    static TileHeader draft(Path file) throws IOException {
        String name = String.valueOf(file.getFileName());
        Map<String, Double> header;
        try (Tokens tokens = new Tokens(file)) {
            header = header(tokens, name);
        }
        int columns = count(header, "ncols", name);
        int rows = count(header, "nrows", name);
        if ((long) columns * rows > MOST_POSTS)
            throw new InputFault(
                    name,
                    0,
                    "has " + (long) columns * rows + " heights, at most " + MOST_POSTS
                            + " are read from text. Convert it to GeoTIFF.");
        if (Files.size(file) < 2L * columns * rows)
            throw new InputFault(
                    name,
                    0,
                    "is too short for " + rows + " rows of " + columns + " heights. It is cut off; fetch it again.");
        double dx = header.getOrDefault("dx", header.getOrDefault("cellsize", Double.NaN));
        double dy = header.getOrDefault("dy", header.getOrDefault("cellsize", Double.NaN));
        if (!(dx > 0) || !(dy > 0))
            throw new InputFault(name, 0, "has no cellsize above 0 in its header. Add the line.");
        double west = edge(header, "xllcenter", "xllcorner", dx, name);
        double south = edge(header, "yllcenter", "yllcorner", dy, name);
        TiffGrid.checkPixels(name, dx, dy, west, south);
        double north = south + (rows - 1) * dy;
        TiffFrame.Named plane = plane(file, name, west, north, Math.max(dx, dy));
        GridFit fit = new GridFit(plane.frame(), west, north, 1 / dx, 1 / dy);
        EsriGrid grid = new EsriGrid(file, columns, rows, header.getOrDefault("nodata_value", -9999.0), fit);
        return TiffGrid.drafted(name, "Esri ASCII grid", plane, fit, grid);
    }

    private static Map<String, Double> header(Tokens tokens, String name) throws IOException {
        Map<String, Double> header = new HashMap<>();
        while (true) {
            String key = tokens.next();
            if (key == null || !KEYS.contains(key.toLowerCase(Locale.ROOT))) {
                if (key != null && header.isEmpty())
                    throw new InputFault(
                            name,
                            tokens.line(),
                            "begins with '" + key + "', an Esri ASCII grid begins with ncols. Check what it is.");
                return header;
            }
            String value = tokens.next();
            double number = value == null ? Double.NaN : number(value);
            if (Double.isNaN(number) && !key.equalsIgnoreCase("nodata_value"))
                throw new InputFault(
                        name, tokens.line(), key + " is '" + value + "', a number is expected. Mend the header.");
            header.put(key.toLowerCase(Locale.ROOT), number);
        }
    }

    private static int count(Map<String, Double> header, String key, String name) {
        double value = header.getOrDefault(key, Double.NaN);
        if (!SIDE.acceptsWhole(value))
            throw new InputFault(
                    name,
                    0,
                    header.containsKey(key)
                            ? key + " " + SIDE.wholeFault(NumberText.plain(value))
                            : key + " is missing from the header. Add the line.");
        return (int) value;
    }

    private static double edge(Map<String, Double> header, String centre, String corner, double cell, String name) {
        if (header.containsKey(centre)) return header.get(centre);
        if (header.containsKey(corner)) return header.get(corner) + cell / 2;
        throw new InputFault(name, 0, "has neither " + corner + " nor " + centre + " in its header. Add the line.");
    }

    private static TiffFrame.Named plane(Path file, String name, double west, double north, double cell)
            throws IOException {
        String stem = name.substring(0, name.length() - 4);
        for (String ending : new String[] {".prj", ".PRJ"}) {
            Path beside = file.resolveSibling(stem + ending);
            if (!Files.isRegularFile(beside)) continue;
            if (Files.size(beside) > 1 << 16)
                throw new InputFault(
                        stem + ending, 0, "is too long for a coordinate reference system. Check what it is.");
            String text = new String(Files.readAllBytes(beside), StandardCharsets.ISO_8859_1).strip();
            if (GEOGRAPHIC.matcher(text).matches()) return new TiffFrame.Named(Frame.DEGREES, "EPSG:4326");
            Matcher utm = UTM.matcher(text);
            if (utm.matches() && Integer.parseInt(utm.group(1)) >= 1 && Integer.parseInt(utm.group(1)) <= 60) {
                UtmFrame frame = new UtmFrame(
                        new UtmZone(Integer.parseInt(utm.group(1)), utm.group(2).equalsIgnoreCase("S")));
                return new TiffFrame.Named(frame, "UTM " + frame.key().substring(4));
            }
            CrsFrame frame = CrsFrame.ofText(stem + ending, text, west, north);
            return new TiffFrame.Named(frame, frame.key());
        }
        if (Math.abs(west) <= 180 && Math.abs(north) <= 90 && cell < 1)
            return new TiffFrame.Named(Frame.DEGREES, "taken for EPSG:4326");
        throw new InputFault(
                name, 0, "is projected, but there is no " + stem + ".prj beside it that tells how. Add that file.");
    }

    @Override
    public int rows() {
        return rows;
    }

    @Override
    public int columns() {
        return columns;
    }

    @Override
    public Posts read() {
        try (Tokens tokens = new Tokens(file)) {
            float[] heightM = new float[rows * columns];
            boolean isWhole = true;
            String token = tokens.next();
            while (token != null && KEYS.contains(token.toLowerCase(Locale.ROOT))) {
                tokens.next();
                token = tokens.next();
            }
            for (int k = 0; k < heightM.length; k++) {
                if (token == null)
                    throw new InputFault(
                            name,
                            0,
                            "ends after " + k + " of " + heightM.length + " heights. It is cut off; fetch it again.");
                heightM[k] = height(token, tokens.line());
                isWhole &= Float.isNaN(heightM[k]) || heightM[k] == Math.rint(heightM[k]);
                token = tokens.next();
            }
            if (token != null)
                throw new InputFault(
                        name,
                        tokens.line(),
                        "holds more than " + heightM.length + " heights. Check ncols and nrows in its header.");
            return isWhole ? shortened(heightM) : new FloatPosts(rows, columns, heightM);
        } catch (IOException e) {
            throw new InputFault(name, 0, "cannot be read (" + TileFiles.reason(e) + "). Check the rights on it.");
        }
    }

    @Override
    public Optional<String> against(Posts read) {
        double[] groundM = Tile.groundSpacingM(fit, TiffGrid.bounds(name, fit, rows, columns));
        ValueSigns signs = new ValueSigns(groundM[0], groundM[1]);
        return signs.look(read) ? signs.verdict() : Optional.empty();
    }

    private Posts shortened(float[] heightM) {
        short[] whole = new short[heightM.length];
        for (int k = 0; k < whole.length; k++)
            whole[k] = Float.isNaN(heightM[k]) ? ShortPosts.VOID : (short) heightM[k];
        return new ShortPosts(rows, columns, whole);
    }

    private float height(String token, int line) {
        double value = number(token);
        if (Double.isNaN(value) && !token.equalsIgnoreCase("nan"))
            throw new InputFault(
                    name, line, "'" + token + "' is not a height. Mend the line, or fetch the grid again.");
        return value == nodata || !EarthHeight.holds(value) ? Float.NaN : (float) value;
    }

    /** A number in plain form; NaN if it is none. */
    private static double number(String token) {
        int at = token.startsWith("-") || token.startsWith("+") ? 1 : 0;
        if (at == token.length() || !(isDigit(token.charAt(at)) || token.charAt(at) == '.')) return Double.NaN;
        char last = token.charAt(token.length() - 1);
        if (!isDigit(last) && last != '.') return Double.NaN;
        try {
            return Double.parseDouble(token);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** Words parted by white space, with the number of their line. */
    private static final class Tokens implements AutoCloseable {
        private final InputStream in;
        private final byte[] word = new byte[LONGEST_TOKEN];
        private int line = 1;
        private int wordLine = 1;
        private int ahead = -2;

        Tokens(Path file) throws IOException {
            in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        }

        int line() {
            return wordLine;
        }

        /** The next word, cut off at a length no number has; null at the end. */
        String next() throws IOException {
            int c = ahead == -2 ? read() : ahead;
            while (c >= 0 && c <= ' ') c = read();
            if (c < 0) {
                ahead = -1;
                return null;
            }
            wordLine = line;
            int length = 0;
            while (c > ' ') {
                if (length < LONGEST_TOKEN) word[length++] = (byte) c;
                c = read();
            }
            ahead = c;
            return new String(word, 0, length, StandardCharsets.ISO_8859_1);
        }

        private int read() throws IOException {
            int c = in.read();
            if (c == '\n') line++;
            return c;
        }

        @Override
        public void close() throws IOException {
            in.close();
        }
    }
}
