package handreach.terrain;

import handreach.input.InputFault;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.geotools.referencing.factory.epsg.hsql.ThreadedHsqlEpsgFactory;

/**
 * The projection library's list of coordinate systems, which it can only read from files.
 *
 * <p>Left to itself the library unpacks it into a fixed folder that all users of the machine share, believes what it finds there, and
 * falls back to the working folder. Here it is unpacked into a new folder that only this user may enter, for this run alone, and
 * deleted when the program ends. It is unpacked when the first tile needs it, once; that the library is told by a property of the
 * process is its only door.
 */
final class EpsgList {
    private static final String NAME = "EPSG.zip";
    private static final String MARKER = "EPSG_creation_marker.txt";
    private static Path unpacked;

    private EpsgList() {}

    /** Makes sure that the library finds its list; {@link InputFault} with the true reason where that cannot be. */
    static synchronized void unpack(String asking) {
        if (unpacked != null) return;
        Path folder = null;
        try {
            folder = Files.createTempDirectory("handreach-epsg-");
            Path made = folder;
            Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(made)));
            unpackInto(Files.createDirectory(folder.resolve("v" + ThreadedHsqlEpsgFactory.VERSION)));
        } catch (IOException e) {
            if (folder != null) delete(folder);
            throw new InputFault(
                    asking,
                    0,
                    "needs the list of coordinate systems, 33 MB, which cannot be unpacked into the temporary folder "
                            + System.getProperty("java.io.tmpdir") + " (" + TileFiles.reason(e)
                            + "). Make room there, or warp the file to EPSG:4326 with a GIS tool.");
        }
        System.setProperty(ThreadedHsqlEpsgFactory.DIRECTORY_KEY, folder.toString());
        unpacked = folder;
    }

    private static void unpackInto(Path folder) throws IOException {
        try (InputStream packed = ThreadedHsqlEpsgFactory.class.getResourceAsStream(NAME)) {
            if (packed == null) throw new IOException("the list is missing from the program");
            ZipInputStream zip = new ZipInputStream(packed);
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry())
                if (!entry.isDirectory())
                    Files.copy(zip, folder.resolve(Path.of(entry.getName()).getFileName()));
            Files.createFile(folder.resolve(MARKER));
        }
    }

    private static void delete(Path folder) {
        try {
            Files.walkFileTree(folder, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                    Files.deleteIfExists(file);
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult postVisitDirectory(Path emptied, IOException failed) throws IOException {
                    Files.deleteIfExists(emptied);
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException | UncheckedIOException e) {
            // the program is ending and nobody listens; a folder that only this user may enter is left behind
        }
    }
}
