package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.LoadoutMark;
import handreach.cartography.OddsRamp;
import handreach.geodesy.Position;
import handreach.reach.CellGrid;
import handreach.reach.ReachOutline;
import handreach.report.draw.Picture;
import handreach.report.figure.MapOutline;
import handreach.report.figure.MapPlace;
import handreach.report.file.Gpx;
import handreach.report.file.Kml;
import io.jenetics.jpx.GPX;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipInputStream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/** KML, KMZ and GPX. */
class MapExchangeTest {
    private static final CellGrid GRID = CellGrid.around(new Position(36.3, -84.24), 1000, 50);
    private static final List<MapOutline> OUTLINES =
            List.of(new MapOutline(LoadoutMark.of(1), SampleFigures.HOSTILE, ReachOutline.of(GRID, cell -> {
                double d = Math.hypot(GRID.rowOf(cell) - 20, GRID.columnOf(cell) - 20);
                return d < 18 && d > 6;
            })));
    private static final List<MapPlace> PLACES = List.of(
            new MapPlace(new Position(36.3, -84.24), MapPlace.Kind.BASE, SampleFigures.HOSTILE),
            new MapPlace(new Position(-36.31, 179.5), MapPlace.Kind.RELAY, ""));

    private static Document parsed(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void kmlIsWellFormedAndKeepsTheHole() throws Exception { // OGC 07-147r2: lon,lat tuples, outer then inner boundary
        Document kml = document(archive(SampleFigures.HOSTILE));
        assertEquals("http://www.opengis.net/kml/2.2", kml.getDocumentElement().getNamespaceURI());
        assertEquals(1, kml.getElementsByTagName("outerBoundaryIs").getLength());
        assertEquals(1, kml.getElementsByTagName("innerBoundaryIs").getLength());
        String[] ring =
                kml.getElementsByTagName("coordinates").item(0).getTextContent().split(" ");
        assertEquals(ring[0], ring[ring.length - 1]);
        assertTrue(ring[0].startsWith("-84.2"), ring[0]);
        assertEquals("#loadout-0", kml.getElementsByTagName("styleUrl").item(0).getTextContent());
        // by hand: 0x0072B2 as opacity, blue, green, red
        assertEquals("ffb27200", kml.getElementsByTagName("color").item(0).getTextContent());
    }

    private static Kml.Overlay overlay(String name, Picture picture) {
        return new Kml.Overlay(name, () -> picture, GRID.northDeg(), GRID.southDeg(), GRID.westDeg(), GRID.eastDeg());
    }

    private static List<String> texts(Document kml, String element) {
        var nodes = kml.getElementsByTagName(element);
        return java.util.stream.IntStream.range(0, nodes.getLength())
                .mapToObj(i -> nodes.item(i).getTextContent())
                .toList();
    }

    @Test
    void kmzHoldsDocumentAndPictureInTheRightFrame() throws Exception {
        Map<String, byte[]> entries = archive("t");
        Document kml = document(entries);
        assertEquals(
                GRID.northDeg(),
                Double.parseDouble(kml.getElementsByTagName("north").item(0).getTextContent()),
                1e-7);
        assertEquals(
                List.of("files/key.png", "files/overlay-1.png", "files/overlay-2.png"),
                texts(kml, "href"),
                "key first");
        assertEquals(1, kml.getElementsByTagName("ScreenOverlay").getLength());
        assertEquals(List.of("1", "0"), texts(kml, "visibility"), "only the first is shown at once");
        for (String file : texts(kml, "href")) assertTrue(entries.containsKey(file), file);
        String href = texts(kml, "href").get(1);
        var image = ImageIO.read(new ByteArrayInputStream(entries.get(href)));
        assertEquals(GRID.columns(), image.getWidth());
        assertEquals(OddsRamp.rgb(5), image.getRGB(3, 0) & 0xFFFFFF);
        assertEquals(0, image.getRGB(3, 1) >>> 24, "see-through where unknown");
        assertEquals(0, image.getRGB(3, 2) >>> 24, "see-through where seldom");
    }

    /** What a KMZ file of this title holds, by name. */
    private static Map<String, byte[]> archive(String title) throws IOException {
        Picture picture =
                Picture.oddsOverlay(GRID, cell -> GRID.rowOf(cell) == 0 ? 0.95 : GRID.rowOf(cell) == 1 ? -1 : 0.05);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Kml.kmz(
                        title,
                        OUTLINES,
                        PLACES,
                        new Kml.Pictures(List.of(overlay("odds", picture), overlay("others", picture)), picture))
                .writeTo(out);
        Map<String, byte[]> entries = new HashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(out.toByteArray()))) {
            for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry())
                entries.put(entry.getName(), zip.readAllBytes());
        }
        return entries;
    }

    private static Document document(Map<String, byte[]> entries) throws Exception {
        return parsed(new String(entries.get("doc.kml"), StandardCharsets.UTF_8));
    }

    @Test
    void gpxComesBackThroughAReader() throws Exception { // GPX 1.1 schema order: name before type
        String xml = Gpx.text(PLACES, SampleFigures.HOSTILE, PLACES);
        assertEquals(
                "http://www.topografix.com/GPX/1/1",
                parsed(xml).getDocumentElement().getNamespaceURI());
        GPX gpx = GPX.Reader.DEFAULT.read(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
        assertEquals(2, gpx.getWayPoints().size());
        assertEquals(36.3, gpx.getWayPoints().get(0).getLatitude().doubleValue(), 1e-9);
        assertEquals("relay", gpx.getWayPoints().get(1).getName().orElseThrow());
        assertEquals(2, gpx.getRoutes().get(0).getPoints().size());
        assertTrue(xml.indexOf("<name>") < xml.indexOf("<type>"));
    }
}
