package handreach.input;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A file of which no more than a bound is read. What is in a folder is refused by its size; a pipe or a device has none, so its bytes
 * are counted while they come.
 */
public final class CappedFile extends FilterInputStream {
    private final String name;
    private final Cap cap;
    private long count;

    /**
     * How much is read.
     *
     * @param usualBytes bound while memory is no concern
     * @param memoryPerByte bytes of memory that reading takes for each byte of the file
     * @param advice what to do with a larger file, a sentence
     */
    public record Cap(long usualBytes, double memoryPerByte, String advice) {
        long bytes() {
            return Memory.most(usualBytes, memoryPerByte);
        }

        private String words() {
            return "at most " + size(bytes()) + " are read." + Memory.advice(bytes(), usualBytes, memoryPerByte) + " "
                    + advice;
        }
    }

    private CappedFile(InputStream in, String name, Cap cap) {
        super(in);
        this.name = name;
        this.cap = cap;
    }

    /** Opens a file; {@link InputFault} if it is a folder or larger than the bound, at once or once that many bytes have come. */
    public static CappedFile open(Path file, Cap cap) throws IOException {
        String name = String.valueOf(file.getFileName());
        if (Files.isDirectory(file))
            throw new InputFault(name, 0, "is a folder, a file is expected. Name the file itself.");
        long size = Files.size(file);
        if (size > cap.bytes()) throw new InputFault(name, 0, "is " + size(size) + ", " + cap.words());
        return new CappedFile(Files.newInputStream(file), name, cap);
    }

    private static String size(long bytes) {
        return bytes >= 1 << 20 ? (bytes >> 20) + " MiB" : (bytes >> 10) + " KiB";
    }

    private void count(long more) {
        count += Math.max(0, more);
        if (count > cap.bytes()) throw new InputFault(name, 0, "goes on and on, " + cap.words());
    }

    @Override
    public int read() throws IOException {
        int one = in.read();
        if (one >= 0) count(1);
        return one;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
        int got = in.read(into, from, length);
        count(got);
        return got;
    }

    @Override
    public long skip(long bytes) throws IOException {
        long passed = in.skip(bytes);
        count(passed);
        return passed;
    }

    @Override
    public boolean markSupported() {
        return false;
    }
}
