package handreach.input;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A user's text file as numbered lines, with the name the user knows it by. */
public final class SourceText {
    /** Memory for the text, its lines and what is made of them: measured over all tables, docs/performance.md. */
    private static final CappedFile.Cap CAP = new CappedFile.Cap(64L << 20, 20, "Split the file.");

    /** What spreadsheets write on the most usual desktop system when not asked for UTF-8. */
    private static final Charset SPREADSHEET_CODE_PAGE = Charset.forName("windows-1252");

    private final String name;
    private final List<String> lines;
    private final boolean fallback;

    private SourceText(String name, List<String> lines, boolean fallback) {
        this.name = name;
        this.lines = lines;
        this.fallback = fallback;
    }

    public static SourceText of(String name, String text) {
        String body = text.startsWith("\uFEFF") ? text.substring(1) : text;
        return new SourceText(name, body.lines().toList(), false);
    }

    /** Reads a UTF-8 file (a byte-order mark is passed over); at most 64 MiB. */
    public static SourceText read(Path file) {
        return read(file, CAP);
    }

    /** Reads a table, which a spreadsheet may have written in its older character set; see {@link #isFallback}. */
    public static SourceText readTable(Path file) {
        return read(file, SPREADSHEET_CODE_PAGE);
    }

    /** Reads a UTF-8 file of no more than a bound of its own. */
    public static SourceText read(Path file, CappedFile.Cap cap) {
        return read(file, cap, Optional.empty());
    }

    /**
     * Reads a UTF-8 file, or, if it is none, one in the given older character set, as some spreadsheets still write; see
     * {@link #isFallback}.
     */
    public static SourceText read(Path file, Charset otherwise) {
        return read(file, CAP, Optional.of(otherwise));
    }

    private static SourceText read(Path file, CappedFile.Cap cap, Optional<Charset> otherwise) {
        String name = String.valueOf(file.getFileName());
        try {
            byte[] bytes;
            try (CappedFile in = CappedFile.open(file, cap)) {
                bytes = in.readAllBytes();
            }
            if (isBinary(bytes))
                throw new InputFault(
                        name, 0, "is not text (a workbook, picture or archive?). Export it as text and try again.");
            try {
                return of(name, decoded(bytes));
            } catch (CharacterCodingException e) {
                if (otherwise.isPresent()) {
                    List<String> lines =
                            new String(bytes, otherwise.get()).lines().toList();
                    return new SourceText(name, lines, true);
                }
                throw new InputFault(name, 0, "is not UTF-8 text. Save it as UTF-8 and try again.");
            }
        } catch (NoSuchFileException e) {
            throw new InputFault(file.toString(), 0, "there is no such file. Check the name and the folder.");
        } catch (IOException e) {
            throw new InputFault(file.toString(), 0, "cannot be read (" + reason(e) + "). Check the rights on it.");
        }
    }

    /** Why a file could not be read, in words. */
    public static String reason(IOException e) {
        if (e instanceof AccessDeniedException) return "access denied";
        String said = e instanceof FileSystemException system ? system.getReason() : e.getMessage();
        return said == null || said.isBlank() ? "no reason given" : said;
    }

    private static String decoded(byte[] bytes) throws CharacterCodingException {
        if (isUtf16(bytes)) return new String(bytes, StandardCharsets.UTF_16);
        return StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .decode(ByteBuffer.wrap(bytes))
                .toString();
    }

    private static boolean isUtf16(byte[] bytes) {
        boolean little = bytes.length > 1 && bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE;
        boolean big = bytes.length > 1 && bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF;
        return little || big;
    }

    /** No text holds a zero byte, except in UTF-16. */
    private static boolean isBinary(byte[] bytes) {
        if (isUtf16(bytes)) return false;
        for (byte b : bytes) if (b == 0) return true;
        return false;
    }

    /** Whether the file was not UTF-8 and was read in the older character set instead. */
    public boolean isFallback() {
        return fallback;
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
