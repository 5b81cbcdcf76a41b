package handreach.report;

import handreach.input.Keyword;
import java.util.List;
import java.util.Locale;

/** What {@code reach} can write into a folder. */
public enum ReachPart {
    /** The HTML report. */
    REPORT,
    /** The numbers as JSON, and by bearing as CSV. */
    NUMBERS,
    /** Outlines as GeoJSON. */
    OUTLINES,
    /** Maps as PNG. */
    MAPS,
    /** Loss, margin, odds and least loadout as GeoTIFF. */
    RASTERS,
    /** Overlay for globe viewers as KMZ. */
    OVERLAY,
    /** The plan's positions as GPX. */
    PLACES;

    /** How files and options name them. */
    public static final Keyword<ReachPart> KEYWORD = Keyword.of(List.of(values()), ReachPart::word);

    /** As people write it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
