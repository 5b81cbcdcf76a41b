package handreach.report.file;

import handreach.cartography.LoadoutMark;
import handreach.report.draw.Picture;
import handreach.report.figure.MapOutline;
import handreach.report.figure.MapPlace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Outlines, places and a picture over the ground for globe viewers: OGC KML 2.2 (07-147r2), and the same zipped as KMZ. */
public final class Kml {
    private static final String KEY_NAME = "files/key.png";

    private Kml() {}

    /**
     * A picture lying on the ground.
     *
     * @param name what it shows
     * @param picture the picture, see-through where nothing is to be shown; drawn when its turn comes, since together they are large
     * @param northDeg north edge, degrees
     * @param southDeg south edge, degrees
     * @param westDeg west edge, degrees
     * @param eastDeg east edge, degrees, may run past 180
     */
    public record Overlay(
            String name, Supplier<Picture> picture, double northDeg, double southDeg, double westDeg, double eastDeg) {}

    /**
     * What a globe viewer shows besides outlines and places.
     *
     * @param overlays pictures on the ground; the first is shown, the others when they are asked for
     * @param key what colours and letters mean, laid over a corner of the screen
     */
    public record Pictures(List<Overlay> overlays, Picture key) {
        public Pictures {
            overlays = List.copyOf(overlays);
        }
    }

    /** Content of a KMZ file: the document and its pictures in one archive. */
    public static AnswerFile.Content kmz(
            String title, List<MapOutline> outlines, List<MapPlace> places, Pictures pictures) {
        return out -> {
            ZipOutputStream zip = new ZipOutputStream(out);
            put(zip, "doc.kml", text(title, outlines, places, pictures).getBytes(StandardCharsets.UTF_8));
            put(zip, KEY_NAME, pictures.key().png());
            for (int i = 0; i < pictures.overlays().size(); i++)
                put(zip, file(i), pictures.overlays().get(i).picture().get().png());
            zip.finish();
        };
    }

    private static String file(int overlay) {
        return "files/overlay-" + (overlay + 1) + ".png";
    }

    private static void put(ZipOutputStream zip, String name, byte[] bytes) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        // a fixed time, so that the same result is the same file; the first day that the format can hold would be
        // written with the
        // time zone of the machine beside it
        entry.setTimeLocal(java.time.LocalDateTime.of(1980, 2, 1, 0, 0));
        zip.putNextEntry(entry);
        zip.write(bytes);
        zip.closeEntry();
    }

    private static String text(String title, List<MapOutline> outlines, List<MapPlace> places, Pictures pictures) {
        XmlText xml = new XmlText();
        xml.open("kml", "xmlns", "http://www.opengis.net/kml/2.2").open("Document");
        xml.element("name", title);
        for (int i = 0; i < outlines.size(); i++) style(xml, i, outlines.get(i).mark());
        key(xml);
        for (int i = 0; i < pictures.overlays().size(); i++)
            overlay(xml, i, pictures.overlays().get(i));
        for (int i = 0; i < outlines.size(); i++) outline(xml, i, outlines.get(i));
        for (MapPlace place : places) place(xml, place);
        xml.close().close();
        return xml.end();
    }

    private static void style(XmlText xml, int index, LoadoutMark mark) {
        xml.open("Style", "id", "loadout-" + index).open("LineStyle");
        xml.element("color", colour(mark.rgb(), 0xFF)).element("width", "2.5").close();
        xml.open("PolyStyle").element("color", colour(mark.rgb(), 0x22)).close().close();
    }

    /** Opacity, blue, green, red, two hexadecimal digits each. */
    private static String colour(int rgb, int opacity) {
        return String.format(Locale.ROOT, "%02x%02x%02x%02x", opacity, rgb & 0xFF, rgb >> 8 & 0xFF, rgb >> 16 & 0xFF);
    }

    /** Its lower left corner in that of the screen, a little inwards, in its own size. */
    private static void key(XmlText xml) {
        xml.open("ScreenOverlay").element("name", "key");
        xml.open("Icon").element("href", KEY_NAME).close();
        corner(xml, "overlayXY", "0", "fraction");
        corner(xml, "screenXY", "12", "pixels");
        xml.close();
    }

    private static void corner(XmlText xml, String name, String at, String unit) {
        xml.open(name, "x", at, "y", at, "xunits", unit, "yunits", unit).close();
    }

    private static void overlay(XmlText xml, int index, Overlay overlay) {
        xml.open("GroundOverlay").element("name", overlay.name());
        xml.element("visibility", index == 0 ? "1" : "0");
        xml.open("Icon").element("href", file(index)).close();
        xml.open("LatLonBox")
                .element("north", degrees(overlay.northDeg()))
                .element("south", degrees(overlay.southDeg()))
                .element("east", degrees(folded(overlay.eastDeg())))
                .element("west", degrees(folded(overlay.westDeg())))
                .close()
                .close();
    }

    private static void outline(XmlText xml, int index, MapOutline outline) {
        xml.open("Placemark").element("name", outline.mark().letter() + " " + outline.name());
        xml.element("styleUrl", "#loadout-" + index).open("MultiGeometry");
        polygons(xml, outline.area());
        xml.close().close();
    }

    private static void polygons(XmlText xml, Geometry geometry) {
        if (geometry instanceof Polygon polygon) {
            if (polygon.isEmpty()) return;
            xml.open("Polygon").open("outerBoundaryIs");
            ring(xml, polygon.getExteriorRing(), true);
            xml.close();
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                xml.open("innerBoundaryIs");
                ring(xml, polygon.getInteriorRingN(i), false);
                xml.close();
            }
            xml.close();
            return;
        }
        if (!(geometry instanceof GeometryCollection)) return;
        for (int i = 0; i < geometry.getNumGeometries(); i++) polygons(xml, geometry.getGeometryN(i));
    }

    private static void ring(XmlText xml, LineString ring, boolean wantsCounterClockwise) {
        CoordinateSequence points = ring.getCoordinateSequence();
        boolean isReversed = Orientation.isCCW(points) != wantsCounterClockwise;
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < points.size(); i++) {
            int k = isReversed ? points.size() - 1 - i : i;
            text.append(i > 0 ? " " : "")
                    .append(degrees(folded(points.getX(k))))
                    .append(',')
                    .append(degrees(points.getY(k)));
        }
        xml.open("LinearRing").element("coordinates", text.toString()).close();
    }

    private static void place(XmlText xml, MapPlace place) {
        xml.open("Placemark")
                .element(
                        "name", place.label().isBlank() ? place.kind().name().toLowerCase(Locale.ROOT) : place.label());
        xml.open("Point")
                .element(
                        "coordinates",
                        degrees(place.position().longitudeDeg()) + ","
                                + degrees(place.position().latitudeDeg()))
                .close()
                .close();
    }

    private static double folded(double longitudeDeg) {
        return longitudeDeg > 180 ? longitudeDeg - 360 : longitudeDeg < -180 ? longitudeDeg + 360 : longitudeDeg;
    }

    private static String degrees(double value) {
        long parts = Math.round(Math.abs(value) * 1e7);
        String digits = Long.toString(parts % 10_000_000);
        return (value < 0 && parts > 0 ? "-" : "")
                + parts / 10_000_000
                + "."
                + "0".repeat(7 - digits.length())
                + digits;
    }
}
