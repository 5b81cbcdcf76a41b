package handreach.geodesy;

/** Polynomials through the Chebyshev–Lobatto points of a stretch, and how high their degree must be to follow a geodesic. */
final class LinePolynomial {
    private static final int[] DEGREES = {3, 4, 6, 8};
    private static final double ALLOWED_ERROR_M = 2e-5;
    private static final double METRES_PER_DEGREE = 111_000;
    private static final LinePolynomial[] BY_DEGREE = new LinePolynomial[DEGREES[DEGREES.length - 1] + 1];

    static {
        for (int degree : DEGREES) BY_DEGREE[degree] = new LinePolynomial(degree);
    }

    private final double[] node;
    private final double[][] toPower;

    private LinePolynomial(int degree) {
        node = new double[degree + 1];
        for (int j = 0; j <= degree; j++) node[j] = -Math.cos(Math.PI * j / degree);
        toPower = new double[degree + 1][degree + 1];
        for (int j = 0; j <= degree; j++) {
            double[] basis = lagrange(j);
            for (int k = 0; k <= degree; k++) toPower[k][j] = basis[k];
        }
    }

    /** Powers of the polynomial that is 1 at node j and 0 at the others. */
    private double[] lagrange(int j) {
        double[] p = new double[node.length];
        p[0] = 1;
        int degree = 0;
        for (int i = 0; i < node.length; i++) {
            if (i == j) continue;
            double scale = 1 / (node[j] - node[i]);
            degree++;
            for (int k = degree; k >= 0; k--) p[k] = ((k > 0 ? p[k - 1] : 0) - node[i] * p[k]) * scale;
        }
        return p;
    }

    static LinePolynomial of(int degree) {
        return BY_DEGREE[degree];
    }

    /**
     * The least degree that keeps the error small; 0 if none does. The coordinates are smooth up to the pole, so with p the
     * distance to it a polynomial of degree n over a stretch of length L errs by about 2 p (L/4p)^(n+1).
     */
    static int degree(double fromLatitudeDeg, double toLatitudeDeg, double lengthM) {
        double highest = Math.max(Math.abs(fromLatitudeDeg), Math.abs(toLatitudeDeg));
        double toPoleM = (90 - highest) * METRES_PER_DEGREE - lengthM / 8;
        if (toPoleM <= lengthM) return 0;
        double ratio = lengthM / (4 * toPoleM);
        for (int degree : DEGREES) if (2 * toPoleM * Math.pow(ratio, degree + 1) < ALLOWED_ERROR_M) return degree;
        return 0;
    }

    int degree() {
        return node.length - 1;
    }

    /** Node j, from −1 at the start to 1 at the end. */
    double node(int j) {
        return node[j];
    }

    /** Powers of the polynomial through the values at the nodes. */
    double[] coefficients(double[] value) {
        double[] power = new double[node.length];
        for (int k = 0; k < power.length; k++) {
            double sum = 0;
            for (int j = 0; j < node.length; j++) sum += toPower[k][j] * value[j];
            power[k] = sum;
        }
        return power;
    }

    /** Values at {@code count} equally spaced places from −1 to 1, added to an origin. */
    static void evaluate(double[] power, double origin, int count, double[] out) {
        double step = 2.0 / (count - 1);
        switch (power.length) {
            case 4 -> cubic(power[0] + origin, power[1], power[2], power[3], step, count, out);
            case 5 -> quartic(power, origin, step, count, out);
            default -> general(power, origin, step, count, out);
        }
    }

    /** Spelled out, since a loop without an inner loop is what the compiler turns into vector code. */
    private static void cubic(double a, double b, double c, double d, double step, int count, double[] out) {
        for (int i = 0; i < count; i++) {
            double x = -1 + i * step;
            out[i] = ((d * x + c) * x + b) * x + a;
        }
    }

    private static void quartic(double[] power, double origin, double step, int count, double[] out) {
        double a = power[0] + origin;
        double b = power[1];
        double c = power[2];
        double d = power[3];
        double e = power[4];
        for (int i = 0; i < count; i++) {
            double x = -1 + i * step;
            out[i] = (((e * x + d) * x + c) * x + b) * x + a;
        }
    }

    private static void general(double[] power, double origin, double step, int count, double[] out) {
        int top = power.length - 1;
        for (int i = 0; i < count; i++) {
            double x = -1 + i * step;
            double sum = power[top];
            for (int k = top - 1; k >= 0; k--) sum = sum * x + power[k];
            out[i] = origin + sum;
        }
    }
}
