package handreach.reach;

import handreach.geodesy.Position;
import handreach.uncertainty.Interval;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What one link reaches of the ground beside another, and where the difference lies.
 *
 * @param control share of the known ground that the first link reaches with the wanted odds, 0 to 1
 * @param share the same of the second
 * @param gain95 95 % interval of the second less the first, from the doubt of their difference alone
 * @param knownM2 known ground within the radius, m²
 * @param sides ground that only the one with more of it reaches, by the nearest place and the side of it, most first
 */
public record GroundGain(double control, double share, Interval gain95, double knownM2, List<Side> sides) {
    private static final int POINTS = 8;
    private static final double METRES_PER_DEGREE = 111_320;

    /**
     * Ground on one side of a place.
     *
     * @param place number of the place that is nearest
     * @param bearingDeg middle of the eighth of the compass in which it lies, seen from there
     * @param areaM2 how much, m²
     */
    public record Side(int place, double bearingDeg, double areaM2) {}

    public GroundGain {
        sides = List.copyOf(sides);
    }

    /** Second less first, a share of the known ground. */
    public double gain() {
        return share - control;
    }

    /**
     * Over the cells of maps, each against the first. The margins of the first are worked out once for all.
     *
     * @shape  a grid, and k others in; k answers in their order out; O(cells × (k + places)), pure
     * @unit   odds 0 to 1; shares 0 to 1, m²
     * @valid  all over the same grid, at least one place; cells known to both count
     * @error  that of the odds; sides are named in a plane about the source, to about a degree within 100 km
     * @source docs/definitions.md; JCGM 100:2008, 5.2.2: what both links share cancels in their difference
     */
    public static List<GroundGain> of(OddsGrid control, List<OddsGrid> others, double odds, List<Position> places) {
        CellGrid grid = control.grid();
        List<Tally> tallies = new ArrayList<>();
        for (OddsGrid other : others) {
            if (!grid.equals(other.grid())) throw new IllegalArgumentException("links over different grids");
            tallies.add(new Tally(control.link(), other.link(), odds, places));
        }
        double[] controlDb = new double[grid.columns()];
        double[] otherDb = new double[grid.columns()];
        for (int row = 0; row < grid.rows(); row++) {
            control.marginsDb(grid.index(row, 0), controlDb.length, controlDb);
            for (int k = 0; k < tallies.size(); k++) {
                others.get(k).marginsDb(grid.index(row, 0), otherDb.length, otherDb);
                tallies.get(k).row(grid, row, controlDb, otherDb);
            }
        }
        List<GroundGain> gains = new ArrayList<>();
        for (Tally tally : tallies) gains.add(tally.gain());
        return gains;
    }

    /**
     * Along bearings, where each sample stands for the ring of ground round it.
     *
     * @shape  losses of two links along the same bearings in; O(samples × places), pure
     * @unit   odds 0 to 1; shares 0 to 1, m²
     * @valid  losses for each link's antenna heights, at least one place; samples known to both count
     * @error  as {@link #of(OddsGrid, List, double, List)}, and what lies between bearings
     * @source docs/definitions.md
     */
    public static GroundGain of(
            BearingLosses controlLosses,
            ReachLink control,
            BearingLosses otherLosses,
            ReachLink other,
            double odds,
            List<Position> places) {
        Tally tally = new Tally(control, other, odds, places);
        Position source = controlLosses.request().source();
        double half = Math.toRadians(controlLosses.request().stepDeg()) / 2;
        double narrowing = Math.cos(Math.toRadians(source.latitudeDeg()));
        for (int k = 0; k < controlLosses.radials().size(); k++) {
            RadialLosses first = controlLosses.radials().get(k);
            RadialLosses second = otherLosses.radials().get(k);
            double[] a = first.marginsDb(control);
            double[] b = second.marginsDb(other);
            double cos = Math.cos(Math.toRadians(first.bearingDeg()));
            double sin = Math.sin(Math.toRadians(first.bearingDeg()));
            int known = Math.min(first.knownCount(), second.knownCount());
            for (int i = 0; i < known; i++) {
                double areaM2 = half * first.ringM2(i);
                if (areaM2 == 0 || !tally.tellsApart(areaM2, a[i], b[i])) continue;
                double north = first.distanceM(i) * cos / METRES_PER_DEGREE;
                double east = first.distanceM(i) * sin / METRES_PER_DEGREE / narrowing;
                tally.side(areaM2, b[i], source.latitudeDeg() + north, source.longitudeDeg() + east);
            }
        }
        return tally.gain();
    }

