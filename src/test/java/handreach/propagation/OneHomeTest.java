package handreach.propagation;

import static java.util.Map.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every equation of a Recommendation that the Javadoc names is written in one class, and this is the list of them. */
class OneHomeTest {
    private static final Path ROOT = Path.of("src/main/java/handreach");

    /** Home to the equations it writes, as its Javadoc names them; a new formula comes here before it comes anywhere. */
    private static final Map<String, Set<String>> HOMES = Map.ofEntries(
            entry("Atmosphere", Set.of("P.1812 (6)")),
            entry("Bullington", Set.of("P.526 (45) to (54)")),
            entry("ExternalNoise", Set.of("P.372 (14)")),
            entry("FreeSpace", Set.of("P.525 (4)")),
            entry("KnifeEdge", Set.of("P.526 (2)", "P.526 (26)", "P.526 (29) and (30)", "P.526 (31)")),
            entry(
                    "P1812Blend",
                    Set.of(
                            "P.1812 (9)",
                            "P.1812 (44) and (45)",
                            "P.1812 (57)",
                            "P.1812 (58)",
                            "P.1812 (59)",
                            "P.1812 (60)",
                            "P.1812 (61)",
                            "P.1812 (62)",
                            "P.1812 (63)")),
            entry("P1812Diffraction", Set.of("P.1812 (41)")),
            entry("P1812Ducting", Set.of("P.1812 (46)", "P.1812 (46) to (56)", "P.1812 (53) to (56)")),
            entry("P1812Path", Set.of("P.1812 (2) to (5)", "P.1812 (7b)", "P.1812 (92) and (93)")),
            entry("SmoothSurface", Set.of("P.526 (61) to (66)")),
            entry("SphericalEarth", Set.of("P.526 (13) to (20)", "P.526 (21) to (25)")),
            entry("TerminalClutter", Set.of("P.2108 (2a) and (2b)")),
            entry("Variability", Set.of("P.1812 (64)", "P.1812 (65)")),
            entry("Woodland", Set.of("P.833 (1)", "P.833 (2)")));

    /** Classes that name an equation of another's only to point at it: "class equation". None does. */
    private static final Set<String> CITATIONS = Set.of();

    private static final Pattern JAVADOC = Pattern.compile("/\\*\\*.*?\\*/", Pattern.DOTALL);
    private static final Pattern NAMED = Pattern.compile(
            "Rec\\. ITU-R (P\\.\\d+)(?:-\\d+)?" + "|equations? \\((\\d+\\w?)\\)(?: (to|and) \\((\\d+\\w?)\\))?");

    @Test
    void noEquationIsWrittenInTwoClasses() throws IOException {
        Map<String, Set<String>> writers = new TreeMap<>();
        for (Naming naming : namings())
            for (String equation : naming.equations())
                if (!CITATIONS.contains(naming.home() + " " + equation))
                    writers.computeIfAbsent(equation, e -> new TreeSet<>()).add(naming.home());
        assertEquals(
                List.of(),
                writers.entrySet().stream().filter(e -> e.getValue().size() > 1).toList());
    }

    @Test
    void everyHomeIsInTheListAndWritesWhatTheListSays() throws IOException {
        Map<String, Set<String>> written = new TreeMap<>();
        for (Naming naming : namings())
            written.computeIfAbsent(naming.home(), h -> new TreeSet<>()).add(naming.text());
        Map<String, Set<String>> listed = new TreeMap<>();
        HOMES.forEach((home, equations) -> listed.put(home, new TreeSet<>(equations)));
        assertEquals(listed, written);
    }

    /**
     * One place where a class names equations.
     *
     * @param recommendation such as P.526, whatever the edition: their numbers are the same in those used here
     * @param joined {@code to}, {@code and} or null
     */
    private record Naming(String home, String recommendation, String first, String joined, String last) {
        String text() {
            return recommendation + " (" + first + ")" + (joined == null ? "" : " " + joined + " (" + last + ")");
        }

        List<String> equations() {
            List<String> all = new ArrayList<>(List.of(recommendation + " (" + first + ")"));
            if ("and".equals(joined)) all.add(recommendation + " (" + last + ")");
            if ("to".equals(joined))
                for (int i = Integer.parseInt(first) + 1; i <= Integer.parseInt(last); i++)
                    all.add(recommendation + " (" + i + ")");
            return all;
        }
    }

    private static List<Naming> namings() throws IOException {
        List<Naming> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(ROOT)) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
                String home = file.getFileName().toString().replace(".java", "");
                // In the room of that one Recommendation the equations go without its name.
                String ownRoom = file.getParent().endsWith("p1812") ? "P.1812" : null;
                Matcher block = JAVADOC.matcher(Files.readString(file));
                while (block.find()) {
                    String recommendation = ownRoom;
                    Matcher named = NAMED.matcher(block.group().replaceAll("\\s*\\n\\s*\\*\\s*", " "));
                    while (named.find()) {
                        if (named.group(1) != null) recommendation = named.group(1);
                        else if (recommendation != null)
                            found.add(new Naming(home, recommendation, named.group(2), named.group(3), named.group(4)));
                    }
                }
            }
        }
        return found;
    }
}
