package handreach.story;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.report.AssignFiles;
import handreach.report.BenchFiles;
import handreach.report.CardFiles;
import handreach.report.ReachFiles;
import handreach.report.RelayFiles;
import handreach.report.WalkFiles;
import handreach.report.WalkNextFiles;
import handreach.report.card.CardSize;
import handreach.report.file.FileBatch;
import handreach.report.file.WholeFile;
import handreach.study.AssignAnswer;
import handreach.study.AssignStudy;
import handreach.study.ReachAnswer;
import handreach.study.ReachOptions;
import handreach.study.ReachStudy;
import handreach.study.RelayAnswer;
import handreach.study.RelayStudy;
import handreach.study.Scene;
import handreach.study.WalkAnswer;
import handreach.study.WalkNextAnswer;
import handreach.study.WalkNextStudy;
import handreach.study.WalkStudy;
import handreach.walk.NextWalk;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A program is killed while it saves a plan and writes everything that any command writes: nothing is lost, nothing is half there, and
 * nothing is left after the next run. The killed program writes two answers in turn, so a mixture of both is known by its bytes; it has
 * them from a recording of what the commands write, and does nothing but write, so that it is killed while it does. How often is set by
 * {@code -Dhandreach.kills=N}.
 */
@Timeout(value = 3, unit = TimeUnit.HOURS)
class S17KillTest {
    private static final int KILLS = Integer.getInteger("handreach.kills", 6);
    /** Of the steps of two turns, plan and folders and files, one is waited for; the program is killed soon after it has begun. */
    private static final int MOST_STEPS = 18;

    private static final int LONGEST_MS = 60;
    private static final int TOLD_EVERY = 50;
    /** The next run is mostly that of a recording too, and every so often that of the commands. */
    private static final int REAL_RUN_AFTER = 25;

    /** Files of loadouts, which the second answer has less of. */
    private static final Pattern OF_LOADOUTS = Pattern.compile("(map|loss|odds|margin)-[a-z0-9-]+\\.(png|tif)");

    private static final Instant MADE = Instant.parse("2026-05-04T08:00:00Z");
    private static final List<String> RUNS = List.of("reach", "relay", "walk", "walk-next", "assign");

    @TempDir
    Path folder;

    @TempDir
    Path recorded;

    /** Two answers over one plan, reckoned once, and how all that is made of them is written. */
    private static final class Writer {
        private final Path out;
        private final ReachAnswer[] reach = new ReachAnswer[2];
        private final RelayAnswer relay;
        private final WalkAnswer walk;
        private final WalkNextAnswer next;
        private final AssignAnswer assign;
        private PlanFile plan;

        Writer(Path plan, Path out) {
            this.out = out;
            this.plan = PlanFile.open(plan);
            Scene scene = Scene.open(this.plan);
            for (int i = 0; i < 2; i++) {
                List<String> loadouts = i == 0 ? List.of() : List.of("factory at hip");
                ReachOptions wish = new ReachOptions(
                        true,
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.of(50),
                        loadouts);
                reach[i] = ReachStudy.run(scene, wish, Progress.SILENT);
            }
            relay = RelayStudy.run(scene, Progress.SILENT);
            walk = WalkStudy.run(scene, Progress.SILENT);
            next = WalkNextStudy.run(
                    scene, WalkNextAnswer.Decision.LOADOUT, NextWalk.Instrument.COPY, List.of(), 2, Progress.SILENT);
            assign = AssignStudy.run(scene, Progress.SILENT);
        }

        /** Everything once, of the first answer or the second. */
        void write(int turn) {
            plan = PlanFile.open(plan.file());
            plan = plan.withText(planText(plan.text(), turn)).save();
            ReachFiles.write(
                    reach[turn],
                    EnumSet.allOf(handreach.report.ReachPart.class),
                    Instant.EPOCH,
                    out.resolve("reach"),
                    Progress.SILENT);
            RelayFiles.write(relay, Instant.EPOCH, out.resolve("relay"));
            WalkFiles.write(
                    walk, Instant.EPOCH, out.resolve("walk"), WalkFiles.sources(plan, out.resolve("walk"), false));
            WalkNextFiles.write(next, out.resolve("next"), plan.sources());
            AssignFiles.write(assign, out.resolve("assign"));
            CardSize paper = turn == 0 ? CardSize.A4 : CardSize.LETTER;
            CardFiles.write(reach[0], Optional.of(relay), MADE, paper, false, out.resolve("card.pdf"));
            ReachFiles.writeReport(reach[turn], List.of(), out.resolve("report.html"));
            walk.scene()
                    .bench()
                    .ifPresent(bench -> BenchFiles.write(
                            BenchFiles.composer(bench, 1, List.of(), Optional.of(plan)),
                            out.resolve("bench.html"),
                            plan.sources()));
        }
    }

