package handreach.bench;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** What an antenna stands on while it is read, and with it what the reading already contains. */
public enum MountKind {
    /** On an analyser or meter: the antenna works against the instrument's case and cables, not against a radio. */
    INSTRUMENT(
            List.of("instrument", "analyser", "analyzer", "vna", "bench", "fixture", "jig"),
            EnumSet.of(Effect.MISMATCH, Effect.EFFICIENCY, Effect.PATTERN)),
    /** On a radio, or a box of its size, free of hand and body. */
    CHASSIS(
            List.of("chassis", "box", "radio", "case", "tripod", "stand"),
            EnumSet.of(Effect.MISMATCH, Effect.EFFICIENCY, Effect.PATTERN, Effect.CHASSIS)),
    /** As chassis, with a counterpoise wire. */
    COUNTERPOISE(
            List.of("counterpoise", "radial", "wire", "tail"),
            EnumSet.of(Effect.MISMATCH, Effect.EFFICIENCY, Effect.PATTERN, Effect.CHASSIS, Effect.COUNTERPOISE)),
    /** On a radio held in the hand at head height, away from the body. */
    HAND(
            List.of("hand", "hands", "handheld", "held", "face", "head"),
            EnumSet.of(Effect.MISMATCH, Effect.EFFICIENCY, Effect.PATTERN, Effect.CHASSIS, Effect.HAND)),
    /** On a radio worn on the body. */
    BODY(
            List.of("body", "worn", "belt", "hip", "waist", "chest", "shoulder", "pocket", "vest"),
            EnumSet.of(Effect.MISMATCH, Effect.EFFICIENCY, Effect.PATTERN, Effect.CHASSIS, Effect.HAND, Effect.BODY));

    private final List<String> words;
    private final Set<Effect> effects;

    MountKind(List<String> words, Set<Effect> effects) {
        this.words = words;
        this.effects = Set.copyOf(effects);
    }

    /** Words in the column {@code mount} that mean this kind, in lower case. */
    public List<String> words() {
        return words;
    }

    /** What a reading in this kind of mounting already contains. */
    public Set<Effect> effects() {
        return effects;
    }
}
