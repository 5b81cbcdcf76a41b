package handreach.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * A mounting as the user wrote it, and what is made of it.
 *
 * @param name the user's words, blanks tidied
 * @param kind the kind the words stand for
 * @param withCounterpoise whether a counterpoise wire hung from it
 * @param known whether the words said so; if not, the kind is a guess that must be told
 */
public record Mounting(String name, MountKind kind, boolean withCounterpoise, boolean known) {
    private static final List<String> NEGATIONS = List.of("no", "without", "bare", "minus");

    public Mounting {
        Objects.requireNonNull(name);
        Objects.requireNonNull(kind);
        if (name.isBlank()) throw new IllegalArgumentException("a mounting without a name");
    }

    /**
     * Reads the user's words: body words win over hand words, these over box words, these over instrument words, since what
     * is nearest the antenna's user decides; a counterpoise word may join any of them. Words that say nothing known are
     * treated as a chassis, which holds neither hand nor body.
     */
    public static Mounting of(String words) {
        String name = words.strip().replaceAll("\\s+", " ");
        List<String> parts = List.of(name.toLowerCase(Locale.ROOT).split("[^\\p{L}]+"));
        boolean wire = saysCounterpoise(name);
        for (MountKind kind : List.of(MountKind.BODY, MountKind.HAND, MountKind.CHASSIS, MountKind.INSTRUMENT)) {
            if (parts.stream().noneMatch(kind.words()::contains)) continue;
            MountKind found = kind == MountKind.CHASSIS && wire ? MountKind.COUNTERPOISE : kind;
            return new Mounting(name, found, wire, true);
        }
        return wire
                ? new Mounting(name, MountKind.COUNTERPOISE, true, true)
                : new Mounting(name, MountKind.CHASSIS, false, false);
    }

    /** What to tell of words that say nothing known, with those that would; nothing where they say what it is. */
    public Optional<String> treatedAs() {
        if (known) return Optional.empty();
        List<String> kinds = new ArrayList<>();
        for (MountKind kind : MountKind.values())
            kinds.add(kind.name().toLowerCase(Locale.ROOT) + " (" + String.join(", ", kind.words()) + ")");
        return Optional.of("The mounting \"" + name
                + "\" is not a known word and is treated as a chassis: its readings are taken to hold neither hand nor body. Known are "
                + String.join("; ", kinds) + ".");
    }

    /** Whether words name a counterpoise wire that is there ("with wire"), not one that is missing ("no wire"). */
    static boolean saysCounterpoise(String words) {
        List<String> parts = List.of(words.toLowerCase(Locale.ROOT).split("[^\\p{L}]+"));
        for (int i = 0; i < parts.size(); i++) {
            if (!MountKind.COUNTERPOISE.words().contains(parts.get(i))) continue;
            int from = Math.max(0, i - 2);
            if (parts.subList(from, i).stream().noneMatch(NEGATIONS::contains)) return true;
        }
        return false;
    }

    /** Two mountings are the same when the words are, whatever their case. */
    String identity() {
        return name.toLowerCase(Locale.ROOT);
    }

    /** Written out, as its hash is: linking the generated pair costs a cold start some 20 ms. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Mounting that
                && name.equals(that.name)
                && kind == that.kind
                && withCounterpoise == that.withCounterpoise
                && known == that.known;
    }

    @Override
    public int hashCode() {
        return name.hashCode();
    }
}
