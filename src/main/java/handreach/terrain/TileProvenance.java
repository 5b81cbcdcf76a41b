package handreach.terrain;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * What the name of a file tells about its heights.
 *
 * @param surface what the heights stand for, if the name tells
 * @param verticalDatum what they are counted from, in words
 */
public record TileProvenance(Optional<Surface> surface, String verticalDatum) {
    private static final String UNKNOWN = "the file's name does not say";
    private static final String ELLIPSOID = "ellipsoid, as its name says; used only where no other tile has a height";

    public TileProvenance {
        Objects.requireNonNull(surface);
        Objects.requireNonNull(verticalDatum);
    }

    /** Whether the name says that heights count from the ellipsoid, up to 107 m off those above the sea. */
    public boolean isFromEllipsoid() {
        return verticalDatum.equals(ELLIPSOID);
    }

    static TileProvenance of(String fileName) {
        String name = fileName.toLowerCase(Locale.ROOT);
        if ((name.contains("ellipsoid") || name.matches("(.*[-_.])?hae[-_.].*")) && !name.contains("geoid"))
            return new TileProvenance(Optional.empty(), ELLIPSOID);
        if (name.startsWith("copernicus_dsm"))
            return new TileProvenance(Optional.of(Surface.SURFACE_MODEL), "EGM2008 geoid");
        if (name.matches("usgs_(13|1|2|1m|19)_.*") || name.matches("(img)?n\\d\\dw\\d{3}_(13|1|2)(_.*)?\\.tif"))
            return new TileProvenance(
                    Optional.of(Surface.BARE_EARTH), "NAVD 88 (local datum outside the conterminous US)");
        if (name.matches("[ns]\\d{1,2}[ew]\\d{1,3}\\b.*hgt.*") || name.contains("srtm") || name.contains("nasadem"))
            return new TileProvenance(Optional.of(Surface.RADAR), "sea level (EGM96 geoid) as in SRTM and NASADEM");
        if (name.contains("_dtm") || name.contains("dtm_"))
            return new TileProvenance(Optional.of(Surface.BARE_EARTH), UNKNOWN);
        if (name.contains("_dsm") || name.contains("dsm_"))
            return new TileProvenance(Optional.of(Surface.SURFACE_MODEL), UNKNOWN);
        return new TileProvenance(Optional.empty(), UNKNOWN);
    }
}
