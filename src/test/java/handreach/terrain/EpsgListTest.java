package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where the projection library's list lies, seen from outside: each test starts the program anew. */
class EpsgListTest {
    @TempDir
    Path folder;

    private record Run(int exit, List<String> lines) {}

    private Run run(String temporary) throws IOException, InterruptedException {
        Path tiles = Files.createDirectories(folder.resolve("tiles"));
        new PaperTiff(20, 20, (x, y) -> 700)
                .keys(1024, 1, 3072, 3035, 3076, 9001)
                .at(3_962_700, 2_999_800, 30, 30)
                .write(tiles.resolve("europe.tif"));
        Process run = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xshare:auto",
                        "-XX:TieredStopAtLevel=1",
                        "-Djava.io.tmpdir=" + temporary,
                        "-cp",
                        absolute(System.getProperty("java.class.path")),
                        NationalGrid.class.getName(),
                        tiles.toString())
                .directory(Files.createDirectories(folder.resolve("here")).toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Run(run.waitFor(), said.lines().toList());
    }

    private static String absolute(String classPath) {
        return Stream.of(classPath.split(java.io.File.pathSeparator))
                .map(part -> Path.of(part).toAbsolutePath().toString())
                .reduce((a, b) -> a + java.io.File.pathSeparator + b)
                .orElseThrow();
    }

    /** Run by the tests: tells the height, and the folder of the list with its rights. */
    static final class NationalGrid {
        private NationalGrid() {}

        public static void main(String[] arguments) throws IOException {
            try {
                TileFolder tiles = TileFolder.open(Path.of(arguments[0]));
                System.out.println(tiles.tiles().get(0).crs());
                Path list = Path.of(System.getProperty("EPSG-HSQL.directory"));
                System.out.println(list);
                PosixFileAttributeView view = Files.getFileAttributeView(list, PosixFileAttributeView.class);
                System.out.println(
                        view == null
                                ? "rwx------"
                                : PosixFilePermissions.toString(
                                        view.readAttributes().permissions()));
            } catch (handreach.input.InputFault fault) {
                System.out.println(fault.getMessage());
                System.exit(2);
            }
        }
    }

    @Test
    void theListIsPrivateToTheRunAndGoneAfterIt() throws IOException, InterruptedException {
        Path temporary = Files.createDirectories(folder.resolve("tmp"));
        // what somebody else has left where the library would look by itself
        Path planted = Files.createDirectories(temporary.resolve("GeoTools/Databases/HSQL/v11.0.31"));
        for (String file : List.of("EPSG_creation_marker.txt", "EPSG.data", "EPSG.properties", "EPSG.script"))
            Files.writeString(planted.resolve(file), "planted");
        Run run = run(temporary.toString());
        assertEquals(0, run.exit, String.join("\n", run.lines));
        assertEquals("EPSG:3035", run.lines.get(0));
        Path list = Path.of(run.lines.get(1));
        assertEquals(temporary, list.getParent());
        assertEquals("rwx------", run.lines.get(2));
        assertFalse(Files.exists(list), "left behind");
        try (Stream<Path> left = Files.list(temporary)) {
            assertEquals(
                    List.of("GeoTools"),
                    left.map(path -> path.getFileName().toString()).toList());
        }
        assertEquals("planted", Files.readString(planted.resolve("EPSG.data")));
    }

    @Test
    void withoutATemporaryFolderTheTrueReasonIsToldAndNothingIsWrittenElsewhere()
            throws IOException, InterruptedException {
        Run run = run(folder.resolve("nowhere").toString());
        assertEquals(2, run.exit);
        String said = String.join("\n", run.lines);
        assertTrue(said.contains("europe.tif: needs the list of coordinate systems"), said);
        assertTrue(said.contains("temporary folder " + folder.resolve("nowhere")), said);
        assertTrue(said.contains("no such file or folder"), said);
        try (Stream<Path> written = Files.list(folder.resolve("here"))) {
            assertEquals(List.of(), written.toList());
        }
    }
}
