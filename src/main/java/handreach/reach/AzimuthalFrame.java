package handreach.reach;

import handreach.geodesy.Position;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.QRDecomposition;

/**
 * The azimuthal equidistant plane round a source: x east and y north are geodesic distance times sine and cosine of the azimuth,
 * so that every radial is a straight line through the origin. Both ways are polynomials fitted to exact geodesics, since an area
 * asks for millions of positions.
 */
final class AzimuthalFrame {
    static final int DEGREE = 7;
    private static final int TERMS = (DEGREE + 1) * (DEGREE + 2) / 2;
    private static final int RINGS = 8;
    private static final int SPOKES = 20;
    /** Error that no area may exceed, m: a fiftieth of the smallest sample spacing. */
    private static final double ALLOWED_ERROR_M = 0.05;

    /** The one fitted last: rose and maps of a study ask for the same. */
    private static volatile AzimuthalFrame latest;

    private final Position source;
    private final double radiusM;
    private final double latitudeSpanDeg;
    private final double longitudeSpanDeg;
    private final double[] latitudeTerm;
    private final double[] longitudeTerm;
    private final double[] eastTerm;
    private final double[] northTerm;

    /** The plane round a source; as fitted by {@link #AzimuthalFrame}, and refused like there. */
    static AzimuthalFrame of(Position source, double radiusM) {
        AzimuthalFrame known = latest;
        if (known != null && known.source.equals(source) && known.radiusM == radiusM) return known;
        return latest = new AzimuthalFrame(source, radiusM);
    }

    /**
     * Fits the plane.
     *
     * @shape  161 geodesics, four fits of 36 terms
     * @unit   radius m
     * @valid  up to 120 km from the source and 83° of latitude; nearer the pole, where the coordinates are no longer smooth:
     *     IllegalArgumentException
     * @error  below 1 mm to 75° and 60 km, below 5 cm everywhere else; measured at the nodes of the fit
     * @source least squares over geodesics after C. F. F. Karney, J. Geodesy 87 (2013), through GeographicLib
     */
    AzimuthalFrame(Position source, double radiusM) {
        this.source = source;
        this.radiusM = radiusM;
        int nodes = RINGS * SPOKES + 1;
        double[][] at = new double[nodes][2];
        double[] north = new double[nodes];
        double[] east = new double[nodes];
        int n = 1;
        for (int ring = 1; ring <= RINGS; ring++) {
            double share = Math.sin(Math.PI * ring / (2 * RINGS));
            for (int spoke = 0; spoke < SPOKES; spoke++, n++) {
                double azimuth = 2 * Math.PI * (spoke + (ring & 1) * 0.5) / SPOKES;
                at[n][0] = share * Math.sin(azimuth);
                at[n][1] = share * Math.cos(azimuth);
                GeodesicData there = Geodesic.WGS84.Direct(
                        source.latitudeDeg(),
                        source.longitudeDeg(),
                        Math.toDegrees(azimuth),
                        share * radiusM,
                        GeodesicMask.LATITUDE | GeodesicMask.LONGITUDE | GeodesicMask.LONG_UNROLL);
                north[n] = there.lat2 - source.latitudeDeg();
                east[n] = there.lon2 - source.longitudeDeg();
            }
        }
        latitudeSpanDeg = span(north);
        longitudeSpanDeg = span(east);
        double[][] place = new double[nodes][2];
        for (int i = 0; i < nodes; i++) {
            place[i][0] = east[i] / longitudeSpanDeg;
            place[i][1] = north[i] / latitudeSpanDeg;
        }
        DecompositionSolver forward = solver(at);
        DecompositionSolver back = solver(place);
        latitudeTerm = fit(forward, north);
        longitudeTerm = fit(forward, east);
        eastTerm = fit(back, column(at, 0));
        northTerm = fit(back, column(at, 1));
        double metresPerDegree = radiusM / latitudeSpanDeg;
        double error = Math.max(
                Math.max(
                        worst(latitudeTerm, at, north) * metresPerDegree,
                        worst(longitudeTerm, at, east)
                                * metresPerDegree
                                * Math.cos(Math.toRadians(source.latitudeDeg()))),
                Math.max(worst(eastTerm, place, column(at, 0)), worst(northTerm, place, column(at, 1))) * radiusM);
        if (!(error < ALLOWED_ERROR_M))
            throw new IllegalArgumentException(
                    "an area of " + radiusM + " m round latitude " + source.latitudeDeg() + " lies too near the pole");
    }

