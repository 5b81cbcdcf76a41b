package handreach.desktop;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/** The part of the map on which nothing lies, for a picture of a given shape. */
final class MapRoom {
    /** What is left is never less than this, px: less than that nobody can read anyway. */
    private static final double LEAST_PX = 60;

    private MapRoom() {}

    /** The room in which a picture so wide and high, in any unit, comes out largest. */
    static Envelope free(Envelope map, List<Envelope> over, double wide, double high) {
        Envelope best = map;
        double largest = -1;
        for (Envelope room : rooms(map, over)) {
            double scale = Math.min(room.getWidth() / wide, room.getHeight() / high);
            if (scale <= largest) continue;
            largest = scale;
            best = room;
        }
        return best;
    }

    /** Each sheet cuts one side off: all ways to do so. */
    private static List<Envelope> rooms(Envelope map, List<Envelope> over) {
        List<Envelope> rooms = List.of(map);
        for (Envelope sheet : over) {
            List<Envelope> cut = new ArrayList<>();
            for (Envelope room : rooms) {
                if (!room.intersects(sheet)) {
                    cut.add(room);
                    continue;
                }
                add(cut, room.getMinX(), room.getMaxX(), sheet.getMaxY(), room.getMaxY());
                add(cut, room.getMinX(), room.getMaxX(), room.getMinY(), sheet.getMinY());
                add(cut, sheet.getMaxX(), room.getMaxX(), room.getMinY(), room.getMaxY());
                add(cut, room.getMinX(), sheet.getMinX(), room.getMinY(), room.getMaxY());
            }
            rooms = cut;
        }
        return rooms;
    }

    private static void add(List<Envelope> rooms, double west, double east, double north, double south) {
        if (east - west >= LEAST_PX && south - north >= LEAST_PX) rooms.add(new Envelope(west, east, north, south));
    }
}
