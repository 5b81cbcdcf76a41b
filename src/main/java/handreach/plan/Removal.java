package handreach.plan;

import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.terrain.TileFolder;
import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.tomlj.Toml;

/** A plan's text on its way to another folder: every file that it names is named from there, or taken along. */
final class Removal {
    private static final Pattern KEY = Pattern.compile("\\s*([A-Za-z0-9_-]+)\\s*=\\s*");

    private final Path from;
    private final Path to;
    private final boolean isCopy;
    private final Map<Path, String> names = new HashMap<>();
    private final Map<Path, Path> copies = new LinkedHashMap<>();
    private final Set<Path> taken = new HashSet<>();

    Removal(Path from, Path to, boolean isCopy) {
        this.from = from.toAbsolutePath().normalize();
        this.to = to.toAbsolutePath().normalize();
        this.isCopy = isCopy;
    }

    /** The text as it holds in the other folder; lines and comments stay. */
    String of(String text) {
        StringBuilder out = new StringBuilder();
        String section = "";
        for (String line : text.lines().toList()) {
            Matcher header = PlanText.HEADER.matcher(line);
            if (header.matches()) section = header.group(2);
            out.append(renamed(section, line)).append('\n');
        }
        return out.toString();
    }

    private String renamed(String section, String line) {
        Matcher key = KEY.matcher(line);
        if (!key.lookingAt() || !FileKey.isOne(section, key.group(1))) return line;
        int start = key.end();
        if (start >= line.length() || line.charAt(start) != '"' && line.charAt(start) != '\'') return line;
        int end = PlanText.endOfText(line, start);
        String written = Toml.parse("text = " + line.substring(start, end)).getString("text");
        if (written == null || written.isBlank()) return line;
        try {
            Path file = from.resolve(written.strip()).normalize();
            if (!Files.exists(file)) return line;
            String name = names.computeIfAbsent(file, this::nameOf);
            return line.substring(0, start) + PlanText.quoted(name) + line.substring(end);
        } catch (InvalidPathException e) {
            return line;
        }
    }

    private String nameOf(Path file) {
        return isCopy ? copied(file) : seen(file);
    }

    /** A short way up and down again survives moving both; a long one does not, and the whole name is then plainer. */
    private String seen(Path file) {
        boolean isNear = to.getParent() != null && file.startsWith(to.getParent());
        return slashed(isNear ? to.relativize(file) : file);
    }

    private String copied(Path file) {
        Path wanted = file.startsWith(from) && !file.equals(from) ? from.relativize(file) : file.getFileName();
        Path target = to.resolve(wanted);
        for (int number = 2; !isFree(file, target); number++) target = numbered(to.resolve(wanted), number);
        taken.add(target);
        copies.put(file, target);
        return slashed(to.relativize(target));
    }

    private boolean isFree(Path file, Path target) {
        if (taken.contains(target)) return false;
        if (!Files.exists(target)) return true;
        try {
            return Files.isRegularFile(target) && Files.mismatch(file, target) < 0;
        } catch (IOException e) {
            return false;
        }
    }

    private static Path numbered(Path target, int number) {
        String name = target.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return target.resolveSibling(
                dot <= 0 ? name + "-" + number : name.substring(0, dot) + "-" + number + name.substring(dot));
    }

    /** Takes the files along; whatever goes wrong, what was written is removed again. */
    void copy(BooleanSupplier goesOn) {
        List<Path> made = new ArrayList<>();
        try {
            for (Map.Entry<Path, Path> copy : copies.entrySet()) {
                Path file = copy.getKey();
                Path target = copy.getValue();
                if (!Files.isDirectory(file)) {
                    copyOne(file, target, made, goesOn);
                    continue;
                }
                makeFolder(target, made);
                for (Path tile : tilesOf(file)) copyOne(tile, target.resolve(tile.getFileName()), made, goesOn);
            }
        } catch (IOException e) {
            remove(made);
            throw new InputFault(
                    to.toString(),
                    0,
                    "cannot take the files of the plan (" + SourceText.reason(e)
                            + "). Nothing was changed. Check rights and free space, or choose another folder.");
        } catch (CancellationException stopped) {
            remove(made);
            throw stopped;
        }
    }

    private static void copyOne(Path file, Path target, List<Path> made, BooleanSupplier goesOn) throws IOException {
        if (!goesOn.getAsBoolean()) throw new CancellationException("stopped while files were copied");
        if (Files.exists(target)) return;
        makeFolder(target.getParent(), made);
        made.add(target);
        Files.copy(file, target);
    }

    private static void makeFolder(Path folder, List<Path> made) throws IOException {
        if (Files.isDirectory(folder)) return;
        makeFolder(folder.getParent(), made);
        Files.createDirectory(folder);
        made.add(folder);
    }

    private static void remove(List<Path> made) {
        for (int i = made.size() - 1; i >= 0; i--) {
            try {
                Files.deleteIfExists(made.get(i));
            } catch (DirectoryNotEmptyException used) {
                // somebody else has put something there meanwhile, and that stays
                continue;
            } catch (IOException e) {
                return;
            }
        }
    }

    private static List<Path> tilesOf(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> TileFolder.isRead(file.getFileName().toString()))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new InputFault(
                    folder.toString(), 0, "cannot be read (" + SourceText.reason(e) + "). Check its rights.");
        }
    }

    private static String slashed(Path path) {
        return path.toString().replace('\\', '/');
    }
}
