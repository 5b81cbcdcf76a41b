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
    public Fault {
        Objects.requireNonNull(source);
        Objects.requireNonNull(text);
        if (line < 0) throw new IllegalArgumentException("line " + line);
    }

    /** The one line shown to the user. */
    public String message() {
        String where = line > 0 ? source + " line " + line : source;
        return Unseen.oneLine(where + ": " + text);
    }
}
