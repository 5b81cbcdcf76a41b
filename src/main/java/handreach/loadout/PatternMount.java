package handreach.loadout;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What the radiator stands on. */
public enum PatternMount {
    PERFECT_GROUND("perfect-ground"),
    FREE_SPACE("free-space"),
    CHASSIS("chassis"),
    CHASSIS_COUNTERPOISE("chassis+counterpoise");

    private final String word;

    PatternMount(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    public static Optional<PatternMount> of(String word) {
        return Arrays.stream(values()).filter(m -> m.word.equals(word)).findFirst();
    }

    public static List<String> words() {
        return Arrays.stream(values()).map(PatternMount::word).toList();
    }
}
