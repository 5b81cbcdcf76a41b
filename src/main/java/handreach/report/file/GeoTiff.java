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

    private final Georaster raster;
    private final CellGrid grid;
    private final List<byte[]> tiles = new ArrayList<>();
    private final List<Entry> entries = new ArrayList<>();

    private GeoTiff(Georaster raster) {
        this.raster = raster;
        this.grid = raster.grid();
    }

    /** Content to be handed to {@link WholeFile#write}. */
    public static WholeFile.Content content(Georaster raster) {
        return out -> new GeoTiff(raster).writeTo(out);
    }

    private void writeTo(OutputStream out) throws IOException {
        Deflater deflater = new Deflater(Deflater.BEST_SPEED);
        try {
            for (int row = 0; row < grid.rows(); row += TILE_PX)
                for (int column = 0; column < grid.columns(); column += TILE_PX) tiles.add(tile(row, column, deflater));
        } finally {
            deflater.end();
        }
        long directoryAt = HEADER_BYTES;
        for (byte[] tile : tiles) directoryAt += tile.length;
        directoryAt += directoryAt % 2;
        if (directoryAt > LARGEST_BYTES) throw new IOException("a TIFF file holds at most 4 GB");
        fillEntries();
        out.write(little(HEADER_BYTES)
                .put((byte) 'I')
                .put((byte) 'I')
                .putShort((short) 42)
                .putInt((int) directoryAt)
                .array());
        long written = HEADER_BYTES;
        for (byte[] tile : tiles) {
            out.write(tile);
            written += tile.length;
        }
        if (written < directoryAt) out.write(0);
        out.write(directory((int) directoryAt));
    }

    /** The cells of one tile, deflated; beyond the edge of the grid there is nothing. */
    private byte[] tile(int firstRow, int firstColumn, Deflater deflater) throws IOException {
        float[] cells = new float[TILE_PX * TILE_PX];
        int columns = Math.min(TILE_PX, grid.columns() - firstColumn);
        int rows = Math.min(TILE_PX, grid.rows() - firstRow);
        for (int row = 0; row < rows; row++) {
            raster.written(grid.index(firstRow + row, firstColumn), columns, cells, row * TILE_PX);
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

    /** Tags in rising order, as the format wants them. */
    private void fillEntries() {
        long[] offsets = new long[tiles.size()];
        long[] counts = new long[tiles.size()];
        long at = HEADER_BYTES;
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = at;
            counts[i] = tiles.get(i).length;
            at += counts[i];
        }
        double west = grid.westDeg() < -180 ? grid.westDeg() + 360 : grid.westDeg();
        longs(256, grid.columns());
        longs(257, grid.rows());
        shorts(258, 32);
        shorts(259, 8); // deflate
        shorts(262, 1); // zero is black
        shorts(277, 1);
        shorts(284, 1);
        ascii(305, "Handreach");
        shorts(322, TILE_PX);
        shorts(323, TILE_PX);
        longs(324, offsets);
        longs(325, counts);
        shorts(339, 3); // floating point
        doubles(33550, grid.longitudeStepDeg(), grid.latitudeStepDeg(), 0);
        doubles(33922, 0, 0, 0, west, grid.northDeg(), 0);
        // version 1.1.0, three keys: model type geographic (2), raster pixel-is-area (1), geodetic system EPSG:4326
        shorts(34735, 1, 1, 0, 3, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326);
        ascii(42112, about());
        ascii(42113, String.format(Locale.ROOT, "%.0f", Georaster.NO_DATA));
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
    public static WholeFile.Content classes(Georaster raster) {
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

    private byte[] directory(int at) {
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
        out.putInt(0);
        for (Entry entry : entries)
            if (entry.bytesBehind() > 0)
                out.put(entry.value).position(out.position() + entry.bytesBehind() - entry.value.length);
        return out.array();
    }

    private void shorts(int tag, int... values) {
        ByteBuffer bytes = little(2 * values.length);
        for (int value : values) bytes.putShort((short) value);
        entries.add(new Entry(tag, Type.SHORT, bytes.array()));
    }

    private void longs(int tag, long... values) {
        ByteBuffer bytes = little(4 * values.length);
        for (long value : values) bytes.putInt((int) value);
        entries.add(new Entry(tag, Type.LONG, bytes.array()));
    }

    private void doubles(int tag, double... values) {
        ByteBuffer bytes = little(8 * values.length);
        for (double value : values) bytes.putDouble(value);
        entries.add(new Entry(tag, Type.DOUBLE, bytes.array()));
    }

    private void ascii(int tag, String text) {
        entries.add(new Entry(tag, Type.ASCII, (text + "\0").getBytes(StandardCharsets.UTF_8)));
    }

    private static ByteBuffer little(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
