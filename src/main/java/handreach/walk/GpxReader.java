package handreach.walk;

import handreach.geodesy.Position;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.Memory;
import handreach.input.NumberText;
import handreach.input.SourceText;
import handreach.reach.Progress;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads GPX as a stream of elements. A document type is refused, so there are no entities to swell or to fetch; nesting and
 * number of points are bounded; elements that GPX leaves to others are passed over.
 */
final class GpxReader {
    private static final int DEEPEST = 64;
    private static final int MOST_POINTS = 2_000_000;
    /** Memory that a point takes until it is joined, bytes; measured. */
    private static final double BYTES_PER_POINT = 300;

    private static final int MOST_TEXT = 4096;
    private static final int HEAD_BYTES = 256;
    private static final Pattern ENCODING =
            Pattern.compile("^\\s*<\\?xml[^>]*encoding\\s*=\\s*[\"']([^\"']{1,40})[\"']");

    private final String name;
    private final Progress progress;
    private final Faults faults = new Faults();
    private final List<TrackPoint> points = new ArrayList<>();
    private final List<TrackPoint> waypoints = new ArrayList<>();
    private final long mostPoints = Memory.most(MOST_POINTS, BYTES_PER_POINT);
    private int segment = -1;
    private int unreadTimes;
    private int localTimes;

    GpxReader(String name, Progress progress) {
        this.name = name;
        this.progress = progress;
    }

