package handreach.story;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.input.WorkMark;
import handreach.plan.Places;
import handreach.plan.PlanFile;
import handreach.propagation.LossModels;
import handreach.reach.Progress;
import handreach.report.AssignFiles;
import handreach.report.AtlasFolder;
import handreach.report.BenchFiles;
import handreach.report.CardFiles;
import handreach.report.PathComposer;
import handreach.report.ReachFiles;
import handreach.report.RelayFiles;
import handreach.report.WalkFiles;
import handreach.report.WalkNextFiles;
import handreach.report.card.CardSize;
import handreach.report.draw.Svg;
import handreach.report.file.AnswerFile;
import handreach.report.file.FileBatch;
import handreach.study.AssignAnswer;
import handreach.study.AssignStudy;
import handreach.study.AtlasLayer;
import handreach.study.AtlasOptions;
import handreach.study.AtlasStudy;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
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
 * them from a recording of what the commands write, and does nothing but write, so that it is killed while it does. Every tenth time it
 * is instead one answer from the start of the program to its end, killed at a moment drawn from the whole of that or soon after. How
 * often is set by {@code -Dhandreach.kills=N}, by which lots by {@code -Dhandreach.kills.seed=N}, and an archive of classes for a quicker
 * start by {@code -Dhandreach.kills.classes=FILE}.
 */
@Timeout(value = 3, unit = TimeUnit.HOURS)
class S17KillTest {
    private static final int KILLS = Integer.getInteger("handreach.kills", 6);
    private static final String CLASSES = System.getProperty("handreach.kills.classes");
    /** Of the steps of two turns, plan and folders and files, one is waited for; the program is killed soon after it has begun. */
    private static final int MOST_STEPS = 22;

    private static final int LONGEST_MS = 60;
    private static final int TOLD_EVERY = 50;
    /** The next run is mostly that of a recording too, and every so often that of the commands. */
    private static final int REAL_RUN_AFTER = 25;

    /** One in so many is killed at any moment of its life. */
    private static final int WHOLE_LIFE_EACH = 10;
    /** How long a whole life is thought to be, before one was over and after one was not over by then. */
    private static final int FIRST_LIFE_MS = 4000;

    private static final double LONGER = 1.15;

    /** Files of loadouts, which the second answer has less of. */
    private static final Pattern OF_LOADOUTS = Pattern.compile("(map|loss|odds|margin)-[a-z0-9-]+\\.(png|tif)");

    /** Likewise layers of an atlas. */
    private static final Pattern OF_LAYERS =
            Pattern.compile("(heard-by|talk)-[a-z0-9-]+\\.tif|shadow\\.tif(\\.aux\\.xml)?|relays\\.(geojson|gpx)");

    private static final Instant MADE = Instant.parse("2026-05-04T08:00:00Z");
    private static final List<String> RUNS = List.of("reach", "relay", "walk", "walk-next", "assign", "atlas");
    /** Files by themselves, and the command that writes each. */
    private static final Map<String, String> SINGLES = new TreeMap<>(
            Map.of("card", "card.pdf", "report", "report.html", "bench", "bench.html", "path", "path.svg"));

    private static final String BLOCKS = "atlas/positions/";

    @TempDir
    Path folder;

    @TempDir
    Path recorded;

    /** Two answers over one plan, each reckoned when it is first wanted, and how all that is made of them is written. */
    private static final class Writer {
        private final Path out;
        private final Scene scene;
        private final PlanFile atlasPlan;
        private final ReachAnswer[] reach = new ReachAnswer[2];
        private Optional<RelayAnswer> relay = Optional.empty();
        private Optional<WalkAnswer> walk = Optional.empty();
        private Optional<WalkNextAnswer> next = Optional.empty();
        private Optional<AssignAnswer> assign = Optional.empty();
        private PlanFile plan;

        /** @param atlas a plan that stays as it is, since an atlas is of one question */
        Writer(Path plan, Path out, Path atlas) {
            this.out = out;
            this.plan = PlanFile.open(plan);
            scene = Scene.open(this.plan);
            atlasPlan = PlanFile.open(atlas);
        }

        /** Everything once, of the first answer or the second. */
        void write(int turn) throws IOException {
            write("plan", turn);
            for (String what : RUNS) write(what, turn);
            for (String what : SINGLES.keySet()) write(what, turn);
        }

