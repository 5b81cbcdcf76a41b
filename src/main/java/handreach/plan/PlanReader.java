package handreach.plan;

import handreach.geodesy.Place;
import handreach.geodesy.PlaceForm;
import handreach.geodesy.Position;
import handreach.input.CappedFile;
import handreach.input.Faults;
import handreach.input.FileName;
import handreach.input.InputFault;
import handreach.input.Keyword;
import handreach.input.Range;
import handreach.input.SourceText;
import handreach.loadout.CopyQuality;
import handreach.loadout.Fading;
import handreach.loadout.Modulation;
import handreach.loadout.NeededWays;
import handreach.propagation.Atmosphere;
import handreach.propagation.Foliage;
import handreach.propagation.Ground;
import handreach.propagation.GroundType;
import handreach.propagation.NoiseEnvironment;
import handreach.terrain.Cover;
import handreach.terrain.CoverLegend;
import handreach.terrain.Surface;
import handreach.units.Bearings;
import handreach.units.Decibels;
import handreach.units.Frequency;
import handreach.units.Lengths;
import handreach.units.Polarization;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;

/** Reads the text of a plan file; every fault of the file is told together. */
final class PlanReader {
    /** Characters of a plan or calibration; taking them apart costs up to 3 kB of passing memory and 4 µs each. */
    private static final long LONGEST = 256 << 10;

    private static final String NO_PLAN =
            "That is more than a thousand people and places; check that it is the right file.";
    private static final String ADVICE = "Start from a sample plan.";
    /** How much of a plan or calibration is read. */
    static final CappedFile.Cap CAP = new CappedFile.Cap(LONGEST, 400, NO_PLAN);

    static final Range FORMAT = new Range("format", 1, 1, "");

    static final Keyword<Lengths> LENGTHS =
            Keyword.of(List.of(Lengths.values()), lengths -> lengths.name().toLowerCase(Locale.ROOT));
    private static final Pattern DECIMAL_COMMA =
            Pattern.compile("\\s*([\\w-]+)\\s*=\\s*([+-]?\\d{1,12}),(\\d{1,12})\\s*(?:#.*)?");

    private static final Pattern BARE_WORD =
            Pattern.compile("\\s*([\\w-]{1,60})\\s*=\\s*([A-Za-z][\\w .-]{0,60}?)\\s*(?:#.*)?");
    private static final Set<String> YES = Set.of("yes", "on", "true");
    private static final Set<String> NO = Set.of("no", "off", "false");

    private final Faults faults = new Faults();
    private final String source;
    private final Path folder;
    private final PlanSection root;

    private PlanReader(String source, Path folder, TomlParseResult toml, boolean isBeforeBench) {
        this.source = source;
        this.folder = folder;
        this.root = new PlanSection(source, "", toml, 1, faults, isBeforeBench);
    }

    /** Reads the plan; file names in it are taken relative to the folder. */
    static Plan read(SourceText text, Path folder) {
        TomlParseResult toml = parsed(text, ADVICE);
        BlankPlan.refuse(text);
        PlanReader reader = new PlanReader(text.name(), folder, toml, false);
        Plan plan = reader.plan();
        reader.faults.throwByLine();
        return plan;
    }

    /** Reads channel, bench and antennas alone, whatever is still to be filled in elsewhere; no file that is named need be there. */
    static PlanBeforeBench readBeforeBench(SourceText text, Path file) {
        TomlParseResult toml = parsed(text, ADVICE);
        PlanReader reader = new PlanReader(text.name(), file.toAbsolutePath().getParent(), toml, true);
        PlanSection channel = reader.root.tableOrTables("channel").get(0);
        Range key = channel.has(Channel.FREQUENCY.key()) ? Channel.FREQUENCY : StationReader.TRANSMIT;
        OptionalDouble mhz = channel.isToBeFilledIn(key.key()) ? OptionalDouble.empty() : channel.number(key);
        EquipmentReader equipment = new EquipmentReader(reader.source, reader.folder, reader.root, reader.faults);
        Optional<Equipment.Bench> bench = equipment.bench();
        List<Equipment.AntennaEntry> antennas = equipment.antennas(bench);
        reader.faults.throwByLine();
        return new PlanBeforeBench(
                file, mhz, bench, antennas, reader.root.tables("antenna").get(0).line());
    }

