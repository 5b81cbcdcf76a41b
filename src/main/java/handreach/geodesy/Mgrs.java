package handreach.geodesy;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The military grid reference: zone, band, 100 km square, digits.
 *
 * <p>Digits are cut off, not rounded, so that a reference names the square in which a position lies. Source: NGA.STND.0037,
 * Universal Grids, lettering scheme AA, <em>from memory</em>; checked against GeoConvert rows.
 */
final class Mgrs {
    static final String BANDS = "CDEFGHJKLMNPQRSTUVWX";
    private static final String COLUMNS = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    private static final String ROWS = "ABCDEFGHJKLMNPQRSTUV";
    private static final Pattern SHAPE = Pattern.compile("(\\d{1,2})([A-Z])([A-Z])([A-Z])(\\d*)");
    private static final double SQUARE_M = 100_000;
    private static final double ROW_CYCLE_M = 2_000_000;

    private Mgrs() {}

    static char band(double latitudeDeg) {
        return BANDS.charAt((int) Math.min(19, Math.max(0, Math.floor((latitudeDeg + 80) / 8))));
    }

    static double bandSouthDeg(char band) {
        return -80 + 8.0 * BANDS.indexOf(band);
    }

    static double bandNorthDeg(char band) {
        return band == 'X' ? 84 : bandSouthDeg(band) + 8;
    }

    static boolean looksLikeOne(String compact) {
        return SHAPE.matcher(compact).matches();
    }

    /** Reference to one metre, with spaces between its parts. */
    static String format(Position place) {
        UtmZone zone = UtmZone.of(place);
        double[] en = new double[2];
        zone.project(place.latitudeDeg(), place.longitudeDeg(), en);
        long easting = (long) Math.floor(en[0] + 1e-6);
        long northing = (long) Math.floor(en[1] + 1e-6);
        if (zone.isSouth()) northing = Math.min(northing, 9_999_999);
        char column = COLUMNS.charAt((zone.number() - 1) % 3 * 8 + (int) (easting / 100_000) - 1);
        char row = ROWS.charAt((int) ((northing / 100_000 + rowShift(zone.number())) % 20));
        return String.format(
                Locale.ROOT,
                "%02d%c %c%c %05d %05d",
                zone.number(),
                band(place.latitudeDeg()),
                column,
                row,
                easting % 100_000,
                northing % 100_000);
    }

    /** Centre of the square that the reference names; IllegalArgumentException with a sentence for the user where it names none. */
    static Position parse(String compact) {
        Matcher m = SHAPE.matcher(compact);
        if (!m.matches()) throw new IllegalArgumentException("is not a grid reference");
        int zone = Integer.parseInt(m.group(1));
        char band = m.group(2).charAt(0);
        String digits = m.group(5);
        if (zone < 1 || zone > 60) throw new IllegalArgumentException("zone " + zone + " is not between 1 and 60");
        if (BANDS.indexOf(band) < 0)
            throw new IllegalArgumentException("band " + band + " does not exist, bands are C to X without I and O");
        if (band == 'X' && (zone == 32 || zone == 34 || zone == 36))
            throw new IllegalArgumentException("zone " + zone + "X does not exist, Svalbard uses 31, 33, 35 and 37");
        if (digits.length() % 2 != 0 || digits.length() > 10)
            throw new IllegalArgumentException("has " + digits.length()
                    + " digits, an even number up to 10 is needed: half easting, half northing");
        int column = COLUMNS.indexOf(m.group(3).charAt(0)) - (zone - 1) % 3 * 8;
        int row = ROWS.indexOf(m.group(4).charAt(0));
        if (column < 0 || column > 7 || row < 0)
            throw new IllegalArgumentException("square " + m.group(3) + m.group(4) + " does not exist in zone " + zone);
        int half = digits.length() / 2;
        double unitM = SQUARE_M / Math.pow(10, half);
        double easting = (column + 1) * SQUARE_M + (number(digits.substring(0, half)) + 0.5) * unitM;
        double inCycle =
                Math.floorMod(row - rowShift(zone), 20) * SQUARE_M + (number(digits.substring(half)) + 0.5) * unitM;
        return inBand(new UtmZone(zone, band < 'N'), band, easting, inCycle);
    }

    private static Position inBand(UtmZone zone, char band, double eastingM, double northingInCycleM) {
        Position best = null;
        double bestOffDeg = 1.0;
        for (double northing = northingInCycleM; northing < 10_000_000; northing += ROW_CYCLE_M) {
            Position place = zone.position(eastingM, northing);
            double lat = place.latitudeDeg();
            double off = Math.max(0, Math.max(bandSouthDeg(band) - lat, lat - bandNorthDeg(band)));
            if (off < bestOffDeg) {
                bestOffDeg = off;
                best = place;
            }
        }
        if (best == null || isFarOutside(zone, best))
            throw new IllegalArgumentException(
                    "the square does not lie in zone " + zone.number() + band + "; check its two letters");
        return best;
    }

    private static boolean isFarOutside(UtmZone zone, Position place) {
        double away = Math.abs(Math.IEEEremainder(place.longitudeDeg() - zone.centralMeridianDeg(), 360));
        double squareDeg = 100 / (111.32 * Math.max(0.1, Math.cos(Math.toRadians(place.latitudeDeg()))));
        return away > (place.latitudeDeg() >= 56 ? 9 : 3) + squareDeg;
    }

    private static int rowShift(int zone) {
        return zone % 2 == 0 ? 5 : 0;
    }

    private static double number(String digits) {
        return digits.isEmpty() ? 0 : Integer.parseInt(digits);
    }
}
