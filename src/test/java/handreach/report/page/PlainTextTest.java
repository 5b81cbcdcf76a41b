package handreach.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.apache.commons.text.WordUtils;
import org.junit.jupiter.api.Test;

class PlainTextTest {
    /** Against the library's, which costs a cold start its largest class and a regular expression. */
    @Test
    void linesAreBrokenWhereTheLibraryBreaksThem() {
        Random random = new Random(11);
        for (int n = 0; n < 20_000; n++) {
            StringBuilder made = new StringBuilder();
            int length = random.nextInt(40);
            for (int i = 0; i < length; i++)
                made.append(random.nextInt(4) == 0 ? ' ' : (char) ('a' + random.nextInt(26)));
            String words = made.toString().strip();
            int width = 1 + random.nextInt(20);
            assertEquals(
                    List.of(WordUtils.wrap(words, width, "\n", false).split("\n")),
                    PlainText.wrap(words, width),
                    () -> "\"" + words + "\" in " + width);
        }
    }

    private static final Table<String> TABLE = Table.of(
            "",
            List.of("a-name-without-blanks", "two words"),
            List.of(Column.words("name", name -> name), Column.number("how far it goes, km", name -> "12.5")));

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

    @Test
    void headsOfNumbersAreBrokenBeforeNamesAndNoWordIs() {
        String wide = """
                name                    how far it
                                          goes, km
                ---------------------  -----------
                a-name-without-blanks         12.5
                two words                     12.5
                """;
        assertEquals(wide, PlainText.of(TABLE, 34));
        assertEquals(
                28,
                PlainText.of(TABLE, 5).lines().mapToInt(String::length).max().getAsInt());
    }

    /** Three columns of "under 1 % to 78 %" made lines of 157 where a terminal has 100. */
    @Test
    void aSpanIsBrokenBeforeItsSecondNumber() {
        Table<String> table = Table.of(
                "",
                List.of("under 1 % to 78 %", "40 to 80 %", "3 %"),
                List.of(Column.number("there", span -> span), Column.number("back", span -> span)));
        assertEquals("""
                    there       back
                ---------  ---------
                under 1 %  under 1 %
                  to 78 %    to 78 %
                       40         40
                  to 80 %    to 80 %
                      3 %        3 %
                """, PlainText.of(table, 20));
    }

    @Test
    void furtherLinesOfABulletHangUnderItsFirstWord() {
        assertEquals(
                "\nHead\n- one two\n  three\n".strip(),
                PlainText.of(
                                new Page(
                                        "",
                                        "",
                                        "",
                                        List.of(),
                                        List.of(Section.of("Head", new Bullets(List.of("one two three")))),
                                        ""),
                                10)
                        .strip());
    }

    @Test
    void aPerCentSignStaysWithItsNumber() {
        assertEquals("odds\nunder 1 %\nthere\n", PlainText.of("", "odds under 1 % there", 12));
        assertEquals("Take 5 % of\nit\n", PlainText.of("", "Take 5 % of it", 11));
    }

    /** A grid reference was parted over three lines of a table, and over two of a sentence. */
    @Test
    void aPlaceIsNotPartedWhereALineEnds() {
        for (String place : List.of(
                "12T VL 34624 16844",
                "12T 434624 4516844",
                "40.79000, -111.78000",
                "40\u00b047.400'N 111\u00b046.800'W")) {
            String sentence = PlainText.of("", "The relay stands at " + place + " and serves.", 40);
            assertTrue(sentence.contains(place), sentence);
            assertEquals(2, sentence.lines().count(), sentence);
            Table<String> table = Table.of(
                    "",
                    List.of("many words that may stand on several lines of their own"),
                    List.of(Column.words("who", who -> who), Column.words("where", who -> place)));
            assertTrue(PlainText.of(table, 60).contains(place), PlainText.of(table, 60));
            PlainText.of(table, 24).lines().forEach(line -> assertTrue(line.length() <= 33, line));
        }
    }
}
