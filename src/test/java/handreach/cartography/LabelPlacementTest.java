package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

/** Names of 60 by 16 px beside marks of 12 by 12 px on a map of 400 by 300 px. */
class LabelPlacementTest {
    private static final Envelope WINDOW = new Envelope(0, 400, 0, 300);

    private static Envelope mark(double x, double y) {
        return new Envelope(x - 6, x + 6, y - 6, y + 6);
    }

    private static Envelope box(double left, double top) {
        return new Envelope(left, left + 60, top, top + 16);
    }

    private static LabelPlacement with(Envelope... taken) {
        LabelPlacement labels = new LabelPlacement(WINDOW);
        for (Envelope each : taken) labels.keepFree(each);
        return labels;
    }

    /** By hand: five pixels right of the mark, or corner to corner, or two pixels above and below it. */
    @Test
    void theEightPlacesAreTriedInTheirOrder() {
        Envelope at = mark(200, 150);
        List<Envelope> places = List.of(
                box(211, 142),
                box(206, 128),
                box(206, 156),
                box(129, 142),
                box(134, 128),
                box(134, 156),
                box(170, 126),
                box(170, 158));
        LabelPlacement labels = with(at);
        for (int i = 0; i < places.size(); i++) {
            LabelPlacement others = with(at);
            for (int k = 0; k < i; k++) others.keepFree(spot(places.get(k), i));
            assertEquals(places.get(i), others.place(at, 60, 16), "place " + i);
        }
        assertEquals(places.get(0), labels.place(at, 60, 16));
    }

    /** A pixel in a place that spoils no other place: the end that lies farthest from the mark, at the outer edge. */
    private static Envelope spot(Envelope place, int wanted) {
        boolean isRight = place.getMinX() > 200;
        boolean isBeside = place.getMinY() == 142;
        double x = place.getMinX() == 170 ? 200 : isRight ? place.getMaxX() - 1 : place.getMinX() + 1;
        double y = isBeside ? 150 : place.getMinY() < 142 ? place.getMinY() + 1 : place.getMaxY() - 1;
        assertTrue(wanted > 0);
        return new Envelope(x - 0.4, x + 0.4, y - 0.4, y + 0.4);
    }

    @Test
    void aNameCoversNeitherAMarkNorAnEarlierNameNorTheKey() {
        Envelope first = mark(200, 150);
        Envelope near = mark(240, 150);
        Envelope key = new Envelope(300, 400, 100, 300);
        LabelPlacement labels = with(first, near, key);
        List<Envelope> placed = new ArrayList<>();
        placed.add(labels.place(first, 60, 16));
        placed.add(labels.place(near, 60, 16));
        for (Envelope name : placed)
            for (Envelope other : List.of(first, near, key))
                assertEquals(0, name.intersection(other).getArea());
        assertEquals(0, placed.get(0).intersection(placed.get(1)).getArea());
    }

    @Test
    void atTheRimANameStaysOnTheMap() {
        for (double x : new double[] {6, 200, 394})
            for (double y : new double[] {6, 150, 294}) {
                Envelope at = mark(x, y);
                assertTrue(WINDOW.contains(with(at).place(at, 60, 16)), x + ", " + y);
            }
    }

    /** All eight places are spoilt, one of them by a single pixel. */
    @Test
    void whereAllIsTakenTheLeastIsCovered() {
        Envelope at = mark(200, 150);
        LabelPlacement labels = with(
                at,
                new Envelope(206, 400, 0, 300),
                new Envelope(0, 400, 0, 140),
                new Envelope(0, 400, 160, 300),
                new Envelope(140, 141, 150, 151));
        assertEquals(box(129, 142), labels.place(at, 60, 16));
    }

    /** Law, over seeded random marks: the same in, the same out; and where the first place is free it is taken. */
    @Test
    void theSameMarksGetTheSamePlaces() {
        for (int world = 0; world < 50; world++) {
            List<Envelope> once = random(world);
            assertEquals(once, random(world), "seed " + world);
            assertNotEquals(once, random(world + 1000), "seed " + world);
        }
    }

