package handreach.terrain;

import handreach.input.InputFault;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * The tags of the full-resolution image of a TIFF or BigTIFF file, read without its pixels and without a TIFF library, so that
 * opening a folder costs next to nothing. Source: TIFF 6.0, section 2; BigTIFF as described by its designers.
 */
final class TiffHeader {
    static final int NEW_SUBFILE_TYPE = 254;
    static final int WIDTH = 256;
    static final int HEIGHT = 257;
    static final int BITS_PER_SAMPLE = 258;
    static final int COMPRESSION = 259;
    static final int PHOTOMETRIC = 262;
    static final int DESCRIPTION = 270;
    static final int STRIP_OFFSETS = 273;
    static final int SAMPLES_PER_PIXEL = 277;
    static final int ROWS_PER_STRIP = 278;
    static final int STRIP_BYTE_COUNTS = 279;
    static final int SOFTWARE = 305;
    static final int COLOR_MAP = 320;
    static final int TILE_WIDTH = 322;
    static final int TILE_HEIGHT = 323;
    static final int TILE_OFFSETS = 324;
    static final int TILE_BYTE_COUNTS = 325;
    static final int SAMPLE_FORMAT = 339;
    static final int COPYRIGHT = 33432;
    static final int PIXEL_SCALE = 33550;
    static final int TIE_POINTS = 33922;
    static final int TRANSFORMATION = 34264;
    static final int GEO_KEYS = 34735;
    static final int GEO_DOUBLES = 34736;
    static final int GEO_ASCII = 34737;
    static final int GDAL_METADATA = 42112;
    static final int GDAL_NODATA = 42113;

    private static final Set<Integer> WANTED = Set.of(
            NEW_SUBFILE_TYPE,
            WIDTH,
            HEIGHT,
            BITS_PER_SAMPLE,
            COMPRESSION,
            PHOTOMETRIC,
            DESCRIPTION,
            STRIP_OFFSETS,
            SAMPLES_PER_PIXEL,
            ROWS_PER_STRIP,
            STRIP_BYTE_COUNTS,
            SOFTWARE,
            COLOR_MAP,
            TILE_WIDTH,
            TILE_HEIGHT,
            TILE_OFFSETS,
            TILE_BYTE_COUNTS,
            SAMPLE_FORMAT,
            COPYRIGHT,
            PIXEL_SCALE,
            TIE_POINTS,
            TRANSFORMATION,
            GEO_KEYS,
            GEO_DOUBLES,
            GEO_ASCII,
            GDAL_METADATA,
            GDAL_NODATA);
    private static final int MOST_IMAGES = 64;
    private static final int MOST_ENTRIES = 4096;
    /** Of all tags together: the offsets of 2 million blocks in BigTIFF. Both this reader and the library read and keep them. */
    private static final long MOST_TAG_BYTES = 32L << 20;
    /** Numbers of one tag, each held as 8 bytes, whatever its width in the file. */
    private static final long MOST_NUMBERS = 4L << 20;