    Position source() {
        return source;
    }

    double radiusM() {
        return radiusM;
    }

    /** Metres in a degree of latitude near the source. */
    double metresPerDegree() {
        return radiusM / latitudeSpanDeg;
    }

    /** Latitude and longitude along an azimuth as powers of the share of the radius; each array holds {@code DEGREE + 1}. */
    void along(double sine, double cosine, double[] latitudePower, double[] longitudePower) {
        int term = 0;
        double east = 1;
        for (int total = 0; total <= DEGREE; total++) {
            // the terms of one degree run from east^total to north^total
            double latitude = 0;
            double longitude = 0;
            double product = east;
            for (int j = 0; j <= total; j++, term++) {
                double factor =
                        Math.abs(sine) > 1e-3 ? product : integerPower(sine, total - j) * integerPower(cosine, j);
                latitude += latitudeTerm[term] * factor;
                longitude += longitudeTerm[term] * factor;
                product *= cosine / sine;
            }
            latitudePower[total] = latitude;
            longitudePower[total] = longitude;
            east *= sine;
        }
        latitudePower[0] = source.latitudeDeg();
        longitudePower[0] = source.longitudeDeg();
    }

    /** Terms of x and y (in shares of the radius) over longitude for one latitude; each array holds {@code DEGREE + 1}. */
    void acrossLatitude(double latitudeDeg, double[] eastPower, double[] northPower) {
        double v = (latitudeDeg - source.latitudeDeg()) / latitudeSpanDeg;
        int term = 0;
        for (int k = 0; k <= DEGREE; k++) {
            eastPower[k] = 0;
            northPower[k] = 0;
        }
        for (int total = 0; total <= DEGREE; total++) {
            double power = 1;
            for (int j = 0; j <= total; j++, term++) {
                eastPower[total - j] += eastTerm[term] * power;
                northPower[total - j] += northTerm[term] * power;
                power *= v;
            }
        }
    }

    /** The variable of {@link #acrossLatitude}: longitude from the source in spans. */
    double longitudeShare(double longitudeDeg) {
        double east = longitudeDeg - source.longitudeDeg();
        if (east > 180) east -= 360;
        if (east < -180) east += 360;
        return east / longitudeSpanDeg;
    }

    /** Whether the latitude lies within the fit, with a margin of a fifth. */
    boolean reachesLatitude(double latitudeDeg) {
        return Math.abs(latitudeDeg - source.latitudeDeg()) <= 1.2 * latitudeSpanDeg;
    }

    static double value(double[] power, double t) {
        double sum = power[DEGREE];
        for (int k = DEGREE - 1; k >= 0; k--) sum = sum * t + power[k];
        return sum;
    }

    private static double integerPower(double base, int exponent) {
        double result = 1;
        for (int i = 0; i < exponent; i++) result *= base;
        return result;
    }

    private static void basis(double u, double v, double[] row) {
        int term = 0;
        for (int total = 0; total <= DEGREE; total++)
            for (int j = 0; j <= total; j++, term++) row[term] = integerPower(u, total - j) * integerPower(v, j);
    }

    private static DecompositionSolver solver(double[][] at) {
        double[][] rows = new double[at.length][TERMS];
        for (int i = 0; i < at.length; i++) basis(at[i][0], at[i][1], rows[i]);
        return new QRDecomposition(new Array2DRowRealMatrix(rows, false)).getSolver();
    }

    private static double[] fit(DecompositionSolver solver, double[] values) {
        return solver.solve(new org.apache.commons.math3.linear.ArrayRealVector(values, false))
                .toArray();
    }

    private static double worst(double[] terms, double[][] at, double[] values) {
        double worst = 0;
        double[] row = new double[TERMS];
        for (int i = 0; i < at.length; i++) {
            basis(at[i][0], at[i][1], row);
            double sum = 0;
            for (int k = 0; k < TERMS; k++) sum += terms[k] * row[k];
            worst = Math.max(worst, Math.abs(sum - values[i]));
        }
        return worst;
    }

    private static double[] column(double[][] table, int k) {
        double[] values = new double[table.length];
        for (int i = 0; i < values.length; i++) values[i] = table[i][k];
        return values;
    }

    private static double span(double[] values) {
        double span = 0;
        for (double value : values) span = Math.max(span, Math.abs(value));
        return span;
    }
}
