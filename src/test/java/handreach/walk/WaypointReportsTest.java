package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaypointReportsTest {
    private static GpxTrack track(String... marks) {
        StringBuilder text = new StringBuilder("<gpx>");
        for (String mark : marks)
            text.append("<wpt lat='36.27' lon='-84.21'><time>2026-05-04T09:00:00Z</time>")
                    .append(mark)
                    .append("</wpt>");
        return GpxText.track("marks.gpx", text + "</gpx>");
    }

    @ParameterizedTest
    @CsvSource({
        "copy,COPY,1",
        "good copy at the ford,COPY,1",
        "No copy,COPY,0",
        "copy: no,COPY,0",
        "nothing,COPY,0",
        "-104.5 dBm,LEVEL,-104.5",
        "\u2212104 dBm copy,LEVEL,-104",
        "< -120 dBm,BELOW,-120",
        "SINAD 12,SINAD,12",
        "12 dB SINAD,SINAD,12",
        "readability 4,READABILITY,4",
        "R3,READABILITY,3",
    })
    void aFewWordsSayWhatWasHeard(String words, Reception.Kind kind, double value) {
        assertEquals(
                Optional.of(new Reception(kind, value)),
                WaypointReports.heard(words.toLowerCase(java.util.Locale.ROOT)));
    }

    @Test
    void marksAreReportsWithPlaceTimeAndWay() {
        List<String> notes = new ArrayList<>();
        List<WalkReport> reports = WaypointReports.of(
                track(
                        "<name>004</name><cmt>no copy to base</cmt>",
                        "<name>Car park</name>",
                        "<name>-98 dBm to-walker</name><desc>on the spur</desc>"),
                notes::add);
        assertEquals(2, reports.size());
        assertEquals(Direction.TO_BASE, reports.get(0).way());
        assertEquals(Reception.copy(false), reports.get(0).heard());
        assertEquals(Direction.TO_WALKER, reports.get(1).way());
        assertEquals("-98 dBm to-walker on the spur", reports.get(1).note());
        assertTrue(reports.get(1).origin().at().isPresent()
                && reports.get(1).origin().time().isPresent());
        assertEquals(
                List.of("marks.gpx: 1 of 3 waypoints say nothing of what was heard and are left out: Car park."),
                notes);
    }

    /** Four digits were read from the second on, and levels that no receiver shows were believed. */
    @Test
    void aLevelThatNoReceiverShowsIsAFault() {
        assertEquals(Optional.empty(), WaypointReports.heard("-1020 dbm"));
        InputFault fault = assertThrows(
                InputFault.class,
                () -> WaypointReports.of(
                        track("<name>-204 dBm</name>", "<name>copy</name>", "<name>-205 dBm</name>"), words -> {}));
        assertEquals(
                List.of(
                        "marks.gpx: waypoint 1 says \"-204\" dBm, allowed is -170 to 30 dBm. Correct the mark, or take it out.",
                        "marks.gpx: waypoint 3 says \"-205\" dBm, allowed is -170 to 30 dBm. Correct the mark, or take it out."),
                fault.getMessage().lines().toList());
    }

    @Test
    void marksWithoutAnyReportAreAFault() {
        InputFault fault =
                assertThrows(InputFault.class, () -> WaypointReports.of(track("<name>Car park</name>"), words -> {}));
        assertTrue(fault.getMessage().contains("has no waypoint that says what was heard"), fault.getMessage());
    }
}
