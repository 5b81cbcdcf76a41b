package handreach.terrain;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.function.DoublePredicate;

/**
 * The elevation tiles of one folder, whatever their formats and resolutions.
 *
 * <p>Opening reads names and headers only; posts are read when a position needs them, and the least recently used are let go. Where
 * tiles overlap, the finest that has a height answers; those above the ellipsoid by their name come last. Between two tiles that share no posts the four posts come from both. A file
 * that cannot be used is reported and its ground is void; it does not stop the others.
 */
public final class TileFolder implements Elevation {
    private final TileIndex index;
    private final TileCache cache;
    private final List<Tile> ranked;
    private final List<TileSummary> summaries;
    private final Disagreements disagreements;

    private TileFolder(List<TileHeader> drafts, TileCache cache) {
        this.cache = cache;
        Lattice.Registry book = new Lattice.Registry();
        List<Tile> tiles = new ArrayList<>();
        Map<Tile, Double> meanM = new LinkedHashMap<>();
        Map<String, TileSummary> byName = new LinkedHashMap<>();
        for (TileHeader draft : drafts) {
            Tile tile = new Tile(
                    draft,
                    book.seat(draft.fit(), draft.source().rows(), draft.source().columns()));
            tiles.add(tile);
            meanM.put(
                    tile, rounded(Tile.meanSpacingM(draft.fit(), draft.summary().bounds())));
            byName.merge(draft.summary().name(), draft.summary(), TileFolder::joined);
        }
        tiles.sort(Comparator.<Tile, Boolean>comparing(
                        tile -> tile.summary.nature().isFromEllipsoid())
                .thenComparing(meanM::get)
                .thenComparing(tile -> tile.summary.name())
                .thenComparingInt(tile -> tile.row0)
                .thenComparingInt(tile -> tile.column0));
        for (int rank = 0; rank < tiles.size(); rank++) tiles.get(rank).rank(rank);
        this.ranked = List.copyOf(tiles);
        this.index = new TileIndex(ranked);
        for (Tile tile : ranked) tile.rivals(rivals(tile));
        this.summaries = List.copyOf(byName.values());
        this.disagreements = new Disagreements(ranked, index, cache);
    }

    /**
     * Opens a folder of tiles, or a single tile file.
     *
     * @shape path in, elevation out; reads directory entries and headers
     * @unit heights in metres
     * @valid any number of .hgt (plain, .zip, .gz), GeoTIFF and Esri ASCII grid files; {@link InputFault} if none can be used
     * @error heights as in the file; bilinear between posts
     * @source formats as in docs/tiles.md
     */
    public static TileFolder open(Path folder) {
        return open(folder, TileCache.defaultLimitBytes());
    }

    /** Whether a file of a folder of tiles is looked at, by its name: a tile, or what stands beside one. */
    public static boolean isRead(String name) {
        String low = name.toLowerCase(Locale.ROOT);
        return TileFiles.isTile(name) || low.endsWith(".prj") || low.endsWith(".aux.xml");
    }

    /** As {@link #open(Path)}, with a bound on the memory held by posts, bytes. */
    public static TileFolder open(Path folder, long limitBytes) {
        TileCache cache = new TileCache(limitBytes);
        List<TileHeader> drafts = TileFiles.drafts(folder, cache::warn);
        if (drafts.isEmpty()) throw TileFiles.nothingUsable(folder, cache.warnings());
        return new TileFolder(drafts, cache);
    }

    /** Spacings that differ by less than a percent count as equal. */
    private static double rounded(double spacingM) {
        return Math.rint(Math.log(spacingM) * 100);
    }

    /** One file may be held in several parts; to the outside it is one tile. */
    private static TileSummary joined(TileSummary a, TileSummary b) {
        TileBounds p = a.bounds();
        TileBounds q = b.bounds();
        TileBounds both = new TileBounds(
                Math.min(p.southDeg(), q.southDeg()),
                Math.min(p.westDeg(), q.westDeg()),
                Math.max(p.northDeg(), q.northDeg()),
                Math.max(p.eastDeg(), q.eastDeg()));
        return new TileSummary(a.name(), a.format(), both, a.spacing(), a.crs(), a.nature());
    }

