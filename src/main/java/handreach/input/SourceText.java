package handreach.input;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;

/** A user's text file as numbered lines, with the name the user knows it by. */
public final class SourceText {
    private static final long LIMIT_BYTES = 64L << 20;
    private final String name;
    private final List<String> lines;

    private SourceText(String name, List<String> lines) {
        this.name = name;
        this.lines = lines;
    }

    public static SourceText of(String name, String text) {
        String body = text.startsWith("\uFEFF") ? text.substring(1) : text;
        return new SourceText(name, body.lines().toList());
    }

    /** Reads a UTF-8 file (a byte-order mark is passed over); at most 64 MiB. */
    public static SourceText read(Path file) {
        return read(file, LIMIT_BYTES);
    }

    /** Reads a UTF-8 file of at most the given size. */
    public static SourceText read(Path file, long limitBytes) {
        String name = String.valueOf(file.getFileName());
        try {
            if (Files.isDirectory(file))
                throw new InputFault(name, 0, "is a folder, a file is expected. Name the file itself.");
            long size = Files.size(file);
            if (size > limitBytes)
                throw new InputFault(
                        name,
                        0,
                        "is " + (size >> 20) + " MiB, at most " + (limitBytes >> 20)
                                + " MiB are read. Split the file.");
            byte[] bytes = Files.readAllBytes(file);
            return of(name, decoded(name, bytes));
        } catch (NoSuchFileException e) {
            throw new InputFault(file.toString(), 0, "there is no such file. Check the name and the folder.");
        } catch (IOException e) {
            throw new InputFault(
                    file.toString(),
                    0,
                    "cannot be read (" + e.getClass().getSimpleName() + "). Check the rights on it.");
        }
    }

    private static String decoded(String name, byte[] bytes) throws IOException {
        boolean little = bytes.length > 1 && bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE;
        boolean big = bytes.length > 1 && bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF;
        if (little || big) return new String(bytes, StandardCharsets.UTF_16);
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new InputFault(name, 0, "is not UTF-8 text. Save it as UTF-8 and try again.");
        }
    }

    public String name() {
        return name;
    }

    /** The lines without their ends; line number n is at index n − 1. */
    public List<String> lines() {
        return lines;
    }

    public String text() {
        return String.join("\n", lines);
    }
}
