package handreach.input;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.text.similarity.JaroWinklerSimilarity;
import org.apache.commons.text.similarity.LevenshteinDistance;

/** The known word that a mistyped one was most likely meant to be. */
public final class NearestWord {
    /** A longer text is no slip of the hand, and weighing it takes time by the square of its length. */
    private static final int LONGEST = 80;

    private NearestWord() {}

    /**
     * The known word that goes on after an underscore where the typed one ends, such as {@code length_cm}; else the nearest, if it is
     * near enough to be worth suggesting.
     */
    public static Optional<String> of(String typed, Collection<String> known) {
        if (typed.isEmpty() || typed.length() > LONGEST) return Optional.empty();
        String low = typed.toLowerCase(Locale.ROOT);
        Optional<String> withUnit =
                known.stream().filter(word -> word.startsWith(low + "_")).findFirst();
        if (!low.isEmpty() && withUnit.isPresent()) return withUnit;
        int limit = Math.min(Math.max(2, typed.length() / 3), typed.length() - 1);
        for (String word : known) if (word.toLowerCase(Locale.ROOT).equals(low)) return Optional.of(word);
        String best = null;
        int bestDistance = limit + 1;
        double bestLikeness = 0;
        for (String word : known) {
            int distance = new LevenshteinDistance(limit).apply(low, word.toLowerCase(Locale.ROOT));
            if (distance < 0 || distance > bestDistance) continue;
            // Of two as near the one that begins alike: "raech" is two letters from both "match" and "reach".
            double likeness = new JaroWinklerSimilarity().apply(low, word.toLowerCase(Locale.ROOT));
            if (distance == bestDistance && likeness <= bestLikeness) continue;
            bestDistance = distance;
            bestLikeness = likeness;
            best = word;
        }
        return Optional.ofNullable(best);
    }

    /** {@code " Did you mean X?"}, or nothing, to be put behind a message. */
    public static String hint(String typed, Collection<String> known) {
        return of(typed, known).map(word -> " Did you mean " + word + "?").orElse("");
    }
}
