package handreach.geodesy;

import handreach.input.Keyword;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The forms in which a place is shown. All are read by {@link Place#parse}; the grids fall back to degrees near the poles. */
public enum PlaceForm {
    DECIMAL,
    DEGREES_MINUTES,
    UTM,
    MGRS;

    /** A blank at which no line ends. */
    public static final char NO_BREAK = '\u00a0';

    private static final int LEAST_DIGITS = 4;

    /** How files and options name them. */
    public static final Keyword<PlaceForm> KEYWORD = Keyword.of(List.of(values()), PlaceForm::word);

    /** Name as written in plans and options, such as {@code degrees-minutes}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The place in this form, to about a metre.
     *
     * @shape position in, text out; pure
     * @unit decimal degrees to 5 places, minutes to 3 places, metres whole
     * @valid every position; UTM and MGRS end at 80 S and 84 N, beyond which decimal degrees are shown
     * @error half of the last digit; MGRS cuts off, so up to 1 m to the south-west
     * @source GeoConvert practice for truncation, NGA.STND.0037
     */
    public String format(Position place) {
        return switch (this) {
            case DECIMAL -> decimal(place);
            case DEGREES_MINUTES -> minutes(place.latitudeDeg(), "NS") + " " + minutes(place.longitudeDeg(), "EW");
            case UTM -> UtmZone.covers(place) ? utm(place) : decimal(place);
            case MGRS -> UtmZone.covers(place) ? Mgrs.format(place) : decimal(place);
        };
    }

    /** Words with no-break blanks in the places that they name, so that a place is not parted where a line ends. */
    public static String unbroken(String words) {
        if (!mayNamePlace(words)) return words;
        Matcher place = Written.PATTERN.matcher(words);
        return place.find() ? place.replaceAll(one -> one.group().replace(' ', NO_BREAK)) : words;
    }

    /** Whether there are four digits in a row, or a degree sign: every form has one of them, and few cells of a table do. */
    private static boolean mayNamePlace(String words) {
        int digits = 0;
        for (int i = 0; i < words.length(); i++) {
            char c = words.charAt(i);
            digits = c >= '0' && c <= '9' ? digits + 1 : 0;
            if (digits == LEAST_DIGITS || c == '\u00b0') return true;
        }
        return false;
    }

    /** What {@link #format} writes, inside a sentence; made when a sentence may hold it. */
    private static final class Written {
        private static final Pattern PATTERN =
                Pattern.compile("\\b\\d{1,2}[C-HJ-NP-X] (?:[A-HJ-NP-Z]{2} \\d{5} \\d{5}|\\d{6} \\d{7})\\b"
                        + "|\\d+\u00b0\\d\\d\\.\\d{3}'[NS] \\d+\u00b0\\d\\d\\.\\d{3}'[EW]"
                        + "|-?\\b\\d{1,2}\\.\\d{4,6}, -?\\d{1,3}\\.\\d{4,6}\\b");
    }

    /**
     * By how much the grid's north lies east of true north at a place; empty for forms without a grid.
     *
     * @shape position in, scalar out; pure
     * @unit degrees
     * @valid UTM and MGRS from 80 S to 84 N, else empty
     * @error as {@link UtmZone#convergenceDeg}
     * @source as {@link UtmZone#convergenceDeg}
     */
    public OptionalDouble convergenceDeg(Position place) {
        return (this == UTM || this == MGRS) && UtmZone.covers(place)
                ? OptionalDouble.of(UtmZone.of(place).convergenceDeg(place))
                : OptionalDouble.empty();
    }

    private static String decimal(Position place) {
        return plain(place.latitudeDeg()) + ", " + plain(place.longitudeDeg());
    }

    private static String plain(double degrees) {
        return String.format(Locale.ROOT, "%.5f", Math.round(degrees * 1e5) / 1e5 + 0.0);
    }

    private static String minutes(double degrees, String letters) {
        long thousandths = Math.round(Math.abs(degrees) * 60_000);
        return String.format(
                Locale.ROOT,
                "%d\u00b0%02d.%03d'%c",
                thousandths / 60_000,
                thousandths % 60_000 / 1000,
                thousandths % 1000,
                letters.charAt(degrees < 0 && thousandths > 0 ? 1 : 0));
    }

    private static String utm(Position place) {
        UtmZone zone = UtmZone.of(place);
        double[] en = new double[2];
        zone.project(place.latitudeDeg(), place.longitudeDeg(), en);
        return zone.number() + Character.toString(Mgrs.band(place.latitudeDeg())) + " " + whole(en[0], 6) + " "
                + whole(en[1], 7);
    }

    /** Whole metres from 0 up, with noughts in front. */
    private static String whole(double metres, int digits) {
        String number = Long.toString(Math.round(metres));
        return "0".repeat(Math.max(0, digits - number.length())) + number;
    }
}
