package handreach.desktop;

/** What lies over the relief. */
enum Layer {
    ODDS("Odds of copy"),
    LEAST("Least loadout"),
    DIFFERENCE("Bought by one over another"),
    ONE_WAY("Where one way alone works"),
    SIGHT("Line of sight"),
    RELAY("Where a relay would serve"),
    WALK("Walked: heard against predicted"),
    NONE("Relief alone");

    private final String words;

    Layer(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }
}
