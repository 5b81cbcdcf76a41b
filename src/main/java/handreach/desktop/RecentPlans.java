package handreach.desktop;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Plans opened lately, one path a line in a small file of the user's own folder. A file that cannot be read or written is
 * nobody's trouble: the list is then short.
 */
final class RecentPlans {
    private static final int MOST = 8;
    private static final String FOLDER = "handreach.settings";

    private RecentPlans() {}

    /** Folder for the window's own memory; {@code -Dhandreach.settings} moves it. */
    static Path folder() {
        String own = System.getProperty(FOLDER);
        if (own != null) return Path.of(own);
        String config = System.getenv("XDG_CONFIG_HOME");
        Path base = config == null || config.isBlank()
                ? Path.of(System.getProperty("user.home"), ".config")
                : Path.of(config);
        return base.resolve("handreach");
    }

    static List<Path> list() {
        List<Path> plans = new ArrayList<>();
        try {
            for (String line : Files.readAllLines(file(), StandardCharsets.UTF_8)) {
                Path plan = Path.of(line);
                if (!line.isBlank() && Files.exists(plan) && plans.size() < MOST) plans.add(plan);
            }
        } catch (IOException | InvalidPathException e) {
            return plans;
        }
        return plans;
    }

    static void remember(Path plan) {
        Path whole = plan.toAbsolutePath().normalize();
        List<String> lines = new ArrayList<>();
        lines.add(whole.toString());
        for (Path other : list()) if (!other.equals(whole) && lines.size() < MOST) lines.add(other.toString());
        keep("recent-plans.txt", String.join("\n", lines) + "\n");
    }

    /** Whether the window has never been shown the way round. */
    static boolean isFirstTime() {
        return !Files.exists(folder().resolve("way-shown.txt"));
    }

    static void wayShown() {
        keep("way-shown.txt", "The first steps were shown.\n");
    }

    /** Writes a small file of the window's own memory. */
    static void keep(String name, String text) {
        try {
            Files.createDirectories(folder());
            Files.writeString(folder().resolve(name), text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            // Only a convenience is lost; the plan itself is not touched.
        }
    }

    private static Path file() {
        return folder().resolve("recent-plans.txt");
    }
}
