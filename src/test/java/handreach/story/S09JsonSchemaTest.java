package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * What every command prints with {@code --json} is what its schema in {@code docs/schema} says (JSON Schema 2020-12), and the
 * schemas are strict enough to notice a lost, a new or a mistyped field.
 */
class S09JsonSchemaTest {
    private static final Path SCHEMAS = Path.of("docs/schema");
    private static final String SAMPLES = "elevation-samples/";
    private static final String SWEEP = SAMPLES + "invented-bench/quarter-wave-whip.s1p";
    private static final int MUTATIONS = 80;

    /** Fields that are left out where they mean nothing; without one of these the answer is still whole. */
    private static final Set<String> MAY_BE_ABSENT = Set.of(
            "degrees_of_freedom",
            "p",
            "adjusted_p",
            "minimum_difference_db",
            "settle",
            "drift",
            "bracket_db",
            "agreement",
            "resonance_resistance_ohm",
            "band_2_whole",
            "band_3_whole",
            "others",
            "changes",
            "azimuth_deg",
            "final_azimuth_deg",
            "length_m",
            "worst_clearance",
            "diffraction_db",
            "excess_db",
            "models",
            "reading",
            "steps",
            "ledger",
            "ledger_model",
            "turnings",
            "model_spread",
            "foliage",
            "woodland_db",
            "in_leaf_db",
            "search",
            "distance_km",
            "loss_db",
            "odds_there",
            "odds_back",
            "odds_pessimistic",
            "margin_db",
            "ridge");

    private static final SchemaRegistry REGISTRY =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    @TempDir
    Path folder;

    @TestFactory
    Stream<DynamicTest> everyAnswerIsWhatItsSchemaSays() {
        return commands()
                .map(words -> DynamicTest.dynamicTest(String.join(" ", words), () -> {
                    JsonNode answer = answer(words);
                    Schema schema = schema(words.get(0));
                    assertEquals(
                            List.of(),
                            schema.validate(answer).stream()
                                    .map(Object::toString)
                                    .toList());
                    mutationsAreNoticed(schema, answer, words);
                }));
    }

    private Stream<List<String>> commands() {
        List<String> ends = List.of("--from", "37.48,-105.03", "--to", "37.44,-104.95", "--frequency-mhz", "155.16");
        List<String> ground = new ArrayList<>(List.of("path", "--tiles", SAMPLES + "high-mountains/tiles"));
        ground.addAll(ends);
        List<String> spur =
                List.of("path", "--plan", SAMPLES + "forest-hills", "--from", "spike camp", "--to", "north spur");
        return Stream.of(
                List.of("bench", SAMPLES + "invented-bench/bench.csv", "--control", "factory helical"),
                List.of(
                        "plan",
                        folder.resolve("blank-" + System.nanoTime() + ".toml").toString()),
                List.of("match", SWEEP),
                List.of("match", SWEEP, SWEEP.replace(".s1p", "-with-wire.s1p"), "--channel-mhz", "155.16,500"),
                List.of("pattern", "--radiator", "five-eighths", "--frequency-mhz", "155.16"),
                List.of("tiles", SAMPLES + "high-mountains/tiles"),
                List.of("tiles", SAMPLES + "high-mountains/tiles", "--at", "37.5,-105.0"),
                List.of("tiles", SAMPLES + "high-mountains/tiles", "--at", "10,10"),
                with(ground, "--model", "all"),
                with(ground, "--model", "p1812", "--explain"),
                with(ground, "--model", "delta-bullington"),
                with(ground, "--model", "two-ray"),
                with(spur, "--explain"),
                List.of("path", "--plan", calibrated(), "--from", "spike camp", "--to", "north spur", "--model", "all"),
                List.of("path", "--plan", turned(), "--from", "valley camp", "--to", "lake crew"),
                List.of("reach", calibrated(), "--no-area"),
                List.of("path", "--profile", profile(), "--frequency-mhz", "446"),
                List.of("reach", SAMPLES + "urban-coast", "--no-area"),
                List.of("reach", SAMPLES + "forest-hills", "--no-area"),
                List.of("reach", wet(), "--no-area"),
                List.of("path", "--plan", wet(), "--from", "spike camp", "--to", "north spur"),
                List.of("assign", SAMPLES + "urban-coast"),
                List.of("assign", SAMPLES + "forest-hills"),
                List.of("relay", SAMPLES + "urban-coast"),
                List.of("relay", SAMPLES + "forest-hills"),
                List.of("reach", SAMPLES + "urban-coast", "--engine", "sweep", "--only", "outlines", "--out", out()),
                List.of("atlas", SAMPLES + "forest-hills", "--grid", "4km", "--relays", "2", "--out", out()),
                List.of("atlas", SAMPLES + "forest-hills", "--grid", "4km", "--layers", "reach", "--out", out()),
                List.of("walk", SAMPLES + "forest-hills"),
                List.of("walk", SAMPLES + "forest-hills", "--next", "--reports", "2"),
                List.of(
                        "card",
                        SAMPLES + "urban-coast",
                        "--out",
                        folder.resolve("c.pdf").toString()),
                List.of(
                        "report",
                        SAMPLES + "urban-coast",
                        "--out",
                        folder.resolve("r.html").toString()));
    }

