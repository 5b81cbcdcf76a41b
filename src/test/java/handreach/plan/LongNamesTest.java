package handreach.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import handreach.input.Fault;
import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Titles and names have a length, told once with the line; those of pairs are read as those of entries are. */
class LongNamesTest {
    @TempDir
    Path folder;

    private String plan(String title, String name, String pairs) {
        return """
            title = "TITLE"
            [channel]
            frequency_mhz = 155
            name = "NAME"
            [ground]
            tiles = "tiles"
            [[radio]]
            name = "NAME"
            power_w = 5
            sensitivity_dbm = -119
            [[antenna]]
            name = "NAME"
            control = true
            [[loadout]]
            name = "NAME"
            antenna = "NAME"
            carry = "face"
            [area]
            radius_km = 5
            [[position]]
            name = "NAME"
            at = "46.5, 8.1"
            [[position]]
            name = "camp "
            at = "46.51, 8.1"
            [relay]
            talk = "listed"
            pairs = PAIRS
            """.replace("TITLE", title).replace("NAME", name).replace("PAIRS", pairs);
    }

    private Plan read(String text) throws IOException {
        Files.createDirectories(folder.resolve("tiles"));
        Path file = folder.resolve("plan.toml");
        Files.writeString(file, text);
        return PlanFile.open(file).plan();
    }

    @Test
    void theLongestIsTakenAndOneLetterMoreIsOneFaultEach() throws IOException {
        String pair = "[[\"camp\", \"" + "é".repeat(120) + "\"]]";
        Plan plan = read(plan("t".repeat(120), "é".repeat(120), pair));
        assertEquals(120, plan.header().title().length());
        InputFault fault = assertThrows(
                InputFault.class, () -> read(plan("t".repeat(121), "n".repeat(30_000), "[[\"camp\", \"camp\"]]")));
        List<String> told = fault.faults().stream().map(Fault::message).toList();
        assertEquals("plan.toml line 1: title has 121 letters, at most 120 are taken. Shorten it.", told.get(0));
        assertEquals(
                List.of(1, 4, 8, 12, 15, 16, 21),
                fault.faults().stream()
                        .filter(one -> one.text().contains("letters, at most 120"))
                        .map(Fault::line)
                        .toList());
        told.forEach(line -> assertEquals(true, line.length() < 300, line.length() + " letters"));
    }

    @Test
    void aPairIsStrippedAsNamesAre() throws IOException {
        Plan plan = read(plan("t", "base", "[[\"camp \", \" base\"]]"));
        assertEquals(List.of(List.of("camp", "base")), plan.questions().relay().pairs());
    }
}
