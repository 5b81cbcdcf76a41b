package handreach.terrain;

import java.util.Arrays;

/**
 * Small holes in a grid, closed from their rim.
 *
 * <p>A patch is filled if it has at most nine posts, reaches over at most three rows and three columns and does not touch the edge
 * of the grid, where its rim is not known. Each post receives the mean of the rim weighted by the inverse square of the distance;
 * nothing outside the range of the rim can come out. Larger patches stay void. Our rule; common practice, no source.
 */
final class VoidPatches {
    private static final int MOST_POSTS = 9;
    private static final int MOST_ACROSS = 3;

    /** A grid as far as this needs it. */
    interface Field {
        double at(int index);

        boolean isVoid(int index);

        void set(int index, double value);
    }

    private final Field field;
    private final int rows;
    private final int columns;
    private final int[] patch = new int[MOST_POSTS + 8];
    private final double[] value = new double[MOST_POSTS];
    private int size;
    private int[] filled = new int[16];
    private int filledCount;

    private VoidPatches(Field field, int rows, int columns) {
        this.field = field;
        this.rows = rows;
        this.columns = columns;
    }

    /** Fills the small patches; returns the indices of the posts filled, ascending. */
    static int[] fill(Field field, int rows, int columns) {
        VoidPatches patches = new VoidPatches(field, rows, columns);
        for (int row = 1; row < rows - 1; row++) patches.scan(row);
        int[] filled = Arrays.copyOf(patches.filled, patches.filledCount);
        Arrays.sort(filled);
        return filled;
    }

    private void scan(int row) {
        int end = (row + 1) * columns;
        for (int k = row * columns; k < end; k++) {
            if (!field.isVoid(k)) continue;
            int run = k;
            while (run < end && field.isVoid(run)) run++;
            if (run - k <= MOST_ACROSS && isSmall(k)) fillPatch();
            k = run - 1;
        }
    }

    /** Gathers the patch around a void post; false as soon as it proves too large or touches the edge. */
    private boolean isSmall(int start) {
        size = 0;
        patch[size++] = start;
        int top = start / columns;
        int bottom = top;
        int left = start % columns;
        int right = left;
        for (int done = 0; done < size; done++) {
            int row = patch[done] / columns;
            int column = patch[done] % columns;
            top = Math.min(top, row);
            bottom = Math.max(bottom, row);
            left = Math.min(left, column);
            right = Math.max(right, column);
            if (bottom - top >= MOST_ACROSS || right - left >= MOST_ACROSS) return false;
            if (row == 0 || row == rows - 1 || column == 0 || column == columns - 1) return false;
            for (int dr = -1; dr <= 1; dr++)
                for (int dc = -1; dc <= 1; dc++) {
                    int next = patch[done] + dr * columns + dc;
                    if (!field.isVoid(next) || isGathered(next)) continue;
                    if (size == MOST_POSTS) return false;
                    patch[size++] = next;
                }
        }
        return true;
    }

    private boolean isGathered(int index) {
        for (int i = 0; i < size; i++) if (patch[i] == index) return true;
        return false;
    }

    private void fillPatch() {
        for (int i = 0; i < size; i++) value[i] = fromRim(patch[i]);
        for (int i = 0; i < size; i++) {
            field.set(patch[i], value[i]);
            if (filledCount == filled.length) filled = Arrays.copyOf(filled, 2 * filledCount);
            filled[filledCount++] = patch[i];
        }
    }

    /** The patch is at most three across, so the rim lies within three posts of each of its members. */
    private double fromRim(int index) {
        int row = index / columns;
        int column = index % columns;
        double sum = 0;
        double weight = 0;
        for (int r = Math.max(0, row - MOST_ACROSS); r <= Math.min(rows - 1, row + MOST_ACROSS); r++)
            for (int c = Math.max(0, column - MOST_ACROSS); c <= Math.min(columns - 1, column + MOST_ACROSS); c++) {
                int k = r * columns + c;
                if (field.isVoid(k)) continue;
                double w = 1.0 / ((r - row) * (r - row) + (c - column) * (c - column));
                sum += w * field.at(k);
                weight += w;
            }
        return sum / weight;
    }
}
