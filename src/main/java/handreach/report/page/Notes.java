package handreach.report.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Notes of the form "about what: what is to be known", those that say the same told once. */
public final class Notes {
    private static final int MOST_NAMED = 3;

    private Notes() {}

    /** The notes in the order in which they first come; where many are about one thing, the first three by name and the number of the others. */
    public static List<String> once(List<String> notes) {
        Map<String, List<String>> subjects = new LinkedHashMap<>();
        for (String note : notes) {
            int colon = Math.max(0, note.indexOf(": "));
            subjects.computeIfAbsent(note.substring(colon), said -> new ArrayList<>())
                    .add(note.substring(0, colon));
        }
        List<String> told = new ArrayList<>();
        subjects.forEach((said, about) -> told.add(named(about) + said));
        return told;
    }

    private static String named(List<String> about) {
        List<String> names = about.stream().distinct().toList();
        if (names.size() <= MOST_NAMED) return String.join("; ", names);
        return String.join("; ", names.subList(0, MOST_NAMED)) + " and " + (names.size() - MOST_NAMED) + " more";
    }
}
