package handreach.propagation;

import handreach.units.Frequency;
import handreach.units.Polarization;
import org.apache.commons.math3.complex.Complex;

/**
 * Loss between two antennas over smooth ground of given constants on the round earth, with the surface wave.
 *
 * <p>Within the horizon the field of Norton; beyond, the first term of the residue series with every antenna height h replaced
 * by |h + 1/(jkδ)|. Here the two are one formula: the flat-earth field, plus what curvature costs a low antenna, minus what
 * height wins back; it passes without a step into the field above the tangent plane where the ray clears the bulge.
 */
public final class SmoothGround {
    /** Where the two forms of the curvature loss meet. */
    private static final double CURVATURE_JOIN = 1.7;

    /** Beyond this |w| five terms of the asymptotic series of the surface wave do. */
    private static final double FAR_W = 12;

    /** Ground hardly denser than air would guide a wave of any height; none in nature comes below this. */
    private static final double LEAST_DELTA = 0.003;

    private final double waveNumber;
    private final double contrastRe;
    private final double contrastIm;
    private final double divisorRe;
    private final double divisorIm;
    private final double tailRe;
    private final double tailIm;
    private final double distanceScale;
    private final double heightScale;
    private final double effectiveRadiusM;

    public SmoothGround(Frequency frequency, Polarization polarization, Ground ground, double effectiveRadiusM) {
        waveNumber = frequency.waveNumber();
        this.effectiveRadiusM = effectiveRadiusM;
        Complex epsilon = ground.relativePermittivity(frequency);
        contrastRe = epsilon.getReal() - 1;
        contrastIm = epsilon.getImaginary();
        Complex divisor = polarization == Polarization.VERTICAL ? epsilon.reciprocal() : Complex.ONE;
        divisorRe = divisor.getReal();
        divisorIm = divisor.getImaginary();
        Complex delta = ground.surfaceImpedance(frequency, polarization);
        if (delta.abs() < LEAST_DELTA) delta = new Complex(LEAST_DELTA, 0);
        Complex tail = delta.multiply(new Complex(0, waveNumber)).reciprocal();
        tailRe = tail.getReal();
        tailIm = tail.getImaginary();
        double lambda = frequency.wavelengthM();
        distanceScale = Math.cbrt(Math.PI / (lambda * effectiveRadiusM * effectiveRadiusM));
        heightScale = 2 * Math.cbrt(Math.PI * Math.PI / (lambda * lambda * effectiveRadiusM));
    }

    /**
     * Height with the surface wave: |h + 1/(jkδ)|.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   antenna above ground m; result m
     * @valid  heights from 0
     * @error  exact within its definition
     * @source Norton (1937, 1941), height-gain function over flat ground, as a height
     */
    public double waveHeightM(double heightM) {
        double re = heightM + tailRe;
        return Math.sqrt(re * re + tailIm * tailIm);
    }

    /**
     * Loss over free space between antennas of given heights over smooth ground.
     *
     * @shape scalars in, scalar out; pure, nothing allocated beyond numerical distances of 12
     * @unit m; dB over free space, negative where the ground helps
     * @valid distance above 0, heights above 0; 30 MHz to 1 GHz
     * @error within 0.9 dB of Norton (short) and of the full residue series (long) for heights 1 to 10 m, 100 m to 20 km
     * @source Norton's flat-earth field; Rec. ITU-R P.526-15 section 3 for geometry and height gain; the loss by curvature fitted to
     *     the residue series of two low antennas by us
     */
    public double lossDb(double distanceM, double height1M, double height2M) {
        double d = distanceM;
        double wave1 = waveHeightM(height1M);
        double wave2 = waveHeightM(height2M);
        double asymptoteDb = -20 * Math.log10(2 * waveNumber * wave1 * wave2 / d);
        double phase = 2 * waveNumber * height1M * height2M / d;
        // Past the last lobe the flat-earth field holds down to the shortest paths; among the lobes only the part in
        // sight counts.
        double trust = Math.max(0, Math.min(1, 2 - phase));
        double far = asymptoteDb
                + curvatureDb(distanceScale * d)
                - heightBonusDb(heightScale * wave1)
                - heightBonusDb(heightScale * wave2);
        if (trust > 0) far += trust * (nortonDb(d, height1M, height2M) - asymptoteDb);
        double d1 = nearestM(d, height1M, height2M);
        double d2 = d - d1;
        double above1 = height1M - 0.5 * d1 * d1 / effectiveRadiusM;
        double above2 = height2M - 0.5 * d2 * d2 / effectiveRadiusM;
        double clearance = (above1 * d2 + above2 * d1) / d;
        if (d >= horizonM(height1M, height2M) || !(clearance > 0)) return far;
        double required = 0.552 * Math.sqrt(2 * Math.PI / waveNumber * d1 * d2 / d);
        double share = Math.min(1, clearance / required);
        share *= share;
        return (1 - share) * far + share * nortonDb(d, Math.max(0, above1), Math.max(0, above2));
    }

