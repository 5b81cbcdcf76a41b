package handreach.terrain;

import java.util.HashMap;
import java.util.Map;

/** The keys of a GeoTIFF file. Source: OGC GeoTIFF 1.1 (19-008r4), section 7. */
final class GeoKeys {
    static final int MODEL_TYPE = 1024;
    static final int RASTER_TYPE = 1025;
    static final int GEOGRAPHIC = 2048;
    static final int ANGULAR_UNITS = 2054;
    static final int ELLIPSOID = 2056;
    static final int SEMI_MAJOR_AXIS = 2057;
    static final int INVERSE_FLATTENING = 2059;
    static final int PROJECTED = 3072;
    static final int PROJECTION = 3074;
    static final int PROJECTION_METHOD = 3075;
    static final int LINEAR_UNITS = 3076;
    static final int ORIGIN_LONGITUDE = 3080;
    static final int ORIGIN_LATITUDE = 3081;
    static final int FALSE_EASTING = 3082;
    static final int FALSE_NORTHING = 3083;
    static final int ORIGIN_SCALE = 3092;
    static final int VERTICAL = 4096;
    static final int VERTICAL_CITATION = 4097;
    static final int VERTICAL_UNITS = 4099;

    private final Map<Integer, Double> values = new HashMap<>();
    private final Map<Integer, String> texts = new HashMap<>();

    GeoKeys(TiffHeader header) {
        double[] directory = header.numbers(TiffHeader.GEO_KEYS);
        double[] doubles = header.numbers(TiffHeader.GEO_DOUBLES);
        String ascii = header.text(TiffHeader.GEO_ASCII);
        for (int at = 4; at + 3 < directory.length; at += 4) {
            int key = (int) directory[at];
            int place = (int) directory[at + 1];
            int index = (int) directory[at + 3];
            if (place == 0) values.put(key, directory[at + 3]);
            else if (place == TiffHeader.GEO_DOUBLES && index < doubles.length) values.put(key, doubles[index]);
            else if (place == TiffHeader.GEO_ASCII && index < ascii.length())
                texts.put(key, ascii.substring(index, Math.min(ascii.length(), index + (int) directory[at + 2])));
        }
    }

    double number(int key, double ifMissing) {
        return values.getOrDefault(key, ifMissing);
    }

    /** What a key says in words; empty if it says nothing. */
    String text(int key) {
        return texts.getOrDefault(key, "");
    }

    int code(int key) {
        return (int) number(key, 0);
    }
}
