package handreach.loadout;

/** Thin straight vertical wire with a sinusoidal current. */
final class SinusoidalWire {
    private static final int COUNT = 181;

    /** A null is filled in by what the formula leaves out; never shown deeper than this below the maximum, our suggestion. */
    private static final double FLOOR_DB = 30;

    private SinusoidalWire() {}

    /**
     * Gain from −90 to 90 degrees of elevation.
     *
     * @shape  scalar in, 181 values out; 2000 steps of quadrature; pure
     * @unit   arm length in wavelengths; result dBi
     * @valid  thin wires; over ground the arm stands on perfect ground and below the horizon is a mirror; in free space the wire is
     *     two arms, fed in the middle
     * @error  against a method-of-moments code 0.1 dB to 0.25 wavelengths, growing to 1 to 2 dB at 0.75
     * @source Balanis, Antenna Theory, chapter 4: F = (cos(kL sin e) − cos kL)/cos e
     */
    static double[] gainDbi(double armWavelengths, boolean overGround) {
        double kl = 2 * Math.PI * armWavelengths;
        int steps = 2000;
        double h = Math.PI / 2 / steps;
        double integral = 0;
        for (int i = 0; i <= steps; i++) {
            double e = i * h;
            double weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
            integral += weight * shape(kl, e) * shape(kl, e) * Math.cos(e);
        }
        integral *= h / 3;
        double scale = (overGround ? 2 : 1) / integral;
        double max = 0;
        double[] power = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            double f = shape(kl, Math.toRadians(i - 90));
            power[i] = scale * f * f;
            max = Math.max(max, power[i]);
        }
        double floor = max * Math.pow(10, -FLOOR_DB / 10);
        for (int i = 0; i < COUNT; i++) power[i] = 10 * Math.log10(Math.max(power[i], floor));
        return power;
    }

    private static double shape(double kl, double e) {
        double cos = Math.cos(e);
        return cos < 1e-9 ? 0 : (Math.cos(kl * Math.sin(e)) - Math.cos(kl)) / cos;
    }
}
