package handreach.propagation;

import handreach.units.Frequency;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Erf;

/**
 * How a level spreads from place to place and within a step, and what margin pays for it. All of it is variation about a
 * prediction, none of it the error of the prediction.
 */
public final class Variability {
    private static final double STEP = 0.05;

    private Variability() {}

    /** Where the antenna stands, for the older location spread. */
    public enum Surroundings {
        BELOW_CLUTTER(1.2),
        ROOFTOP(1.0),
        OPEN_COUNTRY(0.5);

        private final double k;

        Surroundings(double k) {
            this.k = k;
        }
    }

    /**
     * Standard deviation between the places of one small square: (0.024 f + 0.52) w^0.28, f in GHz.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   side of the square m; result dB
     * @valid  side 50 to 1000 m (from memory); antenna below the clutter, else times {@link #heightShare}
     * @error  the spread itself is known to about 1 dB
     * @source Rec. ITU-R P.1812-6, equation (64); Rec. ITU-R P.1546-6
     */
    public static double locationSpreadDb(Frequency frequency, double squareM) {
        if (!(squareM > 0)) throw new IllegalArgumentException("side of a square " + squareM + " m");
        return (0.024 * frequency.ghz() + 0.52) * Math.pow(squareM, 0.28);
    }

    /**
     * Share u of the location spread that is left at a height: 1 below the clutter, falling to 0 ten metres above it.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   height of the antenna and of the clutter around it, both above ground, m; result 0 to 1
     * @valid  heights from 0
     * @error  exact
     * @source Rec. ITU-R P.1812-6, equation (65)
     */
    public static double heightShare(double heightM, double clutterM) {
        return Math.max(0, Math.min(1, 1 - (heightM - clutterM) / 10));
    }

    /**
     * Older location spread K + 1.3 log f, f in MHz.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   result dB
     * @valid  30 MHz to 3 GHz, squares of 500 m to 1 km
     * @error  the spread itself is known to about 1 dB
     * @source Rec. ITU-R P.1546-4, section 12 of Annex 5 (K from memory)
     */
    public static double broadSpreadDb(Frequency frequency, Surroundings surroundings) {
        return surroundings.k + 1.3 * Math.log10(frequency.mhz());
    }

    /**
     * Odds that a Rayleigh envelope is above a threshold M dB below its local mean power.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   margin dB; result 0 to 1
     * @valid  many like paths and no dominant one; every finite margin
     * @error  exact
     * @source Rayleigh law of the envelope, textbooks; Rec. ITU-R P.1057
     */
    public static double rayleighOdds(double marginDb) {
        return Math.exp(-Math.pow(10, -marginDb / 10));
    }

    /**
     * Margin of the local mean power over the threshold for given odds under Rayleigh fading.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   odds strictly between 0 and 1; result dB
     * @valid  as {@link #rayleighOdds}
     * @error  exact
     * @source inverse of {@link #rayleighOdds}
     */
    public static double rayleighMarginDb(double odds) {
        refuseOdds(odds);
        return -10 * Math.log10(-Math.log(odds));
    }

    /**
     * Odds under Rayleigh fading about a local mean that is itself log-normal (Suzuki).
     *
     * @shape  scalars in, scalar out; pure; trapezoidal rule, which converges beyond all powers here
     * @unit   margin between the median of the local mean power and the threshold dB; spread dB; result 0 to 1
     * @valid  spread from 0 to 20 dB
     * @error  1e-9
     * @source Suzuki (1977)
     */
    public static double suzukiOdds(double marginDb, double spreadDb) {
        if (!(spreadDb >= 0)) throw new IllegalArgumentException("spread " + spreadDb + " dB");
        if (spreadDb == 0) return rayleighOdds(marginDb);
        double odds = 0;
        for (int i = -160; i <= 160; i++) {
            double u = i * STEP;
            odds += Math.exp(-u * u / 2) * rayleighOdds(marginDb + u * spreadDb);
        }
        odds *= STEP / Math.sqrt(2 * Math.PI);
        return Math.max(0, Math.min(1, odds));
    }

    /**
     * Margin for given odds under Suzuki fading.
     *
     * @shape  scalars in, scalar out; pure; root finding
     * @unit   as {@link #suzukiOdds}; odds strictly between 0 and 1
     * @valid  odds 0.001 to 0.999
     * @error  1e-6 dB
     * @source inverse of {@link #suzukiOdds}
     */
    public static double suzukiMarginDb(double odds, double spreadDb) {
        refuseOdds(odds);
        return new BrentSolver(1e-8).solve(200, m -> suzukiOdds(m, spreadDb) - odds, -200, 200);
    }

