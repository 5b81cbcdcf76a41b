package handreach.report.draw;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Pixels as a PNG file. The runtime's own writer weighs five filters for every line and packs for smallness: three maps of a reach
 * answer took it 0.43 s, warm, and 3.5 MB, where this takes 0.26 s and 3.4 MB. Every line is told by what differs from the line
 * above, which suits relief and flat colour alike. Source of the layout: PNG, third edition (W3C, 2025), chunks IHDR, IDAT and IEND;
 * from memory.
 */
final class Png {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final int HEADER_BYTES = 13;
    private static final byte BITS = 8;
    private static final byte FROM_LINE_ABOVE = 2;
    /** Of the steps of deflate from 1 to 9; above it a map gets little smaller and takes much longer. */
    private static final int EFFORT = 2;

    private static final int BLOCK_BYTES = 1 << 16;

    /** What a pixel is made of, by the number the format has for it. */
    enum Kind {
        GREY(0, 1),
        COLOUR(2, 3),
        SEE_THROUGH(6, 4);

        private final byte number;
        private final int bytes;

        Kind(int number, int bytes) {
            this.number = (byte) number;
            this.bytes = bytes;
        }
    }

    private Png() {}

    /** A file of pixels 0xAARRGGBB, row by row from the top; of grey pixels the last byte counts. */
    static byte[] of(int widthPx, int heightPx, int[] argb, Kind kind) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(BLOCK_BYTES);
        out.writeBytes(SIGNATURE);
        byte[] header = ByteBuffer.allocate(HEADER_BYTES)
                .putInt(widthPx)
                .putInt(heightPx)
                .put(BITS)
                .put(kind.number)
                .array();
        chunk(out, "IHDR", header);
        chunk(out, "IDAT", packed(widthPx, heightPx, argb, kind));
        chunk(out, "IEND", new byte[0]);
        return out.toByteArray();
    }

    private static byte[] packed(int widthPx, int heightPx, int[] argb, Kind kind) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream(argb.length);
        Deflater deflater = new Deflater(EFFORT);
        try (OutputStream zipped = new DeflaterOutputStream(packed, deflater, BLOCK_BYTES)) {
            byte[] above = new byte[widthPx * kind.bytes];
            byte[] line = new byte[above.length];
            byte[] told = new byte[1 + above.length];
            told[0] = FROM_LINE_ABOVE;
            for (int y = 0; y < heightPx; y++) {
                line(argb, y * widthPx, kind, line);
                differences(line, above, told);
                zipped.write(told);
                byte[] free = above;
                above = line;
                line = free;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            deflater.end();
        }
        return packed.toByteArray();
    }

    private static void line(int[] argb, int from, Kind kind, byte[] line) {
        int at = 0;
        for (int i = from; at < line.length; i++) {
            int pixel = argb[i];
            if (kind != Kind.GREY) {
                line[at++] = (byte) (pixel >> 16);
                line[at++] = (byte) (pixel >> 8);
            }
            line[at++] = (byte) pixel;
            if (kind == Kind.SEE_THROUGH) line[at++] = (byte) (pixel >> 24);
        }
    }

    private static void differences(byte[] line, byte[] above, byte[] told) {
        for (int i = 0; i < line.length; i++) told[i + 1] = (byte) (line[i] - above[i]);
    }

    private static void chunk(ByteArrayOutputStream out, String type, byte[] data) {
        byte[] named = ByteBuffer.allocate(4 + data.length)
                .put(type.getBytes(StandardCharsets.US_ASCII))
                .put(data)
                .array();
        CRC32 sum = new CRC32();
        sum.update(named);
        out.writeBytes(ByteBuffer.allocate(4).putInt(data.length).array());
        out.writeBytes(named);
        out.writeBytes(ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
    }
}
