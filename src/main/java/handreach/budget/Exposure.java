package handreach.budget;

import handreach.units.Dbi;
import handreach.units.Frequency;

/**
 * Distance to keep from a transmitting antenna on a mast or pole. Never for a handheld at the body: there no distance formula
 * applies, only the SAR of the certified radio with its certified antenna. Local rules come first.
 */
public final class Exposure {
    /** Free space. */
    public static final double NO_REFLECTION = 1;
    /** Ground that adds 60 % to the field; the default. */
    public static final double USUAL_REFLECTION = 2.56;
    /** A perfect mirror. */
    public static final double FULL_REFLECTION = 4;

    /** Whose reference levels. */
    public enum Rule {
        /** 47 CFR 1.1310 Table 1. */
        FCC,
        /** ICNIRP 2020, Table 5, whole body; from memory. */
        ICNIRP,
        /** IEEE C95.1-2019; from memory. */
        IEEE
    }

    /** Who may be near. */
    public enum People {
        WORKERS,
        PUBLIC
    }

    private Exposure() {}

    /**
     * Whole-body reference level of power density.
     *
     * @shape  table lookup; pure
     * @unit   W/m²
     * @valid  30 MHz to 1500 MHz (FCC) or 2000 MHz; outside: IllegalArgumentException
     * @error  none
     * @source FCC 47 CFR 1.1310 Table 1; ICNIRP 2020 Table 5 and IEEE C95.1-2019 (both from memory)
     */
    public static double limitWPerM2(Rule rule, People people, Frequency frequency) {
        double mhz = frequency.mhz();
        if (!(mhz >= 30 && mhz <= (rule == Rule.FCC ? 1500 : 2000)))
            throw new IllegalArgumentException("no exposure limit kept for " + mhz + " MHz");
        double corner = rule == Rule.FCC ? 300 : 400;
        double workers = mhz <= corner ? 10 : 10 * mhz / corner;
        return people == People.WORKERS ? workers : workers / 5;
    }

    /**
     * Distance at which the mean power density falls to a limit.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   power W at the antenna, gain dBi, duty 0 to 1, reflection factor of power density, limit W/m²; result m
     * @valid  far field only, see {@link #isFarField}; nonsense: IllegalArgumentException
     * @error  errs on the safe side for long antennas near by
     * @source R = sqrt(P G duty F / (4π S)); F as in FCC OET Bulletin 65 (97-01), section 2 (from memory)
     */
    public static double distanceM(double powerW, Dbi gain, double duty, double reflection, double limitWPerM2) {
        if (!(powerW >= 0) || !(duty >= 0 && duty <= 1) || !(reflection >= 1) || !(limitWPerM2 > 0))
            throw new IllegalArgumentException("power " + powerW + " W, duty " + duty + ", factor " + reflection);
        double eirpW = powerW * Math.pow(10, gain.dbi() / 10);
        return Math.sqrt(eirpW * duty * reflection / (4 * Math.PI * limitWPerM2));
    }

    /**
     * Distance to print for the public: usual reflection, rounded up to the next half metre.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   power into the antenna W, duty 0 to 1; result m
     * @valid  as {@link #limitWPerM2} and {@link #distanceM}
     * @error  up to 0.5 m too far by the rounding; else as {@link #distanceM}
     * @source {@link #distanceM} over the public level of {@link #limitWPerM2}; rounding up: our suggestion
     */
    public static double keepAwayM(Rule rule, double powerW, Dbi gain, double duty, Frequency frequency) {
        double limit = limitWPerM2(rule, People.PUBLIC, frequency);
        return Math.ceil(distanceM(powerW, gain, duty, USUAL_REFLECTION, limit) * 2) / 2;
    }
}
