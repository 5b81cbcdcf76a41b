package handreach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import handreach.atlas.AtlasQuestion;
import handreach.bench.BenchFile;
import handreach.geodesy.Compass;
import handreach.geodesy.Position;
import handreach.input.CappedFile;
import handreach.input.Range;
import handreach.loadout.Battery;
import handreach.loadout.Loadout;
import handreach.loadout.Radio;
import handreach.loadout.StatedSensitivity;
import handreach.plan.Channel;
import handreach.propagation.Atmosphere;
import handreach.propagation.Climate;
import handreach.propagation.Ground;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.reach.AreaRequest;
import handreach.reach.BearingRequest;
import handreach.reach.CellGrid;
import handreach.story.CommandRun;
import handreach.study.AtlasOptions;
import handreach.terrain.Cover;
import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A limit is owned once: help and documents say what its owner says. */
class LimitsTest {
    private static final String KIT = "handreach.plan.EquipmentReader";
    private static final String PLACES = "handreach.plan.PlacesReader";
    private static final String QUESTIONS = "handreach.plan.QuestionsReader";

    /** A number of a plan. */
    private record Key(String section, Range range) {
        String row() {
            return "| `" + section + "` | `" + range.key() + "` | " + range.words() + " |";
        }
    }

    /** A number of an option. */
    private record Option(String command, String name, Range range) {}

    private static final List<Key> PLAN = List.of(
            new Key("top of the file", of("handreach.plan.PlanHeader", "DECLINATION")),
            new Key("[channel], [[station]]", Channel.FREQUENCY),
            new Key("[target]", Channel.ODDS),
            new Key("[ground]", Ground.PERMITTIVITY),
            new Key("[ground]", Ground.CONDUCTIVITY),
            new Key("[ground]", Atmosphere.GRADIENT),
            new Key("[ground]", Atmosphere.FACTOR),
            new Key("[ground]", Atmosphere.SURFACE_REFRACTIVITY),
            new Key("[ground]", Cover.CANOPY),
            new Key("[ground]", Cover.ROOF),
            new Key("[ground], [[loadout]], [[station]]", of("handreach.plan.NoiseChoice", "FLOOR")),
            new Key("[ground], [[loadout]], [[station]]", of("handreach.plan.NoiseChoice", "FLOOR_MICROVOLTS")),
            new Key("[ground], [[loadout]], [[station]]", of("handreach.plan.NoiseChoice", "BANDWIDTH")),
            new Key("[[radio]], [[station]]", Radio.POWER),
            new Key("[[radio]], [[station]]", Radio.SENSITIVITY),
            new Key("[[radio]], [[station]]", StatedSensitivity.MICROVOLTS),
            new Key("[[radio]]", Radio.NOISE_FIGURE),
            new Key("[[radio]]", Battery.CAPACITY),
            new Key("[[radio]], [[power_step]]", Battery.SEND),
            new Key("[[radio]]", Battery.RECEIVE),
            new Key("[[radio]]", Battery.WAIT),
            new Key("[[radio]]", Battery.SEND_PERCENT),
            new Key("[[radio]]", Battery.RECEIVE_PERCENT),
            new Key("[[antenna]]", of(KIT, "LENGTH")),
            new Key("[[antenna]]", of(KIT, "MASS")),
            new Key("[[antenna]]", of(KIT, "PRICE")),
            new Key("[[antenna]]", of(KIT, "STIFFNESS")),
            new Key("[[antenna]]", of(KIT, "BURDEN_RANK")),
            new Key("[[antenna]], [[delta]]", of(KIT, "DELTA")),
            new Key("[[antenna]], [[delta]]", of(KIT, "DELTA_UNCERTAINTY")),
            new Key("[[antenna]]", of(KIT, "SWR")),
            new Key("[[antenna]], [[station]]", of(KIT, "GAIN_DBI")),
            new Key("[[antenna]], [[station]]", of(KIT, "GAIN_DBD")),
            new Key("[[antenna]], [[station]]", of(KIT, "GAIN_UNCERTAINTY")),
            new Key("[anchor]", of(KIT, "ANCHOR_GAIN")),
            new Key("[anchor]", of(KIT, "UNCERTAINTY")),
            new Key("[[loadout]], [[station]]", Loadout.HEIGHT),
            new Key("[[loadout]]", Loadout.TILT),
            new Key("[[carry_loss]]", of(KIT, "CARRY_GAIN")),
            new Key("[[carry_loss]]", of(KIT, "UNCERTAINTY")),
            new Key("[[carry_loss]]", of(KIT, "SPREAD")),
            new Key("[area]", AreaRequest.RADIUS),
            new Key("[[position]], [[route]], [[sector]]", of(PLACES, "WEIGHT")),
            new Key("[[route]]", of(PLACES, "PACE")),
            new Key("[[sector]]", of(PLACES, "SPACING")),
            new Key("[[position]]", Compass.HEADING),
            new Key("[channel], [[station]]", of("handreach.plan.StationReader", "RECEIVE")),
            new Key("[channel], [[station]]", of("handreach.plan.StationReader", "TRANSMIT")),
            new Key("[reach]", BearingRequest.STEP),
            new Key("[reach]", AreaRequest.CELL),
            new Key("[decide]", of(QUESTIONS, "FELT_PLACES")),
            new Key("[decide]", of(QUESTIONS, "FELT_GROUND")),
            new Key("[decide]", of(QUESTIONS, "FELT_REACH")),
            new Key("[relay]", of(QUESTIONS, "COUNT")),
            new Key("[relay]", Radio.POWER),
            new Key("[relay]", Radio.SENSITIVITY),
            new Key("[relay]", of(QUESTIONS, "RELAY_GAIN")),
            new Key("[relay]", of(QUESTIONS, "MAST")),
            new Key("[relay], [[station]], [[loadout]]", of(QUESTIONS, "FEED_LOSS")),
            new Key("[relay]", of(QUESTIONS, "MAX_SLOPE")),
            new Key("[relay]", of(QUESTIONS, "MAX_TRACK_DISTANCE")),
            new Key("[relay]", of(QUESTIONS, "MAX_WALK_MINUTES")),
            new Key("[relay]", of(QUESTIONS, "MIN_SEPARATION")),
            new Key("[[walk]]", of(QUESTIONS, "CLOCK_OFFSET")),
            new Key("[doubt]", of(QUESTIONS, "MODEL_COMMON")),
            new Key("[doubt]", of(QUESTIONS, "PLACE_SPREAD")));

