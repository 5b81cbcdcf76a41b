package handreach.plan;

import java.util.Arrays;

/**
 * The keys of a plan that name a file or folder. A reader reads such a name only by a key declared here, and saving elsewhere follows all
 * of them, so that neither can know a key that the other does not.
 */
enum FileKey {
    TILES("ground", "tiles"),
    LAND_COVER("ground", "land_cover"),
    COVER_AREAS("ground", "cover_areas"),
    BENCH("bench", "file"),
    PATTERN("antenna", "pattern"),
    AREA("area", "polygon"),
    ROUTE("route", "file"),
    SECTOR("sector", "polygon"),
    INSIDE("relay", "inside"),
    OUTSIDE("relay", "outside"),
    TRACKS("relay", "tracks"),
    WALK_TRACK("walk", "track"),
    WALK_REPORTS("walk", "reports"),
    CALIBRATION("calibration", "file");

    private final String section;
    private final String key;

    FileKey(String section, String key) {
        this.section = section;
        this.key = key;
    }

    static boolean isOne(String section, String key) {
        return Arrays.stream(values()).anyMatch(one -> one.section.equals(section) && one.key.equals(key));
    }
}