    private double horizonM(double height1M, double height2M) {
        return tangentM(height1M) + tangentM(height2M);
    }

    /** Where the ray comes nearest to the smooth earth, m from the first antenna; P.526-15 section 3.2. */
    private double nearestM(double d, double height1M, double height2M) {
        double sum = height1M + height2M;
        double m = d * d / (4 * effectiveRadiusM * sum);
        double c = (height1M - height2M) / sum;
        double cosine = 1.5 * c * Math.sqrt(3 * m / ((m + 1) * (m + 1) * (m + 1)));
        return Math.max(0, Math.min(d, 0.5 * d * (1 + 2 * Math.sqrt((m + 1) / (3 * m)) * thirdCosine(cosine))));
    }

    /** cos((π + arccos x)/3): the root of 4t³ − 3t + x between −½ and ½, which Newton finds at once unless two roots meet. */
    private static double thirdCosine(double x) {
        if (!(Math.abs(x) < 0.8)) return Math.cos((Math.PI + Math.acos(Math.max(-1, Math.min(1, x)))) / 3);
        double t = x / 3;
        for (int i = 0; i < 4; i++) t -= (t * (4 * t * t - 3) + x) / (12 * t * t - 3);
        return t;
    }

    /**
     * Diffraction parameter of the bulge of the smooth earth, as the default model has it for the ground.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distance and antenna heights above ground m; result none, negative in sight
     * @valid  distance above 0, heights from 0
     * @error  exact within the parabolic earth
     * @source ours: the string of docs/handheld-model.md over an arc in place of a profile
     */
    public double nu(double d, double height1M, double height2M) {
        double lambda = 2 * Math.PI / waveNumber;
        double p = tangentM(height1M);
        double q = d - tangentM(height2M);
        if (q > p) return Math.sqrt(2 * (q - p) * lift(p, q, d) / lambda) / effectiveRadiusM;
        double d1 = nearestM(d, height1M, height2M);
        double d2 = d - d1;
        double reach = d1 * d2;
        if (!(reach > 0)) return 0;
        double clearance = (height1M * d2 + height2M * d1) / d - 0.5 * reach / effectiveRadiusM;
        return -clearance * Math.sqrt(2 * d / (lambda * reach));
    }

    /**
     * Bend times split over lift of the string over the smooth earth: an arc of even bend between the two tangents.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distance and antenna heights above ground m; result m, 0 in sight
     * @valid  as {@link #nu}
     * @error  exact within the parabolic earth
     * @source ours: the sum over pairs of bends of docs/handheld-model.md as an integral
     */
    public double splitM(double d, double height1M, double height2M) {
        double p = tangentM(height1M);
        double q = d - tangentM(height2M);
        if (!(q > p)) return 0;
        double split = splitTo(q, p, d) - splitTo(p, p, d);
        return Math.max(0, (q - p) * split / (lift(p, q, d) * effectiveRadiusM * effectiveRadiusM));
    }

    private double tangentM(double heightM) {
        return Math.sqrt(2 * effectiveRadiusM * heightM);
    }

    /** ∫ y (1 − y/d) dy from p to q, in powers of q − p. */
    private static double lift(double p, double q, double d) {
        double arc = q - p;
        return arc * (p * (1 - p / d) + arc * (0.5 - p / d) - arc * arc / (3 * d));
    }