    private static final List<Option> OPTIONS = List.of(
            new Option("path", "--frequency-mhz", PathConditions.FREQUENCY),
            new Option("path", "--permittivity", Ground.PERMITTIVITY),
            new Option("path", "--conductivity", Ground.CONDUCTIVITY),
            new Option("path", "--refractivity-gradient", Atmosphere.GRADIENT),
            new Option("path", "--k-factor", Atmosphere.FACTOR),
            new Option("path", "--n0", Atmosphere.SURFACE_REFRACTIVITY),
            new Option("path", "--latitude", Climate.LATITUDE),
            new Option("path", "--coast-km", Climate.COAST),
            new Option("path", "--time-percent", Climate.TIME),
            new Option("path", "--location-percent", Climate.LOCATION),
            new Option("path", "--tx-height-m", Terminals.HEIGHT),
            new Option("path", "--rx-height-m", Terminals.HEIGHT),
            new Option("pattern", "--frequency-mhz", Channel.FREQUENCY),
            new Option("pattern", "--length-wavelengths", of("handreach.cli.PatternCommand", "LENGTH")),
            new Option("pattern", "--step-deg", of("handreach.cli.PatternCommand", "STEP")),
            new Option("match", "--channel-mhz", of("handreach.cli.MatchCommand", "CHANNEL_RANGE")),
            new Option("match", "--system-ohm", of("handreach.cli.MatchCommand", "SYSTEM")),
            new Option("bench", "--trials", of("handreach.cli.BenchCommand", "TRIALS")),
            new Option("bench", "--frequency-mhz", BenchFile.FREQUENCY),
            new Option("bench", "--settle-db", of("handreach.cli.BenchCommand", "SETTLE")),
            new Option("walk", "--reports", of("handreach.cli.WalkCommand", "REPORTS")),
            new Option("reach", "--radius-km", AreaRequest.RADIUS),
            new Option("reach", "--cell-m", AreaRequest.CELL),
            new Option("atlas", "--grid", AtlasQuestion.GRID),
            new Option("atlas", "--targets", AtlasQuestion.GRID),
            new Option("atlas", "--relays", AtlasOptions.RELAYS),
            new Option("atlas", "--serves", of("handreach.study.AtlasOptions", "SERVES")),
            new Option("atlas", "--cores", AtlasOptions.CORES));

