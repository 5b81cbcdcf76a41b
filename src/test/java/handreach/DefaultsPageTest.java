package handreach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import handreach.budget.Isolation;
import handreach.budget.LinkTerms;
import handreach.budget.SiteNoise;
import handreach.input.Range;
import handreach.loadout.Band;
import handreach.loadout.Battery;
import handreach.loadout.Carry;
import handreach.loadout.CarryLoss;
import handreach.loadout.ControlAnchor;
import handreach.loadout.CopyQuality;
import handreach.loadout.Fading;
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.loadout.StatedSensitivity;
import handreach.plan.Channel;
import handreach.plan.Equipment;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.plan.PlanFile;
import handreach.plan.Questions;
import handreach.propagation.ExternalNoise;
import handreach.propagation.Foliage;
import handreach.propagation.Ground;
import handreach.propagation.GroundType;
import handreach.propagation.NoiseEnvironment;
import handreach.propagation.TerminalClutter;
import handreach.propagation.Woodland;
import handreach.reach.MarchCount;
import handreach.reach.RadialReach;
import handreach.relay.RelayEquipment;
import handreach.relay.RelayMode;
import handreach.study.Turning;
import handreach.terrain.Cover;
import handreach.uncertainty.Doubt;
import handreach.units.Dbm;
import handreach.units.Frequency;
import handreach.units.Polarization;
import handreach.walk.Priors;
import java.io.IOException;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The page of defaults is what the program takes when nobody says otherwise: every figure on it is composed here from the constants and
 * objects themselves. {@code -Dhandreach.rewrite=true} writes the page anew.
 */
class DefaultsPageTest {
    private static final Path PAGE = Path.of("docs/defaults.md");
    private static final String PUBLISHED = "published: ";
    private static final String COMPUTED = "computed for this project";
    private static final String PRACTICE = "common practice, no source";
    private static final String OURS = "our suggestion";
    private static final String MEMORY = " (from memory)";

    /** Readers of plans, and how a default stands in them: a number with its range, a word or a flag with its key. */
    private static final Path READERS = Path.of("src/main/java/handreach/plan");

    private static final Pattern NUMBER = Pattern.compile("\\.number\\(\\s*([A-Za-z]+\\.)?([A-Z][A-Z_]+),\\s*[^)\\s]");
    private static final Pattern WORD = Pattern.compile("\\.(?:word|flag)\\(\\s*\"([a-z_]+)\"");
    private static final List<String> HOMES =
            List.of("loadout", "propagation", "reach", "relay", "terrain", "plan", "walk", "bench");

    @TempDir
    Path folder;

    private final StringBuilder page = new StringBuilder();

    private void table(String head, String... columns) {
        page.append("\n## ").append(head).append("\n| ").append(String.join(" | ", columns));
        page.append(" |\n").append("| --- ".repeat(columns.length)).append("|\n");
    }