    private TileBounds[] rivals(Tile tile) {
        List<TileBounds> rivals = new ArrayList<>();
        for (Tile other : index.within(tile.summary.bounds())) {
            if (other.rank() >= tile.rank()) break;
            if (other.lattice != tile.lattice || overlaps(other, tile))
                rivals.add(other.summary.bounds().widened(TileIndex.marginDeg(other)));
        }
        return rivals.toArray(TileBounds[]::new);
    }

    /** Whether two tiles of one lattice share more than an edge. */
    private static boolean overlaps(Tile a, Tile b) {
        int rows = Math.min(a.row0 + a.rows, b.row0 + b.rows) - Math.max(a.row0, b.row0);
        int columns = Math.min(a.column0 + a.columns, b.column0 + b.columns) - Math.max(a.column0, b.column0);
        return rows > 1 && columns > 1;
    }

    /** The tiles that can be used, in the order of their names. */
    public List<TileSummary> tiles() {
        return summaries;
    }

    /**
     * What was wrong with files so far, and which give different heights for the same ground; a broken tile is often found only when
     * its posts are first needed.
     */
    public List<String> warnings() {
        List<String> different = disagreements.words();
        List<String> all = new ArrayList<>(cache.warnings());
        all.addAll(different);
        for (TileSummary tile : summaries)
            if (tile.nature().isFromEllipsoid()
                    && isAsked(tile.name())
                    && different.stream().noneMatch(said -> said.startsWith(tile.name() + ":")))
                all.add(tile.name()
                        + ": its heights count from the ellipsoid, as its name says, and lie up to 107 m off"
                        + " those above the sea. It is used only where no other tile has a height.");
        return List.copyOf(all);
    }

    private boolean isAsked(String name) {
        return ranked.stream()
                .anyMatch(tile -> tile.isAsked() && tile.summary.name().equals(name));
    }

    /** Posts of all tiles together. */
    public long posts() {
        return ranked.stream()
                .mapToLong(tile -> (long) tile.rows * tile.columns)
                .sum();
    }

    /**
     * Reads every tile and counts its posts, one after another; without those that prove to be no ground.
     *
     * @param goesOn is told the share that is done, and says whether to go on; if not: {@link CancellationException}
     */
    public List<TileSurvey> survey(DoublePredicate goesOn) {
        Map<String, TileSurvey> found = new LinkedHashMap<>();
        for (TileSummary summary : summaries)
            found.put(summary.name(), new TileSurvey(summary, 0, 0, 0, OptionalDouble.empty(), OptionalDouble.empty()));
        long all = posts();
        long done = 0;
        for (Tile tile : ranked) {
            found.computeIfPresent(tile.summary.name(), (name, so) -> counted(so, cache.posts(tile)));
            done += (long) tile.rows * tile.columns;
            if (!goesOn.test((double) done / all)) throw new CancellationException("reading the tiles");
        }
        found.keySet().removeIf(cache::isRefused);
        return List.copyOf(found.values());
    }

    private static TileSurvey counted(TileSurvey so, Posts posts) {
        return new TileSurvey(
                so.tile(),
                so.posts() + (long) posts.rows() * posts.columns(),
                so.voidPosts() + posts.voidCount(),
                so.filledPosts() + posts.filledCount(),
                narrower(so.lowestM(), posts.lowestM(), -1),
                narrower(so.highestM(), posts.highestM(), 1));
    }

    private static OptionalDouble narrower(OptionalDouble so, double heightM, int sign) {
        if (Double.isNaN(heightM)) return so;
        return OptionalDouble.of(so.isEmpty() ? heightM : sign * Math.max(sign * so.getAsDouble(), sign * heightM));
    }

