package handreach.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RenamingTest {
    /** Invented; every key that can name something names it, in one way of writing or another. */
    private static final String FULL = """
            title = "base camp"             # a title is no reference
            note = "with 'set', \\"set\\" and [set]"

            [channel]
            frequency_mhz = 155
            name = "base camp"

            [ground]
            tiles = "tiles"

            [[radio]]
            name = "set"
            power_w = 5
            sensitivity_dbm = -119

            [[power_step]]
            radio = "set"
            power_w = 1

            [[antenna]]
            name = 'whip'

            [[antenna]]
            name = "stub"
            control = true

            [[delta]]
            antenna = "whip"
            channel = "base camp"
            delta_db = 3
            delta_uncertainty_db = 1
            delta_mount = "in hand"

            [[loadout]]
            name = "whip # 1"
            radio = "set"
            antenna = "whip"

            [area]
            centre = "base camp"            # "base camp" in the middle
            radius_km = 5

            [[position]]
            name = "lookout"
            at = "46.6, 8.2"
            loadout = "whip # 1"
            towards = "base camp"

            [[position]]
            name = "base camp"
            at = "46.5, 8.1"
            loadout = "whip # 1"
            base = true

            [[route]]
            name = "ridge"
            file = "track.gpx"
            loadout = 'whip # 1'

            [[sector]]
            name = "wood"
            polygon = "area.geojson"
            loadout = "whip # 1"

            [reach]
            from = "base camp"
            with = "whip # 1"

            [relay]
            talk = "listed"
            pairs = [
                ["base camp", "ridge"],     # over the "base camp"
                ['wood', "base \\u0063amp"]
            ]
            walk_from = 'base camp'

            [assign]
            keep = ["base camp", "ridge"]
            loadouts = [
                "whip # 1"
            ]

            [[walk]]
            name = "base camp"              # the name of a walk is its own
            reports = "reports.csv"
            base = "base camp"
            loadout = "whip # 1"
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void files() throws IOException {
        Files.createDirectory(folder.resolve("tiles"));
        for (String name : List.of("track.gpx", "area.geojson", "reports.csv"))
            Files.writeString(folder.resolve(name), "");
    }

    private Plan plan(String text) throws IOException {
        return PlanFile.open(Files.writeString(folder.resolve("plan.toml"), text))
                .plan();
    }

    private static String nameOf(NameKind kind) {
        return switch (kind) {
            case CHANNEL -> "base camp";
            case RADIO -> "set";
            case ANTENNA -> "whip";
            case LOADOUT -> "whip # 1";
            case POSITION -> "base camp";
            case ROUTE -> "ridge";
            case SECTOR -> "wood";
        };
    }

    /** The plan says the same of the fresh name: renaming back gives the plan that was. */
    @ParameterizedTest
    @EnumSource(NameKind.class)
    void afterARenamingThePlanIsReadAndNothingElseChanged(NameKind kind) throws IOException {
        String fresh = "an \"other\" \\ name";
        String renamed = PlanText.rename(FULL, kind, nameOf(kind), fresh);
        Plan after = plan(renamed);
        assertTrue(after.toString().contains(fresh), after.toString());
        assertEquals(plan(FULL), plan(PlanText.rename(renamed, kind, fresh, nameOf(kind))));
    }

    @Test
    void everythingThatNamesAPositionFollows() throws IOException {
        Plan plan = plan(PlanText.rename(FULL, NameKind.POSITION, "base camp", "hut"));
        assertEquals("hut", plan.places().positions().get(1).name());
        assertEquals(
                Optional.of("hut"),
                plan.places().positions().get(0).facing().orElseThrow().towards());
        assertEquals(plan.places().positions().get(1).at(), plan.places().area().centre());
        assertEquals(Optional.of("hut"), plan.questions().reach().from());
        assertEquals(
                List.of(List.of("hut", "ridge"), List.of("wood", "hut")),
                plan.questions().relay().pairs());
        assertEquals(
                "hut",
                plan.questions().relay().constraints().walk().orElseThrow().start());
        assertEquals(Optional.of("hut"), plan.questions().walks().get(0).base());
        assertEquals(List.of("hut", "ridge"), plan.questions().assign().keep());
        assertEquals("base camp", plan.questions().walks().get(0).name());
        assertEquals("base camp", plan.header().title());
        assertEquals("base camp", plan.channel().name());
    }

    @Test
    void everythingThatNamesALoadoutFollows() throws IOException {
        Plan plan = plan(PlanText.rename(FULL, NameKind.LOADOUT, "whip # 1", "long one"));
        Optional<String> fresh = Optional.of("long one");
        assertEquals(fresh, plan.places().positions().get(0).loadout());
        assertEquals(fresh, plan.places().routes().get(0).loadout());
        assertEquals(fresh, plan.places().sectors().get(0).loadout());
        assertEquals(fresh, plan.questions().reach().with());
        assertEquals(List.of("long one"), plan.questions().assign().loadouts());
        assertEquals(fresh, plan.questions().walks().get(0).loadout());
    }

    @Test
    void anAntennaKeepsItsNameInTheBenchFile() throws IOException {
        Equipment.AntennaEntry antenna = plan(PlanText.rename(FULL, NameKind.ANTENNA, "whip", "long whip"))
                .equipment()
                .antennas()
                .get(0);
        assertEquals("long whip", antenna.name());
        assertEquals("whip", antenna.delta().benchName());
    }

    @Test
    void remarksAndEveryOtherLineStayAsTheyAre() {
        String renamed = PlanText.rename(FULL, NameKind.POSITION, "base camp", "hut");
        List<String> before = FULL.lines().toList();
        List<String> after = renamed.lines().toList();
        assertEquals(before.size(), after.size());
        assertTrue(after.contains("centre = \"hut\"            # \"base camp\" in the middle"), renamed);
        long changed = Stream.iterate(0, i -> i + 1)
                .limit(before.size())
                .filter(i -> !before.get(i).equals(after.get(i)))
                .count();
        // the entry, towards, centre, from, two lines of pairs, walk_from, keep, the base of the walk
        assertEquals(9, changed, renamed);
    }

    @Test
    void aNameThatThePlanDoesNotHaveIsADefect() {
        assertThrows(IllegalArgumentException.class, () -> PlanText.rename(FULL, NameKind.ROUTE, "base camp", "hut"));
    }

    /** Every key that a reader reads as a reference is one the page tells, and is put to the test above. */
    @ParameterizedTest
    @EnumSource(Reference.class)
    void everyReferenceStandsOnThePageAndInThePlanAbove(Reference reference) throws IOException {
        for (String section : reference.sections()) {
            String page = PlanDocTest.section("[" + section + "]");
            assertTrue(page.contains("`" + reference.key() + "`"), reference.key() + " in [" + section + "]");
            int start = FULL.indexOf("[" + section + "]");
            int end = FULL.indexOf("\n\n", start);
            assertTrue(
                    FULL.substring(start, end < 0 ? FULL.length() : end).contains("\n" + reference.key() + " ="),
                    section);
        }
        assertFalse(reference.kinds().isEmpty());
    }
}
