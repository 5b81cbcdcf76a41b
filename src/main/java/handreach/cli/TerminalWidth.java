package handreach.cli;

import handreach.report.page.PlainText;
import picocli.CommandLine.Model.UsageMessageSpec;

/** How wide an answer is written: 120 columns on a terminal that has them, else its own from 80 to 100; 100 where it goes into a file or a pipe. */
final class TerminalWidth {
    private static final int WIDE = 120;
    /** In less, tables would be ribbons. */
    private static final int NARROW = 80;

    private TerminalWidth() {}

    static int columns() {
        // There is a console only where both input and output are a terminal.
        return System.console() == null
                ? PlainText.USUAL_WIDTH
                : of(new UsageMessageSpec().autoWidth(true).width());
    }

    /** A line beside the answer: wrapped on a terminal, in one piece where a program may read it. */
    static String note(String line) {
        return System.console() == null
                ? line
                : note(line, new UsageMessageSpec().autoWidth(true).width());
    }

    /** @param terminal columns of the terminal, which may be fewer than an answer takes */
    static String note(String line, int terminal) {
        return PlainText.of("", line, Math.min(terminal, of(terminal))).stripTrailing();
    }

    /** @param terminal columns of the terminal */
    static int of(int terminal) {
        return terminal >= WIDE ? WIDE : Math.max(NARROW, Math.min(terminal, PlainText.USUAL_WIDTH));
    }
}