    /** The parsed text; what the library cannot take apart, such as brackets nested without end, is a fault like any other. */
    static TomlParseResult parsed(SourceText text, String advice) {
        long length =
                text.lines().stream().mapToLong(line -> line.length() + 1L).sum();
        if (length > LONGEST)
            throw new InputFault(
                    text.name(),
                    0,
                    "is " + (length >> 10) + " KiB, at most " + (LONGEST >> 10) + " KiB are read. " + NO_PLAN);
        TomlParseResult toml;
        try {
            toml = Toml.parse(text.text());
        } catch (RuntimeException | StackOverflowError e) {
            throw new InputFault(text.name(), 0, "is not a TOML file. " + advice);
        }
        if (!toml.hasErrors()) return toml;
        Faults faults = new Faults();
        toml.errors().forEach(error -> {
            String message =
                    String.valueOf(error.getMessage()).replaceAll("\\s+", " ").strip();
            int line = error.position() == null ? 0 : error.position().line();
            faults.add(
                    text.name(),
                    line,
                    decimalComma(text, line)
                            .or(() -> bareWord(text, line))
                            .orElse("is not TOML here: " + message + ". Check quotes and brackets on this line."));
        });
        throw new InputFault(faults.list());
    }

    /** What to say of a line on which a word stands without quotes, or yes and no in place of true and false. */
    private static Optional<String> bareWord(SourceText text, int line) {
        if (line < 1 || line > text.lines().size()) return Optional.empty();
        Matcher bare = BARE_WORD.matcher(text.lines().get(line - 1));
        if (!bare.matches()) return Optional.empty();
        String key = bare.group(1);
        String word = bare.group(2);
        String small = word.toLowerCase(Locale.ROOT);
        if (YES.contains(small) || NO.contains(small))
            return Optional.of(key + " is " + word + ", true or false is expected. Write "
                    + (YES.contains(small) ? "true" : "false") + ".");
        return Optional.of(
                key + " is " + word + ", a text in quotes is expected. Write " + key + " = \"" + word + "\".");
    }

    /** What to say of a line on which a number has a comma where its point should be. */
    private static Optional<String> decimalComma(SourceText text, int line) {
        if (line < 1 || line > text.lines().size()) return Optional.empty();
        Matcher number = DECIMAL_COMMA.matcher(text.lines().get(line - 1));
        if (!number.matches()) return Optional.empty();
        String found = number.group(2) + "," + number.group(3);
        return Optional.of(number.group(1) + " is " + found + ", a number with a point is expected. Write "
                + number.group(2) + "." + number.group(3) + ".");
    }

    private Plan plan() {
        root.number(FORMAT);
        PlanHeader header = header();
        List<Channel> channels = channels();
        Equipment equipment = new EquipmentReader(source, folder, root, faults)
                .equipment(channels.stream().map(Channel::name).toList());
        List<String> loadouts =
                equipment.loadouts().stream().map(Equipment.LoadoutEntry::name).toList();
        PlacesReader places = new PlacesReader(folder, root, faults, loadouts);
        Places where = places.places();
        GroundChoice ground = ground();
        Questions questions = new QuestionsReader(folder, root, faults, loadouts, where).questions();
        root.refuseUnknownKeys();
        if (!faults.isEmpty()) return null;
        return new Plan(header, channels.get(0), channels, ground, equipment, where, questions);
    }

    private PlanHeader header() {
        String title = root.requiredName("title", "Tern Valley, first week");
        String note = root.text("note").orElse("");
        PlaceForm form = root.word("place_form", PlaceForm.KEYWORD, PlaceForm.DECIMAL);
        Lengths lengths = root.word("units", LENGTHS, Lengths.METRIC);
        return new PlanHeader(title, note, form, lengths, new Bearings(root.number(PlanHeader.DECLINATION)));
    }

