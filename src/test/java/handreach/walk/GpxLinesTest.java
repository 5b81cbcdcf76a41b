package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GpxLinesTest {
    private static final String HEAD =
            "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"hand\" xmlns=\"http://www.topografix.com/GPX/1/1\">";

    @TempDir
    Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("track.gpx"), text);
    }

    @Test
    void segmentsAndRoutesAreLines() throws IOException {
        Path file = file(
                HEAD
                        + "<rte><rtept lat=\"44.3\" lon=\"-29.1\"/></rte>"
                        + "<trk><trkseg><trkpt lat=\"44.1\" lon=\"-29.5\"/><trkpt lat=\"44.2\" lon=\"-29.4\"/></trkseg></trk></gpx>");
        assertEquals(
                List.of(
                        List.of(new Position(44.3, -29.1)),
                        List.of(new Position(44.1, -29.5), new Position(44.2, -29.4))),
                GpxTrack.lines(file));
    }

    @Test
    void whatIsNotATrackIsOneClearLine() throws IOException {
        for (String text : List.of(
                "no track at all",
                HEAD + "<wpt lat=\"1\" lon=\"2\"/></gpx>",
                "<!DOCTYPE gpx [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>" + HEAD + "</gpx>")) {
            Path file = file(text);
            InputFault fault = assertThrows(InputFault.class, () -> GpxTrack.lines(file));
            assertEquals(1, fault.faults().size());
            assertTrue(fault.getMessage().contains("track.gpx"), fault.getMessage());
            assertTrue(fault.getMessage().contains("Export the track"), fault.getMessage());
        }
    }
}
