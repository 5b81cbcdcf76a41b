package handreach.propagation;

/** The Fresnel integrals C(x) = ∫cos(πs²/2)ds and S(x) = ∫sin(πs²/2)ds from 0 to x. */
record FresnelIntegral(double c, double s) {
    private static final double SERIES_LIMIT = 1.6;
    private static final double NO_LONGER_MATTERS = 1e8;

    /**
     * Both integrals at x.
     *
     * @shape  scalar in, two scalars out; pure; below 1.6 the power series, above a continued fraction
     * @unit   dimensionless; both odd in x, towards ±0.5
     * @valid  every finite x
     * @error  below 1e-12 (compared with numerical integration)
     * @source Abramowitz and Stegun (1964), 7.3.11 and 7.3.13 (series), 7.1.14 (continued fraction of erfc) with 7.3.22
     */
    public static FresnelIntegral of(double x) {
        double t = Math.abs(x);
        if (t > NO_LONGER_MATTERS) return new FresnelIntegral(Math.copySign(0.5, x), Math.copySign(0.5, x));
        FresnelIntegral value = t < SERIES_LIMIT ? series(t) : fraction(t);
        return x < 0 ? new FresnelIntegral(-value.c, -value.s) : value;
    }

    private static FresnelIntegral series(double t) {
        double q = Math.PI * t * t / 2;
        double term = t;
        double c = t;
        double s = 0;
        for (int n = 1; n < 60; n++) {
            term *= q / n;
            double value = term / (2 * n + 1);
            double signed = (n / 2) % 2 == 0 ? value : -value;
            if (n % 2 == 0) c += signed;
            else s += signed;
            if (value < 1e-18 * t) break;
        }
        return new FresnelIntegral(c, s);
    }

    /** C + jS = (1+j)/2 erf(z) with z = (√π/2)(1−j)t; erfc from its continued fraction, evaluated from the tail. */
    private static FresnelIntegral fraction(double t) {
        double zr = Math.sqrt(Math.PI) / 2 * t;
        double zi = -zr;
        int terms = 20 + (int) (600 / (t * t));
        double fr = zr;
        double fi = zi;
        for (int n = terms; n >= 1; n--) {
            double size = fr * fr + fi * fi;
            double half = n / 2.0;
            fr = zr + half * fr / size;
            fi = zi - half * fi / size;
        }
        double size = (fr * fr + fi * fi) * Math.sqrt(Math.PI);
        double ir = fr / size;
        double ii = -fi / size;
        double phase = Math.PI * (t * t % 4) / 2;
        double er = Math.cos(phase) * ir - Math.sin(phase) * ii;
        double ei = Math.cos(phase) * ii + Math.sin(phase) * ir;
        double oneMinusR = 1 - er;
        return new FresnelIntegral((oneMinusR + ei) / 2, (oneMinusR - ei) / 2);
    }
}
