package handreach.loadout;

import handreach.input.Keyword;
import handreach.input.Range;
import handreach.units.Dbm;
import java.util.List;

/** A receiver's sensitivity as data sheets put it: microvolts at the antenna socket, for some mark of readability. */
public final class StatedSensitivity {
    /** Microvolts that are believed. */
    public static final Range MICROVOLTS = new Range("sensitivity_uv", 0.05, 200, "uV");

    /** 10 log(1 µV² / 50 Ω / 1 mW). */
    private static final double ONE_MICROVOLT_DBM = 10 * Math.log10(1e-12 / 50 / 1e-3);

    /** Where the voltage is meant. */
    public enum Across {
        /** At the socket, the receiver's 50 ohms connected. */
        LOAD("50-ohm", 0),
        /** The generator's open circuit (EMF), of which a matched receiver sees half. */
        OPEN_CIRCUIT("open-circuit", -20 * Math.log10(2));

        public static final Keyword<Across> KEYWORD = Keyword.of(List.of(values()), across -> across.word);

        private final String word;
        private final double addDb;

        Across(String word, double addDb) {
            this.word = word;
            this.addDb = addDb;
        }
    }

    /** What the receiver makes of the signal at that level. */
    public enum Mark {
        SINAD_12("12-db-sinad", 0),
        /** Some 3 dB more signal than 12 dB SINAD takes; common practice, no source, within about 1 dB. */
        QUIETING_20("20-db-quieting", -3);

        public static final Keyword<Mark> KEYWORD = Keyword.of(List.of(values()), mark -> mark.word);

        private final String word;
        private final double addDb;

        Mark(String word, double addDb) {
            this.word = word;
            this.addDb = addDb;
        }
    }

    private StatedSensitivity() {}

    /**
     * Level for 12 dB SINAD that a stated voltage means.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   µV root mean square; result dBm
     * @valid  {@link #MICROVOLTS}, 50 ohm
     * @error  none for 12 dB SINAD; about 1 dB for 20 dB quieting
     * @source P = V²/R; half the open-circuit voltage at a matched load; 20 dB quieting taken as 3 dB more signal than 12 dB SINAD:
     *         common practice, no source
     */
    public static Dbm ofMicrovolts(double microvolts, Across across, Mark mark) {
        if (!(microvolts > 0)) throw new IllegalArgumentException("sensitivity " + microvolts + " uV");
        return new Dbm(ONE_MICROVOLT_DBM + 20 * Math.log10(microvolts) + across.addDb + mark.addDb);
    }
}
