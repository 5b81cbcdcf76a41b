package handreach.report.figure;

import handreach.cartography.LoadoutMark;
import java.util.List;

/**
 * Reach of one loadout all round.
 *
 * @param mark how it is told from the others
 * @param name what the user calls it
 * @param points by rising bearing
 * @param showsInterval whether its interval is drawn as a band
 */
public record RoseTrace(LoadoutMark mark, String name, List<RosePoint> points, boolean showsInterval) {
    public RoseTrace {
        points = List.copyOf(points);
        if (points.size() < 3) throw new IllegalArgumentException("a rose of " + points.size() + " bearings");
        for (int i = 1; i < points.size(); i++)
            if (!(points.get(i).bearingDeg() > points.get(i - 1).bearingDeg()))
                throw new IllegalArgumentException("bearings of a rose must rise");
    }
}
