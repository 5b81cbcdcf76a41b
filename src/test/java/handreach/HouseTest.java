package handreach;

import static java.util.Map.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The room table of DEVELOPERS.md as data: who may import whom, and which libraries stay at home. */
class HouseTest {
    private static final String TO_REACH = "units input uncertainty geodesy loadout terrain profile propagation budget";
    private static final String TO_STUDY =
            "units input uncertainty geodesy bench loadout terrain profile propagation budget reach relay walk plan";

    /** Room to the rooms it may import. A row that nobody needs is not harmful; a missing one stops the build. */
    static final Map<String, String> MAY_IMPORT = Map.ofEntries(
            entry("units", ""),
            entry("input", ""),
            entry("uncertainty", "units"),
            entry("geodesy", "units input"),
            entry("bench", "units input uncertainty"),
            entry("loadout", "units input uncertainty bench"),
            entry("terrain", "units input geodesy"),
            entry("profile", "units input geodesy terrain"),
            entry("propagation", "units input uncertainty profile terrain"),
            entry("budget", "units uncertainty bench loadout propagation"),
            entry("reach", TO_REACH),
            entry("relay", "units input uncertainty geodesy loadout terrain profile propagation budget reach"),
            entry("walk", "units input uncertainty geodesy terrain reach"),
            entry("plan", "units input uncertainty geodesy terrain loadout propagation budget reach relay"),
            entry("study", TO_STUDY),
            entry("cartography", "units geodesy terrain reach"),
            entry("report", TO_STUDY + " study cartography"),
            entry("cli", TO_STUDY + " study cartography report"),
            entry("desktop", TO_STUDY + " study cartography report"));

    /** Package prefix to the only rooms that may touch it. */
    private static final Map<String, Set<String>> AT_HOME = Map.ofEntries(
            entry("javafx.", Set.of("desktop")),
            entry("java.awt.", Set.of("report", "desktop", "terrain")),
            entry("javax.imageio.", Set.of("report", "desktop", "terrain")),
            entry("org.geotools.", Set.of("terrain", "report")),
            entry("org.tomlj.", Set.of("plan")),
            entry("org.apache.pdfbox.", Set.of("report")),
            entry("picocli.", Set.of("cli")),
            entry("io.jenetics.jpx.", Set.of("walk", "report")));

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("handreach");

    @TestFactory
    Stream<DynamicTest> everyRoomKeepsToItsDoors() {
        return MAY_IMPORT.keySet().stream()
                .sorted()
                .map(room -> DynamicTest.dynamicTest(room, () -> {
                    Set<String> allowed =
                            new TreeSet<>(List.of(MAY_IMPORT.get(room).split(" ")));
                    allowed.add(room);
                    assertEquals(List.of(), faults(room, target -> {
                        String other = roomOf(target.getPackageName());
                        return other != null && !allowed.contains(other);
                    }));
                }));
    }

    @Test
    void heavyLibrariesStayAtHome() {
        List<String> found = new ArrayList<>();
        AT_HOME.forEach((prefix, homes) -> MAY_IMPORT.keySet().stream()
                .filter(room -> !homes.contains(room))
                .forEach(room ->
                        found.addAll(faults(room, target -> target.getName().startsWith(prefix)))));
        assertEquals(List.of(), found);
    }

    @Test
    void onlyTheFacesUseStandardStreams() {
        List<String> found = CLASSES.stream()
                .filter(c -> !Set.of("cli", "").contains(String.valueOf(roomOf(c.getPackageName()))))
                .filter(c -> roomOf(c.getPackageName()) != null)
                .flatMap(c -> c.getFieldAccessesFromSelf().stream())
                .filter(a -> a.getTargetOwner().getName().equals("java.lang.System")
                        && Set.of("out", "err", "in").contains(a.getTarget().getName()))
                .map(Object::toString)
                .toList();
        assertEquals(List.of(), found);
    }

    @Test
    void facesAndReachComputeNoPhysics() {
        List<String> found = Stream.of("cli", "desktop", "reach")
                .flatMap(HouseTest::classesOf)
                .flatMap(c -> c.getMethodCallsFromSelf().stream())
                .filter(m -> m.getTargetOwner().getName().equals("java.lang.Math")
                        && Set.of("log10", "log", "pow", "exp", "atan")
                                .contains(m.getTarget().getName()))
                .map(Object::toString)
                .toList();
        assertEquals(List.of(), found);
    }

    @Test
    void theMapNamesEveryRoomOnDisk() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("src/main/java/handreach"))) {
            Set<String> onDisk = files.filter(Files::isDirectory)
                    .map(p -> p.getFileName().toString())
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(new TreeSet<>(MAY_IMPORT.keySet()), onDisk);
        }
        for (String room : MAY_IMPORT.keySet()) assertTrue(classesOf(room).count() > 0, "room " + room + " is empty");
    }

    @Test
    void noRoomAndNoClassIsNamedForNothing() {
        List<String> found = CLASSES.stream()
                .map(JavaClass::getSimpleName)
                .filter(n -> n.matches(".*(Utils?|Helper|Manager|Service|Impl|Info|Data|Processor)|Abstract.*"))
                .toList();
        assertEquals(List.of(), found);
    }

    private static List<String> faults(String room, java.util.function.Predicate<JavaClass> isForbidden) {
        return classesOf(room)
                .flatMap(c -> c.getDirectDependenciesFromSelf().stream())
                .filter(d -> isForbidden.test(d.getTargetClass().getBaseComponentType()))
                .map(Dependency::getDescription)
                .sorted()
                .toList();
    }

    private static Stream<JavaClass> classesOf(String room) {
        return CLASSES.stream().filter(c -> room.equals(roomOf(c.getPackageName())));
    }

    /** Room of a package; the empty word for the doorway; null outside the house. */
    private static String roomOf(String packageName) {
        if (packageName.equals("handreach")) return "";
        if (!packageName.startsWith("handreach.")) return null;
        return packageName.substring("handreach.".length()).split("\\.")[0];
    }
}
