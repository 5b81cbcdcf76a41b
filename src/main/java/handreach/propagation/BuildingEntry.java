package handreach.propagation;

import handreach.units.Frequency;
import org.apache.commons.math3.distribution.NormalDistribution;

/** Loss from outdoors into a building. Vehicles are not covered. */
public enum BuildingEntry {
    TRADITIONAL(new double[] {12.64, 3.72, 0.96, 9.6, 2.0, 9.1, -3.0, 4.5, -2.0}),
    /** Metallised glass, foil-backed panels. */
    THERMALLY_EFFICIENT(new double[] {28.19, -3.00, 8.48, 13.5, 3.8, 27.8, -2.9, 9.4, -2.1});

    private static final NormalDistribution STANDARD = new NormalDistribution(null, 0, 1);

    /** r, s, t, u, v, w, x, y, z of the document. */
    private final double[] constants;

    BuildingEntry(double[] constants) {
        this.constants = constants;
    }

    /**
     * Entry loss not exceeded with probability P.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   probability strictly between 0 and 1, elevation of the path at the façade degrees; result dB
     * @valid  80 MHz to 100 GHz
     * @error  0.001 dB against published rows
     * @source Rec. ITU-R P.2109-1, section 3, equations (1) to (7)
     */
    public double lossDb(Frequency frequency, double probability, double elevationDeg) {
        if (!(probability > 0 && probability < 1) || !(Math.abs(elevationDeg) <= 90))
            throw new IllegalArgumentException("probability " + probability + ", elevation " + elevationDeg + "°");
        double l = Math.log10(frequency.ghz());
        double[] c = constants;
        double z = STANDARD.inverseCumulativeProbability(probability);
        double a = z * (c[3] + c[4] * l) + c[0] + c[1] * l + c[2] * l * l + 0.212 * Math.abs(elevationDeg);
        double b = z * (c[7] + c[8] * l) + c[5] + c[6] * l;
        return 10 * Math.log10(Math.pow(10, 0.1 * a) + Math.pow(10, 0.1 * b) + Math.pow(10, -0.3));
    }
}
