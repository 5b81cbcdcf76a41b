package handreach.terrain;

import handreach.input.InputFault;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What the header of a GeoTIFF file tells against its being ground. Such a file is refused by name; its values are not looked at.
 *
 * <p>Signs are: it was written by this program; a colour table; values of 8 bits, which hold no height above 255 m; words of its
 * metadata or of the {@code .aux.xml} beside it that name classes, undulations or the ellipsoid; a vertical reference that is an
 * ellipsoid. Words of the file's name alone refuse nothing.
 */
final class HeaderSigns {
    /** What the report writes into the software tag of its own rasters. */
    private static final String OURS = "Handreach";

    private static final int PALETTE = 3;
    /** Ellipsoidal vertical systems of GeoTIFF 1.0, section 6.3.4.1: 5001 Airy to 5033 <em>(from memory)</em>. */
    private static final int FIRST_ELLIPSOID = 5001;

    private static final int LAST_ELLIPSOID = 5033;
    private static final long LONGEST_BESIDE = 1L << 20;
    private static final int MOST_WORDS = 60;

    private static final Pattern CLASSES =
            Pattern.compile("land[ _-]?cover|land[ _-]?use|\\blulc\\b", Pattern.CASE_INSENSITIVE);
    private static final Pattern UNDULATION =
            Pattern.compile("undulation|geoid[ _-]?(height|separation|model)", Pattern.CASE_INSENSITIVE);
    private static final Pattern ELLIPSOID = Pattern.compile("ellipsoid", Pattern.CASE_INSENSITIVE);
    private static final Pattern SEA_LEVEL =
            Pattern.compile("geoid|orthometric|egm ?\\d|navd|sea level", Pattern.CASE_INSENSITIVE);

    static final String NO_COVER_HERE =
            " Move it out of the tiles folder; land cover is named in the plan as land_cover, with its legend.";
    static final String NO_UNDULATION_HERE =
            " Move it out of the tiles folder; it is the difference between two kinds of heights.";
    static final String NO_ELLIPSOID_HERE =
            " Take the undulation of the geoid off it with a GIS tool, or fetch the tile"
                    + " above sea level; heights of both kinds differ by up to 107 m.";

    private HeaderSigns() {}

    /** The fault with which a file is refused, if something tells against it. */
    static Optional<InputFault> against(Path file, TiffHeader header, GeoKeys keys) {
        String name = header.name();
        if (header.text(TiffHeader.SOFTWARE).strip().startsWith(OURS))
            return fault(
                    name,
                    "was written by Handreach: it is a result, not ground. Move it out of the tiles folder, and write"
                            + " results into another.");
        if ((int) header.number(TiffHeader.PHOTOMETRIC, 1) == PALETTE || header.has(TiffHeader.COLOR_MAP))
            return fault(
                    name, "has a colour table: it looks like land cover or a picture, not ground." + NO_COVER_HERE);
        Optional<InputFault> told = byWords(name, GdalMetadata.items(header.text(TiffHeader.GDAL_METADATA)));
        if (told.isPresent()) return told;
        if (hasCategories(file))
            return fault(
                    name,
                    "has class names in the .aux.xml beside it: it looks like land cover, not ground." + NO_COVER_HERE);
        if ((int) header.number(TiffHeader.BITS_PER_SAMPLE, 1) <= 8)
            return fault(
                    name,
                    "has values of 8 bits, which hold no height above 255 m: it looks like land cover or a picture, not"
                            + " ground."
                            + NO_COVER_HERE + " If they are heights, convert them to 16 bits.");
        return byVerticalReference(name, keys);
    }

    private static Optional<InputFault> byWords(String name, List<GdalMetadata.Item> items) {
        for (GdalMetadata.Item item : items) {
            boolean isDescription =
                    item.role().equals("description") || item.name().equals("title");
            if (item.name().equals("legend")
                    || (item.name().equals("layer_type") && item.text().equalsIgnoreCase("thematic"))
                    || ((isDescription || item.name().equals("product_type"))
                            && CLASSES.matcher(item.text()).find()))
                return fault(
                        name,
                        "says \"" + words(item.text()) + "\" in its metadata: it looks like land cover, not ground."
                                + NO_COVER_HERE);
            if (isDescription && UNDULATION.matcher(item.text()).find())
                return fault(
                        name,
                        "says \"" + words(item.text())
                                + "\" in its metadata: it looks like the undulation of a geoid, not ground."
                                + NO_UNDULATION_HERE);
            if ((isDescription || item.name().contains("vertical"))
                    && ELLIPSOID.matcher(item.text()).find()
                    && !SEA_LEVEL.matcher(item.text()).find())
                return fault(
                        name,
                        "says \"" + words(item.text()) + "\" in its metadata: its heights count from the ellipsoid, not"
                                + " from the sea."
                                + NO_ELLIPSOID_HERE);
        }
        return Optional.empty();
    }

    /** GeoTIFF 1.1 (19-008r4), 7.6: the vertical system by its code, or in words. */
    private static Optional<InputFault> byVerticalReference(String name, GeoKeys keys) {
        int code = keys.code(GeoKeys.VERTICAL);
        String words = keys.text(GeoKeys.VERTICAL_CITATION);
        if (code >= FIRST_ELLIPSOID && code <= LAST_ELLIPSOID)
            return fault(name, "has the vertical system " + code + ", an ellipsoid, not the sea." + NO_ELLIPSOID_HERE);
        if (ELLIPSOID.matcher(words).find() && !SEA_LEVEL.matcher(words).find())
            return fault(
                    name,
                    "has the vertical system \"" + words(words) + "\": its heights count from the ellipsoid, not from"
                            + " the sea."
                            + NO_ELLIPSOID_HERE);
        int geographic = keys.code(GeoKeys.GEOGRAPHIC);
        if (code == 0 && TiffFrame.hasEllipsoidalHeights(geographic))
            return fault(
                    name,
                    "has the coordinate reference system EPSG:" + geographic
                            + ", whose heights count from the ellipsoid, not from the sea."
                            + NO_ELLIPSOID_HERE);
        return Optional.empty();
    }

    private static boolean hasCategories(Path file) {
        Path beside = file.resolveSibling(file.getFileName() + ".aux.xml");
        try {
            if (!Files.isRegularFile(beside) || Files.size(beside) > LONGEST_BESIDE) return false;
            String xml = new String(Files.readAllBytes(beside), StandardCharsets.ISO_8859_1);
            return xml.contains("<CategoryNames>") || xml.contains("tableType=\"thematic\"");
        } catch (IOException e) {
            return false;
        }
    }

    private static String words(String text) {
        String line = text.length() > 4 * MOST_WORDS ? text.substring(0, 4 * MOST_WORDS) : text;
        line = line.replaceAll("[\\p{Cntrl}\\s]+", " ").replace('|', ' ').strip();
        return line.length() > MOST_WORDS ? line.substring(0, MOST_WORDS).strip() + " \u2026" : line;
    }

    private static Optional<InputFault> fault(String name, String text) {
        return Optional.of(new InputFault(name, 0, text));
    }
}