    /** One [channel], or several [[channel]] with the first as the usual one; all share the [target]. */
    private List<Channel> channels() {
        if (!root.has("channel")) faults.add(source, 1, "the plan has no [channel]. Add one with frequency_mhz.");
        Channel.CopyWish wish = wish();
        List<Channel> channels = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (PlanSection section : root.tableOrTables("channel")) {
            Channel channel = channel(section, wish);
            if (!names.add(channel.name()))
                section.fault(
                        "name", "\"" + channel.name() + "\" is used twice. Give every channel a name of its own.");
            channels.add(channel);
        }
        return channels;
    }

    private static Channel channel(PlanSection section, Channel.CopyWish wish) {
        Optional<Channel.Split> split = split(section);
        boolean isSaid = section.has(Channel.FREQUENCY.key()) || !section.has(StationReader.TRANSMIT.key());
        double mhz = isSaid
                ? section.requiredNumber(Channel.FREQUENCY)
                : split.map(ways -> ways.transmit().mhz()).orElse(StationReader.TRANSMIT.low());
        Polarization polarization = section.word("polarization", Channel.POLARIZATION, Polarization.VERTICAL);
        Modulation modulation = section.word("modulation", Modulation.KEYWORD, Modulation.FM_12_5);
        String name = section.name("name").orElseGet(() -> Decibels.number(mhz, 4) + " MHz");
        section.refuseUnknownKeys();
        return new Channel(name, new Frequency(mhz), polarization, modulation, wish, split);
    }

    /** What a relay on the channel hears and sends. */
    private static Optional<Channel.Split> split(PlanSection section) {
        OptionalDouble receive = section.number(StationReader.RECEIVE);
        OptionalDouble transmit = section.number(StationReader.TRANSMIT);
        boolean hasReceive = section.has(StationReader.RECEIVE.key());
        if (hasReceive != section.has(StationReader.TRANSMIT.key()))
            section.fault(
                    (hasReceive ? StationReader.RECEIVE : StationReader.TRANSMIT).key(),
                    "stands alone. Give both: receive_mhz, what a relay on this channel hears, and transmit_mhz, what it sends.");
        if (receive.isEmpty() || transmit.isEmpty()) return Optional.empty();
        if (receive.getAsDouble() == transmit.getAsDouble())
            section.fault(
                    StationReader.TRANSMIT.key(),
                    "is what receive_mhz says. A relay on one frequency needs frequency_mhz alone; on two, give both.");
        return Optional.of(
                new Channel.Split(new Frequency(receive.getAsDouble()), new Frequency(transmit.getAsDouble())));
    }

    private Channel.CopyWish wish() {
        PlanSection target = root.table("target");
        Channel.CopyWish wish = new Channel.CopyWish(
                target.word("quality", CopyQuality.KEYWORD, CopyQuality.DAQ_3),
                target.word("fading", Fading.KEYWORD, Fading.WALKING),
                target.number(Channel.ODDS, 0.9),
                target.word("ways", NeededWays.KEYWORD, NeededWays.BOTH));
        target.refuseUnknownKeys();
        return wish;
    }

    private GroundChoice ground() {
        if (!root.has("ground")) faults.add(source, 1, "the plan has no [ground]. Add one with tiles = \"folder\".");
        PlanSection section = root.table("ground");
        Path tiles = existing(section, "tiles", true, folder, faults).orElse(folder);
        if (!section.has("tiles") && root.has("ground"))
            faults.add(source, section.line(), "[ground] has no tiles. Add tiles = \"folder with elevation tiles\".");
        Ground named =
                section.word("type", GroundType.KEYWORD, GroundType.AVERAGE).ground();
        Ground ground = new Ground(
                section.number(Ground.PERMITTIVITY, named.permittivity()),
                section.number(Ground.CONDUCTIVITY, named.conductivity()));
        Atmosphere atmosphere = atmosphere(section);
        NoiseChoice noise = NoiseChoice.read(section).orElse(new NoiseChoice(NoiseEnvironment.RURAL, Optional.empty()));
        GroundChoice.CoverChoice cover = cover(section);
        GroundChoice.Stated stated = new GroundChoice.Stated(
                hasAny(section, "type", Ground.PERMITTIVITY.key(), Ground.CONDUCTIVITY.key()),
                hasAny(
                        section,
                        Atmosphere.SURFACE_REFRACTIVITY.key(),
                        Atmosphere.FACTOR.key(),
                        Atmosphere.GRADIENT.key()),
                section.has("cover"));
        section.refuseUnknownKeys();
        return new GroundChoice(tiles, ground, atmosphere, cover, noise, stated);
    }