    private static final long LONGEST_TEXT = 4L << 20;
    private static final int[] TYPE_BYTES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8};

    private final SeekableByteChannel channel;
    private final String name;
    private final long fileBytes;
    private boolean isBig;
    private ByteOrder order = ByteOrder.BIG_ENDIAN;
    private int imageIndex;
    private long tagBytes;
    private final Map<Integer, double[]> numbers = new HashMap<>();
    private final Map<Integer, String> texts = new HashMap<>();

    private TiffHeader(SeekableByteChannel channel, String name) throws IOException {
        this.channel = channel;
        this.name = name;
        this.fileBytes = channel.size();
    }

    static TiffHeader read(Path file) throws IOException {
        String name = String.valueOf(file.getFileName());
        try (SeekableByteChannel channel = Files.newByteChannel(file)) {
            TiffHeader header = new TiffHeader(channel, name);
            header.findFullImage();
            return header;
        } catch (EOFException e) {
            throw new InputFault(name, 0, "ends inside its own header. It is cut off; fetch it again.");
        }
    }

    private void findFullImage() throws IOException {
        ByteBuffer start = bytes(0, 8);
        short mark = start.getShort(0);
        if (mark == 0x4949) order = ByteOrder.LITTLE_ENDIAN;
        else if (mark != 0x4D4D) throw fault("is not a TIFF file. Check what it is.");
        int version = start.order(order).getShort(2);
        if (version != 42 && version != 43) throw fault("is not a TIFF file. Check what it is.");
        isBig = version == 43;
        long next = isBig ? bytes(8, 8).getLong() : Integer.toUnsignedLong(start.getInt(4));
        Set<Long> seen = new HashSet<>();
        for (imageIndex = 0; next != 0 && imageIndex < MOST_IMAGES && seen.add(next); imageIndex++) {
            numbers.clear();
            texts.clear();
            next = directory(next);
            int kind = (int) number(NEW_SUBFILE_TYPE, 0);
            if ((kind & 1) == 0 && (kind & 4) == 0 && numbers.containsKey(WIDTH)) return;
        }
        throw fault("holds no image at full resolution. Fetch it again.");
    }

    private long directory(long offset) throws IOException {
        long entries = isBig
                ? bytes(offset, 8).getLong()
                : Short.toUnsignedInt(bytes(offset, 2).getShort());
        if (entries < 1 || entries > MOST_ENTRIES) throw fault("has a broken header. Fetch it again.");
        int entryBytes = isBig ? 20 : 12;
        long first = offset + (isBig ? 8 : 2);
        ByteBuffer table = bytes(first, (int) entries * entryBytes + (isBig ? 8 : 4));
        Set<Integer> seen = new HashSet<>();
        for (int i = 0; i < entries; i++) {
            int tag = Short.toUnsignedInt(table.getShort(i * entryBytes));
            if (!seen.add(tag)) throw fault("has tag " + tag + " twice, so its header is broken. Fetch it again.");
            entry(table, i * entryBytes);
        }
        int end = (int) entries * entryBytes;
        return isBig ? table.getLong(end) : Integer.toUnsignedLong(table.getInt(end));
    }

    private void entry(ByteBuffer table, int at) throws IOException {
        int tag = Short.toUnsignedInt(table.getShort(at));
        int type = Short.toUnsignedInt(table.getShort(at + 2));
        if (type >= TYPE_BYTES.length || TYPE_BYTES[type] == 0) return;
        long count = isBig ? table.getLong(at + 4) : Integer.toUnsignedLong(table.getInt(at + 4));
        int valueAt = at + (isBig ? 12 : 8);
        if (count < 0 || count > fileBytes) throw new EOFException();
        tagBytes += count * TYPE_BYTES[type];
        if (tagBytes > MOST_TAG_BYTES)
            throw fault("has more than 32 MiB of tags, so its header is broken. Fetch it again.");
        if (!WANTED.contains(tag)) {
            mustLieInFile(table, valueAt, count, TYPE_BYTES[type]);
            return;
        }
        if (count > (type == 2 ? LONGEST_TEXT : MOST_NUMBERS)) throw fault("has a broken header. Fetch it again.");
        int size = (int) count * TYPE_BYTES[type];
        ByteBuffer value;
        if (size <= (isBig ? 8 : 4)) {
            value = table.slice(valueAt, isBig ? 8 : 4).order(order);
        } else {
            value = bytes(isBig ? table.getLong(valueAt) : Integer.toUnsignedLong(table.getInt(valueAt)), size);
        }
        if (type == 2) {
            byte[] ascii = new byte[size];
            value.get(0, ascii);
            texts.put(tag, new String(ascii, StandardCharsets.ISO_8859_1).replace("\0", ""));
        } else {
            double[] list = new double[(int) count];
            for (int i = 0; i < list.length; i++) list[i] = element(value, type, i);
            numbers.put(tag, list);
        }
    }

    /** The library that unpacks the image reads every tag and believes its count; a false one would have it ask for gigabytes. */
    private void mustLieInFile(ByteBuffer table, int valueAt, long count, int bytesEach) throws IOException {
        long size = count * bytesEach;
        if (size <= (isBig ? 8 : 4)) return;
        long offset = isBig ? table.getLong(valueAt) : Integer.toUnsignedLong(table.getInt(valueAt));
        if (offset < 0 || offset > fileBytes - size) throw new EOFException();
    }

    private static double element(ByteBuffer value, int type, int i) {
        return switch (type) {
            case 1, 7 -> Byte.toUnsignedInt(value.get(i));
            case 6 -> value.get(i);
            case 3 -> Short.toUnsignedInt(value.getShort(2 * i));
            case 8 -> value.getShort(2 * i);
            case 4, 13 -> Integer.toUnsignedLong(value.getInt(4 * i));
            case 9 -> value.getInt(4 * i);
            case 5 ->
                (double) Integer.toUnsignedLong(value.getInt(8 * i))
                        / Math.max(1, Integer.toUnsignedLong(value.getInt(8 * i + 4)));
            case 10 -> (double) value.getInt(8 * i) / Math.max(1, value.getInt(8 * i + 4));
            case 11 -> value.getFloat(4 * i);
            case 12 -> value.getDouble(8 * i);
            default -> value.getLong(8 * i);
        };
    }

    private ByteBuffer bytes(long offset, int count) throws IOException {
        if (offset < 0 || offset > fileBytes - count) throw new EOFException();
        ByteBuffer buffer = ByteBuffer.allocate(count).order(order);
        channel.position(offset);
        while (buffer.hasRemaining()) if (channel.read(buffer) < 0) throw new EOFException();
        return buffer.flip();
    }

    private InputFault fault(String text) {
        return new InputFault(name, 0, text);
    }

    String name() {
        return name;
    }

    long fileBytes() {
        return fileBytes;
    }

    /** Which of the images of the file this is. */
    int imageIndex() {
        return imageIndex;
    }

    boolean has(int tag) {
        return numbers.containsKey(tag);
    }

    double number(int tag, double ifMissing) {
        double[] list = numbers.get(tag);
        return list == null || list.length == 0 ? ifMissing : list[0];
    }

    /** All values of a tag; empty if it is missing. Not to be changed. */
    double[] numbers(int tag) {
        return numbers.getOrDefault(tag, new double[0]);
    }

    /** A text of a tag; empty if it is missing. */
    String text(int tag) {
        return texts.getOrDefault(tag, "");
    }
}
