package handreach.report;

import handreach.atlas.AtlasQuestion;
import handreach.atlas.HeardBy;
import handreach.atlas.PairsOnce;
import handreach.atlas.PositionFigures;
import handreach.input.InputFault;
import handreach.input.Memory;
import handreach.input.SourceText;
import handreach.reach.CellGrid;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * An atlas that lies in a folder, to be looked at on a map: read from its summary and its blocks alone, without the plan that it was made
 * from. Blocks that are not there, not whole or of another question are left out and counted. Immutable.
 */
public final class AtlasSight {
    /** No loadout does. */
    public static final int NOBODY = -1;
    /** Outside the region, or unknown. */
    public static final int UNKNOWN = -2;

    /** Text of a block, its lines and what they become. */
    private static final double MEMORY_PER_BYTE = 6;

    private static final long MOST_BYTES = 64L << 30;

    private final AtlasJson.Read summary;
    private final List<String> loadouts;
    /** Asked for at every cell of a map. */
    private final List<Integer> byBurden;

    private final CellGrid positions;
    private final CellGrid targets;
    private final PositionFigures[] byCell;
    private final List<HeardBy> heardBy;
    private final int count;
    private final int missing;

    private AtlasSight(AtlasJson.Read summary, List<String> loadouts, List<PositionFigures> rows, int missing) {
        this.summary = summary;
        this.loadouts = List.copyOf(loadouts);
        this.byBurden = summary.byBurden().stream().map(loadouts::indexOf).toList();
        this.positions = summary.asked().positions();
        this.targets = summary.asked().targets();
        this.byCell = new PositionFigures[positions.count()];
        for (PositionFigures row : rows) byCell[row.cell()] = row;
        this.heardBy = IntStream.range(0, loadouts.size())
                .mapToObj(loadout -> HeardBy.of(targets, rows, loadout))
                .toList();
        this.count = rows.size();
        this.missing = missing;
    }

    /** Whether a folder is an atlas by its summary. */
    public static boolean isOne(Path folder) {
        return Files.isRegularFile(folder.resolve(AtlasFiles.SUMMARY))
                && Files.isDirectory(folder.resolve(AtlasFolder.POSITIONS));
    }

    /** Reads the folder; a fault in one line where it is no atlas, or where no block of it can be read. */
    public static AtlasSight read(Path folder) {
        Path file = folder.resolve(AtlasFiles.SUMMARY);
        if (!isOne(folder))
            throw new InputFault(
                    folder.toString(),
                    0,
                    "is no folder of an atlas: it has no " + AtlasFiles.SUMMARY + " with " + AtlasFolder.POSITIONS
                            + " beside it. Choose the folder that was given to the atlas command as --out.");
        AtlasJson.Read summary = AtlasJson.Read.of(SourceText.read(file).text())
                .orElseThrow(
                        () -> new InputFault(
                                file.toString(),
                                0,
                                "is no summary that this version of the program can show. Run the same atlas command again to write it anew."));
        List<Path> blocks = blocks(folder.resolve(AtlasFolder.POSITIONS));
        requireRoom(folder, blocks);
        List<String> loadouts = blocks.stream()
                .flatMap(block -> AtlasBlockFile.loadouts(block, summary.question()).stream())
                .findFirst()
                .filter(names -> names.containsAll(summary.byBurden()))
                .orElseThrow(() -> noBlock(folder));
        AtlasQuestion asked = summary.asked();
        AtlasBlockFile.Expected any = new AtlasBlockFile.Expected(
                summary.question(), Optional.empty(), asked.positions(), asked.targets(), loadouts.size());
        List<PositionFigures> rows = new ArrayList<>();
        int read = 0;
        for (Path block : blocks) {
            Optional<AtlasBlockFile.Content> content = AtlasBlockFile.read(block, any);
            if (content.isEmpty()) continue;
            read++;
            rows.addAll(content.get().rows());
        }
        if (read == 0) throw noBlock(folder);
        rows.sort(Comparator.comparingInt(PositionFigures::cell));
        PairsOnce.complete(asked.positions(), rows);
        return new AtlasSight(summary, loadouts, rows, Math.max(0, summary.blocks() - read));
    }

    private static InputFault noBlock(Path folder) {
        return new InputFault(
                folder.toString(),
                0,
                "holds no whole block of positions yet. Run the same atlas command again; it goes on from there.");
    }

    private static List<Path> blocks(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".jsonl"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new InputFault(folder.toString(), 0, "cannot be read (" + SourceText.reason(e) + ").");
        }
    }

    private static void requireRoom(Path folder, List<Path> blocks) {
        long bytes = 0;
        for (Path block : blocks) bytes += block.toFile().length();
        long most = Memory.most(MOST_BYTES, MEMORY_PER_BYTE);
        if (bytes > most)
            throw new InputFault(
                    folder.toString(),
                    0,
                    "holds " + bytes / 1_000_000 + " MB of positions, at most " + most / 1_000_000 + " MB fit."
                            + Memory.advice(most, MOST_BYTES, MEMORY_PER_BYTE));
    }

    /** Title of the plan it was made from. */
    public String title() {
        return summary.title();
    }

    /** Names of its loadouts. */
    public List<String> loadouts() {
        return loadouts;
    }

    /** Numbers of the loadouts from the least burdensome up. */
    public List<Integer> byBurden() {
        return byBurden;
    }

    public CellGrid positions() {
        return positions;
    }

    public CellGrid targets() {
        return targets;
    }

    /** How far was looked from each position, m. */
    public double radiusM() {
        return summary.asked().reach().radiusM();
    }

    /** Median reach from which a loadout serves, m. */
    public double servesM() {
        return summary.asked().reach().servesM();
    }

    double targetsM() {
        return summary.asked().targetsM();
    }

    /** Positions that were read. */
    public int count() {
        return count;
    }

    /** Blocks that are not there or not whole. */
    public int missing() {
        return missing;
    }

    /** The figures at a cell of the positions' grid, where somebody could stand. */
    Optional<PositionFigures> row(int cell) {
        return cell < 0 ? Optional.empty() : Optional.ofNullable(byCell[cell]).filter(PositionFigures::isKnown);
    }

    /** Median reach of a loadout at a cell, m; empty where nothing is known. */
    public OptionalDouble medianM(int cell, int loadout) {
        return row(cell)
                .map(row ->
                        OptionalDouble.of(row.loadouts().get(loadout).medianM().value()))
                .orElse(OptionalDouble.empty());
    }

    /** The least loadout that serves at a cell; {@link #NOBODY} or {@link #UNKNOWN}. */
    public int leastServing(int cell) {
        return row(cell).map(row -> row.least(byBurden, servesM())).orElse(UNKNOWN);
    }

    /** By how many positions a target is heard with a loadout; {@link #UNKNOWN} where no position of the region is near it. */
    public int heardBy(int target, int loadout) {
        return isAsked(target, loadout) ? heardBy.get(loadout).at(target) : UNKNOWN;
    }

    /** The least loadout with which a target is heard by anybody; {@link #NOBODY} or {@link #UNKNOWN}. */
    public int leastHeard(int target) {
        if (byBurden.stream().noneMatch(loadout -> isAsked(target, loadout))) return UNKNOWN;
        return byBurden.stream()
                .filter(loadout -> heardBy.get(loadout).at(target) > 0)
                .findFirst()
                .orElse(NOBODY);
    }

    /** Where targets lie between positions their region is that of the position in whose cell they are. */
    private boolean isAsked(int target, int loadout) {
        return heardBy.get(loadout).at(target) > 0
                || row(positions.indexOf(targets.positionOf(target))).isPresent();
    }
}
