package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GpxTrackTest {
    private static final String HEAD = "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"x\""
            + " xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>";
    private static final String TAIL = "</trkseg></trk></gpx>";

    @TempDir
    Path folder;

    private static String point(String lat, String lon, String time) {
        return "<trkpt lat=\"" + lat + "\" lon=\"" + lon + "\"><ele>100</ele>"
                + (time.isEmpty() ? "" : "<time>" + time + "</time>") + "</trkpt>";
    }

    @Test
    void aMomentBetweenTwoPointsLiesBetweenThem() {
        GpxTrack track = GpxText.track(
                "t",
                HEAD
                        + point("10", "20", "2026-05-04T09:00:00Z")
                        + point("10.001", "20.002", "2026-05-04T11:00:10+02:00")
                        + TAIL);
        GpxTrack.Fix fix = track.at(Instant.parse("2026-05-04T09:00:05Z")).orElseThrow();
        assertEquals(10.0005, fix.at().latitudeDeg(), 1e-9);
        assertEquals(20.001, fix.at().longitudeDeg(), 1e-9);
        assertEquals(10, fix.gapS());
        assertTrue(track.at(Instant.parse("2026-05-04T09:00:11Z")).isEmpty());
    }

    @Test
    void stretchesAreNeverJoined() {
        GpxTrack track = GpxText.track(
                "t",
                HEAD + point("10", "20", "2026-05-04T09:00:00Z") + "</trkseg><trkseg>"
                        + point("10.1", "20", "2026-05-04T09:10:00Z") + TAIL);
        assertTrue(track.at(Instant.parse("2026-05-04T09:05:00Z")).isEmpty());
        assertEquals(
                10.1,
                track.at(Instant.parse("2026-05-04T09:10:00Z"))
                        .orElseThrow()
                        .at()
                        .latitudeDeg());
    }

    @Test
    void theOlderFormWithForeignElementsAndAnyOrderIsRead() {
        GpxTrack track = GpxText.track(
                "t",
                "<gpx version=\"1.0\"><wpt lat=\"1\" lon=\"2\"><name>camp</name></wpt><trk><trkseg>"
                        + "<trkpt lon=\"4\" lat=\"3\"><speed>1</speed><extensions><a:hr xmlns:a=\"urn:a\"><time>nonsense</time></a:hr>"
                        + "</extensions><time>2026-05-04T09:00:00Z</time></trkpt></trkseg></trk></gpx>");
        assertEquals("camp", track.waypoints().get(0).name());
        assertEquals(new Position(3, 4), track.points().get(0).at());
        assertEquals(1, track.timed().size());
    }

    @Test
    void aTrackWithoutTimesIsReadAndToldSo() {
        GpxTrack track = GpxText.track("t", HEAD + point("10", "20", "") + point("10", "20.1", "yesterday") + TAIL);
        assertEquals(2, track.points().size());
        assertTrue(
                track.notes().stream().anyMatch(n -> n.contains("2 of 2 points have no time")),
                track.notes().toString());
    }

    @Test
    void aSwellingEntityIsRefusedAtItsDoctype() {
        String bomb = "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;\">"
                + "<!ENTITY c SYSTEM \"file:///etc/hostname\">]><gpx><trk><name>&b;&c;</name></trk></gpx>";
        InputFault fault = assertThrows(InputFault.class, () -> GpxText.track("bomb.gpx", bomb));
        assertTrue(fault.getMessage().startsWith("bomb.gpx line 1: has a document type"), fault.getMessage());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 40, 120, 190, 230})
    void aTruncatedFileIsOneClearLine(int length) {
        String whole =
                HEAD + point("10", "20", "2026-05-04T09:00:00Z") + point("11", "20", "2026-05-04T09:00:01Z") + TAIL;
        InputFault fault = assertThrows(InputFault.class, () -> GpxText.track("cut.gpx", whole.substring(0, length)));
        assertEquals(1, fault.faults().size());
        assertTrue(fault.getMessage().contains("is not whole GPX"), fault.getMessage());
    }

    @Test
    void deepNestingIsRefused() {
        String deep = "<gpx>" + "<a>".repeat(100) + "</a>".repeat(100) + "</gpx>";
        assertTrue(assertThrows(InputFault.class, () -> GpxText.track("d", deep))
                .getMessage()
                .contains("deep"));
        String inside =
                HEAD + "<trkpt lat=\"1\" lon=\"1\">" + "<a>".repeat(100) + "</a>".repeat(100) + "</trkpt>" + TAIL;
        assertThrows(InputFault.class, () -> GpxText.track("d", inside));
    }

    @Test
    void aHugeFileIsRefusedUnread() throws IOException {
        Path huge = folder.resolve("huge.gpx");
        try (RandomAccessFile file = new RandomAccessFile(huge.toFile(), "rw")) {
            file.setLength(200L << 20);
        }
        InputFault fault = assertThrows(InputFault.class, () -> GpxTrack.read(huge));
        assertTrue(fault.getMessage().contains("is 200 MiB, at most 64 MiB are read"), fault.getMessage());
    }

    @Test
    void allPointsOutsideTheGlobeAreToldTogetherAndASwapIsNamed() {
        String text = HEAD + "\n" + point("120.5", "45", "") + "\n" + point("x", "45", "") + TAIL;
        InputFault fault = assertThrows(InputFault.class, () -> GpxText.track("s.gpx", text));
        assertEquals(2, fault.faults().size());
        assertTrue(
                fault.faults().get(0).message().startsWith("s.gpx line 2: a point has lat 120.5"), fault.getMessage());
        assertTrue(fault.faults().get(0).text().contains("look exchanged"));
        assertFalse(fault.faults().get(1).text().contains("look exchanged"));
    }

    @Test
    void aSwapInsideTheGlobeIsSeenAgainstTheArea() {
        Position area = new Position(36.27, -84.21);
        GpxTrack swapped = GpxText.track("t", HEAD + point("-84.21", "36.28", "") + TAIL);
        GpxTrack right = GpxText.track("t", HEAD + point("36.28", "-84.21", "") + TAIL);
        assertTrue(swapped.swapHint(area).isPresent());
        assertTrue(right.swapHint(area).isEmpty());
    }

    @Test
    void somethingElseThanGpxIsNamed() {
        assertTrue(assertThrows(InputFault.class, () -> GpxText.track("k", "<kml></kml>"))
                .getMessage()
                .contains("<kml>"));
    }
}