    private static final String DECLARED = "handreach.bench.DeclarationReader";

    /** Numbers in the tables that people make, by the file they stand in. */
    private static final List<Key> FILES = List.of(
            new Key("profile", of("handreach.profile.ProfileFile", "DISTANCE")),
            new Key("profile", of("handreach.profile.ProfileFile", "HEIGHT")),
            new Key("profile", of("handreach.profile.ProfileFile", "CLUTTER")),
            new Key("pattern", of("handreach.loadout.PatternFile", "ELEVATION")),
            new Key("pattern", of("handreach.loadout.PatternFile", "GAIN")),
            new Key("reports", Position.LATITUDE),
            new Key("reports", Position.LONGITUDE),
            new Key("reports, marks", of("handreach.walk.Reception", "LEVEL")),
            new Key("reports, marks", of("handreach.walk.Reception", "SINAD")),
            new Key("reports, marks", of("handreach.walk.Reception", "READABILITY")),
            new Key("reports", Compass.HEADING),
            new Key("bench", BenchFile.FREQUENCY),
            new Key("bench", of("handreach.bench.RowReader", "TRIAL")),
            new Key("bench", reading("RECEIVED_LEVEL")),
            new Key("bench", reading("FIELD_METER")),
            new Key("bench", reading("SWR")),
            new Key("bench", reading("RETURN_LOSS")),
            new Key("bench", reading("RESONANCE")),
            new Key("bench", reading("BANDWIDTH")),
            new Key("bench", of(DECLARED, "NOISE_FLOOR")),
            new Key("bench", of(DECLARED, "OVERLOAD")),
            new Key("bench", of(DECLARED, "RESOLUTION")),
            new Key("bench", of(DECLARED, "EARLIER_SCATTER")),
            new Key("bench", of(DECLARED, "EARLIER_TRIALS")),
            new Key("bench", of(DECLARED, "DISTANCE")),
            new Key("bench", of(DECLARED, "TX_HEIGHT")),
            new Key("bench", of(DECLARED, "RX_HEIGHT")),
            new Key("bench", of(DECLARED, "ANTENNA_SIZE")),
            new Key("bench", of(DECLARED, "PERMITTIVITY")),
            new Key("bench", of(DECLARED, "CONDUCTIVITY")),
            new Key("sweep", of("handreach.bench.match.TouchstoneReader", "FREQUENCY")),
            new Key("sweep", of("handreach.bench.match.TouchstoneReader", "REFERENCE")),
            new Key("text grid", of("handreach.terrain.EsriGrid", "SIDE")),
            new Key("tile", of("handreach.terrain.TiffGrid", "PIXEL")),
            new Key("tile", of("handreach.terrain.TiffGrid", "PLACE")));

    private static final List<String> COMMANDS = List.of(
            "bench", "match", "pattern", "tiles", "plan", "path", "reach", "relay", "assign", "atlas", "walk", "card",
            "report", "desk");
    private static final Pattern HELP_OF_OPTION =
            Pattern.compile("(?m)^ {1,8}(?:-\\w, )?(--[\\w-]+)[^\\n]*(?:\\n {12,}[^\\n]*)*");
    private static final Pattern SPAN = Pattern.compile("-?\\d[\\d.]* to -?\\d[\\d.]*\\d|-?\\d+ to \\d+");

    @Test
    void helpSaysWhatTheOwnerSays() {
        for (Option option : OPTIONS) {
            String help = helpOf(option.command()).stream()
                    .filter(text -> text.startsWith(option.name()))
                    .findFirst()
                    .orElse("");
            assertTrue(help.contains(" " + option.range().words()), option + ": " + help);
        }
    }

