package handreach.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Remarks on the antennas of one session, those of one cause told once. */
final class Remarks {
    private static final int MOST_NAMES = 4;
    private static final String LONELY = " has no partner and is";
    private static final String LONELY_SEVERAL = " have no partner and are";

    private final Map<String, List<String>> antennas = new LinkedHashMap<>();

    Remarks() {}

    /** Trials that the other antenna does not have, in words that {@link #told} knows again. */
    static String unpaired(String trials, boolean isOne) {
        return trials + (isOne ? LONELY : LONELY_SEVERAL) + " left out of the pairs";
    }

    void add(String antenna, String remark) {
        antennas.computeIfAbsent(remark, same -> new ArrayList<>()).add(antenna);
    }

    /** One line a remark, behind the antennas it holds for; trials left out of the pairs stand together, whichever they are. */
    List<String> told(SessionKey key) {
        Map<String, List<String>> lonely = new LinkedHashMap<>();
        antennas.keySet().stream()
                .filter(remark -> lonelyEnd(remark) > 0)
                .forEach(remark -> lonely.computeIfAbsent(remark.substring(lonelyEnd(remark)), end -> new ArrayList<>())
                        .add(remark));
        List<String> lines = new ArrayList<>();
        antennas.forEach((remark, names) -> {
            int end = lonelyEnd(remark);
            List<String> alike = end > 0 ? lonely.get(remark.substring(end)) : List.of(remark);
            if (alike.size() == 1) lines.add(line(names, key, remark));
            else if (alike.get(0).equals(remark))
                lines.add(line(withTrials(alike), key, "these trials" + LONELY_SEVERAL + remark.substring(end)));
        });
        return lines;
    }

    private List<String> withTrials(List<String> remarks) {
        List<String> names = new ArrayList<>();
        for (String remark : remarks) {
            String trials = remark.substring(0, remark.indexOf(" ha"));
            antennas.get(remark).forEach(name -> names.add(name + " (" + trials + ")"));
        }
        return names;
    }

    /** Where the words behind the trials begin; 0 where the remark is of another kind. */
    private static int lonelyEnd(String remark) {
        for (String mark : List.of(LONELY, LONELY_SEVERAL))
            if (remark.contains(mark)) return remark.indexOf(mark) + mark.length();
        return 0;
    }

    static String line(List<String> names, SessionKey key, String remark) {
        return together(names) + ", " + key.words() + ": " + remark;
    }

    /** Names before a remark that holds for all of them. */
    static String together(List<String> names) {
        if (names.size() <= MOST_NAMES) return String.join(", ", names);
        return String.join(", ", names.subList(0, MOST_NAMES - 1)) + " and " + (names.size() - MOST_NAMES + 1)
                + " more";
    }
}
