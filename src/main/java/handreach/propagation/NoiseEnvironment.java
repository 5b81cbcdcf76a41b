package handreach.propagation;

import handreach.input.Keyword;
import java.util.List;
import java.util.Locale;

/**
 * Surroundings by how much man-made noise they hold: constants of Rec. ITU-R P.372-16 Table 1, F_am = c − d log f(MHz), deciles within
 * the hour up and down, and spread between places (city, residential, rural; from memory).
 */
public enum NoiseEnvironment {
    CITY(76.8, 27.7, 11.0, 6.7, 8.4),
    RESIDENTIAL(72.5, 27.7, 10.6, 5.3, 5.8),
    RURAL(67.2, 27.7, 9.2, 4.6, 6.8),
    QUIET_RURAL(53.6, 28.6, 9.2, 4.6, 6.8);

    /** How files and options name them. */
    public static final Keyword<NoiseEnvironment> KEYWORD = Keyword.of(List.of(values()), NoiseEnvironment::word);

    final double c;
    final double d;
    private final double upperDecileDb;
    private final double lowerDecileDb;
    private final double placeSpreadDb;

    NoiseEnvironment(double c, double d, double upperDecileDb, double lowerDecileDb, double placeSpreadDb) {
        this.c = c;
        this.d = d;
        this.upperDecileDb = upperDecileDb;
        this.lowerDecileDb = lowerDecileDb;
        this.placeSpreadDb = placeSpreadDb;
    }

    /** What one tenth of the time within an hour exceeds, over the median, dB. Quiet rural: taken as rural. */
    public double upperDecileDb() {
        return upperDecileDb;
    }

    /** How far the quietest tenth of the time lies below the median, dB. */
    public double lowerDecileDb() {
        return lowerDecileDb;
    }

    /** Standard deviation of the median between places, dB (from memory). */
    public double placeSpreadDb() {
        return placeSpreadDb;
    }

    /** Name as written in plans and options, such as {@code quiet-rural}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