    private static String planText(String text, int turn) {
        return text.replaceFirst("# turn .*\n", "# turn " + turn + " and the rest of the line\n");
    }

    /** What {@link Writer} writes, from its bytes, by the same way to the disk. */
    private static final class Recording {
        private final Path out;
        private final List<Map<String, byte[]>> turns;
        private final Consumer<String> told;
        private PlanFile plan;

        /** @param told what is written next */
        Recording(Path plan, Path out, List<Map<String, byte[]>> turns, Consumer<String> told) {
            this.plan = PlanFile.open(plan);
            this.out = out;
            this.turns = turns;
            this.told = told;
        }

        void write(int turn) throws IOException {
            told.accept("plan");
            plan = PlanFile.open(plan.file());
            plan = plan.withText(planText(plan.text(), turn)).save();
            Map<String, byte[]> files = turns.get(turn);
            for (String what : RUNS) {
                told.accept(what);
                String dir = folderOf(what);
                FileBatch batch = new FileBatch(out.resolve(dir), what, plan.sources());
                JsonNode manifest = new ObjectMapper().readTree(files.get(dir + "/" + what + "-files.json"));
                for (JsonNode file : manifest.get("files")) {
                    String name = file.get("name").asText();
                    batch.add(name, to -> to.write(files.get(dir + "/" + name)));
                }
                if (what.equals("reach")) batch.replacesAll(OF_LOADOUTS);
                batch.write(Progress.SILENT);
            }
            for (Map.Entry<String, byte[]> file : files.entrySet())
                if (!file.getKey().contains("/")) {
                    told.accept(file.getKey());
                    WholeFile.write(out.resolve(file.getKey()), file.getValue(), plan.sources());
                }
        }
    }

    private static String folderOf(String what) {
        return what.equals("walk-next") ? "next" : what;
    }

    /** Writes without end, until it is killed. */
    static final class Endless {
        public static void main(String[] args) throws IOException {
            List<Map<String, byte[]>> turns = List.of(files(Path.of(args[2])), files(Path.of(args[3])));
            Recording recording = new Recording(Path.of(args[0]), Path.of(args[1]), turns, System.out::println);
            recording.write(1);
            System.out.println("ready");
            for (int turn = 0; ; turn = 1 - turn) recording.write(turn);
        }
    }

    private Path plan() throws IOException {
        Path sample = Path.of("elevation-samples/forest-hills").toAbsolutePath();
        Path plan = folder.resolve("plan.toml");
        Files.writeString(
                plan,
                "# turn 0 and the rest of the line\n"
                        + Files.readString(sample.resolve("plan.toml"))
                                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                                .replace("../invented-bench/", sample.resolveSibling("invented-bench") + "/")
                                .replace("radius_km = 5", "radius_km = 0.8")
                                .replace("bearing_step_deg = 5", "bearing_step_deg = 45"));
        for (String name : List.of("walk-reports.csv", "walk-track.gpx"))
            Files.copy(sample.resolve(name), folder.resolve(name));
        return plan;
    }

    private static Map<String, byte[]> files(Path out) throws IOException {
        Map<String, byte[]> all = new TreeMap<>();
        if (!Files.exists(out)) return all;
        try (Stream<Path> found = Files.walk(out)) {
            for (Path file : found.filter(Files::isRegularFile).toList())
                all.put(out.relativize(file).toString(), Files.readAllBytes(file));
        }
        return all;
    }

    private static boolean isHidden(String name) {
        return Path.of(name).getFileName().toString().startsWith(".");
    }

