package handreach.propagation;

import handreach.units.Frequency;
import handreach.units.Polarization;

/**
 * Loss between two antennas over a smooth ground of given constants, with the surface wave, on the round earth.
 *
 * <p>Within the horizon the field of Norton; beyond, the first term of the residue series with every antenna height h replaced
 * by |h + 1/(jkδ)|. The two are one formula here: flat-earth field, plus what curvature costs a low antenna, minus what height
 * wins back; it passes without a step into the field above the tangent plane where the ray clears the bulge.
 */
final class SmoothGround {
    /** Where the two forms of the curvature loss meet. */
    private static final double CURVATURE_JOIN = 1.7;

    private final double waveNumber;
    private final double deltaRe;
    private final double deltaIm;
    private final double tailRe;
    private final double tailIm;
    private final double distanceScale;
    private final double heightScale;
    private final double effectiveRadiusM;

    SmoothGround(Frequency frequency, Polarization polarization, Ground ground, double effectiveRadiusM) {
        waveNumber = frequency.waveNumber();
        this.effectiveRadiusM = effectiveRadiusM;
        double epsRe = ground.permittivity();
        // 1/(2π ε0) = 17 975.1 in MHz and S/m
        double epsIm = -17_975.1 * ground.conductivity() / frequency.mhz();
        double rootRe = Math.sqrt(0.5 * (Math.hypot(epsRe - 1, epsIm) + epsRe - 1));
        double rootIm = rootRe > 0 ? 0.5 * epsIm / rootRe : 0;
        if (polarization == Polarization.VERTICAL) {
            double square = epsRe * epsRe + epsIm * epsIm;
            deltaRe = (rootRe * epsRe + rootIm * epsIm) / square;
            deltaIm = (rootIm * epsRe - rootRe * epsIm) / square;
        } else {
            deltaRe = rootRe;
            deltaIm = rootIm;
        }
        // 1/(jkδ) = −j δ*/(k |δ|²)
        double size = waveNumber * (deltaRe * deltaRe + deltaIm * deltaIm);
        tailRe = -deltaIm / size;
        tailIm = -deltaRe / size;
        double lambda = frequency.wavelengthM();
        distanceScale = Math.cbrt(Math.PI / (lambda * effectiveRadiusM * effectiveRadiusM));
        heightScale = 2 * Math.cbrt(Math.PI * Math.PI / (lambda * lambda * effectiveRadiusM));
    }

    /** Height with the surface wave: |h + 1/(jkδ)|, m. */
    double waveHeightM(double heightM) {
        return Math.hypot(heightM + tailRe, tailIm);
    }

    /**
     * Loss over free space between antennas of given heights over smooth ground.
     *
     * @shape scalars in, scalar out; pure, no allocation
     * @unit m; dB over free space, negative where the ground helps
     * @valid distance above 0, heights above 0; 30 MHz to 1 GHz
     * @error within 0.9 dB of Norton (short) and of the full residue series (long) for heights 1 to 10 m, 100 m to 20 km
     * @source Norton's flat-earth field; Rec. ITU-R P.526-15 section 3 for geometry and height gain; curvature loss fitted to the
     *     residue series of a low antenna pair by us
     */
    double lossDb(double distanceM, double height1M, double height2M) {
        double d = distanceM;
        double wave1 = waveHeightM(height1M);
        double wave2 = waveHeightM(height2M);
        double asymptoteDb = -20 * Math.log10(2 * waveNumber * wave1 * wave2 / d);
        double flatDb = nortonDb(d, height1M, height2M);
        double phase = 2 * waveNumber * height1M * height2M / d;
        double trust = phase <= 1 ? 1 : phase >= 2 ? 0 : 2 - phase;
        double far = asymptoteDb
                + trust * (flatDb - asymptoteDb)
                + curvatureDb(distanceScale * d)
                - heightBonusDb(heightScale * wave1)
                - heightBonusDb(heightScale * wave2);
        double horizon = Math.sqrt(2 * effectiveRadiusM) * (Math.sqrt(height1M) + Math.sqrt(height2M));
        if (d >= horizon) return far;
        double sum = height1M + height2M;
        double m = d * d / (4 * effectiveRadiusM * sum);
        double c = (height1M - height2M) / sum;
        double cosine = 1.5 * c * Math.sqrt(3 * m / ((m + 1) * (m + 1) * (m + 1)));
        double b = 2
                * Math.sqrt((m + 1) / (3 * m))
                * Math.cos(Math.PI / 3 + Math.acos(Math.max(-1, Math.min(1, cosine))) / 3);
        double d1 = 0.5 * d * (1 + b);
        double d2 = d - d1;
        double above1 = Math.max(0, height1M - 0.5 * d1 * d1 / effectiveRadiusM);
        double above2 = Math.max(0, height2M - 0.5 * d2 * d2 / effectiveRadiusM);
        double clearance = (above1 * d2 + above2 * d1) / d;
        double required = 0.552 * Math.sqrt(2 * Math.PI / waveNumber * d1 * d2 / d);
        double share = Math.min(1, clearance / required);
        share *= share;
        return (1 - share) * far + share * nortonDb(d, above1, above2);
    }