    private static List<String> with(List<String> words, String... more) {
        List<String> all = new ArrayList<>(words);
        Collections.addAll(all, more);
        return all;
    }

    private String out() {
        return folder.resolve("out").toString();
    }

    private String calibrated() {
        try {
            return CalibratedPlan.accepted(folder).toString();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** A plan that says which way people face. */
    private String turned() {
        try {
            Path sample = Path.of(SAMPLES + "invented-valley").toAbsolutePath();
            String plan = Files.readString(sample.resolve("plan.toml"))
                    .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                    .replace("\"../invented-bench", "\"" + sample.resolve("../invented-bench"))
                    .replace("base = true\n", "base = true\nheading_deg = 100\n")
                    .replace("at = \"44.4629, -29.5700\"\n", "at = \"44.4629, -29.5700\"\ntowards = \"valley camp\"\n");
            return Files.writeString(folder.resolve("turned.toml"), plan).toString();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** A plan that says in what state the trees are. */
    private String wet() {
        try {
            return S22FoliageTest.plan(folder, "foliage = \"wet\"");
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private String profile() {
        try {
            Path file = folder.resolve("profile.csv");
            Files.writeString(file, "distance_km,height_m\n0,5\n2,40\n10,0\n");
            return file.toString();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static JsonNode answer(List<String> words) throws IOException {
        CommandRun run = CommandRun.of(with(words, "--json").toArray(new String[0]));
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    private static Schema schema(String command) throws IOException {
        return REGISTRY.getSchema(Files.readString(SCHEMAS.resolve(command + ".schema.json")));
    }

    /** A field taken away, a field of another type, a field too many: each must be refused. */
    private static void mutationsAreNoticed(Schema schema, JsonNode answer, List<String> words) {
        List<Spot> spots = new ArrayList<>();
        collect(answer, spots);
        Random random = new Random(String.join(" ", words).hashCode());
        Collections.shuffle(spots, random);
        int removed = 0;
        for (Spot spot : spots.subList(0, Math.min(MUTATIONS, spots.size()))) {
            JsonNode was = spot.object().get(spot.key());
            if (!MAY_BE_ABSENT.contains(spot.key())) {
                spot.object().remove(spot.key());
                assertFalse(schema.validate(answer).isEmpty(), "without " + spot.key());
                removed++;
            }
            JsonNode wrong = was.isContainerNode()
                    ? spot.object().textNode("x")
                    : spot.object().arrayNode();
            spot.object().set(spot.key(), wrong);
            assertFalse(schema.validate(answer).isEmpty(), spot.key() + " as " + wrong);
            spot.object().set(spot.key(), was);
            spot.object().put(spot.key() + "_x", 1);
            assertFalse(schema.validate(answer).isEmpty(), spot.key() + "_x");
            spot.object().remove(spot.key() + "_x");
        }
        assertTrue(removed > 0);
        assertEquals(List.of(), schema.validate(answer), "put back");
    }

    private record Spot(ObjectNode object, String key) {}

    private static void collect(JsonNode node, List<Spot> spots) {
        if (node instanceof ObjectNode object)
            for (Iterator<String> keys = object.fieldNames(); keys.hasNext(); )
                spots.add(new Spot(object, keys.next()));
        if (node instanceof ObjectNode || node instanceof ArrayNode) node.forEach(each -> collect(each, spots));
    }

    @Test
    void everyCommandWithJsonHasASchemaAndNoSchemaIsLeftOver() throws IOException {
        Set<String> commands = new TreeSet<>();
        CommandRun.of("--help")
                .out()
                .lines()
                .filter(line -> line.matches(" {2}[a-z]+ {2,}.*"))
                .map(line -> line.strip().split(" ")[0])
                .filter(name -> CommandRun.of(name, "--help").out().contains("--json"))
                .forEach(commands::add);
        Set<String> schemas = new TreeSet<>();
        try (Stream<Path> files = Files.list(SCHEMAS)) {
            files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".schema.json"))
                    .forEach(name -> schemas.add(name.replace(".schema.json", "")));
        }
        assertEquals(commands, schemas);
        assertTrue(schemas.size() >= 10);
    }

    /** Every object says which fields there are, and every number what it is and in which unit. */
    @Test
    void theSchemasAreStrictAndSayUnits() throws IOException {
        try (Stream<Path> files = Files.list(SCHEMAS)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".json")).toList())
                strict(file + "", new ObjectMapper().readTree(Files.readString(file)));
        }
    }

    private static void strict(String where, JsonNode node) {
        if (node.has("properties") && node.get("properties").isObject()) {
            assertFalse(node.path("additionalProperties").asBoolean(true), where);
            node.get("properties").fields().forEachRemaining(field -> {
                if (List.of("number", "integer")
                        .contains(field.getValue().path("type").asText()))
                    assertTrue(field.getValue().path("description").asText().length() > 2, where + field.getKey());
            });
        }
        node.fields().forEachRemaining(field -> strict(where + "/" + field.getKey(), field.getValue()));
        if (node.isArray()) node.forEach(each -> strict(where, each));
    }
}
