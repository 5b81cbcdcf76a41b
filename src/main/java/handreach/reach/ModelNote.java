package handreach.reach;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What the loss model warns of on the paths of an area: each warning once, with how many bearings have it and where it is met first.
 *
 * <p>Warnings that differ in figures only are one; the sentence kept is that of the nearest path that has it.
 *
 * @param sentence as the model says it of that path
 * @param bearings how many bearings have a path with it
 * @param of how many bearings were looked along
 * @param firstBearingDeg bearing on which it is met first, degrees from true north
 * @param firstM distance of the nearest looked-at path that has it, m; empty when it begins with the nearest of all
 * @param lastM distance of the farthest looked-at path that has it, m; empty when some bearing has it to its end
 */
public record ModelNote(
        String sentence, int bearings, int of, double firstBearingDeg, OptionalDouble firstM, OptionalDouble lastM) {
    /**
     * A warning on one bearing, and from where to where it was met, m: 0 for the nearest path, infinity for the farthest.
     *
     * @param kind the sentence with a mark for every number
     */
    record Met(String sentence, String kind, double fromM, double toM) {
        Met reaching(double farM) {
            return new Met(sentence, kind, fromM, farM);
        }
    }

    /** Kinds of the sentences that one thread has met; paths by the thousand say a few dozen. */
    static final class Kinds {
        private final Map<String, String> known = new HashMap<>();

        String of(String sentence) {
            String kind = known.get(sentence);
            if (kind == null) known.put(sentence, kind = marked(sentence));
            return kind;
        }

        private static String marked(String sentence) {
            StringBuilder kind = new StringBuilder(sentence.length());
            for (int i = 0; i < sentence.length(); ) {
                int end = pastDigits(sentence, i);
                if (end > i && sentence.startsWith(".", end) && pastDigits(sentence, end + 1) > end + 1)
                    end = pastDigits(sentence, end + 1);
                kind.append(end > i ? '#' : sentence.charAt(i));
                i = Math.max(end, i + 1);
            }
            return kind.toString();
        }

        private static int pastDigits(String sentence, int from) {
            int end = from;
            while (end < sentence.length() && sentence.charAt(end) >= '0' && sentence.charAt(end) <= '9') end++;
            return end;
        }
    }

    /** Whether every bearing has it all along: it is about the request, not about a place. */
    public boolean isEverywhere() {
        return bearings == of && firstM.isEmpty() && lastM.isEmpty();
    }

    /**
     * The notes of one run over several pairs of antenna heights, in the order in which the model says them.
     *
     * @shape  any number of results over the same bearings in
     * @unit   as the record
     * @valid  results of one request
     * @error  paths are looked at in steps of an eighth of the radius, so a warning may begin up to a step nearer
     * @source the model's own warnings
     */
    public static List<ModelNote> of(List<BearingLosses> losses) {
        Map<String, Gathered> kinds = new LinkedHashMap<>();
        int bearings = 0;
        for (BearingLosses pair : losses) {
            bearings = pair.radials().size();
            for (int number = 0; number < bearings; number++) {
                RadialLosses radial = pair.radials().get(number);
                for (Met met : radial.warnings())
                    kinds.computeIfAbsent(met.kind(), kind -> new Gathered()).add(met, number, radial.bearingDeg());
            }
        }
        List<ModelNote> notes = new ArrayList<>();
        for (Gathered kind : kinds.values()) notes.add(kind.note(bearings));
        return notes;
    }

    /** One kind of warning while it is being counted. */
    private static final class Gathered {
        private final BitSet on = new BitSet();
        private Met first;
        private double firstBearingDeg;
        private double lastM;

        void add(Met met, int number, double bearingDeg) {
            on.set(number);
            lastM = Math.max(lastM, met.toM());
            if (first != null && met.fromM() >= first.fromM()) return;
            first = met;
            firstBearingDeg = bearingDeg;
        }

        ModelNote note(int of) {
            OptionalDouble far = first.fromM() > 0 ? OptionalDouble.of(first.fromM()) : OptionalDouble.empty();
            OptionalDouble last = Double.isInfinite(lastM) ? OptionalDouble.empty() : OptionalDouble.of(lastM);
            return new ModelNote(first.sentence(), on.cardinality(), of, firstBearingDeg, far, last);
        }
    }
}
