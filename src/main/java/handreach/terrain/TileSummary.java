package handreach.terrain;

import java.util.Objects;

/**
 * What is known of a tile from its name and header, without reading its heights.
 *
 * @param name file name
 * @param format such as {@code HGT}, {@code GeoTIFF}, {@code Esri ASCII grid}
 * @param bounds rectangle between its outermost posts
 * @param spacing distance of its posts
 * @param crs coordinate reference system, such as {@code EPSG:4326}
 * @param nature what the name tells about the heights
 */
public record TileSummary(
        String name, String format, TileBounds bounds, PostSpacing spacing, String crs, TileProvenance nature) {
    public TileSummary {
        Objects.requireNonNull(name);
        Objects.requireNonNull(format);
        Objects.requireNonNull(bounds);
        Objects.requireNonNull(spacing);
        Objects.requireNonNull(crs);
        Objects.requireNonNull(nature);
    }
}
