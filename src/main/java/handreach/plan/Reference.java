package handreach.plan;

import java.util.List;
import java.util.Set;

/**
 * The keys of a plan that hold the name of an entry elsewhere in it. A reader reads such a key by the reference declared here, and a
 * renaming follows all of them, so that neither can know a key that the other does not.
 */
enum Reference {
    CHANNEL("channel", Set.of(NameKind.CHANNEL), "delta"),
    RADIO("radio", Set.of(NameKind.RADIO), "loadout", "power_step"),
    ANTENNA("antenna", Set.of(NameKind.ANTENNA), "loadout", "delta"),
    LOADOUT("loadout", Set.of(NameKind.LOADOUT), "position", "route", "sector", "walk"),
    /** The name of a position, or a place. */
    CENTRE("centre", Set.of(NameKind.POSITION), "area"),
    FROM("from", Set.of(NameKind.POSITION), "reach"),
    WITH("with", Set.of(NameKind.LOADOUT), "reach"),
    PAIRS("pairs", Set.of(NameKind.POSITION, NameKind.ROUTE, NameKind.SECTOR), "relay"),
    WALK_FROM("walk_from", Set.of(NameKind.POSITION), "relay"),
    BASE("base", Set.of(NameKind.POSITION), "walk"),
    TOWARDS("towards", Set.of(NameKind.POSITION), "position"),
    /** A list of names. */
    KEEP("keep", Set.of(NameKind.POSITION, NameKind.ROUTE, NameKind.SECTOR), "assign"),
    /** A list of names. */
    LOADOUTS("loadouts", Set.of(NameKind.LOADOUT), "assign");

    private final String key;
    private final Set<NameKind> kinds;
    private final List<String> sections;

    Reference(String key, Set<NameKind> kinds, String... sections) {
        this.key = key;
        this.kinds = kinds;
        this.sections = List.of(sections);
    }

    String key() {
        return key;
    }

    /** What it may name. */
    Set<NameKind> kinds() {
        return kinds;
    }

    /** Sections in which the key is such a name; elsewhere it may mean something else. */
    List<String> sections() {
        return sections;
    }
}
