package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.budget.Ledger;
import handreach.budget.TwoWayLedger;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.relay.HopPath;
import handreach.relay.Party;
import handreach.relay.RelayRequest;
import handreach.study.AssignAnswer;
import handreach.study.AssignStudy;
import handreach.study.PathStudy;
import handreach.study.PlacesAnswer;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.geotools.api.parameter.GeneralParameterValue;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * What to carry and who must: verdicts held against figures that are reckoned again from the rasters, the file by bearing and the
 * ledgers of single paths, and the assignment against every way of handing out.
 */
class S15DecideTest {
    private static final List<String> SAMPLES =
            List.of("forest-hills", "high-mountains", "invented-valley", "urban-coast", "valley-relay");
    /** Where the third of the coast town stands, and a place half a kilometre from the base, which can be served. */
    private static final String HILL = "at = \"-8.0139, -34.8508\"";

    private static final String NEARER_HILL = "at = \"-8.0290, -34.8720\"";
    private static final double COVERAGE = 1.96;
    private static final double NO_DATA = -9999;
    /** Half a step of the decibels in a raster. */
    private static final double STEP_DB = 0.5 / 128 + 1e-6;
    /** Shares summed in another order. */
    private static final double SAME = 1e-9;
    /** Two lengths of the file by bearing, each to a metre. */
    private static final double STEP_KM = 0.001 + 1e-9;

    @TempDir
    Path folder;

    /** The pages say that what stands in a vehicle stays there; the base's car was handed a whip at the chest, and walkers a car. */
    @Test
    void whatIsInAVehicleStaysThereAndNobodyWalksWithIt() throws IOException {
        String car = "\n[[loadout]]\nname = \"base car\"\nantenna = \"factory helical\"\ncarry = \"vehicle\"\n";
        Path file = plan("urban-coast", car, "quarter-wave with wire at face\"\nbase", "base car\"\nbase");
        CommandRun assigned = CommandRun.of("assign", file.toString());
        assertEquals(0, assigned.code(), assigned.err());
        CommandRun next = CommandRun.of("walk", file.toString(), "--next");
        assertEquals(0, next.code(), next.err());
        String stops = next.out()
                .substring(next.out().indexOf("Where to call"), next.out().indexOf("What is at stake"));
        assertFalse(stops.contains("base car"), stops);
        Scene scene = Scene.open(PlanFile.open(file));
        for (AssignAnswer.Person person :
                AssignStudy.run(scene, Progress.SILENT).people())
            assertEquals(
                    person.planned().name().equals("base car"),
                    person.options().stream().anyMatch(one -> one.name().equals("base car")),
                    person.name());
    }