    private static List<Envelope> random(int seed) {
        Random random = new Random(seed);
        List<Envelope> marks = new ArrayList<>();
        for (int i = 0; i < 12; i++) marks.add(mark(400 * random.nextDouble(), 300 * random.nextDouble()));
        LabelPlacement labels = with(marks.toArray(new Envelope[0]));
        return marks.stream().map(each -> labels.place(each, 60, 16)).toList();
    }

    /** By hand: a line to the right spoils the place there, and the upper right is the next. */
    @Test
    void aNameKeepsClearOfALineAndRunsUnderNothing() {
        Envelope at = mark(200, 150);
        LabelPlacement labels = with(at);
        labels.keepFree(200, 150, 400, 150);
        assertEquals(Optional.of(box(206, 128)), labels.placeApart(at, 60, 16, false));
        LabelPlacement closed = with(at);
        closed.close(new Envelope(203, 400, 0, 300));
        assertEquals(Optional.of(box(129, 142)), closed.placeApart(at, 60, 16, false));
        closed.close(new Envelope(0, 400, 0, 300));
        assertEquals(Optional.empty(), closed.placeApart(at, 60, 16, false));
    }

    /** A tight ring round the mark takes all places beside it: the name goes farther off, or covers least if it must. */
    @Test
    void whereAllPlacesBesideAreTakenANameGoesFartherOffAndALesserOneIsLeftOut() {
        Envelope at = mark(200, 150);
        List<Envelope> beside = List.of(
                new Envelope(206, 214, 120, 180), new Envelope(186, 194, 120, 180), new Envelope(186, 214, 130, 140));
        LabelPlacement labels = with(beside.toArray(new Envelope[0]));
        labels.keepFree(at);
        Envelope farther = labels.placeApart(at, 60, 16, true).orElseThrow();
        assertTrue(farther.getMinX() > 214, farther.toString());
        LabelPlacement full = with(new Envelope(0, 400, 0, 300));
        assertEquals(Optional.empty(), full.placeApart(at, 60, 16, true));
        assertTrue(full.placeApart(at, 60, 16, false).isPresent());
    }

    /** By hand: five lines across cross all sixteen places near the mark, the next above them is free; four more cross that too. */
    @Test
    void aNameGoesFartherStillWhereLinesCrossAllPlacesNearAndALesserOneIsNeverCrossed() {
        Envelope at = mark(200, 150);
        LabelPlacement labels = with(at);
        for (int y : new int[] {123, 136, 150, 164, 177}) labels.keepFree(0, y, 400, y);
        Envelope farther = labels.placeApart(at, 60, 16, false).orElseThrow();
        assertTrue(farther.getMaxY() < 123 && farther.getMinY() > 90, farther.toString());
        LabelPlacement crowded = with(at);
        for (int y = 60; y < 240; y += 13) crowded.keepFree(0, y, 400, y);
        assertEquals(Optional.empty(), crowded.placeApart(at, 60, 16, true));
        assertTrue(crowded.placeApart(at, 60, 16, false).isPresent());
    }

    @Test
    void noNameRunsThroughAnotherHoweverManyThereAre() {
        Random random = new Random(5);
        LabelPlacement labels = with();
        List<Envelope> placed = new ArrayList<>();
        for (int i = 0; i < 80; i++)
            labels.placeApart(mark(400 * random.nextDouble(), 300 * random.nextDouble()), 60, 16, i % 2 == 0)
                    .ifPresent(placed::add);
        assertTrue(placed.size() > 20 && placed.size() < 80, placed.size() + " of 80");
        for (int i = 0; i < placed.size(); i++)
            for (int k = 0; k < i; k++)
                assertEquals(0, placed.get(i).intersection(placed.get(k)).getArea());
    }

    @Test
    void aSizeThatIsNoneIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> with().place(mark(1, 1), Double.NaN, 16));
        assertThrows(IllegalArgumentException.class, () -> with().place(mark(1, 1), 60, -1));
    }
}
