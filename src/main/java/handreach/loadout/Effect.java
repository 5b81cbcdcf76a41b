package handreach.loadout;

/** What a level over the control may already contain, so that no ledger counts it again. */
public enum Effect {
    MISMATCH("mismatch"),
    EFFICIENCY("efficiency"),
    CHASSIS("chassis"),
    COUNTERPOISE("counterpoise"),
    BODY("hand and body"),
    PATTERN("pattern at the horizon");

    private final String label;

    Effect(String label) {
        this.label = label;
    }

    public String label() {
        return label;
    }
}
