package handreach.plan;

import handreach.input.Faults;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.input.Range;
import handreach.loadout.Battery;
import handreach.loadout.Carry;
import handreach.loadout.Loadout;
import handreach.loadout.Radiator;
import handreach.loadout.Radio;
import handreach.loadout.StatedSensitivity;
import handreach.units.Dbd;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Reads what people carry out of a plan. */
final class EquipmentReader {
    static final Range LENGTH = new Range("length_cm", 1, 400, "cm");
    static final Range MASS = new Range("mass_g", 0, 5000, "g");
    static final Range PRICE = new Range("price", 0, 1e6, "");
    static final Range STIFFNESS = new Range("stiffness", 0, 10, "");
    static final Range BURDEN_RANK = new Range("burden_rank", 1, 1000, "");
    static final Range DELTA = new Range("delta_db", -40, 40, "dB");
    static final Range DELTA_UNCERTAINTY = new Range("delta_uncertainty_db", 0, 20, "dB");
    static final Range SWR = new Range("swr", 1, 100, "");
    static final Range GAIN_DBI = new Range("gain_dbi", -40, 40, "dBi");
    static final Range GAIN_DBD = new Range("gain_dbd", -40, 40, "dBd");
    static final Range GAIN_UNCERTAINTY = new Range("gain_uncertainty_db", 0, 20, "dB");
    static final Range ANCHOR_GAIN = new Range("control_gain_dbd", -40, 10, "dBd");
    static final Range UNCERTAINTY = new Range("uncertainty_db", 0, 20, "dB");
    static final Range CARRY_GAIN = new Range("control_gain_dbd", -60, 10, "dBd");
    static final Range SPREAD = new Range("spread_db", 0, 20, "dB");

    private final String source;
    private final Path folder;
    private final PlanSection root;
    private final Faults faults;

    EquipmentReader(String source, Path folder, PlanSection root, Faults faults) {
        this.source = source;
        this.folder = folder;
        this.root = root;
        this.faults = faults;
    }

    Equipment equipment(List<String> channels) {
        Optional<Equipment.Bench> bench = bench();
        List<Equipment.RadioEntry> radios = radios();
        List<Equipment.AntennaEntry> antennas = antennas(bench);
        List<Equipment.LoadoutEntry> loadouts = loadouts(
                radios.stream().map(Equipment.RadioEntry::name).toList(),
                antennas.stream().map(Equipment.AntennaEntry::name).toList());
        return new Equipment(bench, radios, antennas, deltas(antennas, channels), loadouts, carries(), anchor());
    }

    Optional<Equipment.Bench> bench() {
        if (!root.has("bench")) return Optional.empty();
        PlanSection section = root.table("bench");
        Optional<Path> file = PlanReader.existing(section, "file", false, folder, faults);
        if (!section.has("file")) faults.add(source, section.line(), "[bench] has no file. Add file = \"bench.csv\".");
        String control = section.required("control", "factory helical");
        String mount = section.text("mount").orElse("");
        section.refuseUnknownKeys();
        return file.map(path -> new Equipment.Bench(path, control, mount));
    }

    private List<Equipment.RadioEntry> radios() {
        List<Equipment.RadioEntry> radios = new ArrayList<>();
        Map<String, List<Equipment.PowerEntry>> steps = powerSteps();
        Set<String> names = new HashSet<>();
        for (PlanSection section : root.tables("radio")) {
            String name = name(section, names, "handheld 5 W");
            double power = section.requiredNumber(Radio.POWER);
            OptionalDouble sensitivity = sensitivity(section);
            OptionalDouble noise = section.number(Radio.NOISE_FIGURE);
            if (sensitivity.isEmpty()
                    && noise.isEmpty()
                    && !section.has("sensitivity_dbm")
                    && !section.has("sensitivity_uv")
                    && !section.has("noise_figure_db"))
                faults.add(
                        source,
                        section.line(),
                        "[radio] " + name
                                + " has neither sensitivity_dbm, sensitivity_uv nor noise_figure_db. Add sensitivity_dbm = -119 (the"
                                + " level for 12 dB SINAD, or the digital reference sensitivity, from its data sheet).");
            Optional<Equipment.BatteryEntry> battery = battery(section);
            section.refuseUnknownKeys();
            radios.add(new Equipment.RadioEntry(
                    name, power, sensitivity, noise, steps.getOrDefault(name, new ArrayList<>()), battery));
        }
        if (radios.isEmpty())
            faults.add(source, 1, "the plan has no [[radio]]. Add one with name, power_w, sensitivity_dbm.");
        return radios;
    }

