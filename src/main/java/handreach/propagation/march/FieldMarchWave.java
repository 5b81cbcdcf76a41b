package handreach.propagation.march;

import handreach.propagation.PathConditions;
import handreach.propagation.SurfaceWave;
import org.apache.commons.math3.complex.Complex;

/**
 * The wave and the ground it glides over, as the field march needs them.
 *
 * @param waveNumber k in air, radians per metre
 * @param impedance δ of the ground condition ∂ψ/∂η = jkδψ at grazing incidence
 */
record FieldMarchWave(double waveNumber, Complex impedance) {
    static final double QUANTUM_SHARE = 1.0 / 64;

    /**
     * From frequency, ground and polarisation. Vertical: ψ is the magnetic field across the path, and δ = √(ε − 1)/ε is the
     * surface impedance of the ground over that of air. Horizontal: ψ is the electric field across the path; from E = −Z_s H on
     * the ground and H = (1/jωμ) ∂E/∂η the same condition follows with the inverse, δ = √(ε − 1).
     *
     * @shape  conditions in, wave out; pure
     * @unit   δ dimensionless
     * @valid  ground whose |ε| is well above 1, so that δ hardly depends on the grazing angle
     * @error  the true δ holds cos² of the grazing angle in place of 1: 2 % at 20° for ε of 4, less for more
     * @source Leontovich condition; Rec. ITU-R P.527 for ε
     */
    static FieldMarchWave of(PathConditions conditions) {
        return new FieldMarchWave(
                conditions.frequency().waveNumber(),
                conditions.ground().surfaceImpedance(conditions.frequency(), conditions.polarization()));
    }

    /** Steps along the ground are whole multiples of this length, m. */
    double quantumM() {
        return QUANTUM_SHARE * wavelengthM();
    }

    double wavelengthM() {
        return 2 * Math.PI / waveNumber;
    }

    /**
     * Field of a point source over level ground, over that of free space at the same slant distance.
     *
     * @shape  distance and two heights in, complex factor out; pure
     * @unit   metres
     * @valid  distance above half a wavelength; level, even ground
     * @error  the surface-wave term errs by about 1/(k distance); below 0.1 dB beyond a few wavelengths (from memory)
     * @source Norton, Proc. IRE 25 (1937) 1203; the sum as in Bullington, Bell Syst. Tech. J. 36 (1957) 593
     */
    Complex levelGroundFactor(double distanceM, double h1M, double h2M) {
        return levelGroundFactor(distanceM, h1M, h2M, FieldMarchLayer.NONE);
    }

    /** The same through trees, which change each ray by its way among them; nothing goes round over their tops. */
    Complex levelGroundFactor(double distanceM, double h1M, double h2M, FieldMarchLayer layer) {
        double r1 = Math.hypot(distanceM, h1M - h2M);
        double r2 = Math.hypot(distanceM, h1M + h2M);
        Complex image = reflected((h1M + h2M) / r2, r2).multiply(r1 / r2).multiply(turned(-waveNumber * (r2 - r1)));
        if (!layer.isThere()) return Complex.ONE.add(image);
        return layer.direct(r1, h1M, h2M).add(image.multiply(layer.mirrored(r2, h1M, h2M)));
    }

    /**
     * Field of a line source over level ground where it meets a column, tapered away above steep angles.
     *
     * @param alongM distance along the ground from the foot of the source to the column
     * @param sourceM height of the source normal to the ground
     * @param heightM height on the column
     * @param raysRad steepest ray that must be whole
     * @param layer trees on the facet, which change each ray by its way among them
     */
    Complex starter(double alongM, double sourceM, double heightM, double raysRad, FieldMarchLayer layer) {
        double taper = taper(heightM - sourceM, alongM, raysRad);
        double imageTaper = taper(heightM + sourceM, alongM, raysRad);
        if (taper == 0 && imageTaper == 0) return Complex.ZERO;
        double r1 = Math.hypot(alongM, heightM - sourceM);
        double r2 = Math.hypot(alongM, heightM + sourceM);
        Complex direct = turned(-waveNumber * r1).multiply(taper / Math.sqrt(r1));
        Complex image = reflected((heightM + sourceM) / r2, r2)
                .multiply(turned(-waveNumber * r2))
                .multiply(imageTaper / Math.sqrt(r2));
        if (!layer.isThere()) return direct.add(image);
        return direct.multiply(layer.direct(r1, sourceM, heightM))
                .add(image.multiply(layer.mirrored(r2, sourceM, heightM)));
    }

    /** Plane-wave reflection and surface wave together: R + (1 − R) F(p). */
    private Complex reflected(double sinGrazing, double r2) {
        Complex up = impedance.add(sinGrazing);
        Complex reflection = impedance.negate().add(sinGrazing).divide(up);
        Complex p = up.multiply(up).multiply(new Complex(0, -0.5 * waveNumber * r2));
        Complex surface = Complex.ONE.subtract(reflection).multiply(SurfaceWave.attenuation(p));
        return reflection.add(surface);
    }

    /**
     * 1 to 25° from the facet, or to the steepest ray that must be whole, and 0 from 35° above that, as cos² between: steeper waves
     * lead nowhere.
     */
    private static double taper(double riseM, double alongM, double raysRad) {
        double wholeDeg = Math.max(25, Math.toDegrees(raysRad));
        double share = (Math.toDegrees(Math.atan2(Math.abs(riseM), alongM)) - wholeDeg) / Math.min(35, 90 - wholeDeg);
        double c = Math.cos(0.5 * Math.PI * Math.min(1, Math.max(0, share)));
        return c * c;
    }

    private static Complex turned(double angleRad) {
        return new Complex(Math.cos(angleRad), Math.sin(angleRad));
    }
}
