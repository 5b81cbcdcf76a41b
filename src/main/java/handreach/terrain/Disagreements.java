package handreach.terrain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Files that give different heights for the same ground: one counts from the ellipsoid or in feet, say, or is no ground at all. Only
 * tiles that have been asked are compared, with all that overlap them by more than an edge, on a raster of places in the overlap.
 *
 * <p>Told is a median difference above 10 m. Sets of different make differ by a few metres over open ground and by up to 10 m under
 * trees; heights above the ellipsoid lie up to 107 m off <em>(from memory)</em>. The bound is our suggestion: where the geoid lies within 10 m of
 * the ellipsoid, a mix of both goes untold.
 */
final class Disagreements {
    private static final double MOST_M = 10;
    private static final int A_SIDE = 12;
    private static final int LEAST_PLACES = 20;

    private final List<Tile> ranked;
    private final TileIndex index;
    private final TileCache cache;
    /** By the ranks of the two tiles; the differences found, lower minus higher rank number. */
    private final Map<Long, double[]> compared = new HashMap<>();

    private int askedBefore;
    private List<String> told = List.of();

    Disagreements(List<Tile> ranked, TileIndex index, TileCache cache) {
        this.ranked = ranked;
        this.index = index;
        this.cache = cache;
    }

    /** Two files: the one that answers where both have heights, and by how much it lies above the other, m. */
    private record Pair(Tile used, Tile other, double aboveM, int places) {
        boolean names(String file) {
            return used.summary.name().equals(file) || other.summary.name().equals(file);
        }

        String partner(String file) {
            return used.summary.name().equals(file) ? other.summary.name() : used.summary.name();
        }
    }

    /** One sentence for each file that stands against others, as far as tiles have been asked. */
    synchronized List<String> words() {
        int asked = cache.askedCount();
        if (asked == askedBefore) return told;
        told = List.copyOf(sentences());
        askedBefore = asked;
        return told;
    }

    private List<String> sentences() {
        List<Pair> left = pairs();
        List<String> sentences = new ArrayList<>();
        while (!left.isEmpty()) {
            String odd = odd(left);
            List<Pair> own = left.stream().filter(pair -> pair.names(odd)).toList();
            left.removeAll(own);
            sentences.add(sentence(odd, own));
        }
        return sentences;
    }

    private List<Pair> pairs() {
        Map<String, List<double[]>> found = new LinkedHashMap<>();
        Map<String, Tile[]> tiles = new HashMap<>();
        for (Tile tile : ranked) {
            if (!tile.isAsked()) continue;
            for (Tile other : index.within(tile.summary.bounds())) {
                if (other.summary.name().equals(tile.summary.name())) continue;
                if (other.isAsked() && other.rank() < tile.rank()) continue;
                Tile used = tile.rank() < other.rank() ? tile : other;
                Tile second = used == tile ? other : tile;
                double[] differences = compared.computeIfAbsent(
                        (long) used.rank() << 32 | second.rank(), key -> differences(used, second));
                if (differences.length == 0) continue;
                String names = used.summary.name() + "\n" + second.summary.name();
                found.computeIfAbsent(names, key -> new ArrayList<>()).add(differences);
                tiles.putIfAbsent(names, new Tile[] {used, second});
            }
        }
        List<Pair> pairs = new ArrayList<>();
        found.forEach((names, parts) -> {
            double[] all =
                    parts.stream().flatMapToDouble(Arrays::stream).sorted().toArray();
            double median = (all[(all.length - 1) / 2] + all[all.length / 2]) / 2;
            if (all.length >= LEAST_PLACES && Math.abs(median) > MOST_M)
                pairs.add(new Pair(tiles.get(names)[0], tiles.get(names)[1], median, all.length));
        });
        return pairs;
    }