    /** Antiderivative of (1 − y/d)(y³/6 − y p²/2 + p³/3): the pairs of an arc whose farther bend lies at y. */
    private static double splitTo(double y, double p, double d) {
        double y2 = y * y;
        double p3 = p * p * p;
        return y2 * y2 / 24 - y2 * p * p / 4 + p3 * y / 3 - (y2 * y2 * y / 30 - y2 * y * p * p / 6 + p3 * y2 / 6) / d;
    }

    /** What curvature costs two low antennas over the flat-earth field, dB; argument the X of P.526. */
    static double curvatureDb(double distance) {
        if (distance <= CURVATURE_JOIN)
            return distance * (5.4533 * Math.sqrt(distance) - 0.01785 * distance * distance);
        return 17.587 * distance - 30 * Math.log10(distance) - 10.99;
    }

    /** Height gain above that of a low antenna, dB; argument the Y of P.526. */
    static double heightBonusDb(double height) {
        double b = height;
        if (b <= 2) return 20 * Math.log10(1 + 0.1 * b * b);
        return SphericalEarth.highGainDb(b) - 20 * Math.log10(b);
    }

    /** Loss over free space by Norton's field over flat ground, dB. */
    double nortonDb(double d, double height1M, double height2M) {
        double apart = height1M - height2M;
        double sum = height1M + height2M;
        double r1 = Math.sqrt(d * d + apart * apart);
        double r2 = Math.sqrt(d * d + sum * sum);
        double sine = sum / r2;
        // δ = √(ε − cos² ψ), over ε for vertical polarisation; the root has a positive real part
        double underRe = contrastRe + sine * sine;
        double rootRe = Math.sqrt(0.5 * (Math.sqrt(underRe * underRe + contrastIm * contrastIm) + underRe));
        double rootIm = rootRe > 0 ? 0.5 * contrastIm / rootRe : 0;
        double deltaRe = rootRe * divisorRe - rootIm * divisorIm;
        double deltaIm = rootRe * divisorIm + rootIm * divisorRe;
        double sumRe = sine + deltaRe;
        double sumIm = deltaIm;
        double sumSquare = sumRe * sumRe + sumIm * sumIm;
        // R = (sin ψ − δ)/(sin ψ + δ)
        double reflRe = ((sine - deltaRe) * sumRe - deltaIm * sumIm) / sumSquare;
        double reflIm = (-deltaIm * sumRe - (sine - deltaRe) * sumIm) / sumSquare;
        // w = −j (k r2/2)(sin ψ + δ)²
        double half = 0.5 * waveNumber * r2;
        double wRe = half * 2 * sumRe * sumIm;
        double wIm = -half * (sumRe * sumRe - sumIm * sumIm);
        double size = half * sumSquare;
        double guidedRe;
        double guidedIm;
        if (size > FAR_W) {
            // −u − 3u² − 15u³ − 105u⁴ − 945u⁵ with u = 1/(2w), by Horner
            double uRe = 0.5 * wRe / (size * size);
            double uIm = -0.5 * wIm / (size * size);
            double re = -945;
            double im = 0;
            for (int factor = 105, odd = 7; odd >= 1; factor /= odd, odd -= 2) {
                double t = re * uRe - im * uIm - factor;
                im = re * uIm + im * uRe;
                re = t;
            }
            guidedRe = re * uRe - im * uIm;
            guidedIm = re * uIm + im * uRe;
        } else {
            Complex guided = SurfaceWave.attenuation(new Complex(wRe, wIm));
            guidedRe = guided.getReal();
            guidedIm = guided.getImaginary();
        }
        double groundRe = reflRe + (1 - reflRe) * guidedRe + reflIm * guidedIm;
        double groundIm = reflIm + (1 - reflRe) * guidedIm - reflIm * guidedRe;
        double phase = waveNumber * 4 * height1M * height2M / (r1 + r2);
        double cos = r1 / r2 * Math.cos(phase);
        double sin = -r1 / r2 * Math.sin(phase);
        double re = 1 + groundRe * cos - groundIm * sin;
        double im = groundRe * sin + groundIm * cos;
        return -10 * Math.log10(re * re + im * im + 1e-30);
    }
}
