package handreach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Scientific Javadoc is whole or absent: whoever states one of shape, unit, validity, error and source states all five. And no
 * public function that hands back numbers goes without, in the rooms that compute.
 */
class JavadocTagTest {
    private static final List<String> TAGS = List.of("@shape", "@unit", "@valid", "@error", "@source");
    private static final List<String> ROOMS = List.of(
            "uncertainty",
            "geodesy",
            "bench",
            "loadout",
            "terrain",
            "profile",
            "propagation",
            "budget",
            "reach",
            "relay",
            "walk",
            "atlas",
            "cartography");
    private static final Set<String> NUMBERS = Set.of(
            "double",
            "double[]",
            "float",
            "float[]",
            "java.util.OptionalDouble",
            "org.apache.commons.math3.complex.Complex");
    private static final Pattern JAVADOC = Pattern.compile("/\\*\\*.*?\\*/", Pattern.DOTALL);

    @Test
    void whoeverStatesOneTagStatesAllFive() throws IOException {
        List<String> found = new ArrayList<>();
        int whole = 0;
        for (Path file : sources()) {
            Matcher block = JAVADOC.matcher(Files.readString(file));
            while (block.find()) {
                List<String> missing = TAGS.stream()
                        .filter(tag -> !block.group().contains(tag))
                        .toList();
                if (missing.isEmpty()) whole++;
                else if (missing.size() < TAGS.size())
                    found.add(file.getFileName() + ": " + missing + " in "
                            + block.group().lines().skip(1).findFirst().orElse(""));
            }
        }
        assertEquals(List.of(), found);
        assertTrue(whole > 100, "only " + whole + " blocks were seen");
    }

    /** Read off the compiled signatures: whatever takes something and hands back numbers computes them. */
    @Test
    void noFormulaGoesWithout() throws IOException {
        Set<String> owing = new TreeSet<>();
        int computing = 0;
        for (JavaClass owner : new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages(ROOMS.stream().map(room -> "handreach." + room).toList())) {
            if (!isSeen(owner)) continue;
            String file = owner.getName().replaceFirst("\\$.*", "").replace('.', '/') + ".java";
            String source = Files.readString(Path.of("src/main/java", file));
            for (JavaMethod method : owner.getMethods()) {
                if (!computes(method)) continue;
                computing++;
                if (!isTagged(source, method)) owing.add(owner.getName().substring(10) + "." + method.getName());
            }
        }
        assertTrue(computing > 100, "only " + computing + " functions were seen");
        assertEquals("", String.join("\n", owing));
    }

    /** Public, and so is every type that it stands in. */
    private static boolean isSeen(JavaClass type) {
        return type.getModifiers().contains(JavaModifier.PUBLIC)
                && type.getEnclosingClass().map(JavadocTagTest::isSeen).orElse(true);
    }

    private static boolean computes(JavaMethod method) {
        return method.getModifiers().contains(JavaModifier.PUBLIC)
                && !method.getModifiers().contains(JavaModifier.SYNTHETIC)
                && !method.getRawParameterTypes().isEmpty()
                && NUMBERS.contains(method.getRawReturnType()
                        .getName()
                        .replace("[D", "double[]")
                        .replace("[F", "float[]"))
                // A place in a row is read, not computed.
                && !method.getRawParameterTypes().stream()
                        .allMatch(type -> type.getName().equals("int"));
    }

    /** Whether a declaration of that name with as many arguments stands under a comment with the tags, or overrides one that does. */
    private static boolean isTagged(String source, JavaMethod method) {
        Matcher declared = Pattern.compile(
                        "(/\\*\\*(?:(?!\\*/).)*\\*/)?((?:\\s*@\\w+)*)\\s*(?:public )?[\\w<>\\[\\], .]*?\\b"
                                + method.getName() + "\\(([^)]*)\\)",
                        Pattern.DOTALL)
                .matcher(source);
        while (declared.find()) {
            int arguments = declared.group(3).isBlank() ? 0 : declared.group(3).split(",(?![^<]*>)").length;
            if (arguments != method.getRawParameterTypes().size()) continue;
            if (declared.group(2).contains("@Override")) return true;
            if (declared.group(1) != null && declared.group(1).contains("@source")) return true;
        }
        return false;
    }

    private static List<Path> sources() throws IOException {
        List<Path> sources = new ArrayList<>();
        for (String room : ROOMS)
            try (Stream<Path> files = Files.walk(Path.of("src/main/java/handreach", room))) {
                files.filter(file -> file.toString().endsWith(".java")).sorted().forEach(sources::add);
            }
        return sources;
    }
}
