package handreach.input;

import java.util.Objects;

/**
 * One thing that is wrong with what the user gave, in words the user can act on.
 *
 * @param source file name or option, as the user knows it
 * @param line line number from 1, or 0 where lines mean nothing
 * @param text what was found, what is allowed, what to do; full sentences after a lower-case start
 */
public record Fault(String source, int line, String text) {
    /** Longest text told, and how much of the end of a longer one is kept, where it says what to do. */
    private static final int LONGEST = 900;

    private static final int END = 300;

    public Fault {
        Objects.requireNonNull(source);
        text = shortened(Objects.requireNonNull(text));
        if (line < 0) throw new IllegalArgumentException("line " + line);
    }

    /** A value out of a file may be megabytes long; what was found and what to do stand at the ends. */
    private static String shortened(String text) {
        if (text.length() <= LONGEST) return text;
        return text.substring(0, LONGEST - END) + " … " + text.substring(text.length() - END);
    }

    /** The one line shown to the user. */
    public String message() {
        String where = line > 0 ? source + " line " + line : source;
        return Unseen.oneLine(where + ": " + text);
    }
}
