package handreach.propagation;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Locale;
import java.util.Random;

/** Seeded random paths for the laws of the default model: rolling, hilly, one ridge, nearly level, level. Invented terrain. */
public final class HandheldGrounds {
    private static final double[] BANDS_MHZ = {50, 146, 446, 900};
    private static final double[] HEIGHTS_M = {1, 1.5, 3, 10};
    private static final double STEEPEST = 0.36;

    private final int seed;
    private final double[] x;
    private final double[] h;
    private final double mhz;
    private final Polarization polarization;
    private final Terminals terminals;

    private HandheldGrounds(int seed) {
        this.seed = seed;
        Random random = new Random(seed);
        double length = 300 * Math.pow(60, random.nextDouble());
        int n = Math.max(3, (int) (length / 30) + 1);
        x = new double[n];
        for (int i = 0; i < n; i++) x[i] = length * i / (n - 1);
        h = switch (seed % 5) {
            case 0 -> waves(random, 300, 2500, 0.5, 5 + 10 * random.nextDouble());
            case 1 -> waves(random, 120, 6000, 1.1, 15 + 40 * random.nextDouble());
            case 2 -> ridge(random);
            case 3 -> waves(random, 120, 6000, 1.1, Math.pow(10, 2.2 * random.nextDouble() - 1.5));
            default -> new double[n];
        };
        mhz = BANDS_MHZ[random.nextInt(4)];
        polarization = random.nextBoolean() ? Polarization.VERTICAL : Polarization.HORIZONTAL;
        terminals = new Terminals(HEIGHTS_M[random.nextInt(4)], HEIGHTS_M[random.nextInt(4)]);
    }

    public static HandheldGrounds random(int seed) {
        return new HandheldGrounds(seed);
    }

    /** Forty waves of random length; amplitude as a power of the length, scaled to a root mean square, slopes below 20°. */
    private double[] waves(Random random, double shortest, double longest, double power, double rms) {
        double[] z = new double[x.length];
        for (int k = 0; k < 40; k++) {
            double length = shortest * Math.pow(longest / shortest, random.nextDouble());
            double size = Math.pow(length, power) * random.nextGaussian();
            double phase = 2 * Math.PI * random.nextDouble();
            for (int i = 0; i < z.length; i++) z[i] += size * Math.cos(2 * Math.PI * x[i] / length + phase);
        }
        double mean = 0;
        double square = 0;
        double steepest = 0;
        for (double v : z) mean += v / z.length;
        for (double v : z) square += (v - mean) * (v - mean) / z.length;
        for (int i = 1; i < z.length; i++) steepest = Math.max(steepest, Math.abs(z[i] - z[i - 1]) / (x[i] - x[i - 1]));
        double factor = Math.min(rms / Math.sqrt(square), STEEPEST / steepest);
        for (int i = 0; i < z.length; i++) z[i] = 200 + factor * (z[i] - mean);
        return z;
    }

    private double[] ridge(Random random) {
        double at = x[x.length - 1] * (0.1 + 0.8 * random.nextDouble());
        double high = 10 + 290 * random.nextDouble();
        double half = Math.max(4 * high, 150 + 900 * random.nextDouble());
        double[] z = new double[x.length];
        for (int i = 0; i < z.length; i++) z[i] = high * Math.max(0, 1 - Math.abs(x[i] - at) / half);
        return z;
    }

    /** Level ground within the last lobe: there the exact field itself changes faster than any law of continuity allows. */
    public boolean standsAmongLobes() {
        double waveNumber = new Frequency(mhz).waveNumber();
        return 2 * waveNumber * terminals.txHeightM() * terminals.rxHeightM() / x[x.length - 1] > 1;
    }

    /** Excess by the model with distances and the two antenna heights scaled. */
    public double excessDb(double distance, double first, double second) {
        double[] d = new double[x.length];
        for (int i = 0; i < d.length; i++) d[i] = x[i] * distance / 1000;
        Terminals scaled = new Terminals(terminals.txHeightM() * first, terminals.rxHeightM() * second);
        return LossModels.HANDHELD
                .loss(Profiles.of(d, h), scaled, conditions(Ground.AVERAGE))
                .excessDb();
    }

    public PathConditions conditions(Ground ground) {
        return new PathConditions(new Frequency(mhz), polarization, ground, Atmosphere.DEFAULT, Climate.MEDIAN);
    }

    public Profile profile() {
        double[] km = new double[x.length];
        for (int i = 0; i < km.length; i++) km[i] = x[i] / 1000;
        return Profiles.of(km, h);
    }

    public double[] distanceM() {
        return x;
    }

    public double[] heightM() {
        return h;
    }

    public Terminals terminals() {
        return terminals;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "seed %d: %.0f m, %.0f MHz %s, antennas %.1f and %.1f m",
                seed,
                x[x.length - 1],
                mhz,
                polarization,
                terminals.txHeightM(),
                terminals.rxHeightM());
    }
}
