package handreach.report.page;

/** A subject on which a crew can come to harm or into trouble; {@link Cautions} has the words. */
public enum Caution {
    RELIANCE,
    EXPOSURE,
    LIGHTNING,
    POWER_LINES,
    LICENCE,
    RELAY_EXPOSURE
}
