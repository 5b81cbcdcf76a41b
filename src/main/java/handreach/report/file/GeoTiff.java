package handreach.report.file;

import handreach.reach.CellGrid;
import handreach.report.draw.Markup;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * A grid of numbers as GeoTIFF: 32-bit floating point, EPSG:4326, pixel-is-area, tiles under deflate.
 *
 * <p>Written byte by byte, little end first: a library would cost a second at first use, for one layout of sixteen tags. Source of
 * keys and tags: TIFF 6.0 with its technical notes for tiles and deflate, OGC GeoTIFF 1.1 (19-008r4); the tags 42112 (what it is)
 * and 42113 (no data) are de-facto tags of general raster tools.
 */
public final class GeoTiff {
    private static final int TILE_PX = 256;
    private static final int HEADER_BYTES = 8;
    private static final int ENTRY_BYTES = 12;
    private static final int INLINE_BYTES = 4;
    private static final long LARGEST_BYTES = 0xFFFF_FFFFL;

    /** Types of values as TIFF numbers them. */
    private enum Type {
        ASCII(2, 1),
        SHORT(3, 2),
        LONG(4, 4),
        DOUBLE(12, 8);

        private final int number;
        private final int bytes;

        Type(int number, int bytes) {
            this.number = number;
            this.bytes = bytes;
        }
    }

    private static final class Entry {
        private final int tag;
        private final Type type;
        private final byte[] value;

        Entry(int tag, Type type, byte[] value) {
            this.tag = tag;
            this.type = type;
            this.value = value;
        }

        int count() {
            return value.length / type.bytes;
        }

        int bytesBehind() {
            return value.length <= INLINE_BYTES ? 0 : value.length + value.length % 2;
        }
    }

    /** Numbers of a picture as they are written, from a cell on along its row. */
    @FunctionalInterface
    private interface Cells {
        void written(int row, int column, int count, float[] out, int at);
    }

    /** A picture of the file: the grid itself, or a smaller one of it. */
    private record Level(int columns, int rows, boolean isOverview, List<byte[]> tiles) {
        long bytes() {
            long sum = 0;
            for (byte[] tile : tiles) sum += tile.length;
            return sum;
        }
    }

    private final Georaster raster;
    private final CellGrid grid;

    private GeoTiff(Georaster raster) {
        this.raster = raster;
        this.grid = raster.grid();
    }

    /** Content to be handed to {@link AnswerFile#write}. */
    public static AnswerFile.Content content(Georaster raster) {
        return out -> new GeoTiff(raster).writeTo(out);
    }

    /**
     * The same laid out for reading over a network piece by piece: directories first, then smaller pictures down to one tile, the smallest
     * first. A cell of a smaller picture is the mean of the known among its four, or the first of them where numbers stand for classes.
     */
    public static AnswerFile.Content cloud(Georaster raster) {
        return out -> new GeoTiff(raster).writeCloud(out);
    }

    private void writeTo(OutputStream out) throws IOException {
        Level whole = level(grid.columns(), grid.rows(), false, this::gridCells);
        long directoryAt = HEADER_BYTES + whole.bytes();
        directoryAt += directoryAt % 2;
        refuseLarge(directoryAt);
        out.write(header((int) directoryAt));
        writeTiles(whole, out);
        if (HEADER_BYTES + whole.bytes() < directoryAt) out.write(0);
        out.write(directory(entries(whole, HEADER_BYTES), (int) directoryAt, 0));
    }

    private void writeCloud(OutputStream out) throws IOException {
        List<Level> levels = levels();
        int[] starts = new int[levels.size() + 1];
        starts[0] = HEADER_BYTES;
        for (int i = 0; i < levels.size(); i++) {
            int bytes = directory(entries(levels.get(i), 0), 0, 0).length;
            starts[i + 1] = starts[i] + bytes + bytes % 2;
        }
        long[] tilesAt = new long[levels.size()];
        long at = starts[levels.size()];
        for (int i = levels.size() - 1; i >= 0; i--) {
            tilesAt[i] = at;
            at += levels.get(i).bytes();
        }
        refuseLarge(at);
        out.write(header(HEADER_BYTES));
        for (int i = 0; i < levels.size(); i++) {
            int next = i + 1 < levels.size() ? starts[i + 1] : 0;
            byte[] directory = directory(entries(levels.get(i), tilesAt[i]), starts[i], next);
            out.write(directory);
            if (directory.length % 2 != 0) out.write(0);
        }
        for (int i = levels.size() - 1; i >= 0; i--) writeTiles(levels.get(i), out);
    }

    private static void refuseLarge(long bytes) throws IOException {
        if (bytes > LARGEST_BYTES) throw new IOException("a TIFF file holds at most 4 GB");
    }

    private static byte[] header(int directoryAt) {
        return little(HEADER_BYTES)
                .put((byte) 'I')
                .put((byte) 'I')
                .putShort((short) 42)
                .putInt(directoryAt)
                .array();
    }

