package handreach.report.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import handreach.input.Unseen;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * Features as GeoJSON (RFC 7946): longitude before latitude, WGS 84, seven decimals, outer rings counter-clockwise and holes
 * clockwise (section 3.1.6), cut at the 180th meridian (section 3.1.9).
 */
public final class GeoJson {
    private static final int DECIMALS = 7;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private GeoJson() {}

    /**
     * One thing with a place.
     *
     * @param geometry point, line, polygon or several, in degrees, x east, y north; x may run past 180
     * @param properties names to text, number, truth value, list or null, written in their order
     */
    public record Feature(Geometry geometry, Map<String, Object> properties) {
        public Feature {
            properties = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(properties));
        }
    }

    /** The text of a feature collection. */
    public static String text(List<Feature> features) {
        StringWriter text = new StringWriter();
        try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
            out.writeStartObject();
            out.writeStringField("type", "FeatureCollection");
            out.writeArrayFieldStart("features");
            for (Feature feature : features) {
                out.writeRaw("\n");
                write(out, feature);
            }
            out.writeEndArray();
            out.writeEndObject();
            out.writeRaw("\n");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Unseen.escaped(text.toString());
    }

    private static void write(JsonGenerator out, Feature feature) throws IOException {
        out.writeStartObject();
        out.writeStringField("type", "Feature");
        out.writeObjectFieldStart("properties");
        for (Map.Entry<String, Object> property : feature.properties().entrySet()) {
            out.writeFieldName(property.getKey());
            value(out, property.getValue());
        }
        out.writeEndObject();
        out.writeFieldName("geometry");
        geometry(out, cut(feature.geometry()));
        out.writeEndObject();
    }

    private static void value(JsonGenerator out, Object value) throws IOException {
        if (value == null) out.writeNull();
        else if (value instanceof Integer i) out.writeNumber(i);
        else if (value instanceof Long l) out.writeNumber(l);
        else if (value instanceof Boolean b) out.writeBoolean(b);
        else if (value instanceof String s) out.writeString(s);
        else if (value instanceof Double d) {
            if (!Double.isFinite(d)) throw new IllegalArgumentException("a property that is not a finite number");
            out.writeNumber(d);
        } else if (value instanceof List<?> list) {
            out.writeStartArray();
            for (Object item : list) value(out, item);
            out.writeEndArray();
        } else throw new IllegalArgumentException("a property of type " + value.getClass());
    }

    private static void geometry(JsonGenerator out, Geometry geometry) throws IOException {
        if (geometry.isEmpty()) {
            out.writeNull();
            return;
        }
        out.writeStartObject();
        out.writeStringField("type", geometry.getGeometryType());
        out.writeFieldName("coordinates");
        coordinates(out, geometry);
        out.writeEndObject();
    }

    private static void coordinates(JsonGenerator out, Geometry geometry) throws IOException {
        if (geometry instanceof Point point) position(out, point.getX(), point.getY());
        else if (geometry instanceof LineString line) positions(out, line.getCoordinateSequence(), false);
        else if (geometry instanceof Polygon polygon) {
            out.writeStartArray();
            ring(out, polygon.getExteriorRing(), true);
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) ring(out, polygon.getInteriorRingN(i), false);
            out.writeEndArray();
        } else {
            out.writeStartArray();
            for (int i = 0; i < geometry.getNumGeometries(); i++) coordinates(out, geometry.getGeometryN(i));
            out.writeEndArray();
        }
    }

    private static void ring(JsonGenerator out, LineString ring, boolean wantsCounterClockwise) throws IOException {
        CoordinateSequence points = ring.getCoordinateSequence();
        positions(out, points, Orientation.isCCW(points) != wantsCounterClockwise);
    }

    private static void positions(JsonGenerator out, CoordinateSequence points, boolean isReversed) throws IOException {
        out.writeStartArray();
        int n = points.size();
        for (int i = 0; i < n; i++) {
            int k = isReversed ? n - 1 - i : i;
            position(out, points.getX(k), points.getY(k));
        }
        out.writeEndArray();
    }

    private static void position(JsonGenerator out, double x, double y) throws IOException {
        out.writeStartArray();
        out.writeNumber(rounded(x));
        out.writeNumber(rounded(y));
        out.writeEndArray();
    }

    private static BigDecimal rounded(double degrees) {
        BigDecimal value = BigDecimal.valueOf(degrees)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return value.scale() < 0 ? value.setScale(0) : value;
    }

    /** What runs past the 180th meridian is cut there and its far part moved to the other side. */
    private static Geometry cut(Geometry geometry) {
        Envelope box = geometry.getEnvelopeInternal();
        if (box.isNull() || box.getMinX() >= -180 && box.getMaxX() <= 180) return geometry;
        List<Geometry> parts = new ArrayList<>();
        for (int turn = -1; turn <= 1; turn++) {
            double west = -180 + 360.0 * turn;
            Geometry window = GEOMETRY.toGeometry(new Envelope(west, west + 360, -90, 90));
            // a copy: what the library cuts out shares corners with what is still to be cut
            Geometry part = geometry.intersection(window).copy();
            if (part.isEmpty()) continue;
            double shift = -360.0 * turn;
            part.apply((Coordinate c) -> c.setX(c.getX() + shift));
            part.geometryChanged();
            for (int i = 0; i < part.getNumGeometries(); i++)
                if (part.getGeometryN(i).getDimension() == geometry.getDimension()) parts.add(part.getGeometryN(i));
        }
        return GEOMETRY.buildGeometry(parts);
    }
}
