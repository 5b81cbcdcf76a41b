package handreach;

import static java.util.Map.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaFieldAccess;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
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
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The room table of DEVELOPERS.md as data: who may import whom, and which libraries stay at home. */
class HouseTest {
    /** Room to the rooms it imports: none that is not here, and none here that it does without. */
    static final Map<String, String> MAY_IMPORT = Map.ofEntries(
            entry("units", ""),
            entry("input", ""),
            entry("uncertainty", ""),
            entry("geodesy", "input"),
            entry("bench", "units input uncertainty"),
            entry("loadout", "units input uncertainty bench"),
            entry("terrain", "input geodesy"),
            entry("profile", "input geodesy terrain"),
            entry("propagation", "units input terrain profile"),
            entry("budget", "units uncertainty bench loadout propagation"),
            entry("reach", "input uncertainty geodesy terrain profile propagation budget"),
            entry("relay", "units input uncertainty geodesy loadout terrain profile propagation budget reach"),
            entry("atlas", "input uncertainty geodesy terrain propagation reach"),
            entry("walk", "input uncertainty geodesy terrain reach"),
            entry("plan", "units input geodesy loadout terrain propagation reach relay"),
            entry(
                    "study",
                    "units input uncertainty geodesy bench loadout terrain profile propagation budget reach relay"
                            + " atlas walk plan"),
            entry("cartography", "units geodesy terrain"),
            entry(
                    "report",
                    "units input uncertainty geodesy bench loadout terrain profile propagation budget reach relay"
                            + " atlas walk plan study cartography"),
            entry(
                    "cli",
                    "units input geodesy bench loadout terrain profile propagation reach atlas walk plan study report"),
            entry(
                    "desktop",
                    "units input uncertainty geodesy bench loadout terrain profile propagation budget reach relay walk"
                            + " plan study cartography report"));

    /** Package prefix to the rooms that touch it: no other, and each of these does. */
    private static final Map<String, Set<String>> AT_HOME = Map.ofEntries(
            entry("javafx.", Set.of("desktop")),
            entry("java.awt.", Set.of("report", "desktop", "terrain")),
            entry("javax.imageio.", Set.of("report", "desktop", "terrain")),
            entry("org.geotools.", Set.of("terrain")),
            entry("org.sqlite.", Set.of("terrain")),
            entry("java.sql.", Set.of("terrain")),
            entry("org.tomlj.", Set.of("plan")),
            entry("org.apache.pdfbox.", Set.of("report")),
            entry("picocli.", Set.of("cli")),
            entry("io.jenetics.jpx.", Set.of("report")),
            entry("net.sf.geographiclib.", Set.of("geodesy", "reach")),
            entry("com.fasterxml.jackson.", Set.of("terrain", "report", "cli")),
            entry("org.apache.commons.csv.", Set.of("input", "report")),
            entry("org.apache.commons.math3.", Set.of("uncertainty", "bench", "propagation", "reach", "relay", "walk")),
            entry(
                    "org.locationtech.jts.",
                    Set.of("terrain", "reach", "relay", "study", "cartography", "report", "desktop")));

    /** Packages that would hold whatever finds no home. */
    private static final Set<String> NAMED_FOR_NOTHING = Set.of(
            "util", "utils", "common", "helper", "helpers", "core", "model", "impl", "base", "service", "misc",
            "shared");

    private static final Set<String> MATHEMATICS =
            Set.of("java.lang.Math", "java.lang.StrictMath", "org.apache.commons.math3.util.FastMath");
    /** Functions that laws of radio are made of. */
    private static final Set<String> PHYSICS = Set.of("log10", "log", "pow", "exp", "atan");

    /** Types that only the virtual machine, the build or the window library calls, by name. */
    private static final Set<String> CALLED_FROM_OUTSIDE = Set.of(
            "handreach.Handreach",
            "handreach.LogSetup",
            "handreach.cli.Rehearsal",
            "handreach.desktop.DeskApplication");

    /** Its tests go step by step where the program goes many at once, by methods of the room that only they call. */
    private static final String STEPPED_BY_HAND = "handreach.propagation.march";

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