    /**
     * The ground at one position.
     *
     * @shape position in, reading out
     * @unit degrees in, metres above the tile's datum out
     * @valid every position; void outside the tiles and next to void posts
     * @error bilinear between posts: ridge tops read low by what the tile's own averaging cut off
     * @source common practice, no source
     */
    public GroundHeight at(Position place) {
        GroundProbe probe = new GroundProbe(index, cache);
        double heightM = probe.heightM(place.latitudeDeg(), place.longitudeDeg());
        if (Double.isNaN(heightM))
            return new GroundHeight(OptionalDouble.empty(), covering(place.latitudeDeg(), place.longitudeDeg()), false);
        return new GroundHeight(OptionalDouble.of(heightM), probe.tile().summary.name(), probe.isFilled());
    }

    private String covering(double latitudeDeg, double longitudeDeg) {
        Tile tile = groundTile(latitudeDeg, longitudeDeg);
        return tile == null ? "" : tile.summary.name();
    }

    /** The first tile over a place that has not proved to be no ground. */
    private Tile groundTile(double latitudeDeg, double longitudeDeg) {
        for (Tile tile : index.at(latitudeDeg, longitudeDeg))
            if (GroundProbe.covers(tile, latitudeDeg, longitudeDeg) && !cache.isRefused(tile.summary.name()))
                return tile;
        return null;
    }

    private Tile coveringTile(double latitudeDeg, double longitudeDeg) {
        for (Tile tile : index.at(latitudeDeg, longitudeDeg))
            if (GroundProbe.covers(tile, latitudeDeg, longitudeDeg)) return tile;
        return null;
    }

    @Override
    public void heights(double[] latitudeDeg, double[] longitudeDeg, int count, double[] heightM, boolean[] isVoid) {
        GroundProbe probe = null;
        ProjectedRun plane = null;
        int i = 0;
        while (i < count) {
            Tile tile = coveringTile(latitudeDeg[i], longitudeDeg[i]);
            int clear = tile == null ? i : tile.clearOfRivals(latitudeDeg, longitudeDeg, i, count);
            if (clear > i) {
                Posts posts = cache.posts(tile);
                int next;
                if (tile.lattice.frame.isDegrees()) {
                    next = posts.run(
                            tile.lattice,
                            tile.row0,
                            tile.column0,
                            latitudeDeg,
                            longitudeDeg,
                            i,
                            clear,
                            heightM,
                            isVoid);
                } else {
                    if (plane == null) plane = new ProjectedRun(count);
                    next = plane.run(tile, posts, latitudeDeg, longitudeDeg, i, clear, heightM, isVoid);
                }
                if (next == count) return;
                if (next > i) {
                    i = next;
                    continue;
                }
            }
            if (probe == null) probe = new GroundProbe(index, cache);
            double h = probe.heightM(latitudeDeg[i], longitudeDeg[i]);
            isVoid[i] = Double.isNaN(h);
            heightM[i] = isVoid[i] ? 0 : h;
            i++;
        }
    }

    @Override
    public int countFilled(double[] latitudeDeg, double[] longitudeDeg, int count) {
        GroundProbe probe = new GroundProbe(index, cache);
        int filled = 0;
        Tile[] unfilled = null;
        for (int i = 0; i < count; i++) {
            Tile[] tiles = index.at(latitudeDeg[i], longitudeDeg[i]);
            if (tiles != unfilled && areKnownUnfilled(tiles)) unfilled = tiles;
            if (tiles == unfilled) continue;
            double h = probe.heightM(latitudeDeg[i], longitudeDeg[i]);
            if (!Double.isNaN(h) && probe.isFilled()) filled++;
        }
        return filled;
    }

    private static boolean areKnownUnfilled(Tile[] tiles) {
        for (Tile tile : tiles) if (!tile.isKnownUnfilled()) return false;
        return true;
    }

    @Override
    public double postSpacingM(double latitudeDeg, double longitudeDeg, double defaultM) {
        Tile tile = coveringTile(latitudeDeg, longitudeDeg);
        return tile == null ? defaultM : tile.spacingM(latitudeDeg);
    }

    TileIndex index() {
        return index;
    }

    TileCache cache() {
        return cache;
    }
}
