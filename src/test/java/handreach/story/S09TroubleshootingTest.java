package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cli.CommandLineRunner;
import handreach.input.InputFault;
import handreach.input.WorkMark;
import handreach.plan.PlanFile;
import handreach.terrain.PaperTiff;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every message that {@code docs/troubleshooting.md} quotes is one that the program gives, and says so when provoked. */
class S09TroubleshootingTest {
    private static final Path SAMPLES = Path.of("elevation-samples").toAbsolutePath();
    private static final Path SAMPLE = SAMPLES.resolve("forest-hills");

    @TempDir
    Path folder;

    private final List<String> said = new ArrayList<>();

    @BeforeEach
    void sampleBeside() throws IOException {
        try (Stream<Path> files = Files.list(SAMPLE)) {
            for (Path file : files.filter(Files::isRegularFile).toList())
                Files.copy(file, folder.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
        }
        Files.copy(SAMPLES.resolve("invented-bench/bench.csv"), folder.resolve("bench.csv"));
        Files.writeString(folder.resolve("plan.toml"), planText());
    }

    private static String planText() throws IOException {
        return Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("../invented-bench/bench.csv", "bench.csv");
    }

    /** Runs a command; everything that it says on standard error, and the text answer, is kept. */
    private void run(Object... words) {
        CommandRun run = CommandRun.of(Arrays.stream(words).map(String::valueOf).toArray(String[]::new));
        assertFalse(run.err().contains("\tat "), run.err());
        said.addAll(run.err().lines().toList());
        said.addAll(run.out().lines().toList());
        said.add(run.out());
    }

    private Path file(String name, String text) throws IOException {
        return file(name, text.getBytes(StandardCharsets.UTF_8));
    }

    private Path file(String name, byte[] bytes) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.write(file, bytes);
    }

    private void plan(String from, String to) throws IOException {
        assertTrue(planText().contains(from), from);
        run("reach", file("changed.toml", planText().replace(from, to)));
    }

    private void walk(String from, String to) throws IOException {
        assertTrue(planText().contains(from), from);
        run("walk", file("changed.toml", planText().replace(from, to)));
    }

    private void provoke() throws Exception {
        plans();
        tiles();
        rastersThatAreNoGround();
        benches();
        walks();
        writing();
        run("reach", SAMPLES.resolve("urban-coast"), "--no-area", "--radius-km", "1");
        run("path", "--plan", folder, "--from", "spike camp", "--to", "creek crew");
        run("path", "--plan", folder, "--from", "spike camp", "--to", "nort spur");
        run(
                "path",
                "--tiles",
                SAMPLE.resolve("tiles"),
                "--from",
                "36.27,-84.21",
                "--to",
                "36.9,-84.2",
                "--frequency-mhz",
                "155");
        run("path", "--tiles", SAMPLE.resolve("tiles"), "--from", "36.27,-84.21", "--to", "36.3,-84.2");
        run("reach", folder, "--radius", "3");
        run("reach", folder, "--radius-km", "100", "--cell-m", "5", "--out", folder.resolve("big"));
    }

    private void plans() throws IOException {
        Files.createDirectories(folder.resolve("empty"));
        run("reach", folder.resolve("empty"));
        run("reach", folder.resolve("missing.toml"));
        plan("frequency_mhz = 155.16", "frequncy_mhz = 155.16");
        plan("frequency_mhz = 155.16", "frequency_mhz = 155,16");
        plan("frequency_mhz = 155.16", "frequency_mhz = [155.16");
        plan("frequency_mhz = 155.16", "frequency_mhz = \"FILL IN\"");
        plan("radius_km = 5", "radius_km = 900");
        plan(
                "[channel]\nname = \"crew direct\"\nfrequency_mhz = 155.16\n",
                "[[channel]]\nname = \"a\"\nfrequency_mhz = 155\n".repeat(13));
        plan("carry = \"hip\"", "carry = \"hipp\"");
        plan("control = true", "control = true\ngain_db = 3");
        plan("bench_with_counterpoise = \"quarter-wave whip with wire\"", "bench = \"no such\"");
        plan("at = \"36.2700, -84.2100\"", "at = \"36.2700 N; 84.2100\"");
        run(
                "reach",
                file(
                        "latin.toml",
                        planText().replace("two crews", "d\u00e9j\u00e0").getBytes(StandardCharsets.ISO_8859_1)));
    }

