package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Worlds drawn on paper: x is void, a digit is that many hundred metres. */
class VoidPatchesTest {
    private static final short X = ShortPosts.VOID;

    @Test
    void aHoleIsFoundWhereverItLies() {
        for (int row = 1; row < 8; row++)
            for (int column = 1; column < 8; column++) {
                short[] heightM = new short[81];
                heightM[9 * row + column] = ShortPosts.VOID;
                assertEquals(1, new ShortPosts(9, 9, heightM).filledCount(), row + ", " + column);
            }
    }

    @Test
    void aSmallHoleTakesTheMeanOfItsRim() {
        ShortPosts posts = posts("55555", "55555", "55x55", "55555", "55555");
        assertEquals(500, posts.at(2, 2));
        assertEquals(1, posts.filledCount());
        assertEquals(0, posts.voidCount());
        assertTrue(posts.isFilled(2, 2));
        assertEquals(25 * 2 + 4, posts.bytes());
    }

    /** By hand: left 100, right 300 in mirror symmetry, so the middle is their mean. */
    @Test
    void nearerPostsWeighMore() {
        ShortPosts posts = posts("11133", "11133", "11x33", "11133", "11133");
        assertTrue(posts.at(2, 2) > 100 && posts.at(2, 2) < 200, "two of its four neighbours and the column are low");
        assertEquals(
                200,
                posts("1123 3".replace(" ", ""), "11233", "11x33", "11233", "11233")
                        .at(2, 2));
    }

    @Test
    void nineInASquareAreFilledButNotTheTenth() {
        assertEquals(9, posts("55555", "5xxx5", "5xxx5", "5xxx5", "55555").filledCount());
        assertEquals(0, posts("555555", "5xxx55", "5xxx55", "5xxxx5", "555555").filledCount());
        assertEquals(0, posts("555555", "5xxxx5", "555555", "555555").filledCount());
        assertEquals(
                0, posts("55555", "55x55", "55x55", "55x55", "55x55", "55555").filledCount());
    }

    @Test
    void aHoleAtTheEdgeStays() {
        assertEquals(1, posts("x5555", "55555", "55555").voidCount());
        assertEquals(2, posts("55555", "5555x", "555x5", "55555").voidCount());
    }

    @Test
    void holesThatTouchAtACornerAreOne() {
        assertEquals(3, posts("55555", "5x555", "55x55", "555x5", "55555").filledCount());
        assertEquals(2, posts("555555", "5x5x55", "555555").filledCount(), "two holes of one post each");
        String[] fourDown = {"555555", "5x5555", "55x555", "555x55", "5555x5", "555555"};
        assertEquals(0, posts(fourDown).filledCount(), "one hole, four rows tall");
    }

    @Test
    void nothingOutsideTheRangeOfTheRimComesOut() {
        Random random = new Random(20260111);
        for (int trial = 0; trial < 300; trial++) {
            int side = 12;
            short[] heights = new short[side * side];
            int low = 9999;
            int high = -9999;
            for (int k = 0; k < heights.length; k++) {
                heights[k] = random.nextInt(8) == 0 ? X : (short) random.nextInt(3000);
                if (heights[k] == X) continue;
                low = Math.min(low, heights[k]);
                high = Math.max(high, heights[k]);
            }
            long voids = 0;
            for (short h : heights) if (h == X) voids++;
            ShortPosts posts = new ShortPosts(side, side, heights);
            assertEquals(voids, posts.voidCount() + posts.filledCount());
            assertTrue(posts.lowestM() >= low && posts.highestM() <= high);
        }
    }

    private static ShortPosts posts(String... rows) {
        int columns = rows[0].length();
        short[] heights = new short[rows.length * columns];
        for (int k = 0; k < heights.length; k++) {
            char c = rows[k / columns].charAt(k % columns);
            heights[k] = c == 'x' ? X : (short) ((c - '0') * 100);
        }
        return new ShortPosts(rows.length, columns, heights);
    }
}
