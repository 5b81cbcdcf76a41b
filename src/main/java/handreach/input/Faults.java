package handreach.input;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Collects the faults of one input, so that all are told at once. Not for use by several threads. */
public final class Faults {
    private static final Pattern FOUND = Pattern.compile("\"[^\"]*\"");

    /** Told one by one; of further ones the number. */
    private static final int MOST_TOLD = 100;

    private final Map<String, Told> told = new LinkedHashMap<>();
    private Told beyond;
    private int count;

    /** A fault, and the further lines that have the same one. */
    private static final class Told {
        private static final int LINES_NAMED = 4;

        private final Fault first;
        private final List<Integer> next = new ArrayList<>();
        private int more;

        Told(Fault first) {
            this.first = first;
        }

        void also(int line) {
            more++;
            if (next.size() < LINES_NAMED) next.add(line);
        }

        Told counting() {
            more++;
            return this;
        }

        Fault number() {
            String faults = more == 0
                    ? "1 more fault"
                    : String.format(Locale.ROOT, "%,d", more + 1).replace(',', ' ') + " more faults";
            return new Fault(first.source(), 0, "and " + faults + ". Mend those above first.");
        }

        Fault fault() {
            if (more == 0) return first;
            String lines = next.stream().map(String::valueOf).collect(Collectors.joining(", "));
            return new Fault(
                    first.source(),
                    first.line(),
                    first.text() + " And " + more + " more like it: line" + (more > 1 ? "s " : " ") + lines
                            + (more > next.size() ? " and so on." : "."));
        }
    }

    /** Adds a fault that is told by itself. */
    public void add(String source, int line, String text) {
        add("fault " + count, new Fault(source, line, text));
    }

    /** Adds a fault of one of many lines: of those that differ only in what was found, in quotation marks, one is told, with their number. */
    public void addLike(String source, int line, String text) {
        String cause = FOUND.matcher(text).replaceAll("\"\"");
        add(source + ": " + cause, new Fault(source, line, text));
    }

    private void add(String cause, Fault fault) {
        count++;
        Told known = told.get(cause);
        if (known != null) known.also(fault.line());
        else if (told.size() < MOST_TOLD) told.put(cause, new Told(fault));
        else beyond = beyond == null ? new Told(fault) : beyond.counting();
    }

    /** Whether a further fault is only counted, so that nobody need word it. */
    public boolean isFull() {
        return told.size() >= MOST_TOLD;
    }

    public boolean isEmpty() {
        return told.isEmpty();
    }

    /** What is to be told, in the order in which it was found. */
    public List<Fault> list() {
        Stream<Fault> all = told.values().stream().map(Told::fault);
        return (beyond == null ? all : Stream.concat(all, Stream.of(beyond.number()))).toList();
    }

    /** Speaks if anything was found, in the order of the lines of a file that was not read from top to bottom. */
    public void throwByLine() {
        if (isEmpty()) return;
        Stream<Fault> all = told.values().stream().map(Told::fault).sorted(Comparator.comparingInt(Fault::line));
        throw new InputFault((beyond == null ? all : Stream.concat(all, Stream.of(beyond.number()))).toList());
    }

    /** Speaks if anything was found. */
    public void throwIfAny() {
        if (!isEmpty()) throw new InputFault(list());
    }
}