    @Test
    void noOptionNamesARangeThatNobodyOwns() {
        List<String> found = new ArrayList<>();
        for (String command : COMMANDS)
            for (String help : helpOf(command)) {
                Matcher span = SPAN.matcher(help);
                String name = help.split("[ =,]")[0];
                boolean isOwned = OPTIONS.stream()
                        .anyMatch(option -> option.command().equals(command)
                                && option.name().equals(name));
                if (span.find() && !isOwned) found.add(command + " " + help);
            }
        assertEquals(List.of(), found);
    }

    @Test
    void thePageOfThePlanFileSaysWhatTheOwnersSay() throws IOException {
        List<String> told = Files.readAllLines(Path.of("docs/plan-file.md")).stream()
                .dropWhile(line -> !line.equals("## What the numbers may be"))
                .filter(line -> line.startsWith("| `"))
                .toList();
        assertEquals(String.join("\n", PLAN.stream().map(Key::row).toList()), String.join("\n", told));
    }

    @Test
    void thePageOfLimitsSaysWhatNumbersInFilesMayBe() throws IOException {
        List<String> told = Files.readAllLines(Path.of("docs/limits.md")).stream()
                .dropWhile(line -> !line.equals("## Numbers in files"))
                .takeWhile(line -> !line.startsWith("## Known"))
                .filter(line -> line.matches("\\| [a-z, ]+ \\| `.*"))
                .toList();
        List<String> owned = FILES.stream()
                .map(key -> "| " + key.section() + " | `" + key.range().key() + "` | "
                        + key.range().words() + " |")
                .toList();
        assertEquals(String.join("\n", owned), String.join("\n", told));
    }

    /** How many entries of a kind a plan may have, and how many paths to stations are reckoned. */
    @Test
    void thePageOfLimitsSaysHowMuchAPlanMayAsk() throws IOException {
        String page = Files.readString(Path.of("docs/limits.md")).replace('\n', ' ');
        @SuppressWarnings("unchecked")
        Map<String, Integer> most = (Map<String, Integer>) constant("handreach.plan.PlanSection", "MOST_ENTRIES");
        for (String kind : List.of("channel", "loadout", "position", "route", "sector", "station", "walk"))
            assertTrue(page.contains(most.get(kind) + " `[[" + kind + "]]`"), kind);
        assertTrue(page.contains(number("handreach.study.StationStudy", "MOST_PATHS") + " paths to stations"));
    }

    private static Range reading(String quantity) {
        try {
            var allowed = handreach.bench.Quantity.class.getDeclaredMethod("allowed");
            allowed.setAccessible(true);
            return (Range) allowed.invoke(handreach.bench.Quantity.valueOf(quantity));
        } catch (ReflectiveOperationException gone) {
            throw new AssertionError(gone);
        }
    }

    @Test
    void thePageOfLimitsSaysWhatTheOwnersSay() throws IOException {
        String page = Files.readString(Path.of("docs/limits.md"));
        for (String words : List.of(
                Channel.FREQUENCY.words() + " in a plan",
                PathConditions.FREQUENCY.words() + " for a single path",
                "a radius of " + AreaRequest.RADIUS.words(),
                "cells of " + AreaRequest.CELL.words(),
                Loadout.HEIGHT.words() + " in a plan",
                Terminals.HEIGHT.words() + " for a single path",
                "latitudes of " + CellGrid.LATITUDE.words())) assertTrue(page.contains(words), words);
    }

