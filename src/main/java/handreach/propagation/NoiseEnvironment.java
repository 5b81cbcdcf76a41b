package handreach.propagation;

import handreach.input.Keyword;
import java.util.List;
import java.util.Locale;

/**
 * Surroundings by how much man-made noise they hold: constants of Rec. ITU-R P.372-16 Table 1, F_am = c − d log f(MHz), and spread
 * between places (city, residential, rural; from memory).
 *
 * <p>The spreads are standard deviations of the location variability, and are used as such. They are not the deciles of the same
 * recommendation, which tell how far noise rises and falls within an hour at one place ({@link #hourUpDb}, {@link #hourDownDb}; from memory) and would have to be divided by 1.28 first. What varies within the hour is left out: a call
 * is repeated.
 */
public enum NoiseEnvironment {
    CITY(76.8, 27.7, 8.4, 11.0, 6.7),
    RESIDENTIAL(72.5, 27.7, 5.8, 10.6, 5.3),
    RURAL(67.2, 27.7, 6.8, 9.2, 4.6),
    /** Spread and deciles taken as in the country. */
    QUIET_RURAL(53.6, 28.6, 6.8, 9.2, 4.6);

    /** How files and options name them. */
    public static final Keyword<NoiseEnvironment> KEYWORD = Keyword.of(List.of(values()), NoiseEnvironment::word);

    final double c;
    final double d;
    private final double placeSpreadDb;
    private final double hourUpDb;
    private final double hourDownDb;

    NoiseEnvironment(double c, double d, double placeSpreadDb, double hourUpDb, double hourDownDb) {
        this.c = c;
        this.d = d;
        this.placeSpreadDb = placeSpreadDb;
        this.hourUpDb = hourUpDb;
        this.hourDownDb = hourDownDb;
    }

    /** Standard deviation of the median between places, dB (from memory). */
    public double placeSpreadDb() {
        return placeSpreadDb;
    }

    /** By how much noise lies above its median a tenth of the time within an hour at one place, dB (from memory). */
    public double hourUpDb() {
        return hourUpDb;
    }

    /** By how much it lies below a tenth of the time, dB (from memory). */
    public double hourDownDb() {
        return hourDownDb;
    }

    /** Name as written in plans and options, such as {@code quiet-rural}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
