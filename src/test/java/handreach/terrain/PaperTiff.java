package handreach.terrain;

import io.airlift.compress.zstd.ZstdCompressor;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;
import java.util.zip.Deflater;

/** Writes GeoTIFF files tag by tag, right or wrong as a test wants them. */
public final class PaperTiff {
    static final int[] EPSG_4326 = {1024, 2, 2048, 4326};
    private static final int NO_COMPRESSION = 1;
    private static final int DEFLATE = 8;
    private static final int ZSTD = 50000;

    private final int width;
    private final int height;
    private final ToDoubleBiFunction<Integer, Integer> value;
    private int bits = 16;
    private int format = 2;
    private ByteOrder order = ByteOrder.LITTLE_ENDIAN;
    private boolean isBig;
    private int compression = NO_COMPRESSION;
    private int statedCompression;
    private int blockWidth;
    private int blockHeight;
    private boolean isPoint;
    private int[] geoKeys = EPSG_4326;
    private double[] scale = {1, 1, 0};
    private double[] tie = {0, 0, 0, 0, 0, 0};
    private double[] matrix;
    private String nodata;
    private String metadata;
    private int samples = 1;
    private boolean hasOverviewFirst;
    private boolean isColour;
    private final TreeMap<Integer, Object> more = new TreeMap<>();
    private final TreeMap<Integer, String> keyTexts = new TreeMap<>();

    /** The value at a column and row. */
    public PaperTiff(int width, int height, ToDoubleBiFunction<Integer, Integer> value) {
        this.width = width;
        this.height = height;
        this.value = value;
        this.blockWidth = width;
        this.blockHeight = height;
    }

    public PaperTiff sample(int bits, int format) {
        this.bits = bits;
        this.format = format;
        return this;
    }

    public PaperTiff bigEndian() {
        order = ByteOrder.BIG_ENDIAN;
        return this;
    }

    public PaperTiff bigTiff() {
        isBig = true;
        return this;
    }

    public PaperTiff deflated() {
        compression = DEFLATE;
        return this;
    }

    /** Frames with a content checksum, as the library writes them. */
    public PaperTiff zstd() {
        compression = ZSTD;
        return this;
    }

    public PaperTiff statedCompression(int code) {
        statedCompression = code;
        return this;
    }

    public PaperTiff strips(int rows) {
        blockHeight = rows;
        return this;
    }

    public PaperTiff tiles(int side) {
        blockWidth = side;
        blockHeight = side;
        return this;
    }

    public PaperTiff point() {
        isPoint = true;
        return this;
    }

    /** Pairs of key and code. */
    public PaperTiff keys(int... pairs) {
        geoKeys = pairs;
        return this;
    }

    /** Tie point of the upper left corner or centre, and the size of a pixel. */
    public PaperTiff at(double x, double y, double pixelX, double pixelY) {
        scale = new double[] {pixelX, pixelY, 0};
        tie = new double[] {0, 0, 0, x, y, 0};
        return this;
    }

    public PaperTiff matrix(double... sixteen) {
        matrix = sixteen;
        return this;
    }

    public PaperTiff nowhere() {
        scale = null;
        tie = null;
        return this;
    }

    public PaperTiff nodata(String text) {
        nodata = text;
        return this;
    }

    public PaperTiff metadata(String xml) {
        metadata = xml;
        return this;
    }

    /** Any other tag: a text, 16-bit numbers in an int[], 32-bit ones in a long[], or double[]. */
    public PaperTiff tag(int tag, Object value) {
        more.put(tag, value);
        return this;
    }

    /** A key that says something in words. */
    public PaperTiff keyText(int key, String text) {
        keyTexts.put(key, text);
        return this;
    }

    public PaperTiff samples(int count) {
        samples = count;
        return this;
    }

    /** Values are 0xRRGGBB, each written as three bands of 8 bits. */
    public PaperTiff colours() {
        isColour = true;
        samples = 3;
        tag(258, new int[] {8, 8, 8});
        tag(262, new int[] {2});
        tag(339, new int[] {1, 1, 1});
        return sample(8, 1);
    }

    public PaperTiff overviewFirst() {
        hasOverviewFirst = true;
        return this;
    }