    private static boolean hasAny(PlanSection section, String... keys) {
        for (String key : keys) if (section.has(key)) return true;
        return false;
    }

    private static Atmosphere atmosphere(PlanSection section) {
        double n0 = section.number(Atmosphere.SURFACE_REFRACTIVITY, 325);
        OptionalDouble k = section.number(Atmosphere.FACTOR);
        OptionalDouble gradient = section.number(Atmosphere.GRADIENT);
        if (k.isPresent() && gradient.isPresent())
            section.fault("k_factor", "and refractivity_gradient are both given, they say the same. Keep one of them.");
        return k.isPresent()
                ? Atmosphere.ofFactor(k.getAsDouble(), n0)
                : Atmosphere.ofGradient(gradient.orElse(45), n0);
    }

    private GroundChoice.CoverChoice cover(PlanSection section) {
        Surface surface = section.word("surface", Surface.KEYWORD, Surface.BARE_EARTH);
        Cover everywhere = section.word("cover", Cover.KEYWORD, Cover.OPEN);
        Optional<Path> raster = existing(section, "land_cover", false, folder, faults);
        CoverLegend legend = section.word("legend", CoverLegend.KEYWORD, CoverLegend.WORLD_COVER);
        Optional<Path> polygons = existing(section, "cover_areas", false, folder, faults);
        GroundChoice.CoverHeights heights =
                new GroundChoice.CoverHeights(section.number(Cover.CANOPY), section.number(Cover.ROOF));
        Foliage foliage = section.word("foliage", Foliage.KEYWORD, Foliage.IN_LEAF);
        return new GroundChoice.CoverChoice(surface, everywhere, raster, legend, polygons, heights, foliage);
    }

    /** A file or folder named in the plan that must be there, unless the plan is read before its files are. */
    static Optional<Path> existing(PlanSection section, String key, boolean isFolder, Path folder, Faults faults) {
        Optional<Path> path = named(section, key, folder);
        if (path.isEmpty()
                || section.isBeforeFiles()
                || (isFolder ? Files.isDirectory(path.get()) : Files.isRegularFile(path.get()))) return path;
        section.fault(
                key,
                "is \"" + section.text(key).orElseThrow() + "\", but there is no such " + (isFolder ? "folder" : "file")
                        + " beside the plan. Names are relative to the plan's own folder.");
        return Optional.empty();
    }

    /** A file or folder named in the plan, whether it is there or not. */
    static Optional<Path> named(PlanSection section, String key, Path folder) {
        section.checkIsFile(key);
        Optional<String> written = section.text(key);
        if (written.isEmpty()) return Optional.empty();
        try {
            return Optional.of(folder.resolve(written.get()));
        } catch (InvalidPathException e) {
            section.fault(key, "is \"" + written.get() + "\", which " + FileName.refused(e));
        }
        return Optional.empty();
    }

    /** A place written in any of the accepted forms. */
    static Optional<Position> place(PlanSection section, String key) {
        Optional<String> written = section.text(key);
        if (written.isEmpty()) return Optional.empty();
        try {
            return Optional.of(Place.parse(key, written.get()));
        } catch (InputFault e) {
            List<String> texts = new ArrayList<>();
            e.faults().forEach(fault -> texts.add(fault.text()));
            section.fault(key, String.join(" ", texts));
            return Optional.empty();
        }
    }
}