    /** Lower powers by the radio that has them; the first radio's where none is named. */
    private Map<String, List<Equipment.PowerEntry>> powerSteps() {
        List<String> radios = root.tables("radio").stream()
                .flatMap(section -> section.text("name").stream())
                .toList();
        Map<String, List<Equipment.PowerEntry>> steps = new HashMap<>();
        for (PlanSection section : root.tables("power_step")) {
            String radio = section.has("radio")
                    ? section.reference(Reference.RADIO, radios).orElse("")
                    : radios.isEmpty() ? "" : radios.get(0);
            double power = section.requiredNumber(Radio.POWER);
            OptionalDouble send = section.number(Battery.SEND);
            section.refuseUnknownKeys();
            steps.computeIfAbsent(radio, name -> new ArrayList<>()).add(new Equipment.PowerEntry(power, send));
        }
        return steps;
    }

    private static Optional<Equipment.BatteryEntry> battery(PlanSection section) {
        OptionalDouble capacity = section.number(Battery.CAPACITY);
        OptionalDouble send = section.number(Battery.SEND);
        OptionalDouble receive = section.number(Battery.RECEIVE);
        OptionalDouble wait = section.number(Battery.WAIT);
        double sendPercent = section.number(Battery.SEND_PERCENT, Battery.USUAL_PERCENT);
        double receivePercent = section.number(Battery.RECEIVE_PERCENT, Battery.USUAL_PERCENT);
        List<String> needed = List.of("battery_mah", "send_ma", "receive_ma", "wait_ma");
        List<String> there = needed.stream().filter(section::has).toList();
        if (there.isEmpty()) {
            for (String key : List.of("send_percent", "receive_percent"))
                if (section.has(key))
                    section.fault(key, "means nothing without " + String.join(", ", needed) + ". Add them.");
            return Optional.empty();
        }
        if (there.size() < needed.size()) {
            section.fault(
                    there.get(0),
                    "does not give hours by itself. Needed together are " + String.join(", ", needed)
                            + ", from the data sheet or an ammeter.");
            return Optional.empty();
        }
        if (capacity.isEmpty() || send.isEmpty() || receive.isEmpty() || wait.isEmpty()) return Optional.empty();
        return Optional.of(new Equipment.BatteryEntry(
                new Battery(
                        capacity.getAsDouble(),
                        receive.getAsDouble(),
                        wait.getAsDouble(),
                        sendPercent / 100,
                        receivePercent / 100),
                send.getAsDouble()));
    }

    /** In dBm, or in microvolts with what they stand for. */
    static OptionalDouble sensitivity(PlanSection section) {
        OptionalDouble dbm = section.number(Radio.SENSITIVITY);
        OptionalDouble microvolts = section.number(StatedSensitivity.MICROVOLTS);
        StatedSensitivity.Across across =
                section.word("sensitivity_across", StatedSensitivity.Across.KEYWORD, StatedSensitivity.Across.LOAD);
        StatedSensitivity.Mark mark =
                section.word("sensitivity_for", StatedSensitivity.Mark.KEYWORD, StatedSensitivity.Mark.SINAD_12);
        if (!section.has("sensitivity_uv")) {
            for (String key : List.of("sensitivity_across", "sensitivity_for"))
                if (section.has(key))
                    section.fault(key, "says how sensitivity_uv is meant, which is not there. Add it.");
            return dbm;
        }
        if (section.has("sensitivity_dbm"))
            section.fault("sensitivity_uv", "stands beside sensitivity_dbm, which says the same. Keep one.");
        if (!section.has("sensitivity_across"))
            section.fault(
                    "sensitivity_uv",
                    "does not say where the voltage is meant. Add sensitivity_across = \"50-ohm\" (at the socket) or"
                            + " \"open-circuit\" (EMF, twice as many microvolts); the data sheet says which, and the two lie 6 dB"
                            + " apart.");
        if (microvolts.isEmpty()) return OptionalDouble.empty();
        double level = StatedSensitivity.ofMicrovolts(microvolts.getAsDouble(), across, mark)
                .dbm();
        if (Radio.SENSITIVITY.accepts(level)) return OptionalDouble.of(level);
        section.fault(
                "sensitivity_uv", Radio.SENSITIVITY.fault(NumberText.plain(Math.round(10 * level) / 10.0) + " dBm"));
        return OptionalDouble.empty();
    }

