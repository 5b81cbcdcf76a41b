package handreach.cli;

import handreach.geodesy.Place;
import handreach.geodesy.Position;
import handreach.report.page.Column;
import handreach.report.page.PlainText;
import handreach.report.page.Table;
import handreach.terrain.GroundHeight;
import handreach.terrain.TileBounds;
import handreach.terrain.TileFolder;
import handreach.terrain.TileSummary;
import handreach.terrain.TileSurvey;
import handreach.units.Decibels;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What elevation a folder holds, and the height at one place. */
@Command(
        name = "tiles",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "What elevation is there: tiles, resolution, datum, gaps; with --at the height at one place.",
        footer = {"", "Worked example:", "  handreach tiles elevation-samples/high-mountains/tiles --at 37.5,-105.0"})
final class TilesCommand implements Callable<Integer> {
    /** Posts that are read while a person waits without asking. */
    private static final long MANY_POSTS = 100_000_000;
    /** Posts of packed GeoTIFF a second, on one slow core; measured, docs/performance.md. */
    private static final double POSTS_PER_SECOND = 20e6;

    @Parameters(
            index = "0",
            paramLabel = "DIR",
            description = "Folder with elevation tiles (.hgt, GeoTIFF, ASCII grid).")
    private Path folder;

    @Option(
            names = "--at",
            paramLabel = "PLACE",
            description = "Read one height: LAT,LON, degrees-minutes, UTM or MGRS.")
    private String at;

    @Mixin
    private JsonOption json;

    private record Height(
            double latitude,
            double longitude,
            OptionalDouble heightM,
            String tile,
            String interpolation,
            boolean isVoid,
            boolean filled,
            List<String> warnings) {}

    private record Tile(
            String name,
            String format,
            TileBounds bounds,
            double spacingM,
            String crs,
            String surface,
            String verticalDatum,
            Content content) {}

    private record Content(
            long posts, long voidPosts, long filledPosts, OptionalDouble lowestM, OptionalDouble highestM) {}

    private record Answer(String folder, List<Tile> tiles, List<String> warnings) {}

    @Override
    public Integer call() {
        TileFolder tiles = TileFolder.open(folder);
        return at == null ? survey(tiles) : height(tiles);
    }

    private int height(TileFolder tiles) {
        Position place = Place.parse("--at", at);
        GroundHeight reading = tiles.at(place);
        json.warn(tiles.warnings());
        if (json.isWanted()) {
            var tree = (com.fasterxml.jackson.databind.node.ObjectNode) handreach.report.file.Json.tree(new Height(
                    place.latitudeDeg(),
                    place.longitudeDeg(),
                    reading.heightM(),
                    reading.tile(),
                    "bilinear",
                    reading.isVoid(),
                    reading.isFilled(),
                    tiles.warnings()));
            tree.set("void", tree.remove("is_void"));
            json.print(tree);
        } else if (reading.isVoid()) {
            json.say("no height at " + at + ": "
                    + (reading.tile().isEmpty() ? "no tile covers it" : "void in " + reading.tile()));
        } else {
            json.say(String.format(
                    Locale.ROOT,
                    "%s m at %.6f, %.6f (bilinear, %s%s)",
                    Decibels.number(reading.heightM().getAsDouble(), 2),
                    place.latitudeDeg(),
                    place.longitudeDeg(),
                    reading.tile(),
                    reading.isFilled() ? ", next to a filled void" : ""));
        }
        return 0;
    }

    private int survey(TileFolder tiles) {
        if (tiles.posts() > MANY_POSTS)
            json.err()
                    .printf(
                            Locale.ROOT,
                            "Reading %.0f million posts takes some %.0f s or more. Ctrl-C stops it; --at reads one height at"
                                    + " once.%n",
                            tiles.posts() / 1e6,
                            tiles.posts() / POSTS_PER_SECOND);
        List<Tile> rows;
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            rows = tiles
                    .survey(share -> {
                        progress.done("reading tiles", share);
                        return !progress.isCancelled();
                    })
                    .stream()
                    .map(TilesCommand::tile)
                    .toList();
        }
        json.warn(tiles.warnings());
        if (json.isWanted()) {
            json.print(new Answer(folder.toString(), rows, tiles.warnings()));
            return 0;
        }
        Column<Tile> name = Column.words("tile", Tile::name);
        Table<Tile> where = Table.of(
                "Where the ground is known, in degrees.",
                rows,
                List.of(
                        name,
                        Column.words("format", Tile::format),
                        Column.number("south", tile -> degrees(tile.bounds().southDeg())),
                        Column.number("west", tile -> degrees(tile.bounds().westDeg())),
                        Column.number("north", tile -> degrees(tile.bounds().northDeg())),
                        Column.number("east", tile -> degrees(tile.bounds().eastDeg())),
                        Column.words("CRS", Tile::crs)));
        Table<Tile> what = Table.of(
                "What is known there.",
                rows,
                List.of(
                        name,
                        Column.number("posts, m apart", tile -> Decibels.number(tile.spacingM(), 1)),
                        Column.number("void", tile -> share(tile.content())),
                        Column.number(
                                "filled posts",
                                tile -> Long.toString(tile.content().filledPosts())),
                        Column.number("lowest, m", tile -> metres(tile.content().lowestM())),
                        Column.number(
                                "highest, m", tile -> metres(tile.content().highestM())),
                        Column.words("heights above", TilesCommand::datum)));
        json.page(PlainText.of(where, TerminalWidth.columns()));
        json.page("\n");
        json.page(PlainText.of(what, TerminalWidth.columns()));
        return 0;
    }

    private static String datum(Tile tile) {
        return tile.verticalDatum() + (tile.surface().isEmpty() ? "" : ", " + tile.surface());
    }

    private static Tile tile(TileSurvey survey) {
        TileSummary tile = survey.tile();
        return new Tile(
                tile.name(),
                tile.format(),
                tile.bounds(),
                tile.spacing().smallerM(),
                tile.crs(),
                tile.nature().surface().map(handreach.terrain.Surface::word).orElse(""),
                tile.nature().verticalDatum(),
                new Content(
                        survey.posts(), survey.voidPosts(), survey.filledPosts(), survey.lowestM(), survey.highestM()));
    }

    private static String degrees(double value) {
        return Decibels.plain(value, 5);
    }

    private static String share(Content content) {
        return content.voidPosts() == 0
                ? "none"
                : Decibels.number(100.0 * content.voidPosts() / content.posts(), 2) + " %";
    }

    private static String metres(OptionalDouble value) {
        return value.isPresent() ? Decibels.number(value.getAsDouble(), 0) : "unknown";
    }
}