    private static final class Tally {
        private final double controlDb;
        private final double otherDb;
        private final double shiftDb;
        private final List<Position> places;
        private final double[][] bought;
        private final double[][] lost;
        private double known;
        private double control;
        private double value;
        private double low;
        private double high;

        Tally(ReachLink control, ReachLink other, double odds, List<Position> places) {
            if (places.isEmpty()) throw new IllegalArgumentException("no place to tell sides by");
            this.controlDb = control.thresholdDb(odds);
            this.otherDb = other.thresholdDb(odds);
            this.shiftDb = Interval.COVERAGE_95 * other.differenceDoubtDb(control);
            this.places = places;
            this.bought = new double[places.size()][POINTS];
            this.lost = new double[places.size()][POINTS];
        }

        /** Counts a row of cells; NaN is what is not known. */
        void row(CellGrid grid, int row, double[] controlMarginDb, double[] otherMarginDb) {
            double areaM2 = grid.cellM() * grid.cellM();
            for (int i = 0; i < otherMarginDb.length; i++)
                if (!Double.isNaN(controlMarginDb[i])
                        && !Double.isNaN(otherMarginDb[i])
                        && tellsApart(areaM2, controlMarginDb[i], otherMarginDb[i]))
                    side(areaM2, otherMarginDb[i], grid.latitudeOf(row), grid.longitudeOf(i));
        }

        /** Counts ground, and says whether it is reached by one of the two alone. */
        boolean tellsApart(double areaM2, double controlMarginDb, double otherMarginDb) {
            boolean isControl = controlMarginDb >= controlDb;
            boolean isOther = otherMarginDb >= otherDb;
            known += areaM2;
            if (isControl) control += areaM2;
            if (isOther) value += areaM2;
            if (otherMarginDb >= otherDb + shiftDb) low += areaM2;
            if (otherMarginDb >= otherDb - shiftDb) high += areaM2;
            return isControl != isOther;
        }

        /** Counts ground that one of the two alone reaches to the side on which it lies. */
        void side(double areaM2, double otherMarginDb, double latitudeDeg, double longitudeDeg) {
            double[][] sum = otherMarginDb >= otherDb ? bought : lost;
            double narrowing = Math.cos(Math.toRadians(latitudeDeg));
            int nearest = 0;
            double least = Double.POSITIVE_INFINITY;
            double bearingDeg = 0;
            for (int p = 0; p < places.size(); p++) {
                double north = latitudeDeg - places.get(p).latitudeDeg();
                double east = Math.IEEEremainder(longitudeDeg - places.get(p).longitudeDeg(), 360) * narrowing;
                double square = north * north + east * east;
                if (square >= least) continue;
                least = square;
                nearest = p;
                bearingDeg = Math.toDegrees(Math.atan2(east, north));
            }
            sum[nearest][(int) Math.floorMod(Math.round(bearingDeg * POINTS / 360), (long) POINTS)] += areaM2;
        }

        GroundGain gain() {
            double all = known > 0 ? known : 1;
            double[][] sum = value >= control ? bought : lost;
            List<Side> sides = new ArrayList<>();
            for (int p = 0; p < sum.length; p++)
                for (int k = 0; k < POINTS; k++)
                    if (sum[p][k] > 0) sides.add(new Side(p, 360.0 / POINTS * k, sum[p][k]));
            sides.sort(Comparator.comparingDouble(Side::areaM2).reversed());
            return new GroundGain(
                    control / all,
                    value / all,
                    new Interval((low - control) / all, (high - control) / all),
                    known,
                    sides);
        }
    }
}