    /** The heights of two tiles against one another where their bounds overlap. */
    private double[] differences(Tile one, Tile other) {
        Optional<TileBounds> overlap = one.summary.bounds().overlap(other.summary.bounds());
        double marginDeg = Math.max(TileIndex.marginDeg(one), TileIndex.marginDeg(other));
        if (overlap.isEmpty()) return new double[0];
        TileBounds both = overlap.get();
        if (both.northDeg() - both.southDeg() <= 2 * marginDeg || both.widthDeg() <= 2 * marginDeg)
            return new double[0];
        Posts first = cache.glance(one);
        Posts second = cache.glance(other);
        if (first instanceof UnreadablePosts || second instanceof UnreadablePosts) return new double[0];
        double[] found = new double[A_SIDE * A_SIDE];
        int count = 0;
        for (int i = 0; i < found.length; i++) {
            double lat = both.southDeg() + (both.northDeg() - both.southDeg()) * (i / A_SIDE + 0.5) / A_SIDE;
            double lon = both.longitudeDeg((i % A_SIDE + 0.5) / A_SIDE);
            double difference = heightM(one, first, lat, lon) - heightM(other, second, lat, lon);
            if (!Double.isNaN(difference)) found[count++] = difference;
        }
        return Arrays.copyOf(found, count);
    }

    private static double heightM(Tile tile, Posts posts, double latitudeDeg, double longitudeDeg) {
        double[] lat = {latitudeDeg};
        double[] lon = {longitudeDeg};
        double[] heightM = {0};
        boolean[] isVoid = {true};
        int done = tile.lattice.frame.isDegrees()
                ? posts.run(tile.lattice, tile.row0, tile.column0, lat, lon, 0, 1, heightM, isVoid)
                : new ProjectedRun(1).run(tile, posts, lat, lon, 0, 1, heightM, isVoid);
        return done == 1 && !isVoid[0] ? heightM[0] : Double.NaN;
    }

    /** The file that most of the pairs have in common; of equals, the one that is not used. */
    private static String odd(List<Pair> pairs) {
        Map<String, Integer> score = new LinkedHashMap<>();
        for (Pair pair : pairs) {
            score.merge(pair.other.summary.name(), 2, Integer::sum);
            score.merge(pair.used.summary.name(), 2, Integer::sum);
        }
        for (Pair pair : pairs) score.computeIfPresent(pair.other.summary.name(), (name, so) -> so | 1);
        return score.entrySet().stream()
                .max(Comparator.comparingInt(Map.Entry::getValue))
                .orElseThrow()
                .getKey();
    }

    private static String sentence(String odd, List<Pair> pairs) {
        TreeSet<Double> aboveM = new TreeSet<>();
        int places = 0;
        boolean isUsed = true;
        boolean isUnused = true;
        boolean isNamed = false;
        for (Pair pair : pairs) {
            boolean isFirst = pair.used.summary.name().equals(odd);
            aboveM.add(isFirst ? pair.aboveM : -pair.aboveM);
            places += pair.places;
            isUsed &= isFirst;
            isUnused &= !isFirst;
            isNamed |= (isFirst ? pair.used : pair.other).summary.nature().isFromEllipsoid();
        }
        String partners = pairs.get(0).partner(odd)
                + (pairs.size() == 1 ? "" : " and " + (pairs.size() - 1) + " more over the same ground");
        String answers = isUsed
                ? odd + " is used"
                : isUnused
                        ? (pairs.size() == 1 ? pairs.get(0).partner(odd) + " is used" : "the others are used")
                        : "the finest is used";
        return odd + ": lies " + byHowMuch(aboveM) + " " + partners + (pairs.size() == 1 ? " over the same ground" : "")
                + " (median of " + places + " places)"
                + (isNamed
                        ? "; it counts from the ellipsoid, as its name says."
                        : ", more than tiles of one kind differ: one may count from the ellipsoid, be in feet, or be no ground.")
                + " Where both have heights, " + answers + ". Move the wrong one out of the folder.";
    }

    private static String byHowMuch(TreeSet<Double> aboveM) {
        String low = metres(Math.min(Math.abs(aboveM.first()), Math.abs(aboveM.last())));
        String high = metres(Math.max(Math.abs(aboveM.first()), Math.abs(aboveM.last())));
        boolean isAbove = aboveM.first() > 0;
        boolean isBelow = aboveM.last() < 0;
        String span = low.equals(high) ? high + " m" : low + " to " + high + " m";
        return span + (isAbove ? " above" : isBelow ? " below" : " off");
    }

    private static String metres(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
