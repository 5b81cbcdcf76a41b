package handreach.geodesy;

import handreach.input.InputFault;
import handreach.input.NumberText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A place as people write it: decimal degrees, degrees and minutes, UTM or MGRS. */
public final class Place {
    private static final String FORMS =
            "A place is written 46.5,8.1 or 46\u00b030.000'N 8\u00b006.000'E or 32T 430941 5149996 or 32TMS3094149996.";
    private static final Pattern UTM = Pattern.compile(
            "(\\d{1,2})\\s*([A-Z])[\\s,]+(\\d{1,7}(?:\\.\\d+)?)\\s*M?E?[\\s,]+(\\d{1,8}(?:\\.\\d+)?)\\s*M?N?");
    private static final Pattern SEXAGESIMAL =
            Pattern.compile("([+-]?)(\\d{1,3}(?:\\.\\d*)?)(?:[\\s:\u00b0]+(\\d{1,2}(?:\\.\\d*)?))?"
                    + "(?:[\\s:']+(\\d{1,2}(?:\\.\\d*)?))?[\\s\u00b0'\"]*");
    private static final Pattern DECIMAL_COMMAS =
            Pattern.compile("[+-]?\\d{1,3},\\d+\\s*[;\\s,]\\s*[+-]?\\d{1,3},\\d+");

    private final String source;
    private final String typed;

    private Place(String source, String typed) {
        this.source = source;
        this.typed = typed;
    }

    /**
     * The position that a text names.
     *
     * <p>A grid reference names a square; its centre is meant. Without letters, latitude comes first.
     *
     * @shape text in, position out; pure
     * @unit degrees north and east; UTM metres
     * @valid what {@link PlaceForm} writes and its usual variants; anything else is an {@link InputFault} naming the source
     * @error degrees exact; UTM and MGRS below 0.01 mm besides the width of the square
     * @source common practice, no source
     */
    public static Position parse(String source, String text) {
        return new Place(source, text.strip()).position();
    }

    private Position position() {
        if (typed.isEmpty()) throw fault("is empty. " + FORMS);
        if (typed.length() > 80) throw fault("has " + typed.length() + " characters. " + FORMS);
        String text = typed.toUpperCase(Locale.ROOT)
                .replace('\u2212', '-')
                .replace('\u00ba', '\u00b0')
                .replaceAll("[\u2032\u2019\u2018`\u00b4]", "'")
                .replaceAll("[\u2033\u201d\u201c]|''", "\"");
        String compact = text.replaceAll("\\s+", "");
        try {
            if (Mgrs.looksLikeOne(compact)) return Mgrs.parse(compact);
        } catch (IllegalArgumentException e) {
            throw fault(e.getMessage() + ".");
        }
        Matcher utm = UTM.matcher(text);
        if (utm.matches()) return utm(utm);
        if (DECIMAL_COMMAS.matcher(text).matches())
            throw fault("has decimal commas. Write points: " + text.replaceAll("(\\d),(\\d)", "$1.$2") + ".");
        return latitudeAndLongitude(text);
    }

    private Position utm(Matcher m) {
        int zone = Integer.parseInt(m.group(1));
        char band = m.group(2).charAt(0);
        double easting = Double.parseDouble(m.group(3));
        double northing = Double.parseDouble(m.group(4));
        if (zone < 1 || zone > 60) throw fault("zone " + zone + " is not between 1 and 60. Check the number.");
        if (Mgrs.BANDS.indexOf(band) < 0)
            throw fault("band " + band + " does not exist, bands are C to X without I and O. Check the letter.");
        if (easting < 100_000 || easting > 900_000)
            throw fault("easting " + m.group(3) + " m is not between 100000 and 900000. Easting comes first.");
        if (northing > 10_000_000)
            throw fault("northing " + m.group(4) + " m is not between 0 and 10000000. Check its digits.");
        Position place = new UtmZone(zone, band < 'N').position(easting, northing);
        double lat = place.latitudeDeg();
        if (lat < Mgrs.bandSouthDeg(band) - 0.1 || lat > Mgrs.bandNorthDeg(band) + 0.1)
            throw fault(String.format(
                    Locale.ROOT,
                    "northing %s m lies at latitude %.2f, but band %c is %.0f to %.0f. The letter is the band of latitude, not the"
                            + " hemisphere: check it.",
                    m.group(4),
                    lat,
                    band,
                    Mgrs.bandSouthDeg(band),
                    Mgrs.bandNorthDeg(band)));
        return place;
    }

