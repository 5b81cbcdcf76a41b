package handreach.input;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HexFormat;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The files that an answer is made from, so that none of them is written over with it. A file is known by what it is, whatever
 * name or link leads to it. Immutable.
 */
public final class Sources {
    /** An answer that was made from no file. */
    public static final Sources NONE = new Sources(Set.of(), Optional.empty());

    /** A folder of which every file with such a name may be read. */
    private record Folder(Path path, Predicate<String> isRead) {}

    private final Set<Path> files;
    private final Optional<Folder> folder;

    private Sources(Set<Path> files, Optional<Folder> folder) {
        this.files = Set.copyOf(files);
        this.folder = folder;
    }

    /** These and more. */
    public Sources and(Collection<Path> more) {
        Set<Path> all = new LinkedHashSet<>(files);
        all.addAll(more);
        return new Sources(all, folder);
    }

    /** These and a folder: of elevation tiles, say, and every file in it with the name of a tile. */
    public Sources andFolder(Path path, Predicate<String> isRead) {
        return new Sources(files, Optional.of(new Folder(path, isRead)));
    }

    /** These without one that may be written over. */
    public Sources without(Path file) {
        Set<Path> rest = new LinkedHashSet<>(files);
        rest.removeIf(one -> isSame(one, file));
        return new Sources(rest, folder);
    }

    /** Whether a file is one of these. */
    public boolean has(Path file) {
        return files.stream().anyMatch(one -> isSame(one, file))
                || Files.exists(file)
                        && folder.filter(one -> one.isRead().test(String.valueOf(file.getFileName())))
                                .filter(one ->
                                        isSame(one.path(), file.toAbsolutePath().getParent()))
                                .isPresent();
    }

    /** Whether this is the folder that is read. */
    boolean isFolder(Path path) {
        return folder.filter(one -> isSame(one.path(), path)).isPresent();
    }

    /**
     * A digest of all that is read, by names without folders and by content: the same on another machine, another as soon as a byte changes.
     * A file that cannot be read is a fault.
     */
    public String digest() {
        List<String> lines = new ArrayList<>();
        try {
            for (Path file : all()) lines.add(file.getFileName() + " " + digest(file));
        } catch (IOException | DirectoryIteratorException e) {
            throw new InputFault(
                    "the files of the plan",
                    0,
                    "cannot all be read (" + e.getMessage() + "). Check the rights on them.");
        }
        lines.sort(null);
        return HexFormat.of().formatHex(sha256().digest(String.join("\n", lines).getBytes(StandardCharsets.UTF_8)));
    }

    /** All that is read now, the files of the folder among them; where the folder cannot be listed, the others. */
    public List<Path> present() {
        try {
            return all().stream().filter(Files::isRegularFile).toList();
        } catch (IOException | DirectoryIteratorException e) {
            return files.stream().filter(Files::isRegularFile).toList();
        }
    }

    private List<Path> all() throws IOException {
        List<Path> all = new ArrayList<>(files);
        if (folder.isPresent())
            try (DirectoryStream<Path> found =
                    Files.newDirectoryStream(folder.get().path())) {
                for (Path file : found)
                    if (folder.get().isRead().test(String.valueOf(file.getFileName())) && Files.isRegularFile(file))
                        all.add(file);
            }
        return all;
    }

    private static String digest(Path file) throws IOException {
        MessageDigest sum = sha256();
        try (InputStream in = Files.newInputStream(file)) {
            byte[] block = new byte[1 << 16];
            for (int n = in.read(block); n >= 0; n = in.read(block)) sum.update(block, 0, n);
        }
        return HexFormat.of().formatHex(sum.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean isSame(Path one, Path other) {
        try {
            return Files.exists(one) && Files.exists(other) && Files.isSameFile(one, other);
        } catch (IOException e) {
            return one.toAbsolutePath()
                    .normalize()
                    .equals(other.toAbsolutePath().normalize());
        }
    }
}
