package handreach.loadout;

import handreach.bench.MountKind;
import handreach.input.Keyword;
import java.util.List;

/** Where the radio is while it works. The heights are usual ones (common practice, no source). */
public enum Carry {
    FACE("face", "held at head height, antenna vertical, clear of the head", 1.5),
    CHEST("chest", "chest pack or shoulder, antenna above the shoulder", 1.3),
    SHOULDER_MIC("shoulder-mic", "speaker-microphone with its own antenna at the shoulder", 1.4),
    HIP_SWIVEL("hip-swivel", "at the belt in a free-hanging case", 1.0),
    HIP_TIGHT("hip-tight", "at the belt, tight to the body", 0.95),
    VEHICLE("vehicle", "held at head height inside a vehicle", 1.3),
    ROOF("roof", "antenna on the roof of a vehicle, outside it, full counterpoise", 2),
    MAST("mast", "mast or pole, clear of the body, full counterpoise", 6);

    /** How files and options name them, with other names in use; a bare {@code hip} is taken for the worse of the two. */
    public static final Keyword<Carry> KEYWORD = Keyword.of(List.of(values()), Carry::word)
            .also("hip", HIP_TIGHT)
            .also("belt", HIP_TIGHT)
            .also("head", FACE)
            .also("hand", FACE)
            .also("shoulder", CHEST)
            .also("pole", MAST)
            .also("vehicle-roof", ROOF);

    private final String word;
    private final String meaning;
    private final double usualHeightM;

    Carry(String word, String meaning, double usualHeightM) {
        this.word = word;
        this.meaning = meaning;
        this.usualHeightM = usualHeightM;
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

    /** Whether somebody on foot can have it with them: neither on a mast nor in or on a vehicle. */
    public boolean isOnFoot() {
        return isAtBody() && this != VEHICLE;
    }

    /** Whether there is a person at the antenna. */
    public boolean isAtBody() {
        return this != MAST && this != ROOF;
    }

    /** How far a mounting of the bench is from this position, in steps; less is nearer. The order is our suggestion. */
    public int distance(MountKind mounting) {
        return nearestFirst().indexOf(mounting);
    }

    private List<MountKind> nearestFirst() {
        return switch (this) {
            case FACE, VEHICLE ->
                List.of(
                        MountKind.HAND,
                        MountKind.BODY,
                        MountKind.CHASSIS,
                        MountKind.COUNTERPOISE,
                        MountKind.INSTRUMENT);
            case CHEST, SHOULDER_MIC, HIP_SWIVEL, HIP_TIGHT ->
                List.of(
                        MountKind.BODY,
                        MountKind.HAND,
                        MountKind.CHASSIS,
                        MountKind.COUNTERPOISE,
                        MountKind.INSTRUMENT);
            case ROOF, MAST ->
                List.of(
                        MountKind.COUNTERPOISE,
                        MountKind.CHASSIS,
                        MountKind.INSTRUMENT,
                        MountKind.HAND,
                        MountKind.BODY);
        };
    }
}