    private static void writeTiles(Level level, OutputStream out) throws IOException {
        for (byte[] tile : level.tiles) out.write(tile);
    }

    private void gridCells(int row, int column, int count, float[] out, int at) {
        raster.written(grid.index(row, column), count, out, at);
    }

    /** The grid, and smaller pictures of it until one is a single tile. */
    private List<Level> levels() throws IOException {
        int columns = grid.columns();
        int rows = grid.rows();
        float[] cells = new float[columns * rows];
        for (int row = 0; row < rows; row++) gridCells(row, 0, columns, cells, row * columns);
        List<Level> levels = new ArrayList<>();
        levels.add(level(columns, rows, false, of(cells, columns)));
        while (Math.max(columns, rows) > TILE_PX) {
            cells = halved(cells, columns, rows);
            columns = (columns + 1) / 2;
            rows = (rows + 1) / 2;
            levels.add(level(columns, rows, true, of(cells, columns)));
        }
        return levels;
    }

    private static Cells of(float[] cells, int columns) {
        return (row, column, count, out, at) -> System.arraycopy(cells, row * columns + column, out, at, count);
    }

    private float[] halved(float[] cells, int columns, int rows) {
        boolean isClass = !raster.layer().classes().isEmpty();
        int wide = (columns + 1) / 2;
        float[] half = new float[wide * ((rows + 1) / 2)];
        for (int at = 0; at < half.length; at++) {
            double sum = 0;
            int known = 0;
            for (int corner = 0; corner < 4 && !(isClass && known > 0); corner++) {
                int row = 2 * (at / wide) + corner / 2;
                int column = 2 * (at % wide) + corner % 2;
                if (row >= rows || column >= columns) continue;
                float cell = cells[row * columns + column];
                if (cell == Georaster.NO_DATA) continue;
                sum += cell;
                known++;
            }
            half[at] = known == 0 ? Georaster.NO_DATA : (float) (sum / known);
        }
        return half;
    }

    private static Level level(int columns, int rows, boolean isOverview, Cells from) throws IOException {
        List<byte[]> tiles = new ArrayList<>();
        Deflater deflater = new Deflater(Deflater.BEST_SPEED);
        try {
            for (int row = 0; row < rows; row += TILE_PX)
                for (int column = 0; column < columns; column += TILE_PX)
                    tiles.add(tile(
                            from,
                            row,
                            column,
                            Math.min(TILE_PX, rows - row),
                            Math.min(TILE_PX, columns - column),
                            deflater));
        } finally {
            deflater.end();
        }
        return new Level(columns, rows, isOverview, tiles);
    }

    /** The cells of one tile, deflated; beyond the edge of the grid there is nothing. */
    private static byte[] tile(Cells from, int firstRow, int firstColumn, int rows, int columns, Deflater deflater)
            throws IOException {
        float[] cells = new float[TILE_PX * TILE_PX];
        for (int row = 0; row < rows; row++) {
            from.written(firstRow + row, firstColumn, columns, cells, row * TILE_PX);
            Arrays.fill(cells, row * TILE_PX + columns, (row + 1) * TILE_PX, Georaster.NO_DATA);
        }
        Arrays.fill(cells, rows * TILE_PX, cells.length, Georaster.NO_DATA);
        ByteBuffer plain = little(4 * cells.length);
        plain.asFloatBuffer().put(cells);
        deflater.reset();
        ByteArrayOutputStream packed = new ByteArrayOutputStream(TILE_PX * TILE_PX);
        try (DeflaterOutputStream zipped = new DeflaterOutputStream(packed, deflater, 1 << 15)) {
            zipped.write(plain.array());
        }
        return packed.toByteArray();
    }

