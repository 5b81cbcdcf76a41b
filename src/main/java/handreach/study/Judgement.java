package handreach.study;

import handreach.uncertainty.Interval;
import java.util.Locale;

/** What a gain in one measure comes to. */
public enum Judgement {
    /** Nothing changes, at neither end of the interval. */
    SAME,
    /** The interval holds zero. */
    NOT_TOLD_APART,
    WORSE,
    /** A gain, but less than is felt. */
    TOO_LITTLE,
    MORE;

    /** Gains closer to nothing than this are rounding. */
    private static final double ROUNDING = 1e-9;

    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Judgement of(double gain, Interval gain95, double felt) {
        if (Math.abs(gain95.low()) < ROUNDING && Math.abs(gain95.high()) < ROUNDING && Math.abs(gain) < ROUNDING)
            return SAME;
        if (gain95.high() < -ROUNDING) return WORSE;
        if (gain95.low() <= ROUNDING) return NOT_TOLD_APART;
        return gain + ROUNDING < felt ? TOO_LITTLE : MORE;
    }
}
