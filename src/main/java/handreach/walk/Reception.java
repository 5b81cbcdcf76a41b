package handreach.walk;

import handreach.input.Range;

/**
 * What a report says was heard.
 *
 * @param kind what was noted
 * @param value dBm, dB of SINAD, or the readability from 0 (nothing) to 5; 1 or 0 for copy and no copy
 */
public record Reception(Kind kind, double value) {
    /** Levels that a receiver can have shown. */
    static final Range LEVEL = new Range("level_dbm", -170, 30, "dBm");
    /** What meters of SINAD show. */
    static final Range SINAD = new Range("sinad_db", -10, 80, "dB");

    static final Range READABILITY = new Range("readability", 0, 5, "");

    /** Lowest readability that still carries a task: with difficulty. */
    public static final int LEAST_READABILITY = 3;

    /** What can be noted. */
    public enum Kind {
        /** Level at the receiver, dBm. */
        LEVEL,
        /** Nothing above this level, dBm: the receiver's floor. */
        BELOW,
        /** Signal with noise and distortion over noise and distortion, dB. */
        SINAD,
        /** Readability 1 to 5 (the R of RST, QRK of Rec. ITU-R M.1172), 0 for nothing heard. */
        READABILITY,
        /** Understood or not. */
        COPY
    }

    public Reception {
        if (!Double.isFinite(value)) throw new IllegalArgumentException("heard " + value);
    }

    public static Reception copy(boolean understood) {
        return new Reception(Kind.COPY, understood ? 1 : 0);
    }

    /** Whether this is a level or the note that there was none above the floor. */
    public boolean isLevel() {
        return kind == Kind.LEVEL || kind == Kind.BELOW;
    }

    /**
     * Whether the report counts as copy. A level below a floor is no copy only where the floor is below the level that copy needs.
     *
     * @param neededDbm level that the wanted copy needs
     * @param neededSinadDb SINAD of the wanted copy
     */
    public boolean isCopy(double neededDbm, double neededSinadDb) {
        return switch (kind) {
            case LEVEL -> value >= neededDbm;
            case BELOW -> false;
            case SINAD -> value >= neededSinadDb;
            case READABILITY -> value >= LEAST_READABILITY;
            case COPY -> value > 0;
        };
    }
}
