package handreach;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.logging.LogManager;

/** What the logging of the platform is set up by, if a library ever asks for it: only what is severe is said. */
public final class LogSetup {
    public LogSetup() throws IOException {
        String settings = "handlers=java.util.logging.ConsoleHandler\n.level=SEVERE\n";
        LogManager.getLogManager()
                .readConfiguration(new ByteArrayInputStream(settings.getBytes(StandardCharsets.ISO_8859_1)));
    }
}
