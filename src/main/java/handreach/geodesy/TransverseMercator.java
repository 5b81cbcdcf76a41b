package handreach.geodesy;

/**
 * The transverse Mercator projection of WGS 84 with unit scale, as a series in the third flattening.
 *
 * <p>Source: C. F. F. Karney, Transverse Mercator with an accuracy of a few nanometers, J. Geodesy 85 (2011): equations 7 to 9 for
 * the conformal latitude, 11 and 12 for the auxiliary sphere, 14 for the rectifying radius, 35 and 36 for the coefficients
 * (Krüger 1912, carried to the sixth order).
 */
final class TransverseMercator {
    private static final double A = 6_378_137;
    private static final double F = 1 / 298.257223563;
    private static final double N = F / (2 - F);
    private static final double E = Math.sqrt(F * (2 - F));
    private static final double ONE_MINUS_E2 = (1 - F) * (1 - F);
    private static final double RECTIFYING_RADIUS_M =
            A / (1 + N) * (1 + N * N / 4 + Math.pow(N, 4) / 64 + Math.pow(N, 6) / 256);

    /** Row j − 1 holds the powers of n in the coefficient of order j, beginning with n to the j. */
    private static final double[][] ALPHA_TERMS = {
        {1.0 / 2, -2.0 / 3, 5.0 / 16, 41.0 / 180, -127.0 / 288, 7891.0 / 37800},
        {13.0 / 48, -3.0 / 5, 557.0 / 1440, 281.0 / 630, -1983433.0 / 1935360},
        {61.0 / 240, -103.0 / 140, 15061.0 / 26880, 167603.0 / 181440},
        {49561.0 / 161280, -179.0 / 168, 6601661.0 / 7257600},
        {34729.0 / 80640, -3418889.0 / 1995840},
        {212378941.0 / 319334400},
    };

    private static final double[][] BETA_TERMS = {
        {1.0 / 2, -2.0 / 3, 37.0 / 96, -1.0 / 360, -81.0 / 512, 96199.0 / 604800},
        {1.0 / 48, 1.0 / 15, -437.0 / 1440, 46.0 / 105, -1118711.0 / 3870720},
        {17.0 / 480, -37.0 / 840, -209.0 / 4480, 5569.0 / 90720},
        {4397.0 / 161280, -11.0 / 504, -830251.0 / 7257600},
        {4583.0 / 161280, -108847.0 / 3991680},
        {20648693.0 / 638668800},
    };
    private static final double[] ALPHA = inFlattening(ALPHA_TERMS);
    private static final double[] BETA = inFlattening(BETA_TERMS);

    private TransverseMercator() {}

    private static double[] inFlattening(double[][] terms) {
        double[] sum = new double[terms.length];
        for (int j = 0; j < terms.length; j++)
            for (int k = 0; k < terms[j].length; k++) sum[j] += terms[j][k] * Math.pow(N, j + 1 + k);
        return sum;
    }

    static void project(double latitudeDeg, double fromMeridianDeg, double[] eastingNorthingM) {
        double lambda = Math.toRadians(fromMeridianDeg);
        double sinPhi = Math.sin(Math.toRadians(latitudeDeg));
        double cosPhi = Math.max(1e-16, Math.sqrt((1 - sinPhi) * (1 + sinPhi)));
        double tau = sinPhi / cosPhi;
        double sigma = Math.sinh(E * atanh(E * sinPhi));
        double conformal = tau * Math.sqrt(1 + sigma * sigma) - sigma / cosPhi;
        double cosLambda = Math.cos(lambda);
        double xi = Math.atan2(conformal, cosLambda);
        double eta = asinh(Math.sin(lambda) / Math.hypot(conformal, cosLambda));
        sum(ALPHA, 1, xi, eta, eastingNorthingM);
        eastingNorthingM[0] *= RECTIFYING_RADIUS_M;
        eastingNorthingM[1] *= RECTIFYING_RADIUS_M;
    }

    static void unproject(double eastingM, double northingM, double[] latLonDeg) {
        sum(BETA, -1, northingM / RECTIFYING_RADIUS_M, eastingM / RECTIFYING_RADIUS_M, latLonDeg);
        double eta = latLonDeg[0];
        double xi = latLonDeg[1];
        double sinhEta = Math.sinh(eta);
        double conformal = Math.sin(xi) / Math.hypot(sinhEta, Math.cos(xi));
        double tau = conformal;
        for (int i = 0; i < 6; i++) {
            double sec = Math.sqrt(1 + tau * tau);
            double sigma = Math.sinh(E * atanh(E * tau / sec));
            double now = tau * Math.sqrt(1 + sigma * sigma) - sigma * sec;
            double step = (conformal - now)
                    / Math.sqrt(1 + now * now)
                    * (1 + ONE_MINUS_E2 * tau * tau)
                    / (ONE_MINUS_E2 * sec);
            tau += step;
            if (!(Math.abs(step) > 1e-15 * Math.max(1, Math.abs(tau)))) break;
        }
        latLonDeg[0] = Math.toDegrees(Math.atan(tau));
        latLonDeg[1] = Math.toDegrees(Math.atan2(sinhEta, Math.cos(xi)));
    }

    /** ζ ± Σ c_j sin 2jζ for the complex ζ = ξ + iη by Clenshaw's recurrence; η first into the array, then ξ. */
    private static void sum(double[] c, int sign, double xi, double eta, double[] etaXi) {
        double sin = Math.sin(2 * xi);
        double cos = Math.cos(2 * xi);
        double sinh = Math.sinh(2 * eta);
        double cosh = Math.sqrt(1 + sinh * sinh);
        double ar = 2 * cos * cosh;
        double ai = -2 * sin * sinh;
        double br = 0;
        double bi = 0;
        double olderR = 0;
        double olderI = 0;
        for (int j = c.length - 1; j >= 0; j--) {
            double nextR = ar * br - ai * bi - olderR + c[j];
            double nextI = ar * bi + ai * br - olderI;
            olderR = br;
            olderI = bi;
            br = nextR;
            bi = nextI;
        }
        double sr = sin * cosh;
        double si = cos * sinh;
        etaXi[0] = eta + sign * (sr * bi + si * br);
        etaXi[1] = xi + sign * (sr * br - si * bi);
    }

    private static double atanh(double x) {
        return 0.5 * Math.log1p(2 * x / (1 - x));
    }

    private static double asinh(double x) {
        double y = Math.abs(x);
        return Math.copySign(Math.log1p(y + y * y / (1 + Math.sqrt(1 + y * y))), x);
    }
}