    public Path write(Path file) throws IOException {
        return Files.write(file, bytes());
    }

    byte[] bytes() {
        List<byte[]> blocks = new ArrayList<>();
        for (int y = 0; y < height; y += blockHeight)
            for (int x = 0; x < width; x += blockWidth) blocks.add(block(x, y));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int headBytes = isBig ? 16 : 8;
        long[] offsets = new long[blocks.size()];
        long[] counts = new long[blocks.size()];
        long at = headBytes;
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = at;
            counts[i] = blocks.get(i).length;
            at += counts[i] + counts[i] % 2;
        }
        byte[] overview = hasOverviewFirst ? directory(at, overviewTags(offsets[0]), 0) : new byte[0];
        if (hasOverviewFirst) overview = directory(at, overviewTags(offsets[0]), at + overview.length);
        byte[] main = directory(at + overview.length, tags(offsets, counts), 0);
        ByteBuffer head = ByteBuffer.allocate(headBytes).order(order);
        head.putShort((short) (order == ByteOrder.LITTLE_ENDIAN ? 0x4949 : 0x4D4D));
        if (isBig)
            head.putShort((short) 43).putShort((short) 8).putShort((short) 0).putLong(at);
        else head.putShort((short) 42).putInt((int) at);
        out.writeBytes(head.array());
        for (byte[] block : blocks) {
            out.writeBytes(block);
            if (block.length % 2 == 1) out.write(0);
        }
        out.writeBytes(overview);
        out.writeBytes(main);
        return out.toByteArray();
    }

    private byte[] block(int x0, int y0) {
        int rows = blockWidth < width ? blockHeight : Math.min(blockHeight, height - y0);
        ByteBuffer data = ByteBuffer.allocate(rows * blockWidth * bits / 8 * (isColour ? 3 : 1))
                .order(order);
        for (int y = y0; y < y0 + rows; y++)
            for (int x = x0; x < x0 + blockWidth; x++) {
                double v = x < width && y < height ? value.applyAsDouble(x, y) : 0;
                if (isColour)
                    data.put((byte) ((int) v >> 16)).put((byte) ((int) v >> 8)).put((byte) (int) v);
                else if (format == 3 && bits == 32) data.putFloat((float) v);
                else if (format == 3) data.putDouble(v);
                else if (bits == 8) data.put((byte) v);
                else if (bits == 16) data.putShort((short) v);
                else data.putInt((int) v);
            }
        if (compression == NO_COMPRESSION) return data.array();
        if (compression == ZSTD) {
            ZstdCompressor compressor = new ZstdCompressor();
            byte[] packed = new byte[compressor.maxCompressedLength(data.capacity())];
            int length = compressor.compress(data.array(), 0, data.capacity(), packed, 0, packed.length);
            return java.util.Arrays.copyOf(packed, length);
        }
        Deflater deflater = new Deflater();
        deflater.setInput(data.array());
        deflater.finish();
        byte[] packed = new byte[data.capacity() + 1000];
        int length = deflater.deflate(packed);
        deflater.end();
        return java.util.Arrays.copyOf(packed, length);
    }

    private TreeMap<Integer, Object> overviewTags(long offset) {
        TreeMap<Integer, Object> tags = new TreeMap<>();
        tags.put(254, new long[] {1});
        tags.put(256, new long[] {1});
        tags.put(257, new long[] {1});
        tags.put(258, new long[] {bits});
        tags.put(273, new long[] {offset});
        tags.put(279, new long[] {bits / 8});
        return tags;
    }

    private TreeMap<Integer, Object> tags(long[] offsets, long[] counts) {
        TreeMap<Integer, Object> tags = new TreeMap<>();
        boolean isTiled = blockWidth < width;
        tags.put(256, new long[] {width});
        tags.put(257, new long[] {height});
        tags.put(258, new long[] {bits});
        tags.put(259, new long[] {statedCompression > 0 ? statedCompression : compression});
        tags.put(262, new long[] {1});
        tags.put(277, new long[] {samples});
        if (isTiled) {
            tags.put(322, new long[] {blockWidth});
            tags.put(323, new long[] {blockHeight});
        } else {
            tags.put(278, new long[] {blockHeight});
        }
        tags.put(isTiled ? 324 : 273, offsets);
        tags.put(isTiled ? 325 : 279, counts);
        tags.put(339, new long[] {format});
        if (matrix != null) {
            tags.put(34264, matrix);
        } else if (scale != null) {
            tags.put(33550, scale);
            tags.put(33922, tie);
        }
        int count = geoKeys.length / 2 + 1 + keyTexts.size();
        int[] directory = new int[4 + 4 * count];
        directory[0] = 1;
        directory[1] = 1;
        directory[3] = count;
        TreeMap<Integer, Integer> keys = new TreeMap<>();
        for (int i = 0; i < geoKeys.length; i += 2) keys.put(geoKeys[i], geoKeys[i + 1]);
        keys.put(1025, isPoint ? 2 : 1);
        int k = 4;
        for (var key : keys.entrySet()) {
            directory[k] = key.getKey();
            directory[k + 2] = 1;
            directory[k + 3] = key.getValue();
            k += 4;
        }
        StringBuilder words = new StringBuilder();
        for (var key : keyTexts.entrySet()) {
            directory[k] = key.getKey();
            directory[k + 1] = 34737;
            directory[k + 2] = key.getValue().length() + 1;
            directory[k + 3] = words.length();
            words.append(key.getValue()).append('|');
            k += 4;
        }
        if (!words.isEmpty()) tags.put(34737, words.toString());
        if (geoKeys.length > 0) tags.put(34735, java.util.Arrays.copyOf(directory, k));
        if (metadata != null) tags.put(42112, metadata);
        if (nodata != null) tags.put(42113, nodata);
        tags.putAll(more);
        return tags;
    }

    private byte[] directory(long at, TreeMap<Integer, Object> tags, long next) {
        int entryBytes = isBig ? 20 : 12;
        int tableBytes = (isBig ? 8 : 2) + tags.size() * entryBytes + (isBig ? 8 : 4);
        ByteArrayOutputStream beyond = new ByteArrayOutputStream();
        ByteBuffer table = ByteBuffer.allocate(tableBytes).order(order);
        if (isBig) table.putLong(tags.size());
        else table.putShort((short) tags.size());
        tags.forEach((tag, value) -> {
            int type = value instanceof String
                    ? 2
                    : value instanceof int[] ? 3 : value instanceof double[] ? 12 : isBig ? 16 : 4;
            byte[] data = encoded(value, type);
            int count = value instanceof String s
                    ? s.length() + 1
                    : value instanceof int[] a
                            ? a.length
                            : value instanceof double[] d ? d.length : ((long[]) value).length;
            table.putShort(tag.shortValue()).putShort((short) type);
            if (isBig) table.putLong(count);
            else table.putInt(count);
            int room = isBig ? 8 : 4;
            if (data.length <= room) {
                table.put(data).put(new byte[room - data.length]);
            } else {
                long place = at + tableBytes + beyond.size();
                if (isBig) table.putLong(place);
                else table.putInt((int) place);
                beyond.writeBytes(data);
                if (data.length % 2 == 1) beyond.write(0);
            }
        });
        if (isBig) table.putLong(next);
        else table.putInt((int) next);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(table.array());
        out.writeBytes(beyond.toByteArray());
        return out.toByteArray();
    }

    private byte[] encoded(Object value, int type) {
        if (value instanceof String s) return (s + "\0").getBytes(StandardCharsets.ISO_8859_1);
        if (value instanceof int[] a) {
            ByteBuffer data = ByteBuffer.allocate(2 * a.length).order(order);
            for (int v : a) data.putShort((short) v);
            return data.array();
        }
        if (value instanceof double[] d) {
            ByteBuffer data = ByteBuffer.allocate(8 * d.length).order(order);
            for (double v : d) data.putDouble(v);
            return data.array();
        }
        long[] list = (long[]) value;
        ByteBuffer data =
                ByteBuffer.allocate((type == 16 ? 8 : 4) * list.length).order(order);
        for (long v : list) {
            if (type == 16) data.putLong(v);
            else data.putInt((int) v);
        }
        return data.array();
    }
}
