package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.reach.Progress;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReportFileTest {
    private static List<WalkReport> read(String... lines) {
        return ReportFile.read(SourceText.of("walk.csv", String.join("\n", lines)), Progress.SILENT);
    }

    @Test
    void everyKindOfReportIsRead() {
        List<WalkReport> reports = read(
                "# invented",
                "time,latitude,longitude,level_dbm,sinad_db,readability,copy,direction,loadout,heading_deg,note",
                "2026-05-04T09:00:00Z,,,-101.5,,,,to-walker,whip,90,\"clear, calm\"",
                "2026-05-04 11:00:00+02:00,,,<-120,,,,to-walker,,,",
                "2026-05-04 09:01,,,,14,,,,,,",
                ",36.2,-84.2,,,2,,,,,",
                ",36.2,-84.2,,,,No,to-base,,,");
        assertEquals(
                List.of(
                        Reception.Kind.LEVEL,
                        Reception.Kind.BELOW,
                        Reception.Kind.SINAD,
                        Reception.Kind.READABILITY,
                        Reception.Kind.COPY),
                reports.stream().map(r -> r.heard().kind()).toList());
        assertEquals("clear, calm", reports.get(0).note());
        assertEquals(
                Instant.parse("2026-05-04T09:00:00Z"),
                reports.get(1).origin().time().orElseThrow());
        assertEquals(Direction.BOTH, reports.get(2).way());
        assertEquals(3, reports.get(0).origin().line());
        assertTrue(reports.stream().noneMatch(r -> r.heard().isCopy(-90, 17)));
    }

    @Test
    void allFaultsOfAFileAreToldWithTheirLines() {
        InputFault fault = assertThrows(
                InputFault.class,
                () -> read(
                        "time,latitude,longitude,level_dbm,copy,direction",
                        "half past nine,,,-100,,",
                        ",120.5,45,-100,,",
                        "2026-05-04T09:00:00Z,,,\"-100,5\",,",
                        "2026-05-04T09:00:00Z,,,,maybe,to-wlaker",
                        "2026-05-04T09:00:00Z,,,,,",
                        "2026-05-04T09:00:00Z,,,-100",
                        ",,,-100,,"));
        List<String> lines = fault.getMessage().lines().toList();
        assertEquals(8, lines.size(), fault.getMessage());
        assertTrue(lines.get(0).startsWith("walk.csv line 2: time is \"half past nine\""));
        assertTrue(lines.get(1).contains("look exchanged"));
        assertTrue(lines.get(2).contains("written with a decimal comma in a table parted by commas"));
        assertTrue(lines.get(4).contains("Did you mean to-walker?"));
        assertTrue(lines.get(6).startsWith("walk.csv line 7: has 4 cells"));
        assertTrue(lines.get(7).contains("neither a time nor a position"));
    }

    @Test
    void aSpreadsheetMayPartBySemicolonsAndWriteDecimalCommas() {
        List<WalkReport> reports =
                read("sep=;", "Time;Latitude;Longitude;Level dBm;Note", ";36,2;-84,25;<-101,5;\"a; b\"");
        assertEquals(36.2, reports.get(0).origin().at().orElseThrow().latitudeDeg());
        assertEquals(-101.5, reports.get(0).heard().value());
        assertEquals("a; b", reports.get(0).note());
        assertEquals(3, reports.get(0).origin().line());
    }

    @Test
    void aPlaceMayStandInAnyForm() {
        List<WalkReport> reports =
                read("place,copy", "\"36.27, -84.21\",yes", "16S FF 50000 17000,no", "16S 750000 4017000,yes");
        assertEquals(36.27, reports.get(0).origin().at().orElseThrow().latitudeDeg(), 1e-9);
        assertTrue(reports.stream().allMatch(r -> r.origin().at().isPresent()));
        InputFault fault = assertThrows(
                InputFault.class,
                () -> read("place,latitude,longitude,copy", "somewhere,,,yes", "\"36.2, -84.2\",36.2,-84.2,yes"));
        assertEquals(2, fault.faults().size(), fault.getMessage());
        assertTrue(fault.getMessage().contains("line 3: has a place and latitude and longitude"), fault.getMessage());
    }

    @Test
    void aFaultOfEveryRowIsToldOnce() {
        String row = "2026-05-04T09:00:00Z,S9";
        InputFault fault = assertThrows(InputFault.class, () -> read("time,level_dbm", row, row, row));
        assertEquals(1, fault.faults().size(), fault.getMessage());
        assertTrue(fault.getMessage().endsWith("And 2 more like it: lines 3, 4."), fault.getMessage());
    }

    @Test
    void anUnknownColumnIsAnsweredWithTheNearest() {
        InputFault fault = assertThrows(InputFault.class, () -> read("time,levl_dbm,copy", "x,y,z"));
        assertTrue(fault.getMessage().contains("Did you mean level_dbm?"), fault.getMessage());
    }
}
