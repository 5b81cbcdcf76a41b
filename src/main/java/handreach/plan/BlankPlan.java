package handreach.plan;

import handreach.geodesy.Position;
import handreach.input.AtomicFile;
import handreach.input.Faults;
import handreach.input.FillIn;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.input.Sources;
import handreach.input.Target;
import handreach.terrain.Surface;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** A plan to be filled in: what only its people know is marked, and refused line by line as long as it stands; the rest may stay. */
public final class BlankPlan {
    /** Stands where a value must be put in. */
    private static final String MARK = "\"" + FillIn.WORDS + "\"";

    private static final String ENDING = ".toml";
    private static final String TO_FILL_IN =
            "# A plan to fill in. Put a value in place of every \"FILL IN\"; numbers without quotes, places and words with them.\n";
    private static final String TEXT = """
            # Lines that begin with # are remarks: take the # away from what you need. docs/plan-file.md has every key.
            title = "Our ground"
            # units = "imperial"            # tables and cards in miles, feet and inches

            [channel]
            name = "crew"
            frequency_mhz = "FILL IN"       # such as 155.16

            [target]
            odds = 0.8                      # wanted share of places with copy

            [ground]
            tiles = "tiles"                 # folder with elevation tiles beside this file (docs/tiles.md)
            surface = "bare-earth"          # what the tiles describe: bare-earth, radar (SRTM) or surface-model
            cover = "FILL IN"               # what stands there: open, woodland, suburban, urban, dense-urban, water

            # [bench]                       # your readings; handreach bench --template --plan FOLDER writes a blank sheet for them
            # file = "session.csv"
            # control = "factory"           # the control as the sheet names it

            [[radio]]
            name = "handheld"
            power_w = "FILL IN"             # such as 5, at the antenna socket
            sensitivity_dbm = "FILL IN"     # level for 12 dB SINAD, from the data sheet; -119 is common practice, no source

            [[antenna]]
            name = "factory"
            control = true                  # the one that all others are held against
            radiator = "short-helical"
            # length_cm = 15
            # mass_g = 20

            # [[antenna]]                   # another like this for every antenna that you measured
            # name = "long whip"
            # radiator = "quarter-wave"     # or half-wave-end-fed, five-eighths, short-helical, half-wave-dipole, monopole
            # delta_db = 3.5                # decibels over the factory antenna; this line and the next two are not
            # delta_uncertainty_db = 1.0    # needed where [bench] has its readings, or else all three
            # delta_mount = "in hand"
            # length_cm = 46
            # mass_g = 40

            [[loadout]]
            name = "factory at face"
            antenna = "factory"
            carry = "face"                  # or chest, shoulder-mic, hip-swivel, hip-tight, vehicle, roof, mast

            # [[loadout]]
            # name = "long whip at face"
            # antenna = "long whip"
            # carry = "face"

            [area]
            centre = "base"
            radius_km = 5

            [reach]
            # model = "handheld"            # the closed form; without this line full-wave over bare ground where its map takes seconds

            [[position]]
            name = "base"
            at = "FILL IN"                  # latitude, longitude such as "46.5, 8.1"; UTM and MGRS are read too
            loadout = "factory at face"
            base = true

            # [[position]]                  # another like this for every place where people are to be heard
            # name = "north wood"
            # at = "46.52, 8.11"
            # loadout = "factory at face"
            """;

    /** The name of its one position. */
    public static final String HERE = "base";

    /** Common practice, no source; the remark beside the key says so. */
    private static final double USUAL_SENSITIVITY_DBM = -119;

    private BlankPlan() {}

    /**
     * What its people know, and what can be seen from their tiles.
     *
     * @param tiles folder of the elevation tiles
     * @param cover word of what stands there
     */
    public record Known(
            String title,
            double mhz,
            double watts,
            Path tiles,
            Surface surface,
            String cover,
            Position at,
            double radiusKm) {}

    /** The same plan with everything put in. */
    public static String filled(Known known) {
        String text = PlanText.withTopValue(TEXT, "title", PlanText.quoted(known.title()));
        text = PlanText.withValue(text, "channel", "frequency_mhz", PlanText.number(known.mhz()));
        text = PlanText.withValue(
                text, "ground", "tiles", PlanText.quoted(known.tiles().toString()));
        text = PlanText.withValue(
                text, "ground", "surface", PlanText.quoted(known.surface().word()));
        text = PlanText.withValue(text, "ground", "cover", PlanText.quoted(known.cover()));
        text = PlanText.withEntryValue(text, "radio", 0, "power_w", PlanText.number(known.watts()));
        text = PlanText.withEntryValue(text, "radio", 0, "sensitivity_dbm", PlanText.number(USUAL_SENSITIVITY_DBM));
        text = PlanText.withEntryValue(text, "position", HERE, "at", PlanText.place(known.at()));
        text = PlanText.withValue(text, "reach", "from", PlanText.quoted(HERE));
        return PlanText.withValue(text, "area", "radius_km", PlanText.number(known.radiusKm()));
    }

    /** Refuses a plan in which marks still stand, by these alone: what else is wrong mostly comes of them. */
    static void refuse(SourceText plan) {
        Faults faults = new Faults();
        List<String> lines = plan.lines();
        for (int i = 0; i < lines.size(); i++) {
            int equals = lines.get(i).indexOf('=');
            if (equals < 0 || !lines.get(i).substring(equals + 1).strip().startsWith(MARK)) continue;
            String key = lines.get(i).substring(0, equals).strip();
            if (!key.startsWith("#"))
                faults.add(
                        plan.name(),
                        i + 1,
                        key + " still says FILL IN. Put your value there, as the remark beside it shows.");
        }
        faults.throwIfAny();
    }

    /** Writes it to a file that ends in {@code .toml}, or as {@code plan.toml} into a folder, which is made; what is there stays. */
    public static Path write(Path fileOrFolder) {
        String name = String.valueOf(fileOrFolder.getFileName());
        boolean isFile = name.toLowerCase(Locale.ROOT).endsWith(ENDING) && !Files.isDirectory(fileOrFolder);
        Path file = isFile ? fileOrFolder : fileOrFolder.resolve(PlanFile.USUAL_NAME);
        if (Files.exists(file))
            throw new InputFault(
                    file.toString(), 0, "is there already. Name another file or folder. What is there is unchanged.");
        Target.look(file, Sources.NONE);
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            AtomicFile.write(file, out -> out.write((TO_FILL_IN + TEXT).getBytes(StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new InputFault(
                    file.toString(),
                    0,
                    "could not be written (" + SourceText.reason(e)
                            + "). Check the name, the rights and free space, or name another folder.");
        }
        return file;
    }
}
