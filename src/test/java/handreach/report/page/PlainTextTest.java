package handreach.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class PlainTextTest {
    @Test
    void aWideHeadGivesWayBeforeTheNamesUnderAnother() {
        Table<String> table = Table.of(
                "",
                List.of("half-wave at face", "wire"),
                List.of(Column.words("loadout", name -> name), Column.number("median reach, km", name -> "0.60")));
        // by hand: 17 for the names, 2 between, 7 left of 26 for the head
        assertEquals("""
                loadout             median
                                    reach,
                                        km
                -----------------  -------
                half-wave at face     0.60
                wire                  0.60
                """, PlainText.of(table, 26));
    }
}