    /** What a file may be, row by row, from the constants of those who read it. */
    @Test
    void thePageOfLimitsSaysWhatTheReadersTake() throws IOException {
        String page = Files.readString(Path.of("docs/limits.md"));
        long kib = 1024;
        long mib = 1024 * kib;
        for (String words : List.of(
                "| a plan or calibration file | " + number("handreach.plan.PlanReader", "LONGEST") / kib + " KiB |",
                "profile) | " + cap("handreach.input.SourceText") / mib + " MiB,",
                "| a GPX file | " + cap("handreach.walk.GpxTrack") / mib + " MiB, two million points",
                "| a GeoTIFF | a million posts each way, blocks of at most "
                        + number("handreach.terrain.TiffImage", "LARGEST_BLOCK_BYTES") / mib + " MiB unpacked",
                "| the tags of a GeoTIFF | " + number("handreach.terrain.TiffHeader", "MOST_TAG_BYTES") / mib
                        + " MiB together, a text at most "
                        + number("handreach.terrain.TiffHeader", "LONGEST_TEXT") / mib
                        + " MiB, no tag twice |",
                "| faults of one file | " + number("handreach.input.Faults", "MOST_TOLD") + " are told",
                "| an area | " + CellGrid.MOST_CELLS / 1e6 + " million cells",
                "| a relay | " + number("handreach.relay.RelayRequest", "MOST_DEMANDS") + " places to serve",
                "of more than " + (int) real("handreach.propagation.march.FullWave", "LONG_S") / 10 + "0 seconds",
                "over more than " + number("handreach.cli.TilesCommand", "MANY_POSTS") / 1_000_000 + " million posts"))
            assertTrue(
                    page.replace("more than ten seconds", "more than 10 seconds")
                            .replace('\n', ' ')
                            .contains(words),
                    words);
        assertEquals(2_000_000, number("handreach.walk.GpxReader", "MOST_POINTS"));
        assertTrue(page.contains(number("handreach.terrain.AreaPolygons", "MOST_CORNERS") + " corners a file"));
        assertEquals(1_000_000, number("handreach.terrain.TiffImage", "WIDEST"));
        assertTrue(page.contains("| heights of ground | −" + (int) -real("handreach.terrain.EarthHeight", "LOWEST_M")
                + " to " + (int) real("handreach.terrain.EarthHeight", "HIGHEST_M") + " m;"));
    }

    private static long cap(String owner) {
        return ((CappedFile.Cap) constant(owner, "CAP")).usualBytes();
    }

    private static long number(String owner, String field) {
        return ((Number) constant(owner, field)).longValue();
    }

    private static double real(String owner, String field) {
        return ((Number) constant(owner, field)).doubleValue();
    }

    /** A range that the tables above do not know is one that no page and no help is held against. */
    @Test
    void everyRangeOfTheProgramIsInTheseTables() {
        Set<Range> known = new HashSet<>();
        Stream.of(
                        PLAN.stream().map(Key::range),
                        FILES.stream().map(Key::range),
                        OPTIONS.stream().map(Option::range))
                .flatMap(ranges -> ranges)
                .forEach(known::add);
        known.add(CellGrid.LATITUDE);
        List<String> unknown = new ArrayList<>();
        new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("handreach").stream()
                        .flatMap(owner -> owner.getFields().stream())
                        .filter(field -> field.getRawType().getName().equals(Range.class.getName()))
                        .filter(field -> field.getModifiers().contains(JavaModifier.STATIC))
                        // Written by the program itself, and the version of the format, which is one number.
                        .filter(field -> !field.getOwner().getSimpleName().equals("CalibrationFile")
                                && !field.getName().equals("FORMAT"))
                        .filter(field -> !known.contains(of(field.getOwner().getName(), field.getName())))
                        .forEach(field -> unknown.add(field.getFullName()));
        assertEquals(List.of(), unknown);
    }

    /** Help of every option of a command, from its name on, in one line each. */
    private static List<String> helpOf(String command) {
        CommandRun run = CommandRun.of(command, "--help");
        assertEquals(0, run.code());
        List<String> options = new ArrayList<>();
        Matcher option = HELP_OF_OPTION.matcher(run.out());
        while (option.find())
            options.add(
                    option.group().substring(option.start(1) - option.start()).replaceAll("\\s+", " "));
        assertTrue(options.size() > 1, command + ": " + run.out());
        return options;
    }

    /** A range that only its reader sees. */
    private static Range of(String owner, String field) {
        return (Range) constant(owner, field);
    }

    private static Object constant(String owner, String field) {
        try {
            Field declared = Class.forName(owner).getDeclaredField(field);
            assertTrue(Modifier.isStatic(declared.getModifiers()), owner + "." + field);
            declared.setAccessible(true);
            return declared.get(null);
        } catch (ReflectiveOperationException gone) {
            throw new AssertionError(gone);
        }
    }
}
