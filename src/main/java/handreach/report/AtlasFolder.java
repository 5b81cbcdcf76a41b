package handreach.report;

import handreach.atlas.AtlasBlock;
import handreach.atlas.PairsOnce;
import handreach.atlas.PositionFigures;
import handreach.atlas.spread.GeoParquet;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.input.Sources;
import handreach.input.Target;
import handreach.input.WorkMark;
import handreach.loadout.Loadout;
import handreach.reach.Progress;
import handreach.report.file.AnswerFile;
import handreach.report.file.FolderResult;
import handreach.report.file.Json;
import handreach.study.AtlasAnswer;
import handreach.study.AtlasStudy;
import handreach.study.AtlasTrial;
import handreach.study.BlockFault;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/**
 * The folder of an atlas: a file for each block, written as soon as the block is reckoned, so that a run can be stopped at any moment
 * and goes on where it was. One question a folder, and one run at a time.
 */
public final class AtlasFolder implements AutoCloseable {
    /** Where the blocks lie. */
    static final String POSITIONS = "positions";

    private static final String COLUMNS = "geoparquet";
    /** Of the lines of positions; a folder with others is refused. */
    private static final String FORMAT = "format 2, pairs ";

    private final AtlasStudy study;
    private final Path folder;
    private final Sources sources;
    private final List<String> loadouts;
    private final String question;
    private final WorkMark mark;
    /** Blocks that are there, with the digest of each. */
    private final Map<Integer, AtlasBlockFile.Content> done = new ConcurrentHashMap<>();

    private AtlasFolder(AtlasStudy study, Path folder, Sources sources, String question, WorkMark mark) {
        this.study = study;
        this.folder = folder;
        this.sources = sources;
        this.loadouts = study.scene().loadouts().stream().map(Loadout::name).toList();
        this.question = question;
        this.mark = mark;
    }

    /** Opens or makes the folder, and reads which blocks are done. */
    public static AtlasFolder open(AtlasStudy study, Path folder) {
        Sources sources = study.scene()
                .file()
                .sources()
                .and(study.wish().region().map(List::of).orElse(List.of()));
        Target.lookFolder(folder, List.of(), sources);
        String question = question(study, sources);
        try {
            Files.createDirectories(folder);
            WorkMark mark = WorkMark.take(folder.resolve(".atlas-run.lock"))
                    .orElseThrow(() -> new InputFault(
                            folder.toString(),
                            0,
                            "another run of atlas is working in this folder. Nothing was changed. Wait until it is done, or"
                                    + " name another folder."));
            return begun(new AtlasFolder(study, folder, sources, question, mark));
        } catch (IOException e) {
            throw new InputFault(
                    folder.toString(),
                    0,
                    "cannot be written into (" + e.getMessage() + "). Check the rights and the free space.");
        }
    }

    private static AtlasFolder begun(AtlasFolder atlas) throws IOException {
        boolean isOurs = false;
        try {
            atlas.refuseOther();
            Files.createDirectories(atlas.folder.resolve(POSITIONS));
            if (!Files.exists(atlas.summary()))
                AnswerFile.write(
                        atlas.summary(), Json.text(AtlasJson.begun(atlas.study, atlas.question)), atlas.sources);
            for (AtlasBlock block : atlas.study.positions().blocks())
                AtlasBlockFile.read(atlas.file(block), atlas.expected(block))
                        .filter(atlas::isOfItsForm)
                        .ifPresent(content -> atlas.done.put(block.number(), content));
            isOurs = true;
            return atlas;
        } finally {
            if (!isOurs) atlas.mark.close();
        }
    }

    private void refuseOther() {
        if (!Files.exists(summary())) return;
        Optional<String> there = AtlasJson.questionIn(SourceText.read(summary()).text());
        if (there.filter(question::equals).isPresent()) return;
        throw new InputFault(
                folder.toString(),
                0,
                (there.isEmpty()
                                ? "has an atlas.json that is not of this program."
                                : "holds the atlas of another question: the plan, a file it names, the tiles, the grid or the version of the"
                                        + " program is another.")
                        + " Nothing was changed. Name another folder, or take this one away.");
    }

