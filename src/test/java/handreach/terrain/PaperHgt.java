package handreach.terrain;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.ToDoubleBiFunction;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Writes tiles in SRTM layout. */
final class PaperHgt {
    static final int SIDE = 1201;

    private PaperHgt() {}

    /** Heights by latitude and longitude of the posts. */
    static byte[] bytes(int southDeg, int westDeg, int side, ToDoubleBiFunction<Double, Double> heightM) {
        ByteBuffer data = ByteBuffer.allocate(2 * side * side);
        for (int row = 0; row < side; row++)
            for (int column = 0; column < side; column++)
                data.putShort((short) Math.rint(
                        heightM.applyAsDouble(southDeg + 1 - row / (side - 1.0), westDeg + column / (side - 1.0))));
        return data.array();
    }

    static byte[] zipped(String entry, byte[] data) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry(entry));
            zip.write(data);
            zip.closeEntry();
        }
        return out.toByteArray();
    }

    static byte[] gzipped(byte[] data) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (OutputStream zip = new GZIPOutputStream(out)) {
            zip.write(data);
        }
        return out.toByteArray();
    }

    static Path write(Path folder, String name, byte[] data) throws IOException {
        return Files.write(folder.resolve(name), data);
    }
}
