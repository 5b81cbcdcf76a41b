package handreach.terrain;

import handreach.input.FileName;
import handreach.input.InputFault;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.BufferUnderflowException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Which files of a folder are tiles, and of which format. */
final class TileFiles {
    private static final String KINDS = ".hgt, .hgt.zip, .hgt.gz, .tif, .tiff and .asc files";

    private TileFiles() {}

    private static final int LONGEST_REASON = 120;
    private static final int LONGEST_LOOKED_AT = 1000;
    private static final Pattern CLASS_NAME =
            Pattern.compile("\\b(?:java|javax|jdk|sun|com|org|it)(?:\\.[\\w$]+)+:?|\\b\\w*(?:Exception|Error)\\b:?");

    /** Drafts of all tiles that can be used; what is wrong with the others goes to the warnings. */
    static List<TileHeader> drafts(Path folder, Consumer<String> warnings) {
        List<TileHeader> drafts = new ArrayList<>();
        for (Path file : files(folder)) {
            try {
                drafts.addAll(draft(file));
            } catch (InputFault fault) {
                warnings.accept(fault.getMessage());
            } catch (InvalidPathException e) {
                warnings.accept(file.getFileName() + ": " + FileName.refused(e));
            } catch (IOException e) {
                warnings.accept(file.getFileName() + ": cannot be read (" + reason(e) + "). Check the rights on it.");
            }
        }
        return drafts;
    }

    static InputFault nothingUsable(Path folder, List<String> warnings) {
        if (warnings.isEmpty())
            return new InputFault(
                    folder.toString(),
                    0,
                    "holds no elevation tile. " + KINDS + " are read; put them into this folder." + inside(folder));
        return new InputFault(
                folder.toString(), 0, "holds no elevation tile that can be used. " + String.join(" ", warnings));
    }

    private static List<TileHeader> draft(Path file) throws IOException {
        String name = String.valueOf(file.getFileName());
        if (HgtTile.isOne(name)) return List.of(HgtTile.draft(file));
        return isTiff(name) ? GeoTiffTile.drafts(file) : List.of(EsriGrid.draft(file));
    }

    private static List<Path> files(Path folder) {
        if (Files.isRegularFile(folder)) return List.of(folder);
        if (!Files.isDirectory(folder))
            throw new InputFault(
                    folder.toString(), 0, "there is no such folder. Name the folder that holds the elevation tiles.");
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(Files::isRegularFile)
                    .filter(p -> isTile(String.valueOf(p.getFileName())))
                    .sorted(Comparator.comparing(p -> String.valueOf(p.getFileName())))
                    .toList();
        } catch (IOException e) {
            throw new InputFault(folder.toString(), 0, "cannot be listed (" + reason(e) + "). Check the rights on it.");
        }
    }

    static boolean isTile(String name) {
        if (name.startsWith(".")) return false;
        return HgtTile.isOne(name) || isTiff(name) || isAscii(name);
    }

    static boolean isTiff(String name) {
        String low = name.toLowerCase(Locale.ROOT);
        return low.endsWith(".tif") || low.endsWith(".tiff");
    }

    static boolean isAscii(String name) {
        return name.toLowerCase(Locale.ROOT).endsWith(".asc");
    }

    private static String inside(Path folder) {
        try (Stream<Path> entries = Files.walk(folder, 3)) {
            return entries.filter(p -> isTile(String.valueOf(p.getFileName())) && Files.isRegularFile(p))
                    .map(Path::getParent)
                    .distinct()
                    .filter(one -> !isOurOwn(one))
                    .sorted()
                    .findFirst()
                    .map(one -> " There are tiles in " + one + ": name that one.")
                    .orElse("");
        } catch (IOException | UncheckedIOException e) {
            return "";
        }
    }

    /** Whether a folder holds rasters that the program wrote: a list of its files stands beside them, and they are no ground. */
    private static boolean isOurOwn(Path folder) throws UncheckedIOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.anyMatch(p -> String.valueOf(p.getFileName()).endsWith("-files.json"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What a library trips over in a damaged file, in words that speak of its own code. */
    private static boolean isOfTheMachine(Throwable e) {
        // The projection library hands such a failure on as one of its own, with the words of the machine.
        return e != null && isOfTheMachine(e.getCause())
                || String.valueOf(e).contains("cannot be cast to")
                || e instanceof ClassCastException
                || e instanceof NullPointerException
                || e instanceof IndexOutOfBoundsException
                || e instanceof NegativeArraySizeException
                || e instanceof ArrayStoreException
                || e instanceof BufferUnderflowException;
    }

    /** What an I/O failure says, in a few words without names of classes. */
    static String reason(Exception e) {
        if (e instanceof AccessDeniedException) return "access denied";
        if (e instanceof NoSuchFileException) return "no such file or folder";
        String said = e.getMessage();
        if (said == null || said.isBlank()) return "no reason given";
        if (isOfTheMachine(e)) return "its inside does not fit together";
        String start = said.length() > LONGEST_LOOKED_AT ? said.substring(0, LONGEST_LOOKED_AT) : said;
        String line =
                CLASS_NAME.matcher(start).replaceAll("").replaceAll("\\s+", " ").strip();
        if (line.isEmpty()) return "no reason given";
        return line.length() > LONGEST_REASON ? line.substring(0, LONGEST_REASON) + " \u2026" : line;
    }
}