    /** All that the rows depend on; layers and relays are worked out of them and may be asked anew. */
    private static String question(AtlasStudy study, Sources sources) {
        var asked = study.question();
        return AtlasBlockFile.digest(String.join(
                "\n",
                sources.digest(),
                asked.box().toString(),
                asked.gridM() + " " + asked.targetsM(),
                asked.reach().radiusM() + " " + asked.reach().bearingStepDeg() + " "
                        + asked.reach().odds(),
                study.scene().model().name(),
                FORMAT + (study.pairsAreOnce() ? "once" : "from both ends"),
                Program.name()));
    }

    private AtlasBlockFile.Expected expected(AtlasBlock block) {
        return new AtlasBlockFile.Expected(
                question,
                Optional.of(study.positions().cellsOf(block)),
                study.positions().cells(),
                study.targets().cells(),
                loadouts.size());
    }

    /** Whether pairs are told as this atlas reckons them. */
    private boolean isOfItsForm(AtlasBlockFile.Content content) {
        return content.rows().stream()
                .filter(PositionFigures::isKnown)
                .allMatch(row -> row.isOfLater() == study.pairsAreOnce());
    }

    private Path summary() {
        return folder.resolve(AtlasFiles.SUMMARY);
    }

    private Path file(AtlasBlock block) {
        return file(POSITIONS, block, "jsonl");
    }

    private Path file(String folderName, AtlasBlock block, String ending) {
        return folder.resolve(folderName).resolve(String.format(Locale.ROOT, "block-%06d.%s", block.number(), ending));
    }

    /** Writes a block of the answer as columns, for readers of tables. */
    void putColumns(AtlasBlock block) {
        AtlasBlockFile.Content content = done.get(block.number());
        columns(() -> AnswerFile.write(
                file(COLUMNS, block, "parquet"),
                out -> GeoParquet.write(out, loadouts, content.rows(), content.digest()),
                sources));
    }

