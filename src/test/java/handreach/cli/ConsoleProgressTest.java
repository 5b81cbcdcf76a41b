package handreach.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class ConsoleProgressTest {
    /** The answer stood behind the bar, in the same line. */
    @Test
    void theBarIsGoneBeforeTheAnswer() {
        StringWriter err = new StringWriter();
        try (ConsoleProgress progress = new ConsoleProgress(new PrintWriter(err), true)) {
            progress.done("straight paths", 0.4);
            progress.done("cells", 0.2);
        }
        String shown = err.toString();
        assertTrue(shown.contains("cells"), shown);
        assertTrue(shown.endsWith("\r"), shown);
        String[] lines = shown.split("\r");
        assertTrue(lines[lines.length - 1].isBlank(), shown);
        int longest = 0;
        for (String line : lines) longest = Math.max(longest, line.length());
        assertEquals(longest, lines[lines.length - 1].length(), "all of it is wiped");
    }
}
