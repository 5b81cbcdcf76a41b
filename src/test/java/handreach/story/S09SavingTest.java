package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.input.Sources;
import handreach.plan.PlanFile;
import handreach.report.file.AnswerFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Saving under bad circumstances: the program killed in the midst of it, two programs on one plan, a full disk. How often the saving
 * program is killed is set by {@code -Dhandreach.kills=N}.
 */
@Timeout(value = 15, unit = TimeUnit.MINUTES)
class S09SavingTest {
    private static final int KILLS = Integer.getInteger("handreach.kills", 15);
    private static final Pattern VERSION = Pattern.compile("title = \"version (\\d+)\"");

    @TempDir
    Path folder;

    /** The plan of a version: some hundred kilobytes, told apart at both ends. */
    static String text(int version) {
        return ("title = \"version " + version + "\"\n" + """
                [channel]
                frequency_mhz = 155
                [ground]
                tiles = "tiles"
                [[radio]]
                name = "handheld"
                power_w = 5
                sensitivity_dbm = -119
                [[antenna]]
                name = "factory"
                control = true
                [[loadout]]
                name = "factory at face"
                antenna = "factory"
                carry = "face"
                [area]
                radius_km = 5
                [[position]]
                name = "base"
                at = "46.5, 8.1"
                """)
                + ("# padding of version " + version + "\n").repeat(6000)
                + "# end of version " + version + "\n";
    }

    private static int version(String text) {
        Matcher found = VERSION.matcher(text);
        assertTrue(found.find(), "no version in " + text.length() + " characters");
        int version = Integer.parseInt(found.group(1));
        assertEquals(text(version), text, "a mixture");
        return version;
    }

    private Path plan(int version) throws IOException {
        Files.createDirectories(folder.resolve("tiles"));
        Path plan = folder.resolve("plan.toml");
        Files.writeString(plan, text(version));
        return plan;
    }

