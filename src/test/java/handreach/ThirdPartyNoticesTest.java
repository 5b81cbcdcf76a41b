package handreach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The notices name every library that the pom puts into the jar, with its version; the release build checks those behind them too. */
class ThirdPartyNoticesTest {
    private static final Pattern DEPENDENCY = Pattern.compile(
            "<dependency><groupId>([^<]+)</groupId><artifactId>([^<]+)</artifactId><version>([^<]+)</version>(<scope>test</scope>)?</dependency>");
    private static final Pattern VALUE = Pattern.compile("\\$\\{([^}]+)}");

    @Test
    void everyLibraryOfTheJarStandsInTheNotices() throws IOException {
        String pom = Files.readString(Path.of("pom.xml"));
        // what is only held to a version is not packed by that
        String packed = pom.replaceAll("(?s)<dependencyManagement>.*?</dependencyManagement>", "");
        List<String> rows = Files.readAllLines(Path.of("docs/third-party-notices.md"));
        List<String> review = Files.readAllLines(Path.of("docs/dependencies-review.md"));
        Set<String> missing = new TreeSet<>();
        int seen = 0;
        Matcher found = DEPENDENCY.matcher(packed);
        while (found.find()) {
            if (found.group(4) != null) continue;
            seen++;
            String name = found.group(1) + ":" + found.group(2);
            String version = resolved(pom, found.group(3));
            if (rows.stream().noneMatch(row -> row.contains("`" + name + "`") && row.contains("| " + version + " |")))
                missing.add(name + " " + version);
            String word = found.group(2).replaceAll("^javafx", "").replaceAll("^jackson", "");
            if (review.stream().noneMatch(row -> row.contains(word) && row.contains(version)))
                missing.add(name + " " + version + " in the review");
        }
        assertTrue(seen >= 15, "the pom lost its libraries: " + seen);
        assertEquals(Set.of(), missing);
    }

    private static String resolved(String pom, String version) {
        Matcher value = VALUE.matcher(version);
        if (!value.matches()) return version;
        Matcher property = Pattern.compile("<" + Pattern.quote(value.group(1)) + ">([^<]+)<")
                .matcher(pom);
        assertTrue(property.find(), version);
        return property.group(1);
    }

    /** Version of the program in the pom and the newest section of the changelog are the same. */
    @Test
    void theChangelogBeginsWithTheVersionOfThePom() throws IOException {
        Matcher version = Pattern.compile("<artifactId>handreach</artifactId>\\s*<version>([^<]+)</version>")
                .matcher(Files.readString(Path.of("pom.xml")));
        assertTrue(version.find());
        String newest = Files.readAllLines(Path.of("docs/changelog.md")).stream()
                .filter(line -> line.startsWith("## "))
                .findFirst()
                .orElseThrow();
        assertTrue(newest.startsWith("## " + version.group(1)), newest);
    }
}
