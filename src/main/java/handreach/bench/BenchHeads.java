package handreach.bench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the column heads of a bench file mean. The file is long, one reading a row, or wide, one row an antenna and one column a
 * trial. A head may carry the unit of its column in brackets, and a column of readings may be headed by what was read.
 */
final class BenchHeads {
    private static final Pattern WITH_UNIT = Pattern.compile("([^(\\[]*)[(\\[]([^)\\]]*)[)\\]]_*");
    private static final Pattern NUMBERED = Pattern.compile("(.*?)_*([0-9]{1,6})");
    private static final List<String> TURN = List.of("trial", "turn", "round", "reading", "t", "");
    /** Where neither stands there, the row holds no heads. */
    private static final Set<String> NAMED_FIRST = Set.of("antenna", "mount");

    private static final Map<String, String> NAMES = Map.ofEntries(
            Map.entry("mounting", "mount"),
            Map.entry("measured", "quantity"),
            Map.entry("reading", "value"),
            Map.entry("units", "unit"),
            Map.entry("frequency", "frequency_mhz"),
            Map.entry("freq", "frequency_mhz"),
            Map.entry("turn", "trial"),
            Map.entry("round", "trial"),
            Map.entry("notes", "note"),
            Map.entry("remark", "note"),
            Map.entry("remarks", "note"));

    /**
     * A column that holds one trial of every antenna.
     *
     * @param head as the table spells it
     * @param trial its number
     * @param unit in brackets behind it, or nothing
     * @param quantity where the head says it
     */
    record TrialColumn(String head, int trial, String unit, Optional<Quantity> quantity) {}

    private final Map<String, String> columns = new HashMap<>();
    private final List<TrialColumn> trials = new ArrayList<>();
    private final List<String> faults = new ArrayList<>();
    private String unit = "";
    private Optional<Quantity> quantity = Optional.empty();

    private BenchHeads() {}

    /** Reads heads as {@link handreach.input.Table#headsOf} spells them. */
    static BenchHeads of(List<String> heads) {
        BenchHeads read = new BenchHeads();
        if (heads.stream().noneMatch(head -> NAMED_FIRST.contains(columnNamed(head)))) return read;
        boolean isLong = heads.stream().anyMatch(head -> read.isValue(name(head)));
        for (String head : heads) read.read(head, isLong);
        return read;
    }

    private static String columnNamed(String head) {
        return NAMES.getOrDefault(name(head), name(head));
    }

    /** The name before a unit in brackets. */
    private static String name(String head) {
        Matcher matcher = WITH_UNIT.matcher(head);
        return (matcher.matches() ? matcher.group(1) : head).replaceAll("_+$", "");
    }

    private static String unit(String head) {
        Matcher matcher = WITH_UNIT.matcher(head);
        return matcher.matches() ? matcher.group(2).strip() : "";
    }

    private boolean isValue(String name) {
        return name.equals("value")
                || name.equals("reading")
                || Quantity.named(name).isPresent();
    }

    private void read(String head, boolean isLong) {
        if (head.isEmpty()) return;
        String name = name(head);
        String column = NAMES.getOrDefault(name, name);
        if (isLong && isValue(name)) {
            columns.put(head, "value");
            unit = unit(head);
            quantity = Quantity.named(name);
        } else if (!isLong && trial(head, name)) {
            columns.put(head, head);
        } else {
            columns.put(head, column);
            if (column.equals("frequency_mhz")
                    && !unit(head).isEmpty()
                    && !unit(head).equals("mhz"))
                faults.add("the column \"" + head + "\" is not in megahertz. Convert it, and head it frequency (MHz).");
        }
    }

    private boolean trial(String head, String name) {
        Matcher numbered = NUMBERED.matcher(name);
        if (!numbered.matches()) return false;
        String before = numbered.group(1);
        Optional<Quantity> read = Quantity.named(before);
        if (!TURN.contains(before) && read.isEmpty()) return false;
        trials.add(new TrialColumn(head, Integer.parseInt(numbered.group(2)), unit(head), read));
        return true;
    }

    /** The column that a head means; the head itself where it means none that is known. */
    String columnOf(String head) {
        return columns.getOrDefault(head, head);
    }

    /** The columns of a wide file, left to right; none in a long one. */
    List<TrialColumn> trials() {
        return trials;
    }

    boolean isWide() {
        return !trials.isEmpty();
    }

    /** The unit that the head of the one column of readings carries, or nothing. */
    String unit() {
        return unit;
    }

    /** What was read, where the head of the one column of readings says it. */
    Optional<Quantity> quantity() {
        return quantity;
    }

    /** Columns the file cannot do without. */
    List<String> needed() {
        List<String> needed = new ArrayList<>(List.of("antenna", "mount"));
        if (isWide()) return needed;
        if (quantity.isEmpty()) needed.add("quantity");
        needed.add("value");
        if (unit.isEmpty() && !quantity.equals(Optional.of(Quantity.SWR))) needed.add("unit");
        return needed;
    }

    /** Columns it may leave out. */
    List<String> optional() {
        List<String> optional = new ArrayList<>();
        for (String name : List.of("quantity", "unit", "frequency_mhz", "trial", "note"))
            if (!needed().contains(name) && !(isWide() && name.equals("trial"))) optional.add(name);
        for (TrialColumn trial : trials) optional.add(trial.head());
        return optional;
    }

    /** What is wrong with the heads beyond missing columns. */
    List<String> faults() {
        return faults;
    }
}