    private static Process started(Class<?> main, String... args) throws IOException {
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xshare:auto",
                "-cp",
                System.getProperty("java.class.path"),
                main.getName()));
        words.addAll(List.of(args));
        return new ProcessBuilder(words)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    @Test
    void aProgramKilledWhileItSavesLeavesAWholePlan() throws Exception {
        Random random = new Random(20261125);
        Path plan = plan(0);
        Files.writeString(folder.resolve("export.txt"), text(0));
        int midSave = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            Process saver = started(Saver.class, plan.toString());
            int told = killedAtRandom(saver, random);
            if (leftover() != null) midSave++;
            PlanFile opened = PlanFile.open(plan);
            int version = version(Files.readString(plan));
            assertTrue(version == told || version == told + 1, told + " was saved, " + version + " is there");
            assertEquals("version " + version, opened.plan().header().title());
            int backup = version(Files.readString(folder.resolve("plan.toml.bak")));
            assertTrue(backup == version || backup == version - 1, backup + " behind " + version);
            assertTrue(version(Files.readString(folder.resolve("export.txt"))) <= version);
            opened.withText(text(version + 1)).save();
            AnswerFile.write(folder.resolve("export.txt"), text(version + 1), opened.sources());
            assertEquals(null, leftover(), "swept by the next that writes");
        }
        System.out.println(KILLS + " kills, " + midSave + " of them left a half-written file beside; every plan whole");
    }

    /** Lets it save for a random time; the last version that it told to be saved. */
    private static int killedAtRandom(Process saver, Random random) throws Exception {
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(saver.getInputStream(), StandardCharsets.UTF_8))) {
            int told = Integer.parseInt(said.readLine());
            TimeUnit.MICROSECONDS.sleep(random.nextInt(60_000));
            saver.toHandle().destroyForcibly();
            assertTrue(saver.waitFor(30, TimeUnit.SECONDS));
            for (String line = said.readLine(); line != null; line = said.readLine())
                if (line.endsWith(".")) told = Integer.parseInt(line.replace(".", ""));
            return told;
        }
    }

    private Path leftover() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(
                            f -> f.toString().endsWith(".new") || f.toString().endsWith(".part"))
                    .findFirst()
                    .orElse(null);
        }
    }

    /** Saves version after version, and an export of each, until it is killed. */
    static final class Saver {
        public static void main(String[] args) {
            PlanFile plan = PlanFile.open(Path.of(args[0]));
            int version = S09SavingTest.version(plan.text() + "\n");
            for (int i = 0; ; i++) {
                plan = plan.withText(text(++version)).save();
                System.out.println(i == 0 ? version + "" : version + ".");
                AnswerFile.write(plan.folder().resolve("export.txt"), text(version), plan.sources());
            }
        }
    }

    @Test
    void twoProgramsOnOnePlanLoseNoEdit() throws Exception {
        Path plan = plan(0);
        int each = 20;
        Process one = started(Counter.class, plan.toString(), each + "");
        Process other = started(Counter.class, plan.toString(), each + "");
        assertTrue(one.waitFor(120, TimeUnit.SECONDS) && other.waitFor(120, TimeUnit.SECONDS));
        assertEquals(0, one.exitValue() + other.exitValue());
        assertEquals(2 * each, version(Files.readString(plan)));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(4, files.count(), "plan, backup, lock, tiles");
        }
    }

    /** Adds one to the version so many times; when refused, opens again and tries again. */
    static final class Counter {
        public static void main(String[] args) {
            Path file = Path.of(args[0]);
            for (int done = 0; done < Integer.parseInt(args[1]); ) {
                PlanFile plan = PlanFile.open(file);
                int version = S09SavingTest.version(plan.text() + "\n");
                try {
                    plan.withText(text(version + 1)).save();
                    done++;
                } catch (InputFault refused) {
                    if (!refused.getMessage().contains("another program")) throw refused;
                }
            }
        }
    }

    @Test
    void theSecondOfTwoWindowsIsRefusedAndKeepsItsText() throws IOException {
        Path plan = plan(0);
        PlanFile mine = PlanFile.open(plan).withText(text(1));
        PlanFile theirs = PlanFile.open(plan).withText(text(2));
        theirs.save();
        InputFault fault = assertThrows(InputFault.class, mine::save);
        assertTrue(fault.getMessage().contains("was changed by another program"), fault.getMessage());
        assertEquals(2, version(Files.readString(plan)));
        assertEquals(text(1), mine.text());
        Path other = folder.resolve("mine.toml");
        mine.saveAs(other, PlanFile.Named.WHERE_THEY_ARE, () -> true);
        assertEquals(1, version(Files.readString(other)));
    }

    @Test
    void whoCouldReadThePlanBeforeCanReadItAfter() throws IOException {
        Path plan = plan(0);
        Assumptions.assumeTrue(
                Files.getFileStore(plan).supportsFileAttributeView("posix"), "rights as owner, group, others");
        Files.setPosixFilePermissions(plan, PosixFilePermissions.fromString("rw-r--r--"));
        PlanFile.open(plan).withText(text(1)).save();
        assertEquals("rw-r--r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(plan)));
    }

    /** Nothing can be written where the disk is full; Linux has a device that is always full. */
    @Test
    void aFullDiskIsOneClearLineAndNothingIsLost() throws IOException {
        Path full = Path.of("/dev/full");
        Assumptions.assumeTrue(Files.isWritable(full), "no /dev/full here");
        Path file = folder.resolve("export.txt");
        AnswerFile.write(file, "old", Sources.NONE);
        InputFault fault = assertThrows(
                InputFault.class,
                () -> AnswerFile.write(
                        file,
                        out -> {
                            out.write(1);
                            try (var device = Files.newOutputStream(full)) {
                                device.write(new byte[1 << 20]);
                            }
                        },
                        Sources.NONE));
        assertTrue(fault.getMessage().contains("No space left on device"), fault.getMessage());
        assertEquals(1, fault.getMessage().lines().count());
        assertEquals("old", Files.readString(file));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(1, files.count());
        }
    }

    /** The same for standard output: the answer was not delivered, so the run did not succeed. */
    @Test
    void anAnswerIntoAFullDiskIsNoSuccess() throws Exception {
        Assumptions.assumeTrue(Files.isWritable(Path.of("/dev/full")), "no /dev/full here");
        Process run = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "handreach.Handreach",
                        "pattern",
                        "--radiator",
                        "monopole",
                        "--frequency-mhz",
                        "155")
                .redirectOutput(Path.of("/dev/full").toFile())
                .start();
        String said = new String(run.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(1, run.waitFor(), said);
        List<String> lines = said.lines().toList();
        assertEquals(
                "The answer could not be written whole to standard output: the disk is full, or whoever read it has gone.",
                lines.get(lines.size() - 1));
    }

    @Test
    void aReadOnlyFolderIsOneClearLine() throws IOException {
        Path plan = plan(0);
        PlanFile edited = PlanFile.open(plan).withText(text(1));
        Assumptions.assumeTrue(
                Files.getFileStore(plan).supportsFileAttributeView("posix")
                        && !"root".equals(System.getProperty("user.name")),
                "rights bind this user");
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("r-xr-xr-x"));
        try {
            InputFault fault = assertThrows(InputFault.class, edited::save);
            assertEquals(1, fault.getMessage().lines().count());
            assertEquals(0, version(Files.readString(plan)));
        } finally {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }
}
