package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class AreaFilesTest {
    @Test
    void loadoutsThatLookAlikeAsFileNamesKeepApart() {
        assertEquals(
                List.of("a-b", "a-b-2", "loadout", "loadout-2"),
                AreaFiles.fileWords(List.of("a b", "A/b", "мачта", "рука")));
    }
}
