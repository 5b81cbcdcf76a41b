package handreach.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.geodesy.PlaceForm;
import handreach.input.Keyword;
import handreach.loadout.Carry;
import handreach.loadout.CopyQuality;
import handreach.loadout.Fading;
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.loadout.StatedSensitivity;
import handreach.propagation.GroundType;
import handreach.propagation.NoiseEnvironment;
import handreach.relay.RelayMode;
import handreach.terrain.Cover;
import handreach.terrain.CoverLegend;
import handreach.terrain.Surface;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** The page on the plan file says what the readers read. */
class PlanDocTest {
    private static final Path PAGE = Path.of("docs/plan-file.md");

    /** Heading of the section to the kinds of words that its keys hold. */
    private static final Map<String, List<Keyword<?>>> WORDS = Map.of(
            "Top of the file", List.of(PlaceForm.KEYWORD),
            "[channel]", List.of(Channel.POLARIZATION, Modulation.KEYWORD),
            "[target]", List.of(CopyQuality.KEYWORD, Fading.KEYWORD),
            "[ground]",
                    List.of(
                            Surface.KEYWORD,
                            GroundType.KEYWORD,
                            Cover.KEYWORD,
                            CoverLegend.KEYWORD,
                            NoiseEnvironment.KEYWORD),
            "[[radio]]", List.of(StatedSensitivity.Across.KEYWORD, StatedSensitivity.Mark.KEYWORD),
            "[[antenna]]", List.of(Radiator.KEYWORD),
            "[[loadout]]", List.of(Carry.KEYWORD),
            "[relay]", List.of(Questions.WhoTalks.KEYWORD, RelayMode.KEYWORD));

    @TestFactory
    Stream<DynamicTest> everyWordStandsInTheSectionOfItsKey() {
        return WORDS.entrySet().stream()
                .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> {
                    String section = section(entry.getKey());
                    assertEquals(
                            List.of(),
                            entry.getValue().stream()
                                    .flatMap(keyword -> keyword.words().stream())
                                    .filter(word -> !section.contains("`" + word + "`"))
                                    .toList());
                }));
    }

    /** The text under the heading that names this section. */
    static String section(String heading) throws IOException {
        Matcher found = Pattern.compile("(?ms)^## [^\\n]*" + Pattern.quote(heading) + ".*?(?=^## |\\z)")
                .matcher(Files.readString(PAGE));
        if (!found.find()) throw new IllegalStateException("no section " + heading + " in " + PAGE);
        return found.group();
    }
}
