package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import javax.xml.validation.Validator;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/**
 * A plan whose every name is a trap for HTML, XML, JSON, CSV, spreadsheets and file systems goes through every command that writes
 * files. No word becomes markup, every file is what its standard says, and nothing lands outside the folder. The schemas of GPX
 * 1.1 and KML 2.2 are written anew for the parts in use; rasters and outlines are read by GDAL where it is installed.
 */
class S09HostileWordsTest {
    /** As a TOML string: markup, quotes of both kinds, an entity, the end of CDATA, a formula, a path, controls, a right-to-left turn. */
    private static final String TRAP =
            "=<script>alert(1)</script>\\\"&'&lt; ]]> ../../x\\u0007\\u202E%s{}${x}\\u001B[2J\\u009B\\u2066\\u200F\\u061C\\u2028\\uFEFF ";
    /** What a title may try beside: to look like a line of the program's own. */
    private static final String FORGED = "Camp\\nWritten: /etc/passwd\\r\\nNote: forged ";

    /** Controls without line feed, marks of direction, separators of lines, the byte-order mark. */
    private static final Pattern STEERS = Pattern.compile(
            "[\\x00-\\x08\\x0B-\\x1F\\x7F-\\x9F\\u061C\\u200E\\u200F\\u2028-\\u202E\\u2066-\\u2069\\uFEFF\\p{Cs}]");

    private static final Pattern NAME = Pattern.compile("(?m)^(name|title|note) = \"([^\"]*)\"");

    @TempDir(cleanup = CleanupMode.ALWAYS)
    static Path folder;

    private static Path out;

    @BeforeAll
    static void everythingIsWritten() throws IOException {
        Path plan = hostilePlan();
        out = folder.resolve("a/b/out");
        run("reach", plan.toString(), "--cell-m", "100", "--out", out.toString());
        run(
                "report",
                plan.toString(),
                "--relay",
                "--out",
                out.resolve("full.html").toString());
        run("reach", plan.toString(), "--json");
        run(
                "bench",
                folder.resolve("bench.csv").toString(),
                "--control",
                cell().replace("\"\"", "\"") + "factory helical");
        run("card", plan.toString(), "--out", out.resolve("card.pdf").toString());
        run("relay", plan.toString(), "--out", out.resolve("relay").toString());
        run("walk", plan.toString(), "--out", out.resolve("walk").toString());
        run(
                "walk",
                plan.toString(),
                "--next",
                "--reports",
                "2",
                "--out",
                out.resolve("next").toString());
        run(
                "path",
                "--plan",
                plan.toString(),
                "--from",
                "36.27,-84.21",
                "--to",
                "36.28,-84.2",
                "--figure",
                out.resolve("profile.svg").toString());
    }

    private static void run(String... words) {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        String what = String.join(" ", words);
        assertSteersNothing(what + ", standard output", run.out());
        assertSteersNothing(what + ", standard error", run.err());
        assertForgesNoLine(what, run.out());
        assertForgesNoLine(what, run.err());
    }

    private static void assertSteersNothing(String where, String said) {
        Matcher found = STEERS.matcher(said);
        if (found.find())
            throw new AssertionError(where + " has U+" + Integer.toHexString(said.codePointAt(found.start())) + " in "
                    + said.substring(Math.max(0, found.start() - 60), found.start()));
    }

    private static void assertForgesNoLine(String where, String said) {
        assertFalse(
                said.lines().anyMatch(line -> line.startsWith("Written: /etc") || line.startsWith("Note: forged")),
                where + " has a forged line");
    }

    /** The sample of the forest hills with a trap in front of every name, and the names in its log likewise. */
    private static Path hostilePlan() throws IOException {
        Path sample = Path.of("elevation-samples/forest-hills").toAbsolutePath();
        String text = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace("../invented-bench/bench.csv", "bench.csv")
                .replace("Forest hills, two crews under one canopy", "Hills")
                .replace("radius_km = 5", "radius_km = 2")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 20");
        List<String> names = new ArrayList<>();
        Matcher matcher = NAME.matcher(text);
        while (matcher.find()) names.add(matcher.group(2));
        String bench = Files.readString(sample.resolveSibling("invented-bench/bench.csv"));
        String reports = Files.readString(sample.resolve("walk-reports.csv"));
        names.sort((a, b) -> b.length() - a.length());
        for (String name : names) text = text.replace("\"" + name + "\"", "\"" + TRAP + name + "\"");
        text = text.replaceFirst("title = \"", Matcher.quoteReplacement("title = \"" + FORGED));
        text = text.replace("\"quarter-wave whip with wire\"", "\"" + TRAP + "quarter-wave whip with wire\"");
        for (String name : List.of("factory at face", "factory at hip", "quarter-wave with wire at face"))
            reports = reports.replace("," + name + ",", ",\"" + cell() + name + "\",");
        for (String antenna : List.of(
                "factory helical",
                "quarter-wave whip with wire",
                "quarter-wave whip",
                "end-fed half-wave with wire",
                "end-fed half-wave",
                "five-eighths whip with wire",
                "five-eighths whip"))
            bench = bench.replaceAll(
                    "(?m)^" + antenna + ",", Matcher.quoteReplacement("\"" + cell() + antenna + "\","));
        Path plan = folder.resolve("plan.toml");
        Files.writeString(plan, text);
        Files.writeString(folder.resolve("bench.csv"), bench);
        Files.writeString(folder.resolve("walk-reports.csv"), reports);
        Files.copy(sample.resolve("walk-track.gpx"), folder.resolve("walk-track.gpx"));
        return plan;
    }