    private void row(Object... cells) {
        for (Object cell : cells)
            page.append("| ")
                    .append(cell instanceof Double d ? number(d) : cell)
                    .append(' ');
        page.append("|\n");
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, Math.abs(value) >= 1 ? "%.2f" : "%.4f", value)
                .replaceAll("0+$", "")
                .replaceAll("\\.$", "");
        return text.equals("-0") ? "0" : text.replace('-', '\u2212');
    }

    private static String of(double value, String unit) {
        return number(value) + " " + unit;
    }

    private static Object constant(String owner, String field) {
        try {
            Field declared = Class.forName("handreach." + owner).getDeclaredField(field);
            declared.setAccessible(true);
            return declared.get(null);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(owner + "." + field, e);
        }
    }

    private static double real(String owner, String field) {
        return ((Number) constant(owner, field)).doubleValue();
    }

    /** A plan that says no more than it must. */
    private Plan bare() throws IOException {
        Files.createDirectories(folder.resolve("tiles"));
        Files.writeString(folder.resolve("tracks.gpx"), "<gpx/>");
        Path file = folder.resolve("plan.toml");
        Files.writeString(file, """
                title = "bare"
                [channel]
                frequency_mhz = 155
                [ground]
                tiles = "tiles"
                [[radio]]
                name = "r"
                power_w = 5
                sensitivity_dbm = -119
                battery_mah = 2000
                send_ma = 1500
                receive_ma = 200
                wait_ma = 70
                [[radio]]
                name = "by its sheet"
                power_w = 5
                sensitivity_uv = 0.3
                sensitivity_across = "50-ohm"
                [[antenna]]
                name = "control"
                control = true
                [[antenna]]
                name = "stated"
                gain_dbi = 2
                gain_source = "its sheet"
                [[loadout]]
                name = "l"
                antenna = "control"
                [[carry_loss]]
                carry = "face"
                control_gain_dbd = -12
                uncertainty_db = 2
                [area]
                centre = "44.5, -29.5"
                radius_km = 5
                [[position]]
                name = "p"
                at = "44.5, -29.5"
                [[route]]
                name = "way"
                file = "tracks.gpx"
                [[station]]
                name = "mast"
                at = "44.5, -29.5"
                power_w = 5
                sensitivity_dbm = -119
                gain_dbd = 0
                [relay]
                tracks = "tracks.gpx"
                """);
        return PlanFile.open(file).plan();
    }

    private String composed() throws IOException {
        page.append("""
                # What is taken when nobody says otherwise
                Every figure on this page is composed by a test from the program itself (`DefaultsPageTest`), so that it cannot go stale. *Published* names a
                document, *from memory* a document that was not at hand, *computed* our own computation, *common practice* a custom of the trade without a
                source, *our suggestion* a choice of ours. How good they are, and where they end: the pages named in `limits.md`.
                """);
        planKeys(bare());
        radios();
        bodies();
        doubts();
        ground();
        woodsAndTowns();
        noise();
        decisions();
        commands();
        benchDoubts();
        return page.toString();
    }

    private void planKeys(Plan plan) {
        table("Keys of a plan that are left out", "section", "key", "taken as", "origin");
        row("top of the file", "`place_form`", plan.header().placeForm().word(), OURS);
        row("", "`units`", plan.header().lengths().name().toLowerCase(Locale.ROOT), OURS);
        row(
                "`[channel]`",
                "`polarization`",
                plan.channel().polarization().name().toLowerCase(Locale.ROOT),
                PRACTICE);
        row("", "`modulation`", plan.channel().modulation().word(), OURS);
        Channel.CopyWish wish = plan.channel().wish();
        row("`[target]`", "`quality`", wish.quality().word(), OURS);
        row("", "`fading`", wish.fading().word(), OURS);
        row("", "`odds`", wish.odds(), OURS);
        row("", "`ways`", wish.ways().word(), OURS);
        row("`[ground]`", "`type`", type(plan.ground().ground()), OURS);
        row(
                "",
                "`permittivity`",
                plan.ground().ground().permittivity(),
                PUBLISHED + "Rec. ITU-R P.527-3 curves" + MEMORY);
        row(
                "",
                "`conductivity`",
                of(plan.ground().ground().conductivity(), "S/m"),
                PUBLISHED + "Rec. ITU-R P.527-3 curves" + MEMORY);
        row(
                "",
                "`refractivity_gradient`",
                of(plan.ground().atmosphere().refractivityGradient(), "N-units/km"),
                PUBLISHED + "Rec. ITU-R P.453, maps" + MEMORY + "; a round value of ours");
        row(
                "",
                "`surface_refractivity`",
                of(plan.ground().atmosphere().surfaceRefractivity(), "N-units"),
                PUBLISHED + "Rec. ITU-R P.453, maps" + MEMORY + "; a round value of ours");
        row("", "`surface`", plan.ground().cover().surface().word(), OURS);
        row("", "`cover`", plan.ground().cover().everywhere().word(), OURS);
        row("", "`legend`", plan.ground().cover().legend().word(), OURS);
        row(
                "",
                "`foliage`",
                plan.ground().cover().foliage().word(),
                plan.ground().cover().foliage().source());
        row("", "`noise`", plan.ground().noise().surroundings().word(), OURS);
        Equipment.RadioEntry radio = plan.equipment().radios().get(0);
        Battery battery = radio.battery().orElseThrow().battery();
        row("`[[radio]]`", "`send_percent`", of(100 * battery.sendShare(), "%"), PRACTICE);
        row("", "`receive_percent`", of(100 * battery.receiveShare(), "%"), PRACTICE);
        row("", "`sensitivity_across`", "nothing, it must be said", OURS);
        row("", "`sensitivity_for`", sheet(plan), PRACTICE);
        row("`[[antenna]]`", "`control`", plan.equipment().antennas().get(1).control(), "a plan names one");
        row(
                "",
                "`radiator`",
                plan.equipment().antennas().get(0).radiator().word() + " of unstated kind, not moved",
                OURS);
        Equipment.StatedGain gain =
                plan.equipment().antennas().get(1).known().gain().orElseThrow();
        row("", "`gain_uncertainty_db`", of(gain.uncertaintyDb(), "dB"), OURS);
        Equipment.LoadoutEntry loadout = plan.equipment().loadouts().get(0);
        row("`[[loadout]]`", "`carry`", loadout.carry().word(), OURS);
        row("", "`counterpoise`", loadout.counterpoise(), OURS);
        row("", "`tilt_deg`", of(loadout.hold().tiltDeg(), "degrees"), OURS);
        row("", "`feed_loss_db`", of(loadout.hold().feedLossDb(), "dB"), OURS);
        row(
                "`[[carry_loss]]`",
                "`spread_db`",
                of(plan.equipment().carries().get(0).spreadDb(), "dB"),
                OURS);
        row("`[[position]]`", "`base`", plan.places().positions().get(0).base(), OURS);
        row("", "`weight`", plan.places().positions().get(0).weight(), OURS);
        Questions.ReachQuestion reach = plan.questions().reach();
        row("`[reach]`", "`bearing_step_deg`", of(reach.bearingStepDeg(), "degrees"), OURS);
        row("", "`cell_m`", of(reach.cellM(), "m"), OURS);
        row("", "`model`", reach.wish().word() + ": by ground and plan", "ours, see `full-wave.md`");
        row("", "most a march may count that the program chooses", of(MarchCount.USUAL_WAIT_S, "s"), PRACTICE);
        row("", "`woods_and_towns`", reach.standing().word(), "ours, see `full-wave.md`");
        row("", "`alike`", reach.alike(), OURS);
        row("", "`one_way`", reach.oneWay(), OURS);
        Questions.DecideQuestion decide = plan.questions().decide();
        row("`[decide]`", "`by`", decide.by().word() + " where there are any, else ground", OURS);
        row("", "`felt_places`", decide.feltPlaces(), OURS);
        row("", "`felt_ground`", decide.feltGround(), OURS);
        row("", "`felt_reach_m`", of(decide.feltReachM(), "m"), OURS);
        row("`[[route]]`", "`timed`", plan.places().routes().get(0).schedule().isPresent(), OURS);
        Places.StationEntry station = plan.places().stations().get(0);
        row("`[[station]]`", "`on`, `height_m`", "mast, " + of(station.gear().heightM(), "m"), PRACTICE);
        row("", "`feed_loss_db`", of(station.gear().feedLossDb(), "dB"), PRACTICE);
        row("", "`relay`", station.relay().isPresent(), OURS);
        row("", "`base`", station.base(), OURS);
        Questions.RelayQuestion relay = plan.questions().relay();
        row("`[relay]`", "`talk`", relay.talk().word(), OURS);
        row("", "`count`", (double) relay.count(), OURS);
        row("", "`mode`", relay.mode().word(), OURS);
        row("", "`power_w`", of(relay.equipment().powerW(), "W"), PRACTICE);
        row("", "`sensitivity_dbm`", of(relay.equipment().sensitivityDbm(), "dBm"), PRACTICE);
        row("", "`gain_dbd`", of(relay.equipment().gainDbd(), "dBd"), OURS);
        row("", "`mast_m`", of(relay.equipment().mastM(), "m"), OURS);
        row("", "`feed_loss_db`", of(relay.equipment().feedLossDb(), "dB"), OURS);
        row("", "`chained`", relay.equipment().chained(), OURS);
        row(
                "",
                "`max_track_distance_m`",
                of(relay.constraints().nearTrack().orElseThrow().maxDistanceM(), "m"),
                OURS);
    }

    private void radios() {
        table(
                "What copy needs over the noise, walking / standing, dB",
                "mode",
                "steady, at sensitivity",
                "daq-2",
                "daq-3",
                "daq-3.4",
                "daq-4",
                "origin");
        for (Modulation mode : Modulation.values()) {
            List<Object> cells = new ArrayList<>(List.of(mode.word(), number(mode.staticDb())));
            for (CopyQuality quality : CopyQuality.values())
                cells.add(number(mode.neededDb(quality, Fading.WALKING)) + " / "
                        + number(mode.neededDb(quality, Fading.STANDING)));
            cells.add("TIA TSB-88 Annex A" + MEMORY + "; daq-2 and standing ours");
            row(cells.toArray());
        }
    }

    private void bodies() {
        table("The control on its chassis, over a dipole", "band", "gain, dBd", "doubt, dB", "origin");
        for (Band band : Band.values()) {
            ControlAnchor anchor = ControlAnchor.standard(band);
            row(band, anchor.onBox().dbd(), anchor.commonDb(), anchor.source() + "; " + COMPUTED + ", rounded down");
        }
        table(
                "The control as it is carried, over a dipole",
                "carry",
                "band",
                "gain, dBd",
                "common doubt, dB",
                "spread, dB",
                "origin");
        for (Carry carry : Carry.values())
            for (Band band : Band.values()) {
                CarryLoss loss = CarryLoss.standard(carry, band);
                row(
                        carry.word(),
                        band,
                        loss.mean().dbd(),
                        loss.doubt().commonDb(),
                        loss.doubt().spreadDb(),
                        loss.origin());
            }
        table("Antenna above ground by how it is carried", "carry", "height", "origin");
        for (Carry carry : Carry.values()) row(carry.word(), of(carry.usualHeightM(), "m"), PRACTICE);
        table("Antennas", "what", "taken as", "origin");
        row("doubt of a delta from a single trial", of(real("loadout.AntennaDelta", "SINGLE_TRIAL_DB"), "dB"), OURS);
        row(
                "doubt of a counterpoise that was not measured",
                of(((Doubt) constant("budget.EndBudget", "UNMEASURED_COUNTERPOISE")).commonDb(), "dB"),
                OURS);
        for (Radiator radiator : Radiator.values())
            row("length of a " + radiator.word(), of(radiator.usualLengthWavelengths(), "wavelengths"), PRACTICE);
    }

    private void doubts() {
        table(
                "Doubt of the loss model before any walk",
                "ground and model",
                "common, dB",
                "spread between places, dB",
                "origin");
        String measured = "measured in the open data of `field-comparison.md`, rounded";
        doubt("open, handheld or full-wave", LinkTerms.MODEL_OPEN, measured);
        doubt("open, another model", LinkTerms.MODEL_OTHER, measured + "; spread: " + OURS);
        doubt("woods, town, water or land cover", LinkTerms.MODEL_COVERED, measured);
        table("What is believed before a walk, standard deviations", "of what", "taken as", "origin");
        Priors usual = Priors.USUAL;
        row("shift common to the area", of(usual.biasDb(), "dB"), OURS);
        row("further shift of one cover", of(usual.coverDb(), "dB"), OURS);
        row("error of the carry loss of one position", of(usual.carryDb(), "dB"), OURS);
        row("logarithm of the spread", usual.spreadLog(), OURS);
    }

    private void doubt(String what, Doubt doubt, String origin) {
        row(what, doubt.commonDb(), doubt.spreadDb(), origin);
    }

    private static String type(Ground ground) {
        return Stream.of(GroundType.values())
                .filter(type -> type.ground().equals(ground))
                .findFirst()
                .orElseThrow()
                .word();
    }

    /** The word that means what a sensitivity in microvolts across 50 ohm is taken for without it. */
    private static String sheet(Plan plan) {
        double dbm = plan.equipment().radios().get(1).sensitivityDbm().orElseThrow();
        for (String mark : StatedSensitivity.Mark.KEYWORD.words()) {
            Dbm meant = StatedSensitivity.ofMicrovolts(
                    0.3,
                    StatedSensitivity.Across.LOAD,
                    StatedSensitivity.Mark.KEYWORD.find(mark).orElseThrow());
            if (Math.abs(meant.dbm() - dbm) < 1e-9) return mark;
        }
        throw new AssertionError(dbm + " dBm");
    }

    private void ground() {
        table("Ground", "type", "permittivity", "conductivity, S/m", "origin");
        for (GroundType type : GroundType.values())
            row(
                    type.word(),
                    type.ground().permittivity(),
                    type.ground().conductivity(),
                    type == GroundType.POOR || type == GroundType.GOOD
                            ? "NTIA Report 82-100" + MEMORY
                            : "Rec. ITU-R P.527-3 curves" + MEMORY);
    }

    private void woodsAndTowns() {
        table("What stands on the ground", "cover", "height for the loss down to the antenna", "origin");
        for (Cover cover : Cover.values())
            row(
                    cover.word(),
                    of(TerminalClutter.representativeHeightM(cover), "m"),
                    PUBLISHED + "Rec. ITU-R P.2108-1, Table 3");
        row("width of a street", of(TerminalClutter.STREET_WIDTH_M, "m"), PUBLISHED + "Rec. ITU-R P.2108-1");
        table("Woods in leaf at one end, vertical polarisation", "frequency", "ceiling", "attenuation", "origin");
        for (double mhz : new double[] {50, 155, 446, 900}) {
            Frequency frequency = new Frequency(mhz);
            row(
                    of(mhz, "MHz"),
                    of(Woodland.ceilingDb(frequency, Polarization.VERTICAL), "dB"),
                    of(Woodland.attenuationDbPerM(frequency, Polarization.VERTICAL), "dB/m"),
                    PUBLISHED + "Rec. ITU-R P.833-9, mixed forest; Figure 2");
        }
        table("Trees in another state: factor on those decibels", "state", "155 MHz", "446 MHz", "900 MHz", "origin");
        for (Foliage foliage : Foliage.values())
            row(
                    foliage.word(),
                    foliage.factor(new Frequency(155)),
                    foliage.factor(new Frequency(446)),
                    foliage.factor(new Frequency(900)),
                    foliage.source());
        table("Gain by height among houses and trees", "what", "taken as", "origin");
        row("cut from this height on", of(real("propagation.EndCover", "CUT_FROM_M"), "m"), OURS);
        row(
                "share of the gain left in town",
                real("propagation.EndCover", "TOWN_GAIN"),
                "measured, open data (DOI 10.5281/zenodo.1560654)");
        row(
                "share of the gain left in woods",
                real("propagation.EndCover", "WOOD_GAIN"),
                "measured, open data (DOI 10.5281/zenodo.1560654)");
    }

    private void noise() {
        table(
                "Noise from outside, dB over kT",
                "surroundings",
                "50 MHz",
                "155 MHz",
                "446 MHz",
                "between places, dB",
                "within the hour, dB",
                "origin");
        for (NoiseEnvironment where : NoiseEnvironment.values())
            row(
                    where.word(),
                    SiteNoise.of(where, new Frequency(50)).medianDb(),
                    SiteNoise.of(where, new Frequency(155)).medianDb(),
                    SiteNoise.of(where, new Frequency(446)).medianDb(),
                    where.placeSpreadDb(),
                    "+" + number(where.hourUpDb()) + ", " + number(-where.hourDownDb()),
                    PUBLISHED
                            + "Rec. ITU-R P.372-16; spreads from memory; above 250 MHz carried on with floors of ours");
        row(
                "galactic",
                ExternalNoise.galacticDb(new Frequency(50)),
                ExternalNoise.galacticDb(new Frequency(155)),
                ExternalNoise.galacticDb(new Frequency(446)),
                "",
                "",
                "Rec. ITU-R P.372-16" + MEMORY + "; contained in the rows above");
    }

    private void commands() {
        table("Options of commands that are left out", "command", "option", "taken as", "origin");
        row("`bench`", "`--settle-db`", of(initial("BenchCommand", "settleDb"), "dB"), OURS);
        row("", "`--trials`", initial("BenchCommand", "trials"), PRACTICE);
        row("", "`--lot`", initial("BenchCommand", "lot"), OURS);
        row("`match`", "`--system-ohm`", of(initial("MatchCommand", "systemOhm"), "ohm"), PRACTICE);
        row("`pattern`", "`--step-deg`", of(initial("PatternCommand", "stepDeg"), "degrees"), OURS);
        row("`walk --next`", "`--reports`", initial("WalkCommand", "reports"), OURS);
    }

    /** What a field of a command holds before any option sets it. */
    private static double initial(String command, String field) {
        try {
            Class<?> type = Class.forName("handreach.cli." + command);
            var made = type.getDeclaredConstructor();
            made.setAccessible(true);
            Field declared = type.getDeclaredField(field);
            declared.setAccessible(true);
            return ((Number) declared.get(made.newInstance())).doubleValue();
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(command + "." + field, e);
        }
    }

    /** How a doubt that a bench file declares is taken where its line gives only a number. */
    private void benchDoubts() {
        table("Doubts of a bench file given as a number only", "declaration", "shape", "known to", "origin");
        try {
            for (Object key :
                    Class.forName("handreach.bench.DeclarationReader$DoubtKey").getEnumConstants()) {
                Field shape = key.getClass().getDeclaredField("shape");
                Field known = key.getClass().getDeclaredField("relativeDoubt");
                shape.setAccessible(true);
                known.setAccessible(true);
                row(
                        "`" + key.toString().toLowerCase(Locale.ROOT) + "`",
                        shape.get(key).toString().toLowerCase(Locale.ROOT).replace('_', '-'),
                        of(100 * known.getDouble(key), "%"),
                        OURS + "; shapes: JCGM 100:2008, 4.3");
            }
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        }
    }

    private void decisions() {
        table("Where answers draw a line", "what", "taken as", "origin");
        Channel.CopyWish some = Channel.CopyWish.SOME_COPY;
        row(
                "some copy",
                some.quality().word() + ", " + some.fading().word() + ", odds " + number(some.odds()),
                PRACTICE);
        row("longest gap in a continuous reach", of(RadialReach.LONGEST_GAP_M, "m"), OURS);
        row("turning round is worth saying from", of(Turning.WORTH_SAYING_DB, "dB"), OURS);
        row(
                "a bearing is dead below this share of the median farthest place, has an early gap below it of the median reach",
                real("report.card.DeadGround", "SHARE_OF_MEDIAN"),
                OURS);
        row("blocking ratio of a relay's receiver", of(RelayEquipment.BLOCKING_RATIO_DB, "dB"), "EN 300 086" + MEMORY);
        row("doubt of the gain of a relay's antenna", of(real("relay.RelayEquipment", "GAIN_DOUBT_DB"), "dB"), OURS);
        row("most that two antennas on one mast are counted to be apart", of(Isolation.SPACING_LIMIT_DB, "dB"), OURS);
        for (RelayMode mode : RelayMode.values())
            row("desense of a relay, " + mode.word(), of(mode.desenseDb(), "dB"), OURS);
        row("pace off paths", real("relay.HikingTime", "OFF_PATH"), "Tobler 1993" + MEMORY);
    }

    @Test
    void thePageIsWhatTheProgramTakes() throws IOException {
        String composed = composed();
        if (Boolean.getBoolean("handreach.rewrite")) Files.writeString(PAGE, composed);
        assertEquals(composed, Files.readString(PAGE));
    }

    /** A default in a reader that the page does not know is one that the page has gone stale by. */
    @Test
    void everyDefaultOfAPlanIsOnThePage() throws IOException {
        String written = Files.readString(PAGE);
        Set<String> missing = new TreeSet<>();
        int found = 0;
        List<Path> readers;
        try (Stream<Path> files = Files.list(READERS)) {
            readers =
                    files.filter(file -> !file.endsWith("CalibrationFile.java")).toList();
        }
        for (Path reader : readers) {
            String source = Files.readString(reader);
            String self = reader.getFileName().toString().replace(".java", "");
            for (Matcher word = WORD.matcher(source); word.find(); found++)
                if (!written.contains("`" + word.group(1) + "`")) missing.add(word.group(1));
            for (Matcher number = NUMBER.matcher(source); number.find(); found++) {
                String owner = number.group(1) == null ? self : number.group(1).replace(".", "");
                String key = range(owner, number.group(2)).key();
                if (!written.contains("`" + key + "`")) missing.add(key);
            }
        }
        assertEquals(Set.of(), missing);
        assertFalse(found < 30, found + " defaults found in the readers");
    }

    private static Range range(String owner, String field) {
        for (String home : HOMES) {
            try {
                Class.forName("handreach." + home + "." + owner);
            } catch (ClassNotFoundException e) {
                continue;
            }
            return (Range) constant(home + "." + owner, field);
        }
        throw new AssertionError(owner);
    }
}