        /** What one command writes, of the first answer or the second. */
        void write(String what, int turn) throws IOException {
            Path to = out.resolve(SINGLES.getOrDefault(what, folderOf(what)));
            switch (what) {
                case "plan" -> {
                    plan = PlanFile.open(plan.file());
                    plan = plan.withText(planText(plan.text(), turn)).save();
                }
                case "reach" ->
                    ReachFiles.write(
                            reach(turn),
                            EnumSet.allOf(handreach.report.ReachPart.class),
                            Instant.EPOCH,
                            to,
                            Progress.SILENT);
                case "relay" -> RelayFiles.write(relay(), Instant.EPOCH, to);
                case "walk" -> {
                    if (walk.isEmpty()) walk = Optional.of(WalkStudy.run(scene, Progress.SILENT));
                    WalkFiles.write(walk.get(), Instant.EPOCH, to, WalkFiles.sources(plan, to, false));
                }
                case "walk-next" -> {
                    if (next.isEmpty())
                        next = Optional.of(WalkNextStudy.run(
                                scene,
                                WalkNextAnswer.Decision.LOADOUT,
                                NextWalk.Instrument.COPY,
                                List.of(),
                                2,
                                Progress.SILENT));
                    WalkNextFiles.write(next.get(), to, plan.sources());
                }
                case "assign" -> {
                    if (assign.isEmpty()) assign = Optional.of(AssignStudy.run(scene, Progress.SILENT));
                    AssignFiles.write(assign.get(), to);
                }
                case "atlas" -> atlas(turn, to);
                case "card" ->
                    CardFiles.write(
                            reach(0), Optional.of(relay()), MADE, turn == 0 ? CardSize.A4 : CardSize.LETTER, false, to);
                case "report" -> ReachFiles.writeReport(reach(turn), List.of(), to);
                case "bench" ->
                    BenchFiles.write(
                            BenchFiles.composer(scene.bench().orElseThrow(), 1, List.of(), Optional.of(plan)),
                            to,
                            plan.sources());
                case "path" -> AnswerFile.write(to, Svg.file(PathComposer.figure(path(turn))), plan.sources());
                default -> throw new IllegalArgumentException(what);
            }
        }

        private ReachAnswer reach(int turn) {
            if (reach[turn] == null)
                reach[turn] = ReachStudy.run(
                        scene,
                        new ReachOptions(
                                true,
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.of(50),
                                turn == 0 ? List.of() : List.of("factory at hip")),
                        Progress.SILENT);
            return reach[turn];
        }

        private RelayAnswer relay() {
            if (relay.isEmpty()) relay = Optional.of(RelayStudy.run(scene, Progress.SILENT));
            return relay.get();
        }

        private PathAnswer path(int turn) {
            List<Places.PositionEntry> ends = scene.plan().places().positions();
            return PathStudy.between(
                    scene,
                    ends.get(turn).at(),
                    scene.controlLoadout(),
                    ends.get(turn + 1).at(),
                    scene.controlLoadout(),
                    List.of(LossModels.HANDHELD));
        }

        /** Goes on with the blocks that are there, as the command does. */
        private void atlas(int turn, Path to) throws IOException {
            AtlasStudy study = AtlasStudy.of(
                    Scene.open(atlasPlan),
                    new AtlasOptions(
                            100,
                            OptionalDouble.empty(),
                            Optional.empty(),
                            turn == 0 ? EnumSet.allOf(AtlasLayer.class) : EnumSet.of(AtlasLayer.REACH),
                            turn == 0 ? 2 : 0,
                            OptionalDouble.empty()));
            try (AtlasFolder atlas = AtlasFolder.open(study, to)) {
                assertEquals(List.of(), study.run(atlas.todo(), 2, atlas::put, Progress.SILENT));
                atlas.write(atlas.answer(List.of()), Instant.EPOCH, Progress.SILENT);
            }
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
                if (what.equals("atlas")) blocks(files);
                FileBatch batch = new FileBatch(out.resolve(dir), what, plan.sources());
                JsonNode manifest = new ObjectMapper().readTree(files.get(dir + "/" + what + "-files.json"));
                for (JsonNode file : manifest.get("files")) {
                    String name = file.get("name").asText();
                    batch.add(name, to -> to.write(files.get(dir + "/" + name)));
                }
                if (what.equals("reach")) batch.replacesAll(OF_LOADOUTS);
                if (what.equals("atlas")) batch.replacesAll(OF_LAYERS);
                batch.write(Progress.SILENT);
            }
            for (Map.Entry<String, byte[]> file : files.entrySet())
                if (!file.getKey().contains("/")) {
                    told.accept(file.getKey());
                    AnswerFile.write(out.resolve(file.getKey()), file.getValue(), plan.sources());
                }
        }