    /** The trap as a quoted cell of a CSV file holds it. */
    private static String cell() {
        return Pattern.compile("\\\\u([0-9A-F]{4})")
                .matcher(TRAP.replace("\\\"", "\"\""))
                .replaceAll(
                        found -> Matcher.quoteReplacement(Character.toString(Integer.parseInt(found.group(1), 16))));
    }

    private static List<Path> written(String... endings) throws IOException {
        try (Stream<Path> files = Files.walk(out)) {
            List<Path> found = files.filter(Files::isRegularFile)
                    .filter(file -> List.of(endings).stream()
                            .anyMatch(end -> file.toString().endsWith(end)))
                    .toList();
            assertFalse(found.isEmpty(), String.join(" ", endings));
            return found;
        }
    }

    @Test
    void noFileOfTextHoldsWhatSteersATerminal() throws IOException {
        for (Path file : written(".txt", ".csv", ".json", ".geojson", ".html", ".gpx", ".svg", ".toml"))
            assertSteersNothing(file.toString(), Files.readString(file).replace("\r\n", "\n"));
        for (Path file : written(".txt", ".csv")) assertForgesNoLine(file.toString(), Files.readString(file));
        for (Path file : written(".kmz"))
            try (ZipFile zip = new ZipFile(file.toFile());
                    InputStream in = zip.getInputStream(zip.getEntry("doc.kml"))) {
                assertSteersNothing(file.toString(), new String(in.readAllBytes(), StandardCharsets.UTF_8));
            }
    }

    @Test
    void noWordBecomesMarkup() throws IOException {
        for (Path file : written(".html", ".svg", ".gpx", ".geojson", ".json")) {
            String text = Files.readString(file);
            if (file.toString().endsWith("json")) continue;
            assertFalse(text.toLowerCase(java.util.Locale.ROOT).contains("<script"), file.toString());
            assertFalse(text.contains("\u0007"), file.toString());
            if (file.toString().endsWith(".html")) {
                assertTrue(text.contains("&lt;script&gt;alert(1)"), file.toString());
                assertFalse(
                        Pattern.compile("<[a-z]+[^>]*\\son[a-z]+=")
                                .matcher(text)
                                .find(),
                        file.toString());
            }
        }
    }

