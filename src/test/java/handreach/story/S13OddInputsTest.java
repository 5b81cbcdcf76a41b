package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Inputs that a tired hand or a reset clock makes, through the real command line: a clear line or a sensible answer. */
class S13OddInputsTest {
    private static final String SWEEP = "elevation-samples/invented-bench/quarter-wave-whip.s1p";
    private static final Path FOREST = Path.of("elevation-samples/forest-hills").toAbsolutePath();

    @TempDir
    Path folder;

    private Path written(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static String forest() throws IOException {
        return Files.readString(FOREST.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = \"" + slashed(FOREST.resolve("tiles")) + "\"")
                .replace("../invented-bench", slashed(FOREST.resolveSibling("invented-bench")))
                .replace("walk-track.gpx", slashed(FOREST.resolve("walk-track.gpx")))
                .replace("walk-reports.csv", slashed(FOREST.resolve("walk-reports.csv")));
    }

    private static String slashed(Path path) {
        return path.toString().replace('\\', '/');
    }

    /** Two channels or one with a decimal comma: the sweep was answered at 155.000 MHz. */
    @Test
    void aDecimalCommaInAChannelIsNotTakenForTwoChannels() {
        CommandRun comma = CommandRun.of("match", SWEEP, "--channel-mhz", "155,16");
        assertEquals(2, comma.code());
        assertEquals(
                "--channel-mhz: is 155,16, which may mean 155.16 or the channels 155 and 16. Write 155.16, or 155.0,16.0.",
                comma.err().strip());
        CommandRun both = CommandRun.of("match", SWEEP, "--channel-mhz", "155.16, 154", "--channel-mhz", "156");
        assertEquals(0, both.code(), both.err());
        for (String mhz : new String[] {"155.16 MHz", "154 MHz", "156 MHz"})
            assertTrue(both.out().contains(mhz), both.out());
        CommandRun none = CommandRun.of("match", SWEEP, "--channel-mhz", "155.16,");
        assertEquals(2, none.code());
        assertTrue(none.err().startsWith("--channel-mhz: is 155.16,, numbers of MHz"), none.err());
    }

    /** A clock that lost its day: such times count as missing, as unreadable ones do. */
    @Test
    void timesOfYearsThatNoClockMeansAreLeftOut() throws IOException {
        String track = Files.readString(FOREST.resolve("walk-track.gpx"))
                .replaceFirst("2026-05-04T08:30:00Z", "-999999999-01-01T00:00:00Z")
                .replaceFirst("2026-05-04T08:30:30Z", "+999999999-12-31T23:59:59Z")
                .replaceFirst("2026-05-04T08:31:00Z", "1970-01-01T00:00:00Z");
        Path gpx = written("odd.gpx", track);
        Path plan = written("plan.toml", forest().replace(slashed(FOREST.resolve("walk-track.gpx")), "odd.gpx"));
        CommandRun run = CommandRun.of("walk", plan.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.err().contains(gpx.getFileName() + ": 3 times could not be read, or lie outside"), run.err());

        String reports = Files.readString(FOREST.resolve("walk-reports.csv"))
                .replaceFirst("2026-05-04T08:39:13Z", "+999999999-12-31T23:59:59Z");
        written("odd.csv", reports);
        written("plan.toml", forest().replace(slashed(FOREST.resolve("walk-reports.csv")), "odd.csv"));
        CommandRun log = CommandRun.of("walk", plan.toString());
        assertEquals(2, log.code());
        assertTrue(log.err().startsWith("odd.csv line 3: time is \"+999999999-12-31T23:59:59Z\""), log.err());
    }

    /** Levels in microvolts in a column of dBm, say: no antenna lies that far from another. */
    @Test
    void aBenchMeanFarBeyondBeliefIsAFaultOfTheFile() throws IOException {
        String bench = Files.readString(FOREST.resolveSibling("invented-bench").resolve("bench.csv"))
                .replaceAll("(?m)^(quarter-wave whip,in hand,received_level),-\\d+\\.?\\d*", "$1,40");
        written("bench.csv", bench);
        String plan = forest().replace(slashed(FOREST.resolveSibling("invented-bench")) + "/bench.csv", "bench.csv");
        CommandRun run = CommandRun.of("reach", written("plan.toml", plan).toString());
        assertEquals(2, run.code(), run.err());
        assertTrue(run.err().startsWith("bench.csv: \"quarter-wave whip\" in mounting \"in hand\" lies "), run.err());
        assertTrue(run.err().contains("allowed is -60 to 60 dB"), run.err());
    }

    @Test
    void aCardNearAPoleIsRefusedInWords() throws IOException {
        Files.createDirectory(folder.resolve("tiles"));
        Files.write(folder.resolve("tiles/N88W085.hgt"), new byte[2 * 1201 * 1201]);
        String plan = forest().replaceFirst("tiles = \".*\"", "tiles = \"tiles\"")
                .replace("36.2700, -84.2100", "88.9990, -84.2100")
                .replace("36.3000, -84.1950", "88.9988, -84.1950")
                .replace("36.2520, -84.2480", "88.9980, -84.2480")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 90");
        CommandRun run = CommandRun.of(
                "card",
                written("plan.toml", plan).toString(),
                "--out",
                folder.resolve("card.pdf").toString());
        assertEquals(2, run.code(), run.err());
        assertTrue(run.err().contains("nearer to a pole, no map is drawn"), run.err());
        assertFalse(Files.exists(folder.resolve("card.pdf")));
    }

    /** On a slope in the high mountains: "0.1 to 0.2 mi, behind the rise of 6317 ft at 0.0 mi" told nothing. */
    @Test
    void shortLengthsOnACardAreInFeetAndNoRiseStandsAtZero() throws IOException {
        Path sample = Path.of("elevation-samples/high-mountains").toAbsolutePath();
        String plan = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = \"" + slashed(sample.resolve("tiles")) + "\"")
                .replace("../invented-bench", slashed(sample.resolveSibling("invented-bench")))
                .replace("[reach]", "[reach]\nmodel = \"handheld\"");
        plan = plan.contains("units =")
                ? plan.replaceFirst("units = \".*?\"", "units = \"imperial\"")
                : "units = \"imperial\"\n" + plan;
        Path card = folder.resolve("card.pdf");
        CommandRun run = CommandRun.of("card", written("plan.toml", plan).toString(), "--out", card.toString());
        assertEquals(0, run.code(), run.err());
        try (PDDocument document = Loader.loadPDF(card.toFile())) {
            String words = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            assertTrue(words.contains("nothing sure beyond") || words.contains("first gap begins"), words);
            assertFalse(words.matches(".*\\b0\\.[0-4] mi.*"), words);
        }
    }

