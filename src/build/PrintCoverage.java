import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Prints line coverage by room from the coverage report; run by the build as a single source file. */
public final class PrintCoverage {
    private PrintCoverage() {}

    public static void main(String[] args) throws Exception {
        Path csv = Path.of(args[0]);
        if (!Files.exists(csv)) {
            System.out.println("No coverage was measured.");
            return;
        }
        Map<String, long[]> rooms = new TreeMap<>();
        List<String> lines = Files.readAllLines(csv);
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",");
            long[] sums = rooms.computeIfAbsent(cells[1], room -> new long[2]);
            long[] all = rooms.computeIfAbsent("~ all", room -> new long[2]);
            long missed = Long.parseLong(cells[7]);
            long covered = Long.parseLong(cells[8]);
            sums[0] += missed;
            sums[1] += covered;
            all[0] += missed;
            all[1] += covered;
        }
        System.out.println("Line coverage by room:");
        rooms.forEach((room, sums) -> System.out.printf(
                Locale.ROOT, "  %-28s %5.1f %% of %d lines%n", room, 100.0 * sums[1] / Math.max(1, sums[0] + sums[1]), sums[0] + sums[1]));
    }
}