    /** Tags in rising order, as the format wants them; where the numbers lie on the earth stands with the whole picture alone. */
    private List<Entry> entries(Level level, long tilesAt) {
        List<byte[]> tiles = level.tiles;
        long[] offsets = new long[tiles.size()];
        long[] counts = new long[tiles.size()];
        long at = tilesAt;
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = at;
            counts[i] = tiles.get(i).length;
            at += counts[i];
        }
        List<Entry> entries = new ArrayList<>();
        if (level.isOverview) entries.add(longs(254, 1)); // a smaller picture of another of this file
        entries.add(longs(256, level.columns));
        entries.add(longs(257, level.rows));
        entries.add(shorts(258, 32));
        entries.add(shorts(259, 8)); // deflate
        entries.add(shorts(262, 1)); // zero is black
        entries.add(shorts(277, 1));
        entries.add(shorts(284, 1));
        if (!level.isOverview) entries.add(ascii(305, "Handreach"));
        entries.add(shorts(322, TILE_PX));
        entries.add(shorts(323, TILE_PX));
        entries.add(longs(324, offsets));
        entries.add(longs(325, counts));
        entries.add(shorts(339, 3)); // floating point
        if (!level.isOverview) {
            double west = grid.westDeg() < -180 ? grid.westDeg() + 360 : grid.westDeg();
            entries.add(doubles(33550, grid.longitudeStepDeg(), grid.latitudeStepDeg(), 0));
            entries.add(doubles(33922, 0, 0, 0, west, grid.northDeg(), 0));
            // version 1.1.0, three keys: model type geographic (2), raster pixel-is-area (1), geodetic system EPSG:4326
            entries.add(shorts(34735, 1, 1, 0, 3, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326));
            entries.add(ascii(42112, about()));
        }
        entries.add(ascii(42113, String.format(Locale.ROOT, "%.0f", Georaster.NO_DATA)));
        return entries;
    }

    /** Where the numbers come from, what the band holds, its unit, and what its numbers stand for, as general raster tools read it. */
    private String about() {
        Georaster.Layer layer = raster.layer();
        StringBuilder xml = new StringBuilder("<GDALMetadata>");
        layer.about().forEach((name, value) -> item(xml, name, "", value));
        for (int i = 0; i < layer.classes().size(); i++)
            item(xml, "CLASS_" + i, " sample=\"0\"", layer.classes().get(i).name());
        item(xml, "DESCRIPTION", " sample=\"0\" role=\"description\"", layer.name());
        if (!layer.unit().isEmpty()) item(xml, "UNITTYPE", " sample=\"0\" role=\"unittype\"", layer.unit());
        return xml.append("</GDALMetadata>").toString();
    }

    private static void item(StringBuilder xml, String name, String where, String value) {
        xml.append("<Item name=\"")
                .append(Markup.escaped(name))
                .append('"')
                .append(where)
                .append('>')
                .append(Markup.escaped(value))
                .append("</Item>");
    }

    /**
     * Names and colours of the numbers, to stand beside the raster in a file of its name with {@code .aux.xml} behind it: the format
     * itself has no place for names, and for colours only in bands of whole numbers.
     */
    public static AnswerFile.Content classes(Georaster raster) {
        XmlText xml = new XmlText();
        xml.open("PAMDataset").open("PAMRasterBand", "band", "1").element("ColorInterp", "Palette");
        xml.open("CategoryNames");
        for (Georaster.Layer.Kind kind : raster.layer().classes()) xml.element("Category", kind.name());
        xml.close().open("ColorTable");
        for (Georaster.Layer.Kind kind : raster.layer().classes())
            xml.open(
                            "Entry",
                            "c1",
                            String.valueOf(kind.rgb() >> 16 & 0xFF),
                            "c2",
                            String.valueOf(kind.rgb() >> 8 & 0xFF),
                            "c3",
                            String.valueOf(kind.rgb() & 0xFF),
                            "c4",
                            "255")
                    .close();
        xml.close().close().close();
        // readers of such files look for the root at their very start, before any declaration
        String document = xml.end();
        byte[] bytes = document.substring(document.indexOf("<PAMDataset")).getBytes(StandardCharsets.UTF_8);
        return out -> out.write(bytes);
    }

    private static byte[] directory(List<Entry> entries, int at, int next) {
        int behind = at + 2 + ENTRY_BYTES * entries.size() + 4;
        int bytes = behind - at;
        for (Entry entry : entries) bytes += entry.bytesBehind();
        ByteBuffer out = little(bytes);
        out.putShort((short) entries.size());
        for (Entry entry : entries) {
            out.putShort((short) entry.tag).putShort((short) entry.type.number);
            out.putInt(entry.count());
            if (entry.bytesBehind() == 0) {
                out.put(entry.value).position(out.position() + INLINE_BYTES - entry.value.length);
                continue;
            }
            out.putInt(behind);
            behind += entry.bytesBehind();
        }
        out.putInt(next);
        for (Entry entry : entries)
            if (entry.bytesBehind() > 0)
                out.put(entry.value).position(out.position() + entry.bytesBehind() - entry.value.length);
        return out.array();
    }

    private static Entry shorts(int tag, int... values) {
        ByteBuffer bytes = little(2 * values.length);
        for (int value : values) bytes.putShort((short) value);
        return new Entry(tag, Type.SHORT, bytes.array());
    }

    private static Entry longs(int tag, long... values) {
        ByteBuffer bytes = little(4 * values.length);
        for (long value : values) bytes.putInt((int) value);
        return new Entry(tag, Type.LONG, bytes.array());
    }

    private static Entry doubles(int tag, double... values) {
        ByteBuffer bytes = little(8 * values.length);
        for (double value : values) bytes.putDouble(value);
        return new Entry(tag, Type.DOUBLE, bytes.array());
    }

    private static Entry ascii(int tag, String text) {
        return new Entry(tag, Type.ASCII, (text + "\0").getBytes(StandardCharsets.UTF_8));
    }

    private static ByteBuffer little(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
