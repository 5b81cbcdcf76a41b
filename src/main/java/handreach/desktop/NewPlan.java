package handreach.desktop;

import handreach.geodesy.Position;
import handreach.plan.BlankPlan;
import handreach.plan.PlanFile;
import handreach.reach.AreaRequest;
import handreach.terrain.Surface;
import handreach.terrain.TileBounds;
import handreach.terrain.TileFolder;
import handreach.terrain.TileSummary;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a plan can begin with: a folder of elevation tiles, looked at.
 *
 * @param folder where they lie
 * @param tiles what they are
 * @param box round all of them
 * @param middle a place with a height, as near to the middle as there is one
 * @param missing share of the box without a height, 0 to 1
 * @param warnings what is wrong with files
 */
record NewPlan(
        Path folder,
        List<TileSummary> tiles,
        TileBounds box,
        Optional<Position> middle,
        double missing,
        List<String> warnings) {
    private static final int SAMPLES = 41;
    private static final double USUAL_RADIUS_KM = 5;
    private static final double DEGREE_KM = 111;

    /** What a person must know of their own before anything is computed. */
    record Figures(String title, double mhz, double watts, String cover) {}

    /** Looks at a folder of tiles, or at the folder of one tile. */
    static NewPlan of(Path tileOrFolder) {
        Path folder = Files.isDirectory(tileOrFolder)
                ? tileOrFolder
                : tileOrFolder.toAbsolutePath().getParent();
        TileFolder tiles = TileFolder.open(folder);
        TileBounds box = round(tiles.tiles());
        Sampled sampled = Sampled.of(tiles, box);
        return new NewPlan(folder, tiles.tiles(), box, sampled.middle(), sampled.missing(), tiles.warnings());
    }

    private static TileBounds round(List<TileSummary> tiles) {
        TileBounds box = tiles.get(0).bounds();
        for (TileSummary tile : tiles) {
            TileBounds one = tile.bounds();
            box = new TileBounds(
                    Math.min(box.southDeg(), one.southDeg()),
                    Math.min(box.westDeg(), one.westDeg()),
                    Math.max(box.northDeg(), one.northDeg()),
                    Math.max(box.eastDeg(), one.eastDeg()));
        }
        return box;
    }

    private record Sampled(Optional<Position> middle, double missing) {
        static Sampled of(TileFolder tiles, TileBounds box) {
            int count = SAMPLES * SAMPLES;
            double[] latitude = new double[count];
            double[] longitude = new double[count];
            for (int i = 0; i < count; i++) {
                latitude[i] = box.southDeg() + (box.northDeg() - box.southDeg()) * (i / SAMPLES + 0.5) / SAMPLES;
                longitude[i] = box.westDeg() + (box.eastDeg() - box.westDeg()) * (i % SAMPLES + 0.5) / SAMPLES;
            }
            boolean[] isVoid = new boolean[count];
            tiles.heights(latitude, longitude, count, new double[count], isVoid);
            int voids = 0;
            int best = -1;
            for (int i = 0; i < count; i++) {
                if (isVoid[i]) voids++;
                else if (best < 0 || fromMiddle(i) < fromMiddle(best)) best = i;
            }
            Optional<Position> middle =
                    best < 0 ? Optional.empty() : Optional.of(new Position(latitude[best], longitude[best]));
            return new Sampled(middle, (double) voids / count);
        }

        private static int fromMiddle(int sample) {
            int rows = sample / SAMPLES - SAMPLES / 2;
            int columns = sample % SAMPLES - SAMPLES / 2;
            return rows * rows + columns * columns;
        }
    }

    /** What it is, where, how fine, and what is missing. */
    String words() {
        TileSummary first = tiles.get(0);
        String formats = String.join(
                ", ", tiles.stream().map(TileSummary::format).distinct().toList());
        String count = tiles.size() == 1 ? "1 tile" : tiles.size() + " tiles";
        String where = String.format(
                Locale.ROOT,
                "%s, %s",
                span(box.southDeg(), box.northDeg(), "south", "north"),
                span(box.westDeg(), box.eastDeg(), "west", "east"));
        String fine =
                "a height every " + Lengths.METRIC.heightText(first.spacing().smallerM());
        String holes = missing == 0
                ? "nothing is missing in between"
                : Shares.share(missing) + " of that rectangle has no height";
        String surface = "read as " + surface().word()
                + (first.nature().surface().isPresent() ? ", by the name" : ", since the name does not tell");
        StringBuilder words = new StringBuilder(count + " (" + formats + ") in " + folder + ": " + where + "; " + fine
                + "; " + holes + "; " + surface + ".");
        warnings.forEach(warning -> words.append('\n').append(warning));
        return words.toString();
    }

    /** Degrees with the side they lie on, smaller number first where both lie on one. */
    private static String span(double from, double to, String below, String above) {
        if (from >= 0) return String.format(Locale.ROOT, "%.3f to %.3f %s", from, to, above);
        if (to <= 0) return String.format(Locale.ROOT, "%.3f to %.3f %s", -to, -from, below);
        return String.format(Locale.ROOT, "%.3f %s to %.3f %s", -from, below, to, above);
    }

    private Surface surface() {
        return tiles.get(0).nature().surface().orElse(Surface.BARE_EARTH);
    }

    /** As far as the tiles go, and no farther than people look first. */
    private double radiusKm(Position from) {
        double northSouth = Math.min(box.northDeg() - from.latitudeDeg(), from.latitudeDeg() - box.southDeg());
        double eastWest = Math.min(box.eastDeg() - from.longitudeDeg(), from.longitudeDeg() - box.westDeg())
                * Math.cos(Math.toRadians(from.latitudeDeg()));
        double toTheEdge = Math.floor(10 * DEGREE_KM * Math.min(northSouth, eastWest)) / 10;
        return Math.max(AreaRequest.RADIUS.low(), Math.min(USUAL_RADIUS_KM, toTheEdge));
    }

    /** A plan that was never saved; it stands beside its tiles until it gets its own place. */
    PlanFile file(Figures figures) {
        Position at = middle.orElseThrow();
        String text = BlankPlan.filled(new BlankPlan.Known(
                figures.title(),
                figures.mhz(),
                figures.watts(),
                folder.toAbsolutePath(),
                surface(),
                figures.cover(),
                at,
                radiusKm(at)));
        return PlanFile.fresh(folder.toAbsolutePath().resolveSibling(PlanFile.USUAL_NAME), text);
    }
}