    /**
     * A fade rate.
     *
     * @param crossingsPerS downward crossings of the threshold per second
     * @param meanFadeS mean time below it, s
     */
    public record FadeRate(double crossingsPerS, double meanFadeS) {}

    /**
     * How often, and for how long, a walker's signal fades below a threshold.
     *
     * @shape  scalars in, two scalars out; pure
     * @unit   speed m/s, threshold dB over the local mean power (negative below)
     * @valid  isotropic scatter, speed above 0
     * @error  exact within its assumptions
     * @source Rice (1945); Clarke (1968), level-crossing rate of a Rayleigh envelope
     */
    public static FadeRate fadeRate(Frequency frequency, double speedMPerS, double thresholdDb) {
        if (!(speedMPerS > 0)) throw new IllegalArgumentException("speed " + speedMPerS + " m/s");
        double doppler = speedMPerS / frequency.wavelengthM();
        double rho = Math.pow(10, thresholdDb / 20);
        double root = Math.sqrt(2 * Math.PI);
        double crossings = root * doppler * rho * Math.exp(-rho * rho);
        double fade = Math.expm1(rho * rho) / (rho * doppler * root);
        return new FadeRate(crossings, fade);
    }

    /**
     * Odds that at least one of several independent spots, about half a wavelength apart, works.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   odds of one spot 0 to 1, number of spots; result 0 to 1
     * @valid  spots without correlation
     * @error  exact
     * @source independent trials
     */
    public static double bestOfSpotsOdds(double oddsOfOne, int spots) {
        return 1 - Math.pow(1 - oddsOfOne, spots);
    }

    /**
     * Share of an area within radius R that works, from the margin at its edge and a loss law of 10 n log d.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   margin at the edge dB, spread dB above 0, n dimensionless above 0; result 0 to 1
     * @valid  circular area around one end, the same spread everywhere
     * @error  1e-9
     * @source Reudink (1974), closed form of the area integral
     */
    public static double areaShare(double edgeMarginDb, double spreadDb, double lossExponent) {
        if (!(spreadDb > 0) || !(lossExponent > 0))
            throw new IllegalArgumentException("spread " + spreadDb + " dB, exponent " + lossExponent);
        double a = -edgeMarginDb / (spreadDb * Math.sqrt(2));
        double b = 10 * lossExponent * Math.log10(Math.E) / (spreadDb * Math.sqrt(2));
        double inner = (1 - a * b) / b;
        // exp(...)·erfc(inner) overflows for a steep margin; there the scaled form keeps its digits.
        double tail = inner < 25
                ? Math.exp((1 - 2 * a * b) / (b * b)) * Erf.erfc(inner)
                : Math.exp(-a * a) / (inner * Math.sqrt(Math.PI));
        return Math.max(0, Math.min(1, 0.5 * (Erf.erfc(a) + tail)));
    }

    /**
     * Correlation of shadowing between two places on a walk, exp(−x/d_c).
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distance between the places m, decorrelation distance m above 0; result 0 to 1
     * @valid  one kind of surroundings; d_c 8 to 25 m in streets, 20 to 50 m in woods (from memory)
     * @error  d_c is known within a factor of 2
     * @source Gudmundson (1991)
     */
    public static double shadowCorrelation(double distanceM, double decorrelationM) {
        if (!(decorrelationM > 0)) throw new IllegalArgumentException("decorrelation distance " + decorrelationM);
        return Math.exp(-Math.abs(distanceM) / decorrelationM);
    }

    /**
     * Number of independent samples on a walk of length W, 1 + W/(2 d_c).
     *
     * @shape  scalars in, scalar out; pure
     * @unit   length of the walk m, decorrelation distance m above 0
     * @valid  samples much closer than d_c
     * @error  about 20 %
     * @source integral of {@link #shadowCorrelation}, long walks
     */
    public static double independentSamples(double walkM, double decorrelationM) {
        if (!(decorrelationM > 0)) throw new IllegalArgumentException("decorrelation distance " + decorrelationM);
        return 1 + Math.max(0, walkM) / (2 * decorrelationM);
    }

    private static void refuseOdds(double odds) {
        if (!(odds > 0 && odds < 1)) throw new IllegalArgumentException("odds " + odds + ", not between 0 and 1");
    }
}
