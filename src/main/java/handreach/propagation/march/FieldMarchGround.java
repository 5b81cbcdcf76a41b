package handreach.propagation.march;

import handreach.profile.Profile;
import java.util.Arrays;

/**
 * The ground of a profile as facets for the field march: bent by the effective earth, neither too short nor too long.
 *
 * <p>Samples closer than two wavelengths are averaged (the wave does not resolve them, and turning the axes at each would cost
 * time without telling more); of heights between posts, of which there are many more than bends, one in each stretch is a corner
 * ({@link FieldMarchCorners}); facets longer than 250 m are cut, so that the bent earth stays smooth.
 */
final class FieldMarchGround {
    private static final double LONGEST_M = 250;
    private static final double SHORTEST_WAVELENGTHS = 2;
    /** The starting field stands on the first facet and is wrong by 0.7 dB two wavelengths from the source. */
    private static final double FIRST_WAVELENGTHS = 7;
    /** One corner in so many metres, or in each interval of the samples where these are closer: docs/full-wave.md. */
    private static final double CORNER_EVERY_M = 10;
    /** The same in lockstep, where each costs all radials a turn. */
    private static final double CORNER_TOGETHER_M = 20;
    /** Cosine of the greatest angle between ray and facet by which a column is lengthened (70 degrees), and of the least (20). */
    private static final double LEAST_ACROSS = 0.34;

    private static final double GENTLE_ACROSS = 0.94;

    private final double[] distanceM;
    private final double[] bentM;
    private final double[] slopeRad;
    private final double[] facetM;
    private final double lengthM;
    private final double reliefM;
    /** Slope, as rise over run, from a point to the horizon ahead and to the horizon behind; and height of the hull over it. */
    private final double[] ahead;

    private final double[] behind;
    private final double[] overM;

    private FieldMarchGround(double[] distanceM, double[] bentM, double lengthM) {
        this.distanceM = distanceM;
        this.bentM = bentM;
        this.lengthM = lengthM;
        double low = bentM[0];
        double high = bentM[0];
        double above = 0;
        int last = bentM.length - 1;
        double slope = (bentM[last] - bentM[0]) / distanceM[last];
        for (int i = 0; i <= last; i++) {
            low = Math.min(low, bentM[i]);
            high = Math.max(high, bentM[i]);
            double line = bentM[0] + slope * distanceM[i];
            above = Math.max(above, bentM[i] - line);
        }
        this.reliefM = Math.max(high - low, above);
        this.slopeRad = new double[last];
        this.facetM = new double[last];
        for (int f = 0; f < last; f++) {
            double rise = bentM[f + 1] - bentM[f];
            double run = distanceM[f + 1] - distanceM[f];
            slopeRad[f] = Math.atan2(rise, run);
            facetM[f] = Math.hypot(rise, run);
        }
        this.ahead = new double[last + 1];
        this.behind = new double[last + 1];
        this.overM = new double[last + 1];
        horizons();
    }

    /** Tangents from every point to the upper hull of what lies ahead and of what lies behind, in one sweep each. */
    private void horizons() {
        int n = bentM.length;
        int[] hull = new int[n];
        int top = 0;
        for (int i = n - 1; i >= 0; i--) {
            while (top > 1 && slope(i, hull[top - 1]) <= slope(i, hull[top - 2])) top--;
            ahead[i] = top > 0 ? slope(i, hull[top - 1]) : Double.NEGATIVE_INFINITY;
            hull[top++] = i;
        }
        for (int h = top - 1; h > 0; h--) {
            double slope = slope(hull[h], hull[h - 1]);
            for (int i = hull[h]; i <= hull[h - 1]; i++) {
                double highM = bentM[hull[h]] + slope * (distanceM[i] - distanceM[hull[h]]) - bentM[i];
                double hullRad = Math.atan(slope);
                for (int f = Math.max(0, i - 1); f <= Math.min(n - 2, i); f++) {
                    double across = Math.max(LEAST_ACROSS, Math.cos(hullRad - slopeRad(f)));
                    overM[i] = Math.max(overM[i], highM * Math.cos(hullRad) / across);
                }
            }
        }
        top = 0;
        for (int i = 0; i < n; i++) {
            while (top > 1 && slope(hull[top - 1], i) >= slope(hull[top - 2], i)) top--;
            behind[i] = top > 0 ? slope(hull[top - 1], i) : Double.POSITIVE_INFINITY;
            hull[top++] = i;
        }
    }