    @Test
    void aKilledProgramLosesNothingAndTheNextRunSweeps() throws Exception {
        Random random = new Random(20261129);
        Path plan = plan();
        String text = Files.readString(plan);
        Path out = folder.resolve("out");
        Writer ours = new Writer(plan, out);
        List<Map<String, byte[]>> whole = new ArrayList<>();
        for (int turn = 0; turn < 2; turn++) {
            ours.write(turn);
            whole.add(files(out));
            for (Map.Entry<String, byte[]> file : whole.get(turn).entrySet()) {
                Path kept = recorded.resolve(turn + "/" + file.getKey());
                Files.createDirectories(kept.getParent());
                Files.write(kept, file.getValue());
            }
        }
        Recording recording = new Recording(plan, out, whole, what -> {});
        Map<String, Integer> killedIn = new TreeMap<>();
        assertTrue(
                whole.get(0).size() > 30 && whole.get(1).size() < whole.get(0).size(),
                whole.get(0).keySet() + "");
        int left = 0;
        int cutOff = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            Process program = started(plan, out, recorded.resolve("0"), recorded.resolve("1"));
            try (BufferedReader said =
                    new BufferedReader(new InputStreamReader(program.getInputStream(), StandardCharsets.UTF_8))) {
                String last = said.readLine();
                while (!last.equals("ready")) last = said.readLine();
                for (int step = random.nextInt(MOST_STEPS); step > 0; step--) last = said.readLine();
                TimeUnit.MILLISECONDS.sleep(random.nextInt(LONGEST_MS));
                program.toHandle().destroyForcibly();
                assertTrue(program.waitFor(60, TimeUnit.SECONDS));
                for (String line = said.readLine(); line != null; line = said.readLine()) last = line;
                killedIn.merge(last, 1, Integer::sum);
            }
            String where = "kill " + kill;
            Map<String, byte[]> found = files(out);
            if (found.keySet().stream().anyMatch(S17KillTest::isHidden)) left++;
            found.keySet().removeIf(S17KillTest::isHidden);
            if (assertWhole(where, found, whole)) cutOff++;
            assertPlan(where, plan, text);

            int turn = kill % 2;
            if (kill % REAL_RUN_AFTER == 0) ours.write(turn);
            else recording.write(turn);
            Map<String, byte[]> after = files(out);
            assertEquals(whole.get(turn).keySet(), after.keySet(), where + ": something is left, or missing");
            whole.get(turn).forEach((name, bytes) -> assertArrayEquals(bytes, after.get(name), where + ": " + name));
            try (Stream<Path> beside = Files.list(folder)) {
                assertEquals(
                        List.of(
                                ".plan.toml.lock",
                                "out",
                                "plan.toml",
                                "plan.toml.bak",
                                "walk-reports.csv",
                                "walk-track.gpx"),
                        beside.map(file -> file.getFileName().toString())
                                .sorted()
                                .toList());
            }
            if ((kill + 1) % TOLD_EVERY == 0 || kill + 1 == KILLS) tell(kill + 1, left, cutOff, killedIn);
        }
    }

    private static void tell(int kills, int left, int cutOff, Map<String, Integer> killedIn) {
        System.out.println(kills + " kills while everything is written: " + left + " left something hidden, " + cutOff
                + " a folder that says it is not complete; nothing lost, nothing half, nothing left after the next run; by what was being written: "
                + killedIn);
    }

    /**
     * Every file is that of one of the answers, and a folder whose list says complete holds one answer alone; says whether a list says that
     * its folder is not complete.
     */
    private static boolean assertWhole(String where, Map<String, byte[]> found, List<Map<String, byte[]>> whole)
            throws IOException {
        boolean isCutOff = false;
        for (Map.Entry<String, byte[]> file : found.entrySet()) {
            if (file.getKey().endsWith("-files.json")) continue;
            assertTrue(
                    whole.stream().anyMatch(one -> Arrays.equals(one.get(file.getKey()), file.getValue())),
                    where + ": " + file.getKey() + " is of neither answer");
        }
        for (String what : RUNS) {
            String dir = folderOf(what) + "/";
            byte[] list = found.get(dir + what + "-files.json");
            assertTrue(list != null, where + ": " + what + " has lost its list");
            JsonNode manifest = new ObjectMapper().readTree(list);
            if (!manifest.get("complete").asBoolean()) {
                isCutOff = true;
                continue;
            }
            Map<String, byte[]> said = whole.stream()
                    .filter(one -> Arrays.equals(one.get(dir + what + "-files.json"), list))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError(where + ": the list of " + what + " is of neither answer"));
            said.forEach((name, bytes) -> {
                if (name.startsWith(dir)) assertArrayEquals(bytes, found.get(name), where + ": " + name);
            });
        }
        return isCutOff;
    }

    private static void assertPlan(String where, Path plan, String text) throws IOException {
        for (Path file : List.of(plan, plan.resolveSibling("plan.toml.bak"))) {
            String now = Files.readString(file);
            assertTrue(
                    now.equals(planText(text, 0)) || now.equals(planText(text, 1)),
                    where + ": " + file + " is no plan");
        }
        PlanFile.open(plan);
    }

    private static Process started(Path... paths) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Endless.class.getName()));
        for (Path path : paths) command.add(path.toString());
        return new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }
}
