package handreach.propagation.handheld;

import handreach.propagation.KnifeEdge;
import handreach.propagation.PathConditions;
import handreach.propagation.SmoothGround;
import handreach.propagation.Terminals;

/**
 * The default model with angles of the whole path alone, as it was before the ground around each antenna counted by itself: what
 * {@link HandheldBenchmark} holds the cost of that against, in one run.
 */
final class WholePathTerms {
    /** No excess is below this: one reflection in phase doubles the field. */
    private static final double LEAST_EXCESS_DB = -20 * Math.log10(2);

    /** Knife edge loss at grazing. */
    private static final double GRAZING_DB = KnifeEdge.lossDb(0);

    private static final double GRAZING_EXTRA_DB = 7;
    private static final double SPLIT_FACTOR = 17;
    private static final double SPLIT_SCALE = 10;
    private static final double GROUND_FACTOR = 5.5;
    private static final double GROUND_CEILING = 0.25;
    private static final double GROUND_DB = 1.8;
    private static final double ROUGH_FROM = 2.5;

    private final SmoothGround smooth;
    private final Terminals terminals;
    private final double effectiveRadiusM;
    private final double wavelengthM;
    private final double waveNumber;
    private final double roughFromM;

    private WholePathTerms(PathConditions conditions, Terminals terminals) {
        this.terminals = terminals;
        effectiveRadiusM = 1000 * conditions.atmosphere().effectiveRadiusKm();
        wavelengthM = conditions.frequency().wavelengthM();
        waveNumber = conditions.frequency().waveNumber();
        roughFromM = ROUGH_FROM * Math.sqrt(wavelengthM);
        smooth = new SmoothGround(
                conditions.frequency(), conditions.polarization(), conditions.ground(), effectiveRadiusM);
    }

    static WholePathTerms of(PathConditions conditions, Terminals terminals) {
        return new WholePathTerms(conditions, terminals);
    }

    double excessDb(StretchedString string) {
        return excessDb(string, terminals.txHeightM(), terminals.rxHeightM());
    }

    double excessDb(StretchedString string, double height1M, double height2M) {
        string.stretchTo(height2M);
        double edges = edgesDb(string);
        return Math.max(LEAST_EXCESS_DB, edges + groundDb(string, height1M, height2M));
    }

    /** What the bends of a stretched string cost. */
    double edgesDb(StretchedString string) {
        return edgesDb(nu(string), string.splitM());
    }

    /** Diffraction parameter: of all bends together, in sight of the nearest clearance. */
    double nu(StretchedString string) {
        if (string.inSight()) return string.clearanceNu(wavelengthM, KnifeEdge.CLEAR_NU);
        return Math.sqrt(2 * string.totalBend() * string.liftM() / wavelengthM);
    }

    private double edgesDb(double nu, double splitM) {
        double single = KnifeEdge.lossDb(nu);
        return single
                + GRAZING_EXTRA_DB * Math.min(1, single / GRAZING_DB)
                + SPLIT_FACTOR * Math.log10(1 + SPLIT_SCALE * splitM / wavelengthM);
    }

    /** Share of the rough-ground law, 0 on a straight slope, 1 on ground rough for the wavelength. */
    double roughShare(StretchedString string) {
        double t = Math.min(1, string.roughnessM() / roughFromM);
        return t * t * (3 - 2 * t);
    }

    /** What the ground adds to the edges. */
    double groundDb(StretchedString string, double height1M, double height2M) {
        double rough = roughShare(string);
        double ground = rough > 0 ? rough * roughGroundDb(string, height1M, height2M) : 0;
        return rough < 1 ? ground + (1 - rough) * smoothGroundDb(string.lengthM(), height1M, height2M) : ground;
    }

    private double roughGroundDb(StretchedString string, double height1M, double height2M) {
        double d = string.lengthM();
        double near = reflection(height1M, string.nearClearanceM(), d);
        double far = reflection(height2M, string.farClearanceM(), d);
        return GROUND_DB + GROUND_FACTOR * Math.log10((near + GROUND_CEILING) * (far + GROUND_CEILING));
    }

    /** 1/y² of one end: twice the phase of its wave height under the mean angle to the ground below the string. */
    private double reflection(double heightM, double clearanceM, double d) {
        double angle = 20 * clearanceM / d;
        double y = 2 * waveNumber * smooth.waveHeightM(heightM) * Math.max(angle, 1e-9);
        return 1 / (y * y);
    }

    private double smoothGroundDb(double d, double height1M, double height2M) {
        double bulge = edgesDb(smooth.nu(d, height1M, height2M), smooth.splitM(d, height1M, height2M));
        return smooth.lossDb(d, height1M, height2M) - bulge;
    }
}