    /** What curvature costs two low antennas over the flat-earth field, dB; argument the X of P.526. */
    static double curvatureDb(double distance) {
        double root = Math.sqrt(distance);
        if (distance <= CURVATURE_JOIN) return distance * (5.4533 * root - 0.01785 * distance * distance);
        return 17.587 * distance - 30 * Math.log10(distance) - 10.99;
    }

    /** Height gain above that of a low antenna, dB; argument the Y of P.526. */
    static double heightBonusDb(double height) {
        double b = height;
        if (b <= 2) return 20 * Math.log10(1 + 0.1 * b * b);
        return 17.6 * Math.sqrt(b - 1.1) - 5 * Math.log10(b - 1.1) - 8 - 20 * Math.log10(b);
    }

    /** Loss over free space by Norton's field over flat ground, dB. */
    double nortonDb(double d, double height1M, double height2M) {
        double r1 = Math.hypot(d, height1M - height2M);
        double r2 = Math.hypot(d, height1M + height2M);
        double sine = (height1M + height2M) / r2;
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
        double fRe;
        double fIm;
        double size = Math.hypot(wRe, wIm);
        if (size > 12) {
            double inverse = 0.5 / (size * size);
            double uRe = wRe * inverse;
            double uIm = -wIm * inverse;
            // −u − 3u² − 15u³ − 105u⁴ with u = 1/(2w), by Horner
            double aRe = -945;
            double aIm = 0;
            double t = aRe * uRe - aIm * uIm - 105;
            aIm = aRe * uIm + aIm * uRe;
            aRe = t;
            t = aRe * uRe - aIm * uIm - 15;
            aIm = aRe * uIm + aIm * uRe;
            aRe = t;
            t = aRe * uRe - aIm * uIm - 3;
            aIm = aRe * uIm + aIm * uRe;
            aRe = t;
            t = aRe * uRe - aIm * uIm - 1;
            aIm = aRe * uIm + aIm * uRe;
            aRe = t;
            fRe = aRe * uRe - aIm * uIm;
            fIm = aRe * uIm + aIm * uRe;
        } else {
            double rootRe = Math.sqrt(0.5 * (size + wRe));
            double rootIm = Math.copySign(Math.sqrt(0.5 * (size - wRe)), wIm);
            // −j √(πw) e^{−w}
            double decay = Math.sqrt(Math.PI) * Math.exp(-wRe);
            double cos = Math.cos(wIm);
            double sin = -Math.sin(wIm);
            double pRe = decay * (rootRe * cos - rootIm * sin);
            double pIm = decay * (rootRe * sin + rootIm * cos);
            fRe = 1 + pIm;
            fIm = -pRe;
            double termRe = 1;
            double termIm = 0;
            for (int n = 1; n < 80; n++) {
                double factor = -2.0 / (2 * n - 1);
                double t = factor * (termRe * wRe - termIm * wIm);
                termIm = factor * (termRe * wIm + termIm * wRe);
                termRe = t;
                fRe += termRe;
                fIm += termIm;
                if (Math.abs(termRe) + Math.abs(termIm) < 1e-10) break;
            }
        }
        double gRe = reflRe + (1 - reflRe) * fRe + reflIm * fIm;
        double gIm = reflIm + (1 - reflRe) * fIm - reflIm * fRe;
        double phase = waveNumber * 4 * height1M * height2M / (r1 + r2);
        double ratio = r1 / r2;
        double cos = ratio * Math.cos(phase);
        double sin = -ratio * Math.sin(phase);
        double re = 1 + gRe * cos - gIm * sin;
        double im = gRe * sin + gIm * cos;
        return -10 * Math.log10(re * re + im * im + 1e-30);
    }
}
