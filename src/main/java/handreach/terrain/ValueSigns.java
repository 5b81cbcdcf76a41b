package handreach.terrain;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * What the values of a raster tell against their being ground, where its header told nothing. At most 128 by 128 posts are looked at,
 * each with its neighbours to the east and to the south, and looking ends as soon as the values can only be ground: in real tiles
 * after a few posts.
 *
 * <p>Class codes: whole numbers that all stand in one published legend, three classes at least, with numbers between them that no class
 * has, and neighbours that jump over classes. Ground passes through the heights between its lowest and its highest.
 *
 * <p>Undulation of a geoid: fractions from −107 to 86 m (EGM96 and EGM2008, <em>from memory</em>) that hardly ever repeat, fall by less
 * than 0.6 m in a kilometre everywhere (a deflection of the vertical of 2 minutes of arc, more than the geoid has) and are smooth from
 * post to post. Flat coasts are rough at these scales, or level.
 *
 * <p>The rules and their bounds are our suggestion.
 */
final class ValueSigns {
    private static final int MOST_A_SIDE = 128;
    private static final int LEAST_POSTS = 25;
    private static final int LEAST_CLASSES = 3;
    private static final double LEAST_JUMPS = 0.2;
    private static final double LOWEST_UNDULATION_M = -107;
    private static final double HIGHEST_UNDULATION_M = 86;
    private static final double STEEPEST_UNDULATION = 6e-4;
    private static final double MOST_REPEATED = 0.05;
    private static final double ROUGHEST_UNDULATION = 0.15;
    private static final int MOST_CODE = 1024;
    private static final int OTHER_NO_DATA = 255;
    /** CORINE's codes of a raster, 1 to 44, are also the whole metres of a low coast. */
    private static final int FIRST_CORINE = 111;

    private final double eastM;
    private final double southM;
    private final CoverLegend[] legends = CoverLegend.values();
    private final boolean[] holdsAll = new boolean[legends.length];
    private final TreeSet<Integer> classes = new TreeSet<>();
    /** How often two classes are neighbours, the lower one first. */
    private final Map<Integer, Integer> neighbours = new HashMap<>();

    private boolean mayBeClasses = true;
    private boolean mayBeUndulation = true;
    private long posts;
    private long steps;
    private long repeated;
    private double stepsSquared;
    private long bends;
    private double bendsSquared;

    /** Spacing of the posts on the ground, m. */
    ValueSigns(double eastM, double southM) {
        this.eastM = eastM;
        this.southM = southM;
        Arrays.fill(holdsAll, true);
    }

    /** Looks at more posts of the raster; false once nothing more can be learned, for it is ground. */
    boolean look(Posts held) {
        int down = Math.max(1, held.rows() / MOST_A_SIDE);
        int right = Math.max(1, held.columns() / MOST_A_SIDE);
        for (int row = 0; row < held.rows(); row += down)
            for (int column = 0; column < held.columns(); column += right) {
                double here = stored(held, row, column);
                post(here);
                if (column + 2 < held.columns())
                    step(here, stored(held, row, column + 1), stored(held, row, column + 2), eastM);
                if (row + 2 < held.rows())
                    step(here, stored(held, row + 1, column), stored(held, row + 2, column), southM);
                if (!mayBeClasses && !mayBeUndulation) return false;
            }
        return true;
    }

    /** Filled posts are means of others and stand in no file. */
    private static double stored(Posts held, int row, int column) {
        return held.isFilled(row, column) ? Double.NaN : held.at(row, column);
    }

    private void post(double value) {
        if (Double.isNaN(value)) return;
        posts++;
        mayBeUndulation &= value >= LOWEST_UNDULATION_M && value <= HIGHEST_UNDULATION_M;
        if (!mayBeClasses) return;
        if (value != Math.rint(value) || value < 0 || value >= MOST_CODE) {
            mayBeClasses = false;
            return;
        }
        int code = (int) value;
        if (code == 0 || code == OTHER_NO_DATA || !classes.add(code)) return;
        mayBeClasses = false;
        for (int k = 0; k < legends.length; k++) {
            holdsAll[k] &= isIn(legends[k], code);
            mayBeClasses |= holdsAll[k];
        }
    }

    private static boolean isIn(CoverLegend legend, int code) {
        return legend.of(code).isPresent() && (legend != CoverLegend.CORINE || code >= FIRST_CORINE);
    }

    private void step(double from, double to, double after, double spacingM) {
        double step = to - from;
        if (Double.isNaN(step)) return;
        if (mayBeClasses && step != 0 && Math.max(from, to) < MOST_CODE && Math.min(from, to) > 0)
            neighbours.merge((int) Math.min(from, to) * MOST_CODE + (int) Math.max(from, to), 1, Integer::sum);
        if (!mayBeUndulation) return;
        mayBeUndulation = Math.abs(step) <= STEEPEST_UNDULATION * spacingM;
        steps++;
        if (step == 0) repeated++;
        stepsSquared += step * step;
        double bend = after - to - step;
        if (Double.isNaN(bend)) return;
        bends++;
        bendsSquared += bend * bend;
    }

    /** What the raster looks like and what to do about it; nothing where it may be ground. */
    Optional<String> verdict() {
        if (posts < LEAST_POSTS) return Optional.empty();
        if (mayBeClasses && areClasses())
            return Optional.of("holds nothing but the class codes " + codes() + " of the legend " + legend().word()
                    + ": it looks like land cover, not ground." + HeaderSigns.NO_COVER_HERE);
        if (mayBeUndulation && isUndulation())
            return Optional.of(String.format(
                    Locale.ROOT,
                    "holds values that fall by %.2f m in a kilometre and are smooth: it looks like the undulation of a"
                            + " geoid, not ground.%s",
                    1000 * rmsSlope(),
                    HeaderSigns.NO_UNDULATION_HERE));
        return Optional.empty();
    }

    private boolean areClasses() {
        if (classes.size() < LEAST_CLASSES) return false;
        CoverLegend legend = legend();
        int between = 0;
        for (int code = classes.first(); code <= classes.last(); code++) if (isIn(legend, code)) between++;
        if (between == classes.last() - classes.first() + 1) return false;
        long all = 0;
        long over = 0;
        for (Map.Entry<Integer, Integer> pair : neighbours.entrySet()) {
            int low = pair.getKey() / MOST_CODE;
            int high = pair.getKey() % MOST_CODE;
            all += pair.getValue();
            Integer next = classes.higher(low);
            if (next != null && next < high) over += pair.getValue();
        }
        return all > 0 && over >= LEAST_JUMPS * all;
    }

    private boolean isUndulation() {
        return steps > 0 && bends > 0 && repeated <= MOST_REPEATED * steps && roughness() <= ROUGHEST_UNDULATION;
    }

    /** How much steps differ from one to the next, against the steps. */
    double roughness() {
        return Math.sqrt(bendsSquared / bends / (stepsSquared / steps));
    }

    private double rmsSlope() {
        return Math.sqrt(stepsSquared / steps) / Math.sqrt(eastM * southM);
    }

    private CoverLegend legend() {
        for (int k = 0; k < legends.length; k++) if (holdsAll[k]) return legends[k];
        throw new IllegalStateException("no legend holds all codes");
    }

    private String codes() {
        StringBuilder text = new StringBuilder();
        for (int code : classes) text.append(text.isEmpty() ? "" : ", ").append(code);
        return text.toString();
    }
}