    /** Nobody carries the five-eighths, which opens most ground; the card left it off with no reason, and called the base the centre. */
    @Test
    void theCardKeepsTheControlAndWhatOpensMostGround() throws IOException {
        String plan = forest().replaceAll("(?m)^loadout = \"(?!factory at face).*\"", "loadout = \"factory at hip\"");
        Path card = folder.resolve("card.pdf");
        CommandRun run = CommandRun.of("card", written("plan.toml", plan).toString(), "--out", card.toString());
        assertEquals(0, run.code(), run.err());
        try (PDDocument document = Loader.loadPDF(card.toFile())) {
            String words = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            String told = "Only in the report, as nobody carries them: quarter-wave at chest, ";
            assertTrue(words.contains(told), words);
            String others = words.substring(words.indexOf(told), words.indexOf('.', words.indexOf(told)));
            assertFalse(others.contains("factory at face"), others);
            JsonNode reach = new ObjectMapper()
                    .readTree(CommandRun.of("reach", folder.resolve("plan.toml").toString(), "--json")
                            .out());
            String most = "";
            double share = -1;
            for (JsonNode each : reach.get("loadouts")) {
                if (each.get("area_share").asDouble() <= share) continue;
                share = each.get("area_share").asDouble();
                most = each.get("loadout").asText();
            }
            assertFalse(most.startsWith("factory"), most);
            assertFalse(others.contains(most), others + " / " + most);
        }
    }

    /** A position with its own loadout stands in the middle with it; the answer says so, and how to ask for the same at both ends. */
    @Test
    void reachSaysWhatStandsAtTheOtherEnd() throws IOException {
        Path plan = written("plan.toml", forest());
        String note =
                "Crew to base: at spike camp stands quarter-wave with wire at face, as the plan has it, whoever calls."
                        + " With alike = true under [reach] both ends carry the same.";
        assertTrue(unwrapped(CommandRun.of("reach", plan.toString())).contains(note));
        CommandRun json = CommandRun.of("reach", plan.toString(), "--json");
        JsonNode node = new ObjectMapper().readTree(json.out());
        assertEquals(note, node.get("other_end").asText());
        written(
                "plan.toml",
                forest().replace("\nfrom = \"spike camp\"", "\nfrom = \"spike camp\"\nwith = \"half-wave at face\""));
        assertTrue(unwrapped(CommandRun.of("reach", plan.toString()))
                .contains("At spike camp stands half-wave at face, whoever calls."));
        written("plan.toml", forest().replace("\nfrom = \"spike camp\"", "\nfrom = \"spike camp\"\nalike = true"));
        assertTrue(
                unwrapped(CommandRun.of("reach", plan.toString()))
                        .contains(
                                "At spike camp stands the same loadout as is carried: each is held against itself at both ends."));
        written(
                "plan.toml",
                forest().replace(
                                "\nfrom = \"spike camp\"",
                                "\nfrom = \"spike camp\"\nalike = true\nwith = \"half-wave at face\""));
        CommandRun both = CommandRun.of("reach", plan.toString());
        assertEquals(2, both.code());
        assertTrue(both.err().contains("alike says that both ends carry the same"), both.err());
    }

    /** The guide's plan: no [reach] at all, and the base stands at the centre of the area. */
    @Test
    void theBaseAtTheCentreStandsThereWithItsOwnWithoutBeingNamed() throws IOException {
        Path plan = written("plan.toml", forest().replace("\nfrom = \"spike camp\"", ""));
        assertTrue(unwrapped(CommandRun.of("reach", plan.toString(), "--radius-km", "1"))
                .contains("Crew to base: at spike camp stands quarter-wave with wire at face"));
    }

    private static String unwrapped(CommandRun run) {
        return run.out().replaceAll("\\s+", " ");
    }
}
