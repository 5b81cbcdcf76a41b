package handreach.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.loadout.Modulation;
import handreach.propagation.LossModels;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanFileTest {
    static final String GOOD = """
            title = "Paper valley"          # invented

            [channel]
            frequency_mhz = 155

            [ground]
            tiles = "tiles"

            [[radio]]
            name = "handheld"
            power_w = 5
            sensitivity_dbm = -119

            [[antenna]]
            name = "factory"
            control = true

            [[loadout]]
            name = "factory at face"
            antenna = "factory"
            carry = "face"

            [area]
            radius_km = 5

            [[position]]
            name = "base"
            at = "46.5, 8.1"
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void tiles() throws IOException {
        Files.createDirectory(folder.resolve("tiles"));
    }

    @Test
    void aShortPlanIsReadWithItsDefaults() {
        Plan plan = write(GOOD).plan();
        assertEquals("Paper valley", plan.header().title());
        assertEquals(0.9, plan.channel().wish().odds());
        assertEquals(Modulation.FM_12_5, plan.channel().modulation());
        assertEquals("handheld", plan.equipment().loadouts().get(0).radio());
        assertEquals(46.5, plan.places().area().centre().latitudeDeg());
        assertTrue(plan.questions().reach().wish().isChosen());
        assertEquals(LossModels.HANDHELD, plan.questions().reach().model(), "until the ground has been looked at");
    }

    @Test
    void everyFaultIsToldWithItsLine() {
        List<String> told = faults(GOOD.replace("frequency_mhz = 155", "frequency_mhz = \"155\"\nbandwith = 3")
                .replace("carry = \"face\"", "carry = \"fase\"")
                .replace("radius_km = 5", "radius_km = 5000")
                .replace("antenna = \"factory\"", "antenna = \"factry\""));
        assertEquals(5, told.size(), told.toString());
        assertTrue(
                told.stream().anyMatch(t -> t.startsWith("plan.toml line 4: frequency_mhz is \"155\", a number")),
                told.toString());
        assertTrue(
                told.stream().anyMatch(t -> t.startsWith("plan.toml line 5: unknown key bandwith")), told.toString());
        assertTrue(
                told.stream().anyMatch(t -> t.contains("carry is \"fase\"") && t.contains("Did you mean face?")),
                told.toString());
        assertTrue(
                told.stream().anyMatch(t -> t.contains("radius_km is 5000, allowed is 0.2 to 120 km")),
                told.toString());
        assertTrue(told.stream().anyMatch(t -> t.contains("Did you mean factory?")), told.toString());
    }

    @Test
    void aPartOfAThingThatIsCountedIsAFault() {
        List<String> told = faults(
                GOOD.replace("control = true", "control = true\nburden_rank = 2.5") + "\n[relay]\ncount = 1.5\n");
        assertEquals(2, told.size(), told.toString());
        assertTrue(
                told.stream()
                        .anyMatch(
                                t -> t.matches(
                                        "plan.toml line \\d+: burden_rank is 2.5, allowed are whole numbers from 1 to 1000\\..*")),
                told.toString());
        assertTrue(
                told.stream()
                        .anyMatch(t -> t.matches(
                                "plan.toml line \\d+: count is 1.5, allowed are whole numbers from 1 to 4\\..*")),
                told.toString());
        assertEquals(
                2,
                write(GOOD + "\n[relay]\ncount = 2.0\n")
                        .plan()
                        .questions()
                        .relay()
                        .count());
        assertTrue(faults(GOOD + "\n[relay]\ncount = inf\n").toString().contains("count is inf, allowed are whole"));
    }

    @Test
    void aGainWithoutReferenceIsRefusedWithTheReason() {
        List<String> told = faults(GOOD.replace("control = true", "control = true\ngain_db = 6"));
        assertEquals(1, told.size(), told.toString());
        assertTrue(told.get(0).contains("has no reference"), told.toString());
    }

    @Test
    void microvoltsAreReadWithWhatTheyStandFor() {
        String told =
                "sensitivity_uv = 0.5\nsensitivity_across = \"open-circuit\"\nsensitivity_for = \"20-db-quieting\"";
        double dbm = write(GOOD.replace("sensitivity_dbm = -119", told))
                .plan()
                .equipment()
                .radios()
                .get(0)
                .sensitivityDbm()
                .getAsDouble();
        assertEquals(-122.03, dbm, 0.005);
    }

    @Test
    void microvoltsThatLeaveSomethingOpenAreRefused() {
        List<String> open = faults(GOOD.replace("sensitivity_dbm = -119", "sensitivity_uv = 0.25"));
        assertEquals(1, open.size(), open.toString());
        assertTrue(
                open.get(0).contains("line 12: sensitivity_uv does not say where the voltage is meant"),
                open.toString());
        List<String> both = faults(GOOD.replace(
                "sensitivity_dbm = -119",
                "sensitivity_dbm = -119\nsensitivity_uv = 0.25\nsensitivity_across = \"50-ohm\""));
        assertTrue(both.get(0).contains("stands beside sensitivity_dbm"), both.toString());
        List<String> lone = faults(
                GOOD.replace("sensitivity_dbm = -119", "sensitivity_dbm = -119\nsensitivity_for = \"12-db-sinad\""));
        assertTrue(lone.get(0).contains("says how sensitivity_uv is meant, which is not there"), lone.toString());
    }

    @Test
    void brokenTomlSaysTheLine() {
        List<String> told = faults(GOOD.replace("power_w = 5", "power_w = = 5"));
        assertTrue(told.get(0).startsWith("plan.toml line 11:"), told.toString());
    }

    @Test
    void missingSectionsAreAllNamed() {
        List<String> told = faults("title = \"x\"\n");
        for (String word : List.of("[channel]", "[ground]", "[[radio]]", "[[antenna]]", "[[loadout]]", "[area]"))
            assertTrue(told.stream().anyMatch(t -> t.contains(word)), word + " in " + told);
    }

    @Test
    void savingKeepsABackupAndEveryComment() throws IOException {
        PlanFile plan = write(GOOD);
        PlanFile edited = plan.withText(PlanText.withValue(plan.text(), "target", "odds", "0.8"));
        assertTrue(edited.isEdited());
        PlanFile saved = edited.save();
        assertFalse(saved.isEdited());
        assertEquals(0.8, PlanFile.open(folder).plan().channel().wish().odds());
        assertTrue(Files.readString(plan.file()).contains("# invented"));
        assertEquals(GOOD, Files.readString(folder.resolve("plan.toml.bak")));
        try (var files = Files.list(folder)) {
            assertEquals(
                    List.of(".plan.toml.lock", "plan.toml", "plan.toml.bak", "tiles"),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void savingTwiceInARowIsNoConflictWithOneself() throws IOException {
        PlanFile once = write(GOOD)
                .withText(GOOD.replace("radius_km = 5", "radius_km = 6"))
                .save();
        once.withText(GOOD.replace("radius_km = 5", "radius_km = 7") + "\n").save();
        assertEquals(7, PlanFile.open(folder).plan().places().area().radiusKm());
    }

    @Test
    void aPlanChangedByAnotherProgramIsNotOverwritten() throws IOException {
        PlanFile mine = write(GOOD);
        Files.writeString(mine.file(), GOOD.replace("Paper valley", "Theirs"));
        PlanFile edited = mine.withText(mine.text().replace("Paper valley", "Mine"));
        assertThrows(InputFault.class, edited::save);
        assertTrue(Files.readString(mine.file()).contains("Theirs"));
    }

    @Test
    void aFolderWithoutAPlanSaysSo() {
        InputFault fault = assertThrows(InputFault.class, () -> PlanFile.open(folder));
        assertTrue(fault.getMessage().contains("no plan.toml"), fault.getMessage());
    }

    private PlanFile write(String text) {
        try {
            Path file = folder.resolve("plan.toml");
            Files.writeString(file, text);
            return PlanFile.open(file);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private List<String> faults(String text) {
        InputFault fault = assertThrows(InputFault.class, () -> write(text));
        return fault.faults().stream().map(handreach.input.Fault::message).toList();
    }
}