    /** The control goes on the bench under the name that [bench] gives it. */
    List<Equipment.AntennaEntry> antennas(Optional<Equipment.Bench> bench) {
        List<Equipment.AntennaEntry> antennas = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (PlanSection section : root.tables("antenna")) {
            String name = name(section, names, "factory helical");
            boolean control = section.flag("control", false);
            Radiator radiator = section.word("radiator", Radiator.KEYWORD, Radiator.SHORT_HELICAL);
            Equipment.Size size = new Equipment.Size(
                    section.number(LENGTH),
                    section.number(MASS),
                    section.number(PRICE),
                    section.number(STIFFNESS),
                    section.whole(BURDEN_RANK));
            Equipment.DeltaEntry delta =
                    delta(section, control ? bench.map(Equipment.Bench::control).orElse(name) : name, control);
            Equipment.Known known = new Equipment.Known(
                    PlanReader.existing(section, "pattern", false, folder, faults),
                    statedGain(section, control),
                    section.has("radiator"));
            section.refuseUnknownKeys();
            antennas.add(new Equipment.AntennaEntry(name, control, radiator, size, delta, known));
        }
        long controls =
                antennas.stream().filter(Equipment.AntennaEntry::control).count();
        if (antennas.isEmpty())
            faults.add(source, 1, "the plan has no [[antenna]]. Add one with name and control = true.");
        else if (controls != 1)
            faults.add(
                    source,
                    root.tables("antenna").get(0).line(),
                    controls
                            + " antennas are marked control = true, exactly one is expected: the factory antenna that the others are"
                            + " compared with. Mark that one.");
        return antennas;
    }

    private Equipment.DeltaEntry delta(PlanSection section, String usualBenchName, boolean control) {
        String benchName = section.text("bench").orElse(usualBenchName);
        Optional<String> withWire = section.text("bench_with_counterpoise");
        OptionalDouble delta = section.number(DELTA);
        OptionalDouble uncertainty = section.number(DELTA_UNCERTAINTY);
        Optional<String> mount = section.text("delta_mount");
        OptionalDouble swr = section.number(SWR);
        section.refuse(
                "gain_db",
                "has no reference. Ask the seller: over what, an isotropic antenna (gain_dbi) or a half-wave dipole (gain_dbd, 2.15 dB"
                        + " more)? And mounted on what, a metal plane or a handheld's case, where a whip has some 3 dB less?"
                        + " Decibels over the control of this plan go into delta_db.");
        if (delta.isPresent() && !(section.has("delta_uncertainty_db") && section.has("delta_mount")))
            section.fault(
                    "delta_db",
                    "stands alone. Add delta_uncertainty_db (its standard uncertainty) and delta_mount (how it was held).");
        if (delta.isPresent() && control)
            section.fault("delta_db", "is given for the control, whose delta over itself is 0. Remove it.");
        return new Equipment.DeltaEntry(benchName, withWire, delta, uncertainty, mount, swr);
    }

    private List<Equipment.ChannelDelta> deltas(List<Equipment.AntennaEntry> antennas, List<String> channels) {
        List<Equipment.ChannelDelta> deltas = new ArrayList<>();
        Set<List<String>> seen = new HashSet<>();
        List<String> names = antennas.stream().map(Equipment.AntennaEntry::name).toList();
        for (PlanSection section : root.tables("delta")) {
            String antenna = section.reference(Reference.ANTENNA, names).orElse("");
            if (!section.has("antenna")) section.fault("antenna", "is missing. Name one of the plan's antennas.");
            String channel = section.requiredName(section.keyOf(Reference.CHANNEL), channels.get(0));
            if (!channel.isEmpty() && !channels.contains(channel))
                section.fault(
                        "channel",
                        "is \"" + channel + "\", but the plan has no channel of that name."
                                + NearestWord.hint(channel, channels) + " It has: " + String.join(", ", channels)
                                + ".");
            double delta = section.requiredNumber(DELTA);
            double uncertainty = section.requiredNumber(DELTA_UNCERTAINTY);
            String mount = section.required("delta_mount", "in hand");
            section.refuseUnknownKeys();
            if (antennas.stream().anyMatch(one -> one.control() && one.name().equals(antenna)))
                section.fault("delta_db", "is given for the control, whose delta over itself is 0. Remove it.");
            if (!seen.add(List.of(antenna, channel)))
                section.fault("channel", "has a delta of that antenna already. Keep one of them.");
            deltas.add(new Equipment.ChannelDelta(antenna, channel, delta, uncertainty, mount));
        }
        return deltas;
    }