    /** Tells at once, and not after hours, that columns cannot be written here. */
    void requireColumns() {
        columns(() -> {
            try {
                GeoParquet.write(OutputStream.nullOutputStream(), loadouts, List.of(), "");
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private static void columns(Runnable written) {
        try {
            written.run();
        } catch (LinkageError otherRelease) {
            throw new InputFault(
                    "--cluster",
                    0,
                    "the engine's release lacks what columns are written with (" + otherRelease.getMessage()
                            + "). Take the release that docs/atlas.md names. What is done is kept: the same command goes on from there.");
        }
    }

    /** Blocks of the answer that are not there as columns, or as others than they are now: before a block came that had failed. */
    List<AtlasBlock> withoutColumns() {
        return study.positions().blocks().stream()
                .filter(block -> done.containsKey(block.number()))
                .filter(block -> !GeoParquet.isOf(
                        file(COLUMNS, block, "parquet"),
                        done.get(block.number()).digest()))
                .toList();
    }

    /** What its workers are to be told of the question, with the digest of what travels beside it. */
    AtlasErrand errand(String shipped) {
        var wish = study.wish();
        return new AtlasErrand(
                question,
                loadouts,
                wish.gridM(),
                wish.targetsM().orElse(wish.gridM()),
                wish.region().isPresent(),
                shipped);
    }

    AtlasStudy study() {
        return study;
    }

    /** Blocks that are still to be reckoned. */
    public List<AtlasBlock> todo() {
        return study.positions().blocks().stream()
                .filter(block -> !done.containsKey(block.number()))
                .toList();
    }

    /** Keeps a block that was reckoned elsewhere, as its worker wrote it. */
    void put(AtlasBlock block, byte[] text) {
        AtlasBlockFile.Content content = AtlasBlockFile.content(
                        new String(text, StandardCharsets.UTF_8), expected(block))
                .filter(this::isOfItsForm)
                .orElseThrow(() -> new IllegalStateException("block " + block.number() + " came back damaged"));
        AnswerFile.write(file(block), text, sources);
        done.put(block.number(), content);
    }

    /** Keeps a block. */
    public void put(AtlasBlock block, List<PositionFigures> rows) {
        AnswerFile.write(file(block), AtlasBlockFile.text(question, loadouts, rows), sources);
        done.put(block.number(), AtlasBlockFile.content(rows));
    }

    /** What the rest will cost, in a sentence or two. */
    public String cost(AtlasTrial trial, int cores) {
        int positions = todo().stream()
                .mapToInt(block -> study.positions().cellsOf(block).size())
                .sum();
        long known = trial.rows().stream().filter(PositionFigures::isKnown).count();
        double bytes = AtlasBlockFile.text(question, loadouts, trial.rows()).length()
                / (double) Math.max(1, known)
                * positions;
        double seconds = trial.secondsEach() * positions;
        return String.format(
                Locale.ROOT,
                "%d positions in %d %s: about %s core-hours by a trial of %d positions, %s here on %d %s, and %s on the disk."
                        + " Later positions are mostly quicker than the tried ones.",
                positions,
                todo().size(),
                todo().size() == 1 ? "block" : "blocks",
                short2(seconds / 3600),
                trial.rows().size(),
                minutes(seconds / cores),
                cores,
                cores == 1 ? "core" : "cores",
                bytes < 1e6 ? "less than 1 MB" : String.format(Locale.ROOT, "%.0f MB", bytes / 1e6));
    }

    private static String short2(double hours) {
        return String.format(Locale.ROOT, hours < 0.1 ? "%.3f" : hours < 10 ? "%.1f" : "%.0f", hours);
    }

    private static String minutes(double seconds) {
        if (seconds < 60) return "less than a minute";
        if (seconds < 90) return "about a minute";
        if (seconds < 5400) return "some " + Math.round(seconds / 60) + " minutes";
        return String.format(Locale.ROOT, "some %.1f hours", seconds / 3600);
    }

    /** All that is there, made whole and laid over one another; no block is put after that. */
    public AtlasAnswer answer(List<BlockFault> faults) {
        List<PositionFigures> rows = done.values().stream()
                .flatMap(content -> content.rows().stream())
                .sorted(Comparator.comparingInt(PositionFigures::cell))
                .collect(Collectors.toCollection(ArrayList::new));
        if (study.pairsAreOnce()) {
            // each row goes as its whole comes: there is room for all of them once
            done.replaceAll((number, content) -> new AtlasBlockFile.Content(List.of(), ""));
            PairsOnce.complete(study.positions().cells(), rows);
            PositionFigures[] byCell =
                    new PositionFigures[study.positions().cells().count()];
            for (PositionFigures row : rows) byCell[row.cell()] = row;
            for (AtlasBlock block : study.positions().blocks())
                done.computeIfPresent(
                        block.number(),
                        (number, gone) -> AtlasBlockFile.content(study.positions().cellsOf(block).stream()
                                .map(cell -> byCell[cell])
                                .toList()));
        }
        return AtlasAnswer.of(study, rows, faults);
    }

    /** The answer as one object for {@code --json} and for the folder. */
    public Object json(AtlasAnswer answer) {
        return summary(answer);
    }

    private AtlasJson summary(AtlasAnswer answer) {
        return AtlasJson.of(answer, question, done.size(), digest());
    }

    /** The same digest for the same rows, whoever reckoned them and in what order. */
    private String digest() {
        return AtlasBlockFile.digest(done.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(one -> one.getKey() + " " + one.getValue().digest())
                .collect(Collectors.joining("\n")));
    }

    /** Writes what follows from the blocks beside them. */
    public FolderResult write(AtlasAnswer answer, Instant made, Progress progress) {
        return new AtlasFiles(answer, summary(answer), made).write(folder, sources, progress);
    }

    @Override
    public void close() throws IOException {
        mark.close();
    }
}
