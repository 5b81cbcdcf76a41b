package handreach.loadout;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Where the radio is while it works. The heights are usual ones (common practice, no source). */
public enum Carry {
    FACE("face", "held at head height, antenna vertical, clear of the head", 1.5, 0),
    CHEST("chest", "chest pack or shoulder, antenna above the shoulder", 1.3, 0),
    SHOULDER_MIC("shoulder-mic", "speaker-microphone with its own antenna at the shoulder", 1.4, 0),
    HIP_SWIVEL("hip-swivel", "at the belt in a free-hanging case", 1.0, 90),
    HIP_TIGHT("hip-tight", "at the belt, tight to the body", 0.95, 90),
    VEHICLE("vehicle", "held at head height inside a vehicle", 1.3, 0),
    MAST("mast", "mast or pole, clear of the body, full counterpoise", 6, 0);

    private final String word;
    private final String meaning;
    private final double usualHeightM;
    private final double wornSideDeg;

    Carry(String word, String meaning, double usualHeightM, double wornSideDeg) {
        this.word = word;
        this.meaning = meaning;
        this.usualHeightM = usualHeightM;
        this.wornSideDeg = wornSideDeg;
    }

    public String word() {
        return word;
    }

    public String meaning() {
        return meaning;
    }

    /** Antenna height above ground when nobody says otherwise, m. */
    public double usualHeightM() {
        return usualHeightM;
    }

    /** Side of the body the radio is on: clockwise from the wearer's front, degrees. */
    public double wornSideDeg() {
        return wornSideDeg;
    }

    /** Whether there is a person at the antenna. */
    public boolean isAtBody() {
        return this != MAST;
    }

    /** By its word, or by another name in use; a bare {@code hip} is taken for the worse of the two. */
    public static Optional<Carry> of(String word) {
        String low = word.strip().toLowerCase(Locale.ROOT);
        return switch (low) {
            case "hip", "belt" -> Optional.of(HIP_TIGHT);
            case "head", "hand" -> Optional.of(FACE);
            case "shoulder" -> Optional.of(CHEST);
            case "pole" -> Optional.of(MAST);
            default -> Arrays.stream(values()).filter(c -> c.word.equals(low)).findFirst();
        };
    }

    public static List<String> words() {
        return Arrays.stream(values()).map(Carry::word).toList();
    }
}