    /** The engine that spreads an atlas does not travel with the program: one package sees it, and its language and files. */
    @Test
    void theEngineOfTheAtlasIsSeenByOnePackageAlone() {
        List<String> engine = List.of("org.apache.spark.", "org.apache.parquet.", "org.apache.hadoop.", "scala.");
        Set<String> found = CLASSES.stream()
                .flatMap(c -> c.getDirectDependenciesFromSelf().stream())
                .filter(d -> engine.stream()
                        .anyMatch(d.getTargetClass().getBaseComponentType().getName()::startsWith))
                .map(d -> d.getOriginClass().getPackageName())
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(Set.of("handreach.atlas.spread"), found);
    }

    @TestFactory
    Stream<DynamicTest> everyDoorIsUsed() {
        return MAY_IMPORT.keySet().stream()
                .sorted()
                .map(room -> DynamicTest.dynamicTest(room, () -> {
                    Set<String> used = classesOf(room)
                            .flatMap(c -> c.getDirectDependenciesFromSelf().stream())
                            .map(d -> roomOf(
                                    d.getTargetClass().getBaseComponentType().getPackageName()))
                            .filter(other -> other != null && !other.isEmpty() && !other.equals(room))
                            .collect(Collectors.toCollection(TreeSet::new));
                    assertEquals(used, doorsOf(room));
                }));
    }

    @Test
    void everyHomeOfALibraryUsesIt() {
        List<String> unused = new ArrayList<>();
        AT_HOME.forEach((prefix, homes) -> homes.stream()
                .filter(room -> faults(room, target -> target.getName().startsWith(prefix))
                        .isEmpty())
                .forEach(room -> unused.add(prefix + " in " + room)));
        assertEquals(List.of(), unused);
    }

    /** What no other package needs is package-private, so that a reader of a room sees what it is for. */
    @Test
    void everyPublicTypeIsNeededInAnotherPackage() {
        List<String> found = CLASSES.stream()
                .filter(c -> c.isTopLevelClass() && c.getModifiers().contains(JavaModifier.PUBLIC))
                .filter(c -> !CALLED_FROM_OUTSIDE.contains(c.getName()))
                .filter(c -> CLASSES.stream()
                        .filter(other -> !other.getPackageName().equals(c.getPackageName()))
                        .flatMap(other -> other.getDirectDependenciesFromSelf().stream())
                        .noneMatch(d -> outermost(d.getTargetClass().getBaseComponentType())
                                .equals(c)))
                .map(JavaClass::getName)
                .sorted()
                .toList();
        assertEquals(List.of(), found);
    }

    /**
     * Main code that only tests call is a promise nobody asked for, and what such code alone calls is no better: the search goes
     * from what runs by itself, call by call, until nothing more is found.
     */
    @Test
    void noMethodIsThereForTestsAlone() {
        Set<JavaCodeUnit> unused = CLASSES.stream()
                .flatMap(c -> c.getMethods().stream())
                .filter(m -> !m.getModifiers().contains(JavaModifier.SYNTHETIC)
                        && !m.getModifiers().contains(JavaModifier.BRIDGE))
                .filter(m -> !isCalledUnseen(m) && !isLook(m))
                .collect(Collectors.toSet());
        while (unused.removeIf(m -> m.getAccessesToSelf().stream().anyMatch(a -> !unused.contains(a.getOrigin()))))
            ;
        assertEquals(
                List.of(),
                unused.stream()
                        .filter(m -> m.getModifiers().contains(JavaModifier.PUBLIC)
                                || !m.getOwner().getPackageName().equals(STEPPED_BY_HAND))
                        .map(JavaCodeUnit::getFullName)
                        .sorted()
                        .toList());
    }

    /** Tells its own room what an object holds, calls nothing of ours for it and changes nothing: what a test may see. */
    private static boolean isLook(JavaMethod method) {
        return !method.getModifiers().contains(JavaModifier.PUBLIC)
                && method.getCallsFromSelf().stream()
                        .noneMatch(
                                call -> call.getTargetOwner().getPackageName().startsWith("handreach"))
                && method.getFieldAccesses().stream()
                        .allMatch(access -> access.getAccessType() == JavaFieldAccess.AccessType.GET)
                && !method.getFieldAccesses().isEmpty();
    }

