package handreach.loadout;

import handreach.input.Keyword;
import java.util.List;

/** What the radiator stands on. */
public enum PatternMount {
    PERFECT_GROUND("perfect-ground"),
    FREE_SPACE("free-space"),
    CHASSIS("chassis"),
    CHASSIS_COUNTERPOISE("chassis+counterpoise");

    /** How files and options name them. */
    public static final Keyword<PatternMount> KEYWORD = Keyword.of(List.of(values()), PatternMount::word);

    private final String word;

    PatternMount(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