    private double slope(int from, int to) {
        return (bentM[to] - bentM[from]) / (distanceM[to] - distanceM[from]);
    }

    /**
     * @param afterM how far the last facet is carried on beyond the last sample, m
     */
    static FieldMarchGround of(Profile profile, double earthRadiusM, double wavelengthM, double afterM) {
        double[] x = distancesM(profile);
        double[] z = profile.dividedHeightsM();
        if (profile.parts() == 1) return averaged(x, z, earthRadiusM, wavelengthM, afterM);
        double intervalM = 1000 * profile.lengthKm() / (profile.count() - 1);
        return cornered(x, z, earthRadiusM, wavelengthM, Math.min(intervalM, CORNER_EVERY_M), afterM);
    }

    /** The ground of one of several radials in lockstep: of the same distances as many facets, one for one. */
    static FieldMarchGround together(double[] x, double[] z, double earthRadiusM, double wavelengthM, double afterM) {
        return cornered(x, z, earthRadiusM, wavelengthM, CORNER_TOGETHER_M, afterM);
    }

    /** Distances of all heights of a profile, m. */
    static double[] distancesM(Profile profile) {
        double[] x = profile.dividedKm();
        for (int i = 0; i < x.length; i++) x[i] *= 1000;
        return x;
    }

    /** Steepest slope between neighbouring heights of a profile, radians, before the earth bends it. */
    static double steepestRad(Profile profile) {
        double[] x = profile.dividedKm();
        double[] z = profile.dividedHeightsM();
        double steepest = 0;
        for (int i = 1; i < x.length; i++) steepest = Math.max(steepest, Math.abs(z[i] - z[i - 1]) / (x[i] - x[i - 1]));
        return Math.atan(steepest / 1000);
    }

    /** Facets between all samples that are not too close. */
    private static FieldMarchGround averaged(
            double[] x, double[] z, double earthRadiusM, double wavelengthM, double afterM) {
        double widthM = SHORTEST_WAVELENGTHS * wavelengthM;
        int[] kept = kept(x, FIRST_WAVELENGTHS * wavelengthM, widthM);
        return bent(at(kept, x), averaged(x, z, kept, widthM), earthRadiusM, afterM);
    }

    /**
     * Facets with one corner in each stretch of so many metres.
     *
     * @param everyM length of a stretch, m; four wavelengths at least are taken
     */
    private static FieldMarchGround cornered(
            double[] x, double[] z, double earthRadiusM, double wavelengthM, double everyM, double afterM) {
        double shortestM = SHORTEST_WAVELENGTHS * wavelengthM;
        int[] corners =
                FieldMarchCorners.of(x, z, FIRST_WAVELENGTHS * wavelengthM, Math.max(everyM, 2 * shortestM), shortestM);
        return bent(at(corners, x), at(corners, z), earthRadiusM, afterM);
    }

    private static double[] at(int[] indices, double[] values) {
        return Arrays.stream(indices).mapToDouble(i -> values[i]).toArray();
    }

    /** Indices of samples at least the shortest facet apart; first and last always, and no stub before the last. */
    private static int[] kept(double[] x, double firstM, double shortestM) {
        int[] kept = new int[x.length];
        int count = 1;
        int last = x.length - 1;
        double next = x[0] + firstM;
        for (int i = 1; i < last; i++) {
            if (x[i] >= next && x[last] - x[i] >= shortestM) {
                kept[count++] = i;
                next = x[i] + shortestM;
            }
        }
        kept[count++] = last;
        return Arrays.copyOf(kept, count);
    }

    /** Mean of the polyline over one shortest facet around each kept sample that stands closer to a dropped one. */
    private static double[] averaged(double[] x, double[] z, int[] kept, double widthM) {
        double[] area = new double[x.length];
        for (int i = 1; i < x.length; i++) area[i] = area[i - 1] + 0.5 * (z[i] + z[i - 1]) * (x[i] - x[i - 1]);
        double[] mean = new double[kept.length];
        for (int i = 0; i < kept.length; i++) {
            int at = kept[i];
            boolean isEnd = i == 0 || i == kept.length - 1;
            boolean isAlone = !isEnd && kept[i - 1] == at - 1 && kept[i + 1] == at + 1;
            if (isEnd || isAlone) {
                mean[i] = z[at];
            } else {
                double half = Math.min(0.5 * widthM, Math.min(x[at] - x[0], x[x.length - 1] - x[at]));
                mean[i] = (areaTo(x, z, area, x[at] + half) - areaTo(x, z, area, x[at] - half)) / (2 * half);
            }
        }
        return mean;
    }

