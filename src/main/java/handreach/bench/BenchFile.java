package handreach.bench;

import handreach.input.NearestWord;
import handreach.input.Range;
import handreach.input.SourceText;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A bench session as read from its file.
 *
 * @param name file name as the user knows it
 * @param readings in the order of the file, which is taken as the order in time
 * @param declarations what the lines above the header say
 * @param notes what was accepted but should be known, one sentence each
 */
public record BenchFile(String name, List<Reading> readings, Declarations declarations, List<String> notes) {
    /** Frequency at which a reading was made. */
    public static final Range FREQUENCY = new Range("frequency_mhz", 1, 10_000, "MHz", "Write it in megahertz.");

    /** What spreadsheets write on the most usual desktop system when not asked for UTF-8. */
    private static final Charset SPREADSHEET_CODE_PAGE = Charset.forName("windows-1252");

    public BenchFile {
        Objects.requireNonNull(name);
        Objects.requireNonNull(declarations);
        readings = List.copyOf(readings);
        notes = List.copyOf(notes);
    }

    /** Reads a bench file; all faults are collected into one {@link handreach.input.InputFault}. */
    public static BenchFile read(Path file) {
        return of(SourceText.read(file, SPREADSHEET_CODE_PAGE));
    }

    /** An antenna as the file spells it; none without a reading of it. */
    public Optional<String> antenna(String name) {
        String wanted = LevelSession.identity(name.strip().replaceAll("\\s+", " "));
        return antennas().stream()
                .filter(read -> LevelSession.identity(read).equals(wanted))
                .findFirst();
    }

    /** Every antenna once, as it is spelled first. */
    public List<String> antennas() {
        Map<String, String> names = new LinkedHashMap<>();
        for (Reading reading : readings) names.putIfAbsent(LevelSession.identity(reading.antenna()), reading.antenna());
        return List.copyOf(names.values());
    }

    /** What to say of an antenna that was not read: what may be meant, and what was read. */
    public String insteadOf(String name) {
        return NearestWord.hint(name, antennas()) + antennasRead();
    }

    String antennasRead() {
        return " Antennas read: "
                + String.join(", ", antennas().stream().limit(30).toList()) + ".";
    }

    /** Whether it holds what antennas can be compared by; match alone needs no control. */
    public boolean compares() {
        return readings.stream()
                .anyMatch(r -> r.quantity() == Quantity.RECEIVED_LEVEL || r.quantity() == Quantity.FIELD_METER);
    }

    /** Reads a bench file already in memory. */
    public static BenchFile of(SourceText source) {
        return BenchTable.read(source);
    }
}
