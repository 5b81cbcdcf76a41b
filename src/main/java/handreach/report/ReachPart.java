package handreach.report;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What {@code reach} can write into a folder. */
public enum ReachPart {
    /** The HTML report. */
    REPORT,
    /** The numbers as JSON. */
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

    /** As people write it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<ReachPart> named(String word) {
        return Arrays.stream(values()).filter(one -> one.word().equals(word)).findFirst();
    }

    public static List<String> words() {
        return Arrays.stream(values()).map(ReachPart::word).toList();
    }
}