    private Position latitudeAndLongitude(String text) {
        if (!text.matches("[-+0-9.,;:\\s\u00b0'\"NSEW]+")) throw fault("is not a place. " + FORMS);
        String letters = text.replaceAll("[^NSEW]", "");
        List<String> halves = letters.isEmpty() ? halves(text) : halvesByLetters(text, letters);
        boolean isEastFirst = letters.matches("[EW].*");
        double first = degrees(halves.get(0));
        double second = degrees(halves.get(1));
        double lat = isEastFirst ? second : first;
        double lon = isEastFirst ? first : second;
        if (letters.indexOf('S') >= 0) lat = signed(lat, 'S');
        if (letters.indexOf('W') >= 0) lon = signed(lon, 'W');
        if (Math.abs(lat) > 90) {
            String turned = Math.abs(lat) <= 180 && Math.abs(lon) <= 90
                    ? " Did you mean " + plain(lon) + "," + plain(lat) + "?"
                    : "";
            throw fault("latitude " + plain(lat) + " is not between -90 and 90. Latitude comes first." + turned);
        }
        if (Math.abs(lon) > 180)
            throw fault("longitude " + plain(lon) + " is not between -180 and 180. Check its digits.");
        return new Position(lat, lon);
    }

    private double signed(double degrees, char letter) {
        if (degrees < 0) throw fault("has both a minus sign and " + letter + ". Keep one of them.");
        return -degrees;
    }

    /** Without letters: parted by the one comma or semicolon, or by counting numbers. */
    private List<String> halves(String text) {
        String[] parts = text.split("[,;]", -1);
        if (parts.length == 2) return List.of(parts[0].strip(), parts[1].strip());
        if (parts.length > 2) throw fault("has " + (parts.length - 1) + " commas, one is needed. " + FORMS);
        String[] words = text.strip().split("\\s+");
        if (words.length == 1) throw fault("is one number, two are needed: latitude, then longitude. " + FORMS);
        if (words.length % 2 != 0 || words.length > 6)
            throw fault("does not show where latitude ends. Put a comma between latitude and longitude.");
        int half = words.length / 2;
        return List.of(
                String.join(" ", List.of(words).subList(0, half)),
                String.join(" ", List.of(words).subList(half, words.length)));
    }

    private List<String> halvesByLetters(String text, String letters) {
        if (!letters.matches("[NS][EW]|[EW][NS]"))
            throw fault(
                    "needs one of N or S and one of E or W, has " + String.join(" ", letters.split("")) + ". " + FORMS);
        String body = text.strip();
        boolean isBefore = "NSEW".indexOf(body.charAt(0)) >= 0;
        int cut = isBefore ? body.indexOf(letters.charAt(1), 1) : body.indexOf(letters.charAt(0)) + 1;
        List<String> halves = new ArrayList<>();
        for (String half : List.of(body.substring(0, cut), body.substring(cut)))
            halves.add(half.replaceAll("[NSEW]", " ").replaceAll("^[\\s,;]+|[\\s,;]+$", ""));
        return halves;
    }

    private double degrees(String half) {
        Matcher m = SEXAGESIMAL.matcher(half);
        if (!m.matches()) throw fault("'" + half + "' is not an angle in degrees. " + FORMS);
        double sum = 0;
        double unit = 1;
        for (int g = 2; g <= 4 && m.group(g) != null; g++) {
            double value = NumberText.parse(m.group(g)).orElseThrow();
            if (g > 2 && value >= 60)
                throw fault("'" + half + "' has " + m.group(g) + (g == 3 ? " minutes" : " seconds")
                        + ", they end below 60. Check the order of its numbers.");
            boolean isLast = g == 4 || m.group(g + 1) == null;
            if (!isLast && m.group(g).contains("."))
                throw fault(
                        "'" + half + "' has a fraction before its last number. Give the fraction only to the last.");
            sum += value * unit;
            unit /= 60;
        }
        return m.group(1).equals("-") ? -sum : sum;
    }

    private static String plain(double degrees) {
        String text = String.format(Locale.ROOT, "%.5f", degrees);
        return text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    private InputFault fault(String text) {
        return new InputFault(source, 0, "'" + typed + "' " + text);
    }
}
