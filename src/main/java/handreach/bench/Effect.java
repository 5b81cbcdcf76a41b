package handreach.bench;

/** Something that changes what an antenna radiates, and that a reading either already contains or does not. */
public enum Effect {
    MISMATCH("mismatch at the antenna terminal"),
    EFFICIENCY("loss inside the antenna"),
    PATTERN("pattern at the one elevation angle of the test range"),
    CHASSIS("the radio's case as the other half of the antenna"),
    COUNTERPOISE("the counterpoise wire"),
    HAND("the hand and forearm"),
    BODY("the body: absorption and shadow");

    private final String words;

    Effect(String words) {
        this.words = words;
    }

    /** In plain words, to be put behind "holds". */
    public String words() {
        return words;
    }
}
