package handreach.plan;

/** Kinds of entries that other keys of a plan name; each has names of its own in its section. */
public enum NameKind {
    CHANNEL,
    RADIO,
    ANTENNA,
    LOADOUT,
    POSITION,
    ROUTE,
    SECTOR;

    /** Section of the plan that holds the entries, such as {@code position} for {@code [[position]]}. */
    String section() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