    @Test
    void nothingLandsOutsideTheFolderAndNoNameIsATrap() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            files.filter(Files::isRegularFile).forEach(file -> {
                String name = String.valueOf(file.getFileName());
                assertTrue(name.matches("[a-z0-9.-]+"), name);
                assertTrue(file.startsWith(out) || file.getParent().equals(folder), file.toString());
            });
        }
    }

    @Test
    void gpxKeepsItsSchema() throws Exception {
        for (Path file : written(".gpx")) valid("gpx-1.1-used.xsd", Files.readString(file));
        String first = Files.readString(written(".gpx").get(0));
        assertThatItBites("gpx-1.1-used.xsd", first.replaceFirst("lat=\"", "lat=\"9"));
        assertThatItBites("gpx-1.1-used.xsd", first.replaceFirst("<(/?)name>", "<$1nom>"));
    }

    @Test
    void kmlKeepsItsSchema() throws Exception {
        for (Path file : written(".kmz"))
            try (ZipFile zip = new ZipFile(file.toFile());
                    InputStream in = zip.getInputStream(zip.getEntry("doc.kml"))) {
                String kml = new String(in.readAllBytes(), StandardCharsets.UTF_8);
                assertTrue(kml.contains("&lt;script&gt;") && !kml.contains("<script"), kml.substring(0, 300));
                valid("kml-2.2-used.xsd", kml);
                assertThatItBites("kml-2.2-used.xsd", kml.replaceFirst("<north>", "<north>9"));
                assertThatItBites("kml-2.2-used.xsd", kml.replaceFirst("<color>ff", "<color>f"));
            }
    }

    private static void valid(String schema, String xml) throws Exception {
        SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
        try (InputStream in = S09HostileWordsTest.class.getResourceAsStream(schema)) {
            Validator validator = factory.newSchema(new StreamSource(in)).newValidator();
            validator.validate(new StreamSource(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8))));
        }
    }

    private static void assertThatItBites(String schema, String xml) {
        org.junit.jupiter.api.Assertions.assertThrows(org.xml.sax.SAXException.class, () -> valid(schema, xml));
    }

    /** RFC 4180: CR LF at every end of a row, the same number of cells in each, quotes around what needs them. */
    @Test
    void csvKeepsRfc4180() throws IOException {
        for (Path file : written(".csv")) {
            String text = Files.readString(file);
            try (CSVParser parser = CSVFormat.RFC4180.parse(new StringReader(text))) {
                List<CSVRecord> rows = parser.getRecords();
                assertTrue(rows.size() > 10, file.toString());
                for (CSVRecord row : rows)
                    assertEquals(rows.get(0).size(), row.size(), file + " row " + row.getRecordNumber());
                assertTrue(
                        rows.stream().anyMatch(row -> row.toList().stream().anyMatch(c -> c.startsWith("'=<script>"))),
                        "a name that looks like a formula is disarmed and otherwise whole");
            }
            assertEquals(
                    text.length() - text.replace("\n", "").length(),
                    text.split("\r\n", -1).length - 1,
                    file.toString());
        }
    }

    @Test
    void jsonAndGeoJsonHoldTheNamesAsTheyAre() throws IOException {
        ObjectMapper strict = new ObjectMapper();
        boolean found = false;
        for (Path file : written(".json", ".geojson")) {
            JsonNode tree = strict.readTree(Files.readString(file));
            found |= tree.toString()
                    .contains("=<script>alert(1)</script>\\\"&'&lt; ]]> ../../x\\u0007\u202E%s{}${x}\\u001B[2J\u009B");
        }
        assertTrue(found);
    }

    @Test
    void thePagesOpen() throws IOException {
        for (Path file : written(".pdf"))
            try (PDDocument document = Loader.loadPDF(file.toFile())) {
                assertTrue(document.getNumberOfPages() >= 1);
            }
    }

    @Test
    void theCalibrationReadsBack() throws IOException {
        String text = Files.readString(out.resolve("walk/calibration.toml"));
        Files.writeString(folder.resolve("calibration.toml"), text);
        Path plan = folder.resolve("calibrated.toml");
        Files.writeString(
                plan, Files.readString(folder.resolve("plan.toml")) + "\n[calibration]\nfile = \"calibration.toml\"\n");
        try {
            run("reach", plan.toString());
        } finally {
            Files.delete(plan);
        }
    }

    /** General GIS tools read what is written, without a word of complaint. */
    @Test
    void gdalReadsRastersAndOutlines() throws Exception {
        Assumptions.assumeTrue(isThere("gdalinfo") && isThere("ogrinfo"), "GDAL is not installed");
        for (Path file : written(".tif")) {
            JsonNode told = new ObjectMapper().readTree(said("gdalinfo", "-json", "-stats", file.toString()));
            assertTrue(told.get("coordinateSystem").get("wkt").asText().contains("WGS"), file.toString());
            double noData = told.get("bands").get(0).get("noDataValue").asDouble();
            assertTrue(noData == -9999 || noData == 255 || noData == 0, file + " " + noData);
            double west = told.get("cornerCoordinates").get("upperLeft").get(0).asDouble();
            assertTrue(Math.abs(west) > 80, file + " begins at " + west);
            Files.deleteIfExists(file.resolveSibling(file.getFileName() + ".aux.xml"));
        }
        for (Path file : written(".geojson", ".gpx"))
            assertTrue(said("ogrinfo", "-al", "-so", file.toString()).contains("Layer name"));
    }

    private static boolean isThere(String tool) {
        return Stream.of(System.getenv("PATH").split(java.io.File.pathSeparator))
                .anyMatch(dir -> Files.isExecutable(Path.of(dir, tool)));
    }

    private static String said(String... words) throws Exception {
        Path complaints = folder.resolve("gdal.txt");
        Process run =
                new ProcessBuilder(words).redirectError(complaints.toFile()).start();
        String text = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, run.waitFor(), Files.readString(complaints));
        assertEquals(
                "",
                Files.readString(complaints).replaceAll("(?m)^.*proj.*$", "").strip(),
                String.join(" ", words));
        Files.delete(complaints);
        return text;
    }

    @AfterAll
    static void nothingIsKept() {
        out = null;
    }
}