    private static double areaTo(double[] x, double[] z, double[] area, double toM) {
        int at = Arrays.binarySearch(x, toM);
        if (at >= 0) return area[at];
        int right = Math.min(x.length - 1, Math.max(1, -at - 1));
        double dx = toM - x[right - 1];
        double slope = (z[right] - z[right - 1]) / (x[right] - x[right - 1]);
        return area[right - 1] + dx * (z[right - 1] + 0.5 * slope * dx);
    }

    private static FieldMarchGround bent(double[] x, double[] z, double earthRadiusM, double afterM) {
        int facets = 0;
        for (int i = 1; i < x.length; i++) facets += pieces(x[i] - x[i - 1]);
        double[] outX = new double[facets + 1];
        double[] outZ = new double[facets + 1];
        outZ[0] = z[0];
        int to = 0;
        for (int i = 1; i < x.length; i++) {
            int pieces = pieces(x[i] - x[i - 1]);
            for (int p = 1; p <= pieces; p++) {
                double share = (double) p / pieces;
                double at = x[i - 1] + share * (x[i] - x[i - 1]);
                outX[++to] = at;
                outZ[to] = z[i - 1] + share * (z[i] - z[i - 1]) - at * at / (2 * earthRadiusM);
            }
        }
        double slope = (outZ[to] - outZ[to - 1]) / (outX[to] - outX[to - 1]);
        double lengthM = outX[to];
        outX[to] += afterM;
        outZ[to] += slope * afterM;
        return new FieldMarchGround(outX, outZ, lengthM);
    }

    private static int pieces(double facetM) {
        return Math.max(1, (int) Math.ceil(facetM / LONGEST_M));
    }

    int facets() {
        return distanceM.length - 1;
    }

    /** Distance of the start of a facet, m. */
    double startM(int facet) {
        return distanceM[facet];
    }

    /** Height of the start of a facet in axes where rays are straight, m. */
    double startHeightM(int facet) {
        return bentM[facet];
    }

    /** Slope of a facet, radians, above 0 where the ground rises. */
    double slopeRad(int facet) {
        return slopeRad[facet];
    }

    /** Length along a facet, m. */
    double facetM(int facet) {
        return facetM[facet];
    }

    /** Length of the profile without the run beyond its end, m. */
    double lengthM() {
        return lengthM;
    }

    /**
     * Greatest angle to a facet of rays that pass over the whole of it, from ground before it to ground behind it: such a ray is
     * no steeper than the line from the start of the facet to the horizon ahead, nor than that from the horizon behind to its end.
     */
    double raysRad(int facet) {
        double slope = slopeRad(facet);
        return Math.max(Math.atan(ahead[facet]) - slope, slope - Math.atan(behind[facet + 1]));
    }

    /** How far, along the normal of the facets that meet at a point, the straight lines between ground and ground reach, m. */
    double overM(int point) {
        return overM[point];
    }

    /** Height of a column that holds all rays between ground and ground with some air above them, m over the facet. */
    double columnM(double airM) {
        double most = reliefM + airM;
        for (int f = 0; f < facets(); f++) most = Math.max(most, columnM(f, airM));
        return most;
    }

    /** The same of one facet, m: what its own rays between ground and ground ask for. */
    double columnM(int facet, double airM) {
        double across = Math.max(LEAST_ACROSS, Math.cos(raysRad(facet)));
        double air = airM * Math.max(1, GENTLE_ACROSS / across);
        return Math.max(overM[facet], overM[facet + 1]) + air;
    }

    /** First facet steeper than an angle; the number of facets where there is none. */
    int firstSteeper(double angleRad) {
        int f = 0;
        while (f < facets() && Math.abs(slopeRad(f)) <= angleRad) f++;
        return f;
    }

    double steepestRad() {
        double steepest = 0;
        for (int i = 0; i < facets(); i++) steepest = Math.max(steepest, Math.abs(slopeRad(i)));
        return steepest;
    }
}