    /** A sample in large cells, with some of its words replaced and more at its end. */
    private Path plan(String name, String more, String... swaps) throws IOException {
        Path sample = Path.of("elevation-samples", name).toAbsolutePath();
        String plan = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + sample.resolve("../invented-bench/bench.csv") + "'")
                .replace("tiles = \"../", "tiles = \"" + sample.getParent() + "/")
                .replaceAll("file = \"([a-z-]+\\.gpx)\"", "file = '" + sample + "/$1'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replaceAll("cell_m = (30|60)", "cell_m = 100\nmodel = \"handheld\"");
        for (int i = 0; i < swaps.length; i += 2) {
            assertTrue(plan.contains(swaps[i]), swaps[i]);
            plan = plan.replace(swaps[i], swaps[i + 1]);
        }
        return Files.writeString(folder.resolve(name + ".toml"), plan + more);
    }

    private static JsonNode json(String... words) throws IOException {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    @TestFactory
    Stream<DynamicTest> everyVerdictOfEverySampleIsWhatRastersAndLedgersSay() {
        return SAMPLES.stream().map(name -> DynamicTest.dynamicTest(name, () -> new Again(name).agrees()));
    }

    /** One sample, reckoned again. */
    private final class Again {
        private final Scene scene;
        private final Path out;
        private final JsonNode reach;
        private final Position middle;
        private final Loadout stays;
        /** Where people are, but for the middle: positions, and the points of routes. */
        private final List<PlacesAnswer.Place> places;

        Again(String name) throws Exception {
            Path plan = plan(name, "");
            this.out = folder.resolve(name);
            this.reach = json("reach", plan.toString(), "--json", "--out", out.toString(), "--only", "rasters,numbers");
            this.scene = Scene.open(PlanFile.open(plan));
            String from = reach.at("/middle/name").asText();
            this.middle = scene.position(from).at();
            this.stays = scene.loadout(scene.position(from).loadout().orElseThrow());
            this.places = ReachStudy.run(scene, false, Progress.SILENT).places().places().stream()
                    .filter(place -> !place.name().equals(from))
                    .toList();
        }

        void agrees() throws Exception {
            Map<String, double[]> margins = new HashMap<>();
            for (JsonNode one : reach.get("loadouts"))
                margins.put(
                        one.get("loadout").asText(), margins(one.get("loadout").asText()));
            int judged = 0;
            for (JsonNode one : reach.get("loadouts")) {
                if (one.get("gains").isNull()) continue;
                Loadout loadout = scene.loadout(one.get("loadout").asText());
                ground(one.at("/gains/ground"), loadout, margins);
                places(one.at("/gains/places"), loadout);
                reach(one, loadout);
                judged++;
            }
            assertEquals(reach.get("loadouts").size() - 1, judged);
        }

        /** Margins of the raster's known cells, dB. */
        private double[] margins(String loadout) throws IOException {
            GeoTiffReader reader = new GeoTiffReader(
                    out.resolve("margin-" + loadout.replace(' ', '-') + ".tif").toFile());
            Raster raster = reader.read((GeneralParameterValue[]) null)
                    .getRenderedImage()
                    .getData();
            double[] all = raster.getSamples(0, 0, raster.getWidth(), raster.getHeight(), 0, (double[]) null);
            reader.dispose();
            return Arrays.stream(all).filter(margin -> margin != NO_DATA).toArray();
        }

        /** Margin of the weaker way at which both ways have the wanted odds, off the ledger of any path. */
        private double wantedDb(Loadout loadout) {
            TwoWayLedger any = ledger(
                    loadout,
                    scene.plan().places().positions().stream()
                            .filter(entry -> !entry.at().equals(middle))
                            .findFirst()
                            .orElseThrow()
                            .at());
            double weaker = Math.min(any.there().marginDb(), any.back().marginDb());
            return weaker - spareDb(any);
        }

        private TwoWayLedger ledger(Loadout loadout, Position at) {
            return PathStudy.between(scene, middle, stays, at, loadout, List.of(scene.model()))
                    .ledger()
                    .orElseThrow();
        }

        private static double spareDb(TwoWayLedger ledger) {
            return Stream.of(ledger.there(), ledger.back())
                    .mapToDouble(Ledger::marginAtOddsDb)
                    .min()
                    .orElseThrow();
        }

        private double shiftDb(Loadout loadout) {
            return COVERAGE
                    * scene.budget(stays, loadout).differenceDoubtDb(scene.budget(stays, scene.controlLoadout()));
        }

        private void ground(JsonNode said, Loadout loadout, Map<String, double[]> margins) {
            double[] control = margins.get(scene.controlLoadout().name());
            double[] other = margins.get(loadout.name());
            double cellKm2 = 0.1 * 0.1;
            double before = wantedDb(scene.controlLoadout());
            double now = wantedDb(loadout);
            double gain = count(other, now, 0) - count(control, before, 0);
            double low = count(other, now + shiftDb(loadout), 0) - count(control, before, 0);
            double high = count(other, now - shiftDb(loadout), 0) - count(control, before, 0);
            double edge = near(other, now) + near(control, before);
            String who = loadout.name() + ": " + said;
            assertEquals(cellKm2 * gain, said.get("gain_km2").asDouble(), cellKm2 * edge + 1e-9, who);
            double lowEdge = near(other, now + shiftDb(loadout)) + near(control, before);
            double highEdge = near(other, now - shiftDb(loadout)) + near(control, before);
            JsonNode interval = said.get("gain_interval_95_km2");
            assertEquals(cellKm2 * low, interval.get(0).asDouble(), cellKm2 * lowEdge + 1e-9, who);
            assertEquals(cellKm2 * high, interval.get(1).asDouble(), cellKm2 * highEdge + 1e-9, who);
            assertEquals(
                    count(other, now, 0) / count(control, before, 0),
                    said.get("factor").asDouble(),
                    2 * edge / count(control, before, 0) + 1e-9,
                    who);
            assertEquals(
                    judgement(said.get("gain_km2").asDouble(), interval, 0.1 * cellKm2 * count(control, before, 0)),
                    said.get("judgement").asText(),
                    who);
            double sides = 0;
            for (JsonNode side : said.get("sides"))
                sides += side.get("area_km2").asDouble();
            assertTrue(sides + cellKm2 * edge + 1e-9 >= cellKm2 * Math.abs(gain), who);
        }

        private static double count(double[] margins, double thresholdDb, double moreDb) {
            return Arrays.stream(margins)
                    .filter(margin -> margin >= thresholdDb + moreDb)
                    .count();
        }

        /** Cells whose rounded margin does not tell on which side they lie. */
        private static double near(double[] margins, double thresholdDb) {
            return Arrays.stream(margins)
                    .filter(margin -> Math.abs(margin - thresholdDb) <= STEP_DB)
                    .count();
        }

        private void places(JsonNode said, Loadout loadout) {
            double before = 0;
            double now = 0;
            double low = 0;
            double high = 0;
            int all = 0;
            List<String> changed = new ArrayList<>();
            for (PlacesAnswer.Place place : places) {
                double control = reached(place, scene.controlLoadout(), 0);
                double other = reached(place, loadout, 0);
                all++;
                before += control;
                now += other;
                low += reached(place, loadout, shiftDb(loadout));
                high += reached(place, loadout, -shiftDb(loadout));
                if (control != other) changed.add(place.name());
            }
            String who = loadout.name() + ": " + said;
            assertEquals(before, said.get("control").asDouble(), SAME, who);
            assertEquals(now, said.get("reached").asDouble(), SAME, who);
            assertEquals(all, said.get("of").asDouble(), SAME, who);
            JsonNode interval = said.get("gain_interval_95");
            assertEquals(low - before, interval.get(0).asDouble(), SAME, who);
            assertEquals(high - before, interval.get(1).asDouble(), SAME, who);
            List<String> named = new ArrayList<>();
            said.get("changes").forEach(change -> named.add(change.get("place").asText()));
            assertEquals(changed, named, who);
            assertEquals(
                    judgement(now - before, interval, 1), said.get("judgement").asText(), who);
        }

        /** Share of a place's points, one for a position, that have so much to spare with a loadout; who stands in the middle has. */
        private double reached(PlacesAnswer.Place place, Loadout loadout, double spareDb) {
            return place.points().stream()
                            .filter(point ->
                                    point.at().equals(middle) || spareDb(ledger(loadout, point.at())) >= spareDb)
                            .count()
                    / (double) place.points().size();
        }

        private void reach(JsonNode one, Loadout loadout) throws IOException {
            double control = medianKm(scene.controlLoadout().name());
            double other = medianKm(loadout.name());
            JsonNode said = one.at("/gains/reach");
            String who = loadout.name() + ": " + said;
            assertEquals(other - control, said.get("gain_km").asDouble(), STEP_KM, who);
            assertEquals(
                    judgement(said.get("gain_km").asDouble(), said.get("gain_interval_95_km"), 0.1),
                    said.get("judgement").asText(),
                    who);
        }

        private double medianKm(String loadout) throws IOException {
            double[] sorted = Files.readAllLines(out.resolve("reach-by-bearing.csv")).stream()
                    .map(line -> line.split(","))
                    .filter(row -> row[0].equals(loadout))
                    .mapToDouble(row -> Double.parseDouble(row[2]))
                    .sorted()
                    .toArray();
            assertTrue(sorted.length > 0, loadout);
            return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
        }

        /** What docs/definitions.md says. */
        private static String judgement(double gain, JsonNode interval, double felt) {
            double low = interval.get(0).asDouble();
            double high = interval.get(1).asDouble();
            if (gain == 0 && low == 0 && high == 0) return "same";
            if (high < 0) return "worse";
            if (low <= 0) return "not-told-apart";
            return gain < felt ? "too-little" : "more";
        }
    }

    /** Forest hills, both ends alike: hills end every bearing early, while the ground that can be talked over doubles. */
    @Test
    void whatDoublesTheGroundIsNeverTooLittleToBeFelt() throws IOException {
        Path plan = plan(
                "forest-hills",
                "\n[decide]\nfelt_reach_m = 200\n",
                "\nfrom = \"spike camp\"",
                "\nfrom = \"spike camp\"\nalike = true");
        JsonNode wire = json("reach", plan.toString(), "--json").at("/loadouts/3");
        assertEquals("quarter-wave with wire at face", wire.get("loadout").asText());
        assertEquals("too-little", wire.at("/gains/reach/judgement").asText());
        assertEquals("more", wire.at("/gains/ground/judgement").asText());
        assertTrue(
                wire.at("/gains/ground/factor").asDouble() > 1.8,
                wire.at("/gains/ground").toString());
        assertEquals("ground", wire.at("/gains/decided_by").asText());
        String verdict = wire.get("verdict").asText();
        assertFalse(verdict.contains("too little"), verdict);
        assertTrue(
                verdict.matches("opens .* km² over factory at face .*, (chiefly|scattered over \\d+ sides).*"),
                verdict);
    }

    @Test
    void theVerdictGoesByTheMeasureThatThePlanNames() throws IOException {
        Map<String, String> first = Map.of("reach", "adds ", "ground", "opens ", "places", "opens ");
        for (Map.Entry<String, String> by : first.entrySet()) {
            Path plan = plan("forest-hills", "\n[decide]\nby = \"" + by.getKey() + "\"\n");
            JsonNode reach = json("reach", plan.toString(), "--json", "--no-area");
            assertEquals(by.getKey(), reach.at("/decide/by").asText());
            String verdict = reach.at("/loadouts/3/verdict").asText();
            assertTrue(verdict.startsWith(by.getValue()), verdict);
            assertEquals(by.getKey().equals("places"), verdict.contains("Reaches 0 of 2 places"), verdict);
        }
        Path keen = plan("forest-hills", "\n[decide]\nby = \"ground\"\nfelt_ground = 5\n");
        assertEquals(
                "too-little",
                json("reach", keen.toString(), "--json")
                        .at("/loadouts/3/gains/ground/judgement")
                        .asText());
        CommandRun wrong = CommandRun.of(
                "reach", plan("forest-hills", "\n[decide]\nby = \"hope\"\n").toString());
        assertEquals(2, wrong.code());
        assertTrue(wrong.err().contains("places, ground, reach"), wrong.err());
    }

    /** Somebody whom the longer antenna reaches and the control does not is named, and so is what it costs. */
    @Test
    void aPlaceThatIsReachedBesidesIsNamed() throws IOException {
        Path plan = plan(
                "urban-coast",
                "\n[[position]]\nname = \"harbour gate\"\nat = \"-8.0260, -34.8570\"\nloadout = \"factory at face\"\n",
                "radius_km = 3",
                "radius_km = 2");
        JsonNode wire = json("reach", plan.toString(), "--json").at("/loadouts/3");
        JsonNode places = wire.at("/gains/places");
        assertEquals("more", places.get("judgement").asText(), places.toString());
        assertEquals("harbour gate", places.at("/changes/0/place").asText());
        assertTrue(
                wire.get("verdict")
                        .asText()
                        .startsWith("reaches harbour gate besides, 3 of 3 places against 2 with factory at face:"
                                + " more people reached, worth it if 31 cm more"),
                wire.get("verdict").asText());
    }

    /** Every way of handing out the sample's loadouts, by the plain paths; all to the base, and all to all. */
    @TestFactory
    Stream<DynamicTest> theAssignmentIsTheLeastOfAllWays() {
        return Stream.of("all-to-base", "all-to-all")
                .map(talk -> DynamicTest.dynamicTest(talk, () -> leastOfAllWays(talk)));
    }

    private void leastOfAllWays(String talk) throws IOException {
        Path plan = plan(
                "urban-coast",
                "",
                "talk = \"all-to-base\"",
                "talk = \"" + talk + "\"",
                HILL,
                NEARER_HILL,
                "at = \"-8.0320, -34.8780\"",
                "at = \"-8.0280, -34.8735\"");
        JsonNode found = json("assign", plan.toString(), "--json");
        Scene scene = Scene.open(PlanFile.open(plan));
        List<Places.PositionEntry> people = scene.plan().places().positions();
        List<Loadout> all = scene.loadouts();
        RelayRequest.Setting setting = new RelayRequest.Setting(
                scene.terms(), scene.conditions(), scene.model(), scene.ground(), scene.learned());
        double wanted = scene.plan().channel().wish().odds();
        Map<String, Boolean> known = new HashMap<>();
        double least = Double.POSITIVE_INFINITY;
        for (int way = 0; way < Math.pow(all.size(), people.size()); way++) {
            List<Loadout> carried = new ArrayList<>();
            for (int p = 0, rest = way; p < people.size(); p++, rest /= all.size())
                carried.add(all.get(rest % all.size()));
            boolean isServed = true;
            for (int a = 0; a < people.size() && isServed; a++)
                for (int b = a + 1; b < people.size() && isServed; b++) {
                    if (talk.equals("all-to-base")
                            && !people.get(a).base()
                            && !people.get(b).base()) continue;
                    Party one = party(scene, people.get(a), carried.get(a));
                    Party other = party(scene, people.get(b), carried.get(b));
                    String key = a + " " + carried.get(a).name() + " " + b + " "
                            + carried.get(b).name();
                    isServed = known.computeIfAbsent(
                            key,
                            pair -> HopPath.direct(setting, one, other)
                                            .orElseThrow()
                                            .odds()
                                            .pessimistic()
                                    >= wanted);
                }
            if (isServed)
                least = Math.min(
                        least, carried.stream().mapToDouble(scene::burdenScore).sum());
        }
        assertTrue(Double.isFinite(least), "somebody can be served, or this shows nothing");
        assertEquals(least, found.at("/best/burden").asDouble(), 1e-9);
        assertEquals(List.of(), new ObjectMapper().convertValue(found.get("hopeless"), List.class));
        assertTrue(found.at("/next/burden").asDouble() >= least - 1e-9);
        assertTrue(found.at("/one_db_more/burden").asDouble() <= least + 1e-9);
        Predicate<JsonNode> hasToSpare = one -> one.get("spare_db").asDouble() >= 0;
        found.at("/best/talks").forEach(one -> assertTrue(hasToSpare.test(one), one.toString()));
    }

    private static Party party(Scene scene, Places.PositionEntry entry, Loadout carried) {
        return new Party(entry.name(), Optional.empty(), entry.at(), scene.end(carried), 1);
    }

    @Test
    void whatIsKeptIsKeptAndOnlyWhatIsAtHandIsHandedOut() throws IOException {
        Path plan = plan(
                "urban-coast",
                "\n[assign]\nkeep = [\"water point\"]\nloadouts = [\"factory at face\", \"half-wave at face\"]\n",
                HILL,
                NEARER_HILL);
        JsonNode found = json("assign", plan.toString(), "--json");
        for (JsonNode person : found.get("people"))
            assertEquals(
                    person.get("name").asText().equals("water point") ? 1 : 2,
                    person.get("options").size());
        assertTrue(found.get("as_planned").isNull(), "the base's own is not handed out");
        assertEquals("water point", found.at("/hopeless/0/b").asText());
        assertTrue(
                found.at("/verdict/1").asText().startsWith("No choice of loadouts brings start line with water point"));
        assertTrue(found.at("/verdict/1").asText().contains("The relay command says where a relay would help."));
        assertFalse(found.get("best").isNull(), "the rest is answered");
        CommandRun wrong = CommandRun.of(
                "assign",
                plan("urban-coast", "\n[assign]\nkeep = [\"water pint\"]\n").toString());
        assertEquals(2, wrong.code());
        assertTrue(
                wrong.err().contains("names \"water pint\", which the plan does not have. Did you mean"), wrong.err());
    }

    /** A dozen people and eight loadouts, all to all, from the cold start to the printed answer. */
    @Test
    void aDozenPeopleAreAnswered() throws IOException {
        StringBuilder more = new StringBuilder();
        for (String carry : List.of("shoulder-mic", "hip"))
            more.append("\n[[loadout]]\nname = \"quarter-wave at ")
                    .append(carry)
                    .append("\"\nantenna = \"quarter-wave whip\"\ncarry = \"")
                    .append(carry)
                    .append("\"\n");
        for (int i = 0; i < 9; i++)
            more.append(String.format(
                    java.util.Locale.ROOT,
                    "\n[[position]]\nname = \"marshal %d\"\nat = \"%.4f, %.4f\"\nloadout = \"factory at hip\"\n",
                    i,
                    -8.025 + 0.004 * (i % 3 - 1),
                    -34.87 + 0.004 * (i / 3 - 1) + 0.001));
        Path plan = plan("urban-coast", more.toString(), "talk = \"all-to-base\"", "talk = \"all-to-all\"");
        JsonNode found = json("assign", plan.toString(), "--json");
        assertEquals(12, found.get("people").size());
        assertEquals(8, found.at("/people/0/options").size());
        assertEquals(66, found.at("/best/talks").size() + found.get("hopeless").size());
    }

    @Test
    void theReportHoldsTheAssignmentAndWhoReachesWhom() throws IOException {
        Path plan = plan("urban-coast", "", "radius_km = 3", "radius_km = 1", HILL, NEARER_HILL);
        Path report = folder.resolve("full.html");
        CommandRun run = CommandRun.of("report", plan.toString(), "--assign", "--out", report.toString());
        assertEquals(0, run.code(), run.err());
        String page = Files.readString(report).replaceAll("</?span[^>]*>", "");
        String best = json("assign", plan.toString(), "--json").at("/verdict/0").asText();
        assertTrue(page.contains(best), best);
        assertTrue(page.contains("Who must carry what</h2>"), "a section");
        assertTrue(page.contains("Who reaches whom</h2>"), "a section");
    }
}
