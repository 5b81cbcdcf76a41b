package handreach.terrain;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The south-west post that an SRTM-layout file is named for.
 *
 * @param southDeg latitude of the last row, −90 to 89
 * @param westDeg longitude of the first column, −180 to 179
 */
record HgtName(int southDeg, int westDeg) {
    private static final Pattern CORNER =
            Pattern.compile("(?:^|[^a-z0-9])([ns])(\\d{1,2})([ew])(\\d{1,3})(?![0-9a-z])");

    static Optional<HgtName> of(String fileName) {
        Matcher m = CORNER.matcher(fileName.toLowerCase(Locale.ROOT));
        if (!m.find()) return Optional.empty();
        int lat = Integer.parseInt(m.group(2)) * (m.group(1).equals("s") ? -1 : 1);
        int lon = Integer.parseInt(m.group(4)) * (m.group(3).equals("w") ? -1 : 1);
        return lat >= -90 && lat <= 89 && lon >= -180 && lon <= 179
                ? Optional.of(new HgtName(lat, lon))
                : Optional.empty();
    }
}
