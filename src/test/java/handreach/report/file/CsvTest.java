package handreach.report.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.StringReader;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.junit.jupiter.api.Test;

class CsvTest {
    @Test
    void everyCellComesBack() throws Exception { // RFC 4180, read back by the library
        List<String> row = List.of("a,b", "say \"hi\"", "two  words", "", "-3.5");
        String text = Csv.text(List.of("one", "two", "three", "four", "five"), List.of(row));
        try (var parser = CSVFormat.RFC4180.parse(new StringReader(text))) {
            assertEquals(row, parser.getRecords().get(1).toList());
        }
        assertEquals("one,two,three,four,five", text.substring(0, text.indexOf("\r\n")));
    }

    @Test
    void aRowIsOneLine() {
        assertEquals("a\r\nbase Written: x\r\n", Csv.text(List.of("a"), List.of(List.of("base\r\nWritten: x"))));
    }

    @Test
    void aCellThatLooksLikeAFormulaIsDisarmedAndANumberIsNot() {
        assertEquals("a\r\n'=1+1\r\n", Csv.text(List.of("a"), List.of(List.of("=1+1"))));
        assertEquals("a\r\n-12.5e3\r\n", Csv.text(List.of("a"), List.of(List.of("-12.5e3"))));
    }

    @Test
    void aRowOfAnotherLengthIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Csv.text(List.of("a"), List.of(List.of("x", "y"))));
    }
}
