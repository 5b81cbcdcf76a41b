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
    ATLAS_MEDIAN("Atlas: median reach"),
    ATLAS_LEAST("Atlas: least loadout that serves"),
    ATLAS_HEARD("Atlas: heard by how many"),
    ATLAS_SHADOW("Atlas: least loadout heard"),
    NONE("Relief alone");

    private final String words;

    Layer(String words) {
        this.words = words;
    }

    /** Whether it needs an atlas that was laid over the map. */
    boolean isOfAtlas() {
        return switch (this) {
            case ATLAS_MEDIAN, ATLAS_LEAST, ATLAS_HEARD, ATLAS_SHADOW -> true;
            default -> false;
        };
    }

    String words() {
        return words;
    }
}