    private void tiles() throws IOException {
        run("tiles", folder.resolve("no-folder"));
        run("tiles", folder.resolve("empty"));
        run("tiles", SAMPLE);
        file("t1/N46E008.hgt", new byte[1000]);
        run("tiles", folder.resolve("t1"));
        file("t2/N46E008.hgt.zip", new byte[1000]);
        run("tiles", folder.resolve("t2"));
        byte[] whole = Files.readAllBytes(SAMPLE.resolve("tiles/cumberland-forest-3s.tif"));
        file("t3/a.tif", Arrays.copyOf(whole, whole.length - 5000));
        run("tiles", folder.resolve("t3"));
        double step = 1 / 1200.0;
        byte[] packed = Files.readAllBytes(new PaperTiff(48, 48, (x, y) -> 600 + (x * 7919 + y * 104_729) % 211)
                .at(8, 47, step, step)
                .deflated()
                .tiles(16)
                .write(folder.resolve("packed.tif")));
        packed[100] ^= 4;
        file("t5/a.tif", packed);
        run("tiles", folder.resolve("t5"));
        run("tiles", SAMPLE.resolve("tiles"), "--at", "10,10");
    }

    private void rastersThatAreNoGround() throws IOException {
        Files.createDirectories(folder.resolve("t4"));
        Files.copy(SAMPLE.resolve("tiles/cumberland-forest-3s.tif"), folder.resolve("t4/ground.tif"));
        double step = 1 / 1200.0;
        PaperTiff any = new PaperTiff(50, 50, (x, y) -> x % 250).at(-84.3, 36.4, step, step);
        any.write(folder.resolve("t4/lower.tif"));
        any.keyText(4097, "WGS 84 ellipsoid").write(folder.resolve("t4/ellipsoid.tif"));
        any.tag(305, "Handreach").write(folder.resolve("t4/ours.tif"));
        any.tag(305, "another").tag(320, new int[768]).write(folder.resolve("t4/cover.tif"));
        new PaperTiff(50, 50, (x, y) -> x)
                .keys(1024, 1, 3072, 32632)
                .at(32_430_941, 5_150_000, 30, 30)
                .write(folder.resolve("t4/slip.tif"));
        run("tiles", folder.resolve("t4"));
        any.sample(8, 1).at(6, 1, step, step).write(folder.resolve("cover.tif"));
        plan("cover = \"woodland\"", "cover = \"woodland\"\nland_cover = \"cover.tif\"");
        Path profile = file("hole.csv", "distance_km,height_m\n0,100\n1,-9999\n2,100\n");
        run("path", "--profile", profile, "--frequency-mhz", "155");
    }

    private void benches() throws IOException {
        String head = "antenna,mount,quantity,value,unit,frequency_mhz,trial,note\n";
        run("bench", file("b1.csv", head + "a,in hand,swr,0.8,:1,155,1,\n"));
        run(
                "bench",
                file(
                        "b2.csv",
                        head + "a,in hand,received_level,-40,dBm,155,1,\nb,in hand,received_level,-39,dBm,155,1,\n"));
        run(
                "bench",
                file(
                        "b2.csv",
                        head + "a,in hand,received_level,-40,dBm,155,1,\nb,in hand,received_level,-39,dBm,155,1,\n"),
                "--control",
                "a");
        run("bench", file("b3.csv", head + "a,in hand,received_level,\"-40,5\",dBm,155,1,\n"));
        run("bench", file("b4.csv", "a,b\n1,2\n"));
        run("bench", file("b5.xlsx", new byte[] {80, 75, 3, 4, 0, 0}));
        run("match", file("s.s1p", "# MHz S RI R 50\n150 0.1\n"));
    }