    /** Parts of records are read by the writer of JSON; what overrides something is called as that. */
    private static boolean isCalledUnseen(JavaMethod method) {
        JavaClass owner = method.getOwner();
        if (CALLED_FROM_OUTSIDE.contains(outermost(owner).getName())) return true;
        boolean isPart = owner.isRecord()
                && method.getRawParameterTypes().isEmpty()
                && owner.tryGetField(method.getName()).isPresent();
        boolean isOfEnum = owner.isEnum() && Set.of("values", "valueOf").contains(method.getName());
        boolean isOverride = Stream.concat(owner.getAllRawSuperclasses().stream(), owner.getAllRawInterfaces().stream())
                .flatMap(above -> above.getMethods().stream())
                .anyMatch(above -> above.getName().equals(method.getName())
                        && above.getRawParameterTypes().size()
                                == method.getRawParameterTypes().size());
        return isPart || isOfEnum || isOverride;
    }

    private static JavaClass outermost(JavaClass type) {
        return type.getEnclosingClass().map(HouseTest::outermost).orElse(type);
    }

    private static Set<String> doorsOf(String room) {
        Set<String> doors = new TreeSet<>(List.of(MAY_IMPORT.get(room).split(" ")));
        doors.remove("");
        return doors;
    }

    /** The room table of the contributors' page has these doors, in the order of the house. */
    @Test
    void thePageForContributorsHasTheseDoors() throws IOException {
        List<String> rows = Files.readAllLines(Path.of("DEVELOPERS.md")).stream()
                .filter(line -> line.matches("\\| `[a-z]+` \\| .*"))
                .toList();
        List<String> order = rows.stream().map(row -> row.split("`")[1]).toList();
        assertEquals(new TreeSet<>(MAY_IMPORT.keySet()), new TreeSet<>(order));
        List<String> wanted = order.stream()
                .map(room -> "`" + room + "`: "
                        + order.stream().filter(doorsOf(room)::contains).collect(Collectors.joining(", ")))
                .toList();
        List<String> told = rows.stream()
                .map(row -> row.split(" \\|"))
                .map(cells -> cells[0].substring(2) + ":" + (cells.length > 2 ? cells[2] : ""))
                .map(row -> row.replace(": nothing", ": "))
                .toList();
        assertEquals(String.join("\n", wanted), String.join("\n", told));
    }

    @Test
    void thePageForContributorsNamesEveryComposer() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("src/main/java/handreach/report"))) {
            Set<String> onDisk = files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith("Composer.java"))
                    .map(name -> name.replace(".java", ""))
                    .collect(Collectors.toCollection(TreeSet::new));
            Set<String> named = Pattern.compile("`(\\w+Composer)`")
                    .matcher(Files.readString(Path.of("DEVELOPERS.md")))
                    .results()
                    .map(name -> name.group(1))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(onDisk, named);
        }
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

    /** Neither by a call nor by a reference, whoever's mathematics it is. */
    @Test
    void facesAndReachComputeNoPhysics() {
        List<String> found = Stream.of("cli", "desktop", "reach")
                .flatMap(HouseTest::classesOf)
                .flatMap(c -> c.getAccessesFromSelf().stream())
                .filter(m -> MATHEMATICS.contains(m.getTargetOwner().getName())
                        && PHYSICS.contains(m.getTarget().getName()))
                .map(Object::toString)
                .sorted()
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
        List<String> classes = CLASSES.stream()
                .map(JavaClass::getSimpleName)
                .filter(n -> n.matches(".*(Utils?|Helper|Manager|Service|Impl|Info|Data|Processor)|Abstract.*"))
                .toList();
        List<String> rooms = CLASSES.stream()
                .map(JavaClass::getPackageName)
                .distinct()
                .filter(name -> Stream.of(name.split("\\.")).anyMatch(NAMED_FOR_NOTHING::contains))
                .toList();
        assertEquals(List.of(), classes);
        assertEquals(List.of(), rooms);
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