        /** The blocks of an atlas, one after the other, as they are reckoned. */
        private void blocks(Map<String, byte[]> files) throws IOException {
            removeBlocks(out);
            try (WorkMark mark =
                    WorkMark.take(out.resolve("atlas/.atlas-run.lock")).orElseThrow()) {
                for (Map.Entry<String, byte[]> file : files.entrySet())
                    if (file.getKey().startsWith(BLOCKS))
                        AnswerFile.write(out.resolve(file.getKey()), file.getValue(), plan.sources());
            }
        }
    }

    /** Takes the blocks of an atlas away, so that it has to be reckoned anew. */
    private static void removeBlocks(Path out) throws IOException {
        if (!Files.exists(out.resolve(BLOCKS))) return;
        try (Stream<Path> found = Files.list(out.resolve(BLOCKS))) {
            for (Path file : found.toList()) if (!isHidden(file.toString())) Files.delete(file);
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

    /** One command's answer, from the start of the program to its end. */
    static final class WholeLife {
        public static void main(String[] args) throws IOException {
            Path out = Path.of(args[1]);
            int turn = Integer.parseInt(args[4]);
            if (args[3].equals("atlas")) removeBlocks(out);
            new Writer(Path.of(args[0]), out, Path.of(args[2])).write(args[3], turn);
            System.out.println("done");
        }
    }

    /** Kills of whole lives. */
    private final class Lives {
        private final List<String> whats = new ArrayList<>(RUNS);
        private final Map<String, Long> length = new TreeMap<>();
        private final Map<String, Integer> killed = new TreeMap<>();
        private int ended;

        Lives() {
            whats.addAll(SINGLES.keySet());
            whats.add("plan");
        }

        /** Starts one command and kills it at some moment. */
        void kill(int number, Random random, Path plan, Path atlas, Path out) throws Exception {
            String what = whats.get(number % whats.size());
            int turn = random.nextInt(2);
            double share = random.nextDouble() * LONGER;
            long usualMs = length.getOrDefault(what, (long) FIRST_LIFE_MS);
            long began = System.nanoTime();
            Process program = started(
                    WholeLife.class, plan.toString(), out.toString(), atlas.toString(), what, String.valueOf(turn));
            boolean isOver = program.waitFor((long) (usualMs * share), TimeUnit.MILLISECONDS);
            program.toHandle().destroyForcibly();
            assertTrue(program.waitFor(60, TimeUnit.SECONDS));
            if (isOver) {
                assertEquals(0, program.exitValue(), what);
                length.put(what, TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began));
                ended++;
            } else {
                killed.merge(what, 1, Integer::sum);
                if (share > 1) length.put(what, (long) (usualMs * LONGER));
            }
        }

        @Override
        public String toString() {
            return "killed at any moment of a whole life " + killed + ", " + ended + " were over";
        }
    }

    private static Path plan(Path folder) throws IOException {
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
        Random random = new Random(Long.getLong("handreach.kills.seed", 20261129));
        Path plan = plan(folder);
        Path atlas = plan(Files.createDirectory(recorded.resolve("atlas")));
        String text = Files.readString(plan);
        Path out = folder.resolve("out");
        Writer ours = new Writer(plan, out, atlas);
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
        Lives lives = new Lives();
        assertTrue(
                whole.get(0).size() > 30 && whole.get(1).size() < whole.get(0).size(),
                whole.get(0).keySet() + "");
        int left = 0;
        int cutOff = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            if (kill % WHOLE_LIFE_EACH == WHOLE_LIFE_EACH / 2)
                lives.kill(kill / WHOLE_LIFE_EACH, random, plan, atlas, out);
            else killedIn.merge(killed(random, plan, out), 1, Integer::sum);
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
            if ((kill + 1) % TOLD_EVERY == 0 || kill + 1 == KILLS)
                tell(kill + 1, left, cutOff, killedIn + "; " + lives);
        }
    }

    /** Kills a program while it writes without end, and says what it was writing. */
    private String killed(Random random, Path plan, Path out) throws Exception {
        Process program = started(
                Endless.class,
                plan.toString(),
                out.toString(),
                recorded.resolve("0").toString(),
                recorded.resolve("1").toString());
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(program.getInputStream(), StandardCharsets.UTF_8))) {
            String last = said.readLine();
            while (!last.equals("ready")) last = said.readLine();
            for (int step = random.nextInt(MOST_STEPS); step > 0; step--) last = said.readLine();
            TimeUnit.MILLISECONDS.sleep(random.nextInt(LONGEST_MS));
            program.toHandle().destroyForcibly();
            assertTrue(program.waitFor(60, TimeUnit.SECONDS));
            for (String line = said.readLine(); line != null; line = said.readLine()) last = line;
            return last;
        }
    }

    private static void tell(int kills, int left, int cutOff, String what) {
        System.out.println(kills + " kills while everything is written: " + left + " left something hidden, " + cutOff
                + " a folder that says it is not complete; nothing lost, nothing half, nothing left after the next run; by what was being written: "
                + what);
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
                if (name.startsWith(dir) && !name.startsWith(BLOCKS))
                    assertArrayEquals(bytes, found.get(name), where + ": " + name);
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

    private static Process started(Class<?> program, String... args) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                program.getName()));
        if (CLASSES != null) command.add(1, "-XX:SharedArchiveFile=" + CLASSES);
        command.addAll(List.of(args));
        return new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }
}