    GpxTrack read(InputStream in) {
        try {
            XMLStreamReader xml = factory().createXMLStreamReader(characters(in));
            readAll(xml);
        } catch (XMLStreamException e) {
            int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNumber());
            faults.add(
                    name,
                    line,
                    "is not whole GPX after " + points.size()
                            + " points of track: the XML breaks here. Export the track again, or copy it anew from the receiver.");
        } catch (IOException e) {
            faults.add(name, 0, "cannot be read (" + SourceText.reason(e) + "). Check the rights on it.");
        }
        faults.throwIfAny();
        return new GpxTrack(name, points, waypoints, notes());
    }

    /**
     * The characters of the file, in the character set that its first line declares. Left to the XML library, a byte that does not
     * belong would be told on standard error.
     */
    private Reader characters(InputStream in) throws IOException {
        BufferedInputStream bytes = new BufferedInputStream(in, 1 << 16);
        bytes.mark(HEAD_BYTES);
        byte[] head = bytes.readNBytes(HEAD_BYTES);
        bytes.reset();
        boolean hasMark = head.length > 2 && head[0] == (byte) 0xEF && head[1] == (byte) 0xBB && head[2] == (byte) 0xBF;
        if (hasMark) bytes.skipNBytes(3);
        return new InputStreamReader(bytes, charset(head).newDecoder().onMalformedInput(CodingErrorAction.REPORT));
    }

    private Charset charset(byte[] head) {
        if (head.length > 1 && (head[0] == (byte) 0xFE || head[0] == (byte) 0xFF)) return StandardCharsets.UTF_16;
        Matcher declared = ENCODING.matcher(new String(head, StandardCharsets.ISO_8859_1));
        if (!declared.find()) return StandardCharsets.UTF_8;
        try {
            return Charset.forName(declared.group(1));
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            throw new InputFault(
                    name,
                    1,
                    "says it is written in \"" + shown(declared.group(1))
                            + "\", which is no known character set. Export the track again as UTF-8.");
        }
    }

    private static XMLInputFactory factory() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setXMLResolver((publicId, systemId, base, namespace) -> InputStream.nullInputStream());
        return factory;
    }

    private void readAll(XMLStreamReader xml) throws XMLStreamException {
        int depth = 0;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.DTD)
                throw new InputFault(
                        name,
                        line(xml),
                        "has a document type declaration (DOCTYPE), which GPX never has and which can hide traps."
                                + " Export the track again, or remove the declaration.");
            if (event == XMLStreamConstants.END_ELEMENT) depth--;
            if (event != XMLStreamConstants.START_ELEMENT) continue;
            depth++;
            if (depth == 1 && !xml.getLocalName().equals("gpx"))
                throw new InputFault(
                        name,
                        line(xml),
                        "starts with <" + shown(xml.getLocalName())
                                + ">, <gpx> is expected. Export the track as GPX 1.1.");
            refuseDepth(depth, xml);
            switch (xml.getLocalName()) {
                case "trkseg", "rte" -> segment++;
                case "trkpt", "rtept" -> {
                    point(xml, points);
                    depth--;
                }
                case "wpt" -> {
                    point(xml, waypoints);
                    depth--;
                }
                case "extensions" -> {
                    passOver(xml);
                    depth--;
                }
                default -> {}
            }
        }
    }

    private void refuseDepth(int depth, XMLStreamReader xml) {
        if (depth > DEEPEST)
            throw new InputFault(
                    name,
                    line(xml),
                    "nests elements more than " + DEEPEST + " deep, which no track does. Export it anew.");
    }

    private void passOver(XMLStreamReader xml) throws XMLStreamException {
        for (int depth = 1; depth > 0; ) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) refuseDepth(++depth, xml);
            if (event == XMLStreamConstants.END_ELEMENT) depth--;
        }
    }

    /** Reads a point to its end; children may stand in any order. */
    private void point(XMLStreamReader xml, List<TrackPoint> into) throws XMLStreamException {
        int line = line(xml);
        Optional<Position> at = position(xml, line);
        String time = "";
        String height = "";
        String label = "";
        StringBuilder words = new StringBuilder();
        for (int depth = 1; depth > 0; ) {
            int event = xml.next();
            if (event == XMLStreamConstants.END_ELEMENT) depth--;
            if (event != XMLStreamConstants.START_ELEMENT) continue;
            String child = depth == 1 ? xml.getLocalName() : "";
            refuseDepth(depth + 1, xml);
            switch (child) {
                case "time" -> time = text(xml);
                case "ele" -> height = text(xml);
                case "name" -> {
                    label = text(xml);
                    words.append(label).append(' ');
                }
                case "cmt", "desc" -> words.append(text(xml)).append(' ');
                default -> depth++;
            }
        }
        progress.goOn();
        if (at.isEmpty()) return;
        if (points.size() + waypoints.size() >= mostPoints)
            throw new InputFault(
                    name,
                    line,
                    "has more than " + mostPoints + " points. Export one day at a time."
                            + Memory.advice(mostPoints, MOST_POINTS, BYTES_PER_POINT));
        OptionalDouble heightM = NumberText.parse(height);
        into.add(new TrackPoint(
                at.get(),
                heightM,
                time(time),
                Math.max(0, segment),
                label,
                words.toString().strip()));
    }

    /** Text of a leaf; a receiver's odd child elements are passed over. */
    private static String text(XMLStreamReader xml) throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        for (int depth = 1; depth > 0; ) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) depth++;
            if (event == XMLStreamConstants.END_ELEMENT) depth--;
            boolean isText = event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA;
            if (isText && depth == 1 && text.length() < MOST_TEXT) text.append(xml.getText());
        }
        return text.toString().strip();
    }

    private Optional<Position> position(XMLStreamReader xml, int line) {
        String latitude = xml.getAttributeValue(null, "lat");
        String longitude = xml.getAttributeValue(null, "lon");
        OptionalDouble lat = latitude == null ? OptionalDouble.empty() : NumberText.parse(latitude);
        OptionalDouble lon = longitude == null ? OptionalDouble.empty() : NumberText.parse(longitude);
        if (lat.isPresent()
                && lon.isPresent()
                && Position.LATITUDE.accepts(lat.getAsDouble())
                && Position.LONGITUDE.accepts(lon.getAsDouble()))
            return Optional.of(new Position(lat.getAsDouble(), lon.getAsDouble()));
        boolean exchanged = lat.isPresent()
                && lon.isPresent()
                && Math.abs(lat.getAsDouble()) <= 180
                && Math.abs(lon.getAsDouble()) <= 90;
        String found = "a point has lat " + shown(latitude) + " and lon " + shown(longitude)
                + ", allowed is -90 to 90 and -180 to 180. ";
        faults.addLike(
                name,
                line,
                found + (exchanged ? "The two look exchanged: exchange them." : "Correct or remove the point."));
        return Optional.empty();
    }

    private Optional<Instant> time(String text) {
        if (text.isEmpty()) return Optional.empty();
        try {
            return counted(ClockTime.parse(text));
        } catch (DateTimeException notFull) {
            try {
                Optional<Instant> utc = counted(ClockTime.parse(text + "Z"));
                if (utc.isPresent()) localTimes++;
                return utc;
            } catch (DateTimeException notAtAll) {
                unreadTimes++;
                return Optional.empty();
            }
        }
    }

    private Optional<Instant> counted(Optional<Instant> time) {
        if (time.isEmpty()) unreadTimes++;
        return time;
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (points.isEmpty()) notes.add(name + ": has no points of a track.");
        long untimed = points.stream().filter(p -> p.time().isEmpty()).count();
        if (untimed > 0)
            notes.add(name + ": " + untimed + " of " + points.size()
                    + " points have no time; reports cannot be joined to them by time.");
        if (unreadTimes > 0)
            notes.add(name + ": " + unreadTimes + " times could not be read, or lie outside the " + ClockTime.YEARS
                    + ", and count as missing.");
        if (localTimes > 0)
            notes.add(name + ": " + localTimes + " times name no time zone; they are taken as UTC, as GPX asks.");
        return notes;
    }

    private static int line(XMLStreamReader xml) {
        return Math.max(0, xml.getLocation().getLineNumber());
    }

    private static String shown(String text) {
        if (text == null) return "missing";
        return text.length() > 40 ? text.substring(0, 40) + "…" : text;
    }
}