    private void walks() throws IOException {
        walk("clock_offset_s = 47", "clock_offset_s = 28847");
        file("cut.gpx", Arrays.copyOf(Files.readAllBytes(SAMPLE.resolve("walk-track.gpx")), 20_000));
        walk("walk-track.gpx", "cut.gpx");
        file("dtd.gpx", "<?xml version=\"1.0\"?><!DOCTYPE gpx><gpx/>");
        walk("walk-track.gpx", "dtd.gpx");
        file("marks.gpx", "<gpx><wpt lat='36.27' lon='-84.21'><name>-204 dBm</name></wpt></gpx>");
        walk("walk-reports.csv", "marks.gpx");
        file(
                "typo.csv",
                Files.readString(SAMPLE.resolve("walk-reports.csv"))
                        .replaceFirst("factory at face", "factory at fcae"));
        walk("walk-reports.csv", "typo.csv");
        file(
                "swapped.gpx",
                Files.readString(SAMPLE.resolve("walk-track.gpx"))
                        .replaceAll("lat=\"([^\"]*)\" lon=\"([^\"]*)\"", "lat=\"$2\" lon=\"$1\""));
        walk("walk-track.gpx", "swapped.gpx");
        run("walk", SAMPLES.resolve("urban-coast"));
    }

    private void writing() throws Exception {
        run("card", SAMPLES.resolve("urban-coast"), "--out", folder);
        run("card", SAMPLES.resolve("urban-coast"), "--out", folder.resolve("plan.toml/card.pdf"));
        run("card", SAMPLE, "--out", SAMPLE.resolve("plan.toml"));
        run("relay", SAMPLE, "--out", SAMPLE.resolve("tiles"));
        run("walk", folder, "--out", folder);
        Path calibrated = file("calibrated.toml", planText() + "\n[calibration]\nfile = \"calibration.toml\"\n");
        run("walk", calibrated, "--out", folder);
        run("card", SAMPLE, "--out", Files.createSymbolicLink(folder.resolve("ring.pdf"), Path.of("ring.pdf")));
        Path pipe = folder.resolve("pipe.pdf");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        run("card", SAMPLE, "--out", pipe);
        Path busy = Files.createDirectory(folder.resolve("busy"));
        try (WorkMark first = WorkMark.take(busy.resolve(".walk.lock")).orElseThrow()) {
            run("walk", folder, "--out", busy);
            assertTrue(WorkMark.take(busy.resolve(".walk.lock")).isEmpty(), first + " is held");
        }
        Thread.currentThread().interrupt();
        run("reach", folder, "--no-area");
        assertTrue(Thread.interrupted(), "it is kept for whoever started the command");
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        OutputStream full = new OutputStream() {
            @Override
            public void write(int one) throws IOException {
                throw new IOException("No space left on device");
            }
        };
        String[] pattern = {"pattern", "--radiator", "monopole", "--frequency-mhz", "155"};
        assertEquals(
                1,
                CommandLineRunner.run(
                        pattern,
                        new PrintStream(full, false, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        window -> {}));
        said.add(err.toString(StandardCharsets.UTF_8));
        Path kept = file("kept.pdf", "kept");
        assertTrue(kept.toFile().setReadOnly());
        run("card", SAMPLE, "--out", kept);
        PlanFile mine = PlanFile.open(folder).withText(planText().replace("radius_km = 5", "radius_km = 6"));
        PlanFile.open(folder)
                .withText(planText().replace("radius_km = 5", "radius_km = 7"))
                .save();
        said.add(assertThrows(InputFault.class, mine::save).getMessage());
    }

    @Test
    void everyQuotedMessageIsGiven() throws Exception {
        provoke();
        List<String> quoted = Files.readAllLines(Path.of("docs/troubleshooting.md")).stream()
                .filter(line -> line.startsWith("| `"))
                .map(line -> line.substring(3, line.indexOf('`', 3)))
                .toList();
        List<String> unheard = quoted.stream()
                .filter(message -> said.stream()
                        .noneMatch(line -> pattern(message)
                                .matcher(line.replaceAll("\\s+", " "))
                                .find()))
                .toList();
        if (!unheard.isEmpty()) said.forEach(System.out::println);
        assertEquals(List.of(), unheard, "never said by the program");
        assertTrue(quoted.size() >= 30, quoted.size() + " messages are quoted");
    }

    /** An ellipsis stands for what differs from case to case. */
    private static Pattern pattern(String message) {
        return Pattern.compile(
                Arrays.stream(message.split("\u2026", -1)).map(Pattern::quote).collect(Collectors.joining(".*")));
    }
}