    /** A line between radio and antenna: none on a person. */
    private static double feedLossDb(PlanSection section, String name, Carry carry) {
        double feedDb = section.number(QuestionsReader.FEED_LOSS, 0);
        if (feedDb > 0 && (carry.isAtBody()))
            section.fault(
                    QuestionsReader.FEED_LOSS.key(),
                    "is the loss of a line, but " + name + " is carried " + carry.word()
                            + ", with the antenna on the radio. Write carry = \"roof\" or \"mast\", or leave it out.");
        return feedDb;
    }

    private List<Equipment.LoadoutEntry> loadouts(List<String> radios, List<String> antennas) {
        List<Equipment.LoadoutEntry> loadouts = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (PlanSection section : root.tables("loadout")) {
            String name = name(section, names, "whip at face");
            String radio = section.has("radio")
                    ? section.reference(Reference.RADIO, radios).orElse("")
                    : radios.isEmpty() ? "" : radios.get(0);
            String antenna = section.reference(Reference.ANTENNA, antennas).orElse("");
            if (!section.has("antenna"))
                faults.add(
                        source,
                        section.line(),
                        "[[loadout]] " + name + " has no antenna. Name one of the plan's antennas.");
            boolean counterpoise = section.flag("counterpoise", false);
            Carry carry = section.word("carry", Carry.KEYWORD, Carry.FACE);
            Equipment.Hold hold = new Equipment.Hold(
                    section.number(Loadout.HEIGHT), section.number(Loadout.TILT, 0), feedLossDb(section, name, carry));
            Optional<NoiseChoice> noise = NoiseChoice.read(section);
            section.refuseUnknownKeys();
            loadouts.add(new Equipment.LoadoutEntry(name, radio, antenna, counterpoise, carry, hold, noise));
        }
        if (loadouts.isEmpty())
            faults.add(source, 1, "the plan has no [[loadout]]. Add one with name, antenna and carry.");
        return loadouts;
    }

    static Optional<Equipment.StatedGain> statedGain(PlanSection section, boolean control) {
        OptionalDouble dbi = section.number(GAIN_DBI);
        OptionalDouble dbd = section.number(GAIN_DBD);
        double uncertainty = section.number(GAIN_UNCERTAINTY, 1);
        String source = section.text("gain_source").orElse("stated in the plan");
        if (dbi.isEmpty() && dbd.isEmpty()) return Optional.empty();
        if (dbi.isPresent() && dbd.isPresent())
            section.fault("gain_dbd", "and gain_dbi say the same against two references. Keep one of them.");
        if (control)
            section.fault(
                    dbi.isPresent() ? "gain_dbi" : "gain_dbd",
                    "is given for the control. State it in [anchor] as control_gain_dbd, so that all deltas stand on it.");
        double value = dbi.isPresent()
                ? dbi.getAsDouble()
                : new Dbd(dbd.orElse(0)).toDbi().dbi();
        return Optional.of(new Equipment.StatedGain(value, uncertainty, source));
    }

    private Optional<Equipment.AnchorEntry> anchor() {
        if (!root.has("anchor")) return Optional.empty();
        PlanSection section = root.table("anchor");
        Equipment.AnchorEntry anchor = new Equipment.AnchorEntry(
                section.requiredNumber(ANCHOR_GAIN),
                section.requiredNumber(UNCERTAINTY),
                section.text("source").orElse("measured, as stated in the plan"));
        section.refuseUnknownKeys();
        return Optional.of(anchor);
    }

    private List<Equipment.CarryEntry> carries() {
        List<Equipment.CarryEntry> carries = new ArrayList<>();
        for (PlanSection section : root.tables("carry_loss")) {
            Carry carry = section.word("carry", Carry.KEYWORD, Carry.FACE);
            double gain = section.requiredNumber(CARRY_GAIN);
            double doubt = section.requiredNumber(UNCERTAINTY);
            double spread = section.number(SPREAD, 3);
            section.refuseUnknownKeys();
            carries.add(new Equipment.CarryEntry(carry, gain, doubt, spread));
        }
        return carries;
    }

    private String name(PlanSection section, Set<String> names, String example) {
        String name = section.requiredName("name", example);
        if (!name.isEmpty() && !names.add(name))
            section.fault("name", "\"" + name + "\" is used twice. Give every entry a name of its own.");
        return name;
    }
}
