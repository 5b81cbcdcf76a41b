package handreach.study;

import handreach.bench.AntennaResult;
import handreach.bench.BenchAnalysis;
import handreach.bench.MeterResult;
import handreach.bench.MeterScale;
import handreach.bench.MountResult;
import handreach.bench.Mounting;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.loadout.Antenna;
import handreach.loadout.AntennaDelta;
import handreach.loadout.AntennaGain;
import handreach.loadout.Band;
import handreach.loadout.Burden;
import handreach.loadout.Carry;
import handreach.loadout.CarryLoss;
import handreach.loadout.ControlAnchor;
import handreach.loadout.DeltaMove;
import handreach.loadout.ElevationPattern;
import handreach.loadout.Loadout;
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.loadout.Radio;
import handreach.plan.Channel;
import handreach.plan.Equipment;
import handreach.plan.Plan;
import handreach.plan.PlanFile;
import handreach.uncertainty.Doubt;
import handreach.uncertainty.Estimate;
import handreach.units.Db;
import handreach.units.Dbd;
import handreach.units.Dbi;
import handreach.units.Dbm;
import handreach.units.Decibels;
import handreach.units.Frequency;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Builds loadouts out of what the plan says and what the bench measured. */
final class LoadoutBuilder {
    private static final String WITH_WIRE = " with counterpoise wire";
    /** So near in frequency a delta holds; our suggestion. */
    private static final double SAME_DELTA = 0.05;
    /** Further doubt of a delta on another band, dB; our suggestion. */
    private static final double OTHER_BAND_DB = 3;
    /** A doubt that is widened by less is not told. */
    private static final double LEAST_TOLD_FACTOR = 1.05;

    private final PlanFile file;
    private final Plan plan;
    private final Optional<BenchAnalysis> bench;
    private final Frequency frequency;
    private final Band band;
    /** The first channel of the plan: what a key without a channel was said for. */
    private final Channel home;

    private final List<String> warnings;
    private final Map<String, ElevationPattern> patterns = new HashMap<>();

    LoadoutBuilder(PlanFile file, Optional<BenchAnalysis> bench, List<String> warnings) {
        this(file, file.plan(), bench, warnings);
    }

    /** For the plan of the file as it is asked, such as on another channel. */
    LoadoutBuilder(PlanFile file, Plan plan, Optional<BenchAnalysis> bench, List<String> warnings) {
        this.file = file;
        this.plan = plan;
        this.bench = bench;
        this.frequency = plan.channel().frequency();
        this.band = Band.of(frequency);
        this.home = file.plan().channels().get(0);
        this.warnings = warnings;
    }

    List<Loadout> loadouts() {
        Map<String, Radio> radios = new HashMap<>();
        for (Equipment.RadioEntry entry : plan.equipment().radios()) radios.put(entry.name(), radio(entry));
        Map<String, Equipment.AntennaEntry> antennas = new HashMap<>();
        for (Equipment.AntennaEntry entry : plan.equipment().antennas()) antennas.put(entry.name(), entry);
        if (!band.covers(frequency)) warnings.add(reserve());
        warnOfUnstatedKinds(antennas);
        List<Loadout> loadouts = new ArrayList<>();
        for (Equipment.LoadoutEntry entry : plan.equipment().loadouts()) {
            Equipment.AntennaEntry antenna = antennas.get(entry.antenna());
            Antenna carried = antenna(antenna, entry.counterpoise());
            boolean isStated = antenna.known().gain().isPresent();
            CarryLoss carry = carry(entry.carry(), isStated ? carried : control());
            if (isStated && entry.carry() == Carry.VEHICLE)
                warnings.add(entry.name() + " has a stated gain and is carried inside a vehicle, whose loss of "
                        + Decibels.text(-carry.bodyDb())
                        + " is counted. For an antenna outside, on its roof, write carry = \"roof\".");
            loadouts.add(new Loadout(
                    entry.name(),
                    radios.get(entry.radio()),
                    carried,
                    carry,
                    entry.hold().heightM().orElse(carry.carry().usualHeightM()),
                    gain(antenna, new Carried(entry, carried, carry))));
        }
        return loadouts;
    }

    /** An antenna of which nobody said what kind it is counts as a short helical, whatever its length. */
    private void warnOfUnstatedKinds(Map<String, Equipment.AntennaEntry> antennas) {
        List<String> unstated = new ArrayList<>();
        for (Equipment.LoadoutEntry loadout : plan.equipment().loadouts()) {
            Equipment.AntennaEntry entry = antennas.get(loadout.antenna());
            if (!isKindKnown(entry) && entry.known().pattern().isEmpty() && !unstated.contains(entry.name()))
                unstated.add(entry.name());
        }
        if (!unstated.isEmpty())
            warnings.add("The plan does not say what kind of antenna " + String.join(", ", unstated)
                    + (unstated.size() == 1 ? " is: its pattern is" : " are: their pattern is")
                    + " taken as that of a short helical, and no delta is moved from the bench to the body. Add radiator ("
                    + String.join(", ", Radiator.KEYWORD.words()) + ").");
    }

    /** A loadout of the plan with what has been built of it. */
    private record Carried(Equipment.LoadoutEntry entry, Antenna antenna, CarryLoss carry) {}

    /** The control without the wire; of the usual kind where the plan does not say. */
    Antenna control() {
        return bare(plan.equipment().control(), false);
    }

    /** An antenna of the plan for its kind alone, without a pattern of its own. */
    Antenna bare(Equipment.AntennaEntry entry, boolean counterpoise) {
        Burden burden = burden(entry, home.frequency());
        double lengthM = burden.lengthCm() / 100;
        return new Antenna(
                entry.name(), entry.radiator(), lengthM, counterpoise, burden, Optional.empty(), isKindKnown(entry));
    }

    /** Whether the plan says what kind it is; the control is taken for the usual helical where it does not. */
    private static boolean isKindKnown(Equipment.AntennaEntry entry) {
        return entry.control() || entry.known().kind();
    }

    /** What is to be said of the default table at a frequency outside its bands. */
    private String reserve() {
        return "The default table of carry positions was made for " + band.label() + "; it is used for "
                + number(frequency.mhz()) + " MHz with that reserve.";
    }

    private Radio radio(Equipment.RadioEntry entry) {
        Modulation modulation = plan.channel().modulation();
        double sensitivity = entry.sensitivityDbm().isPresent()
                ? entry.sensitivityDbm().getAsDouble()
                : modulation.thermalNoiseDbm() + entry.noiseFigureDb().orElseThrow() + modulation.staticDb();
        Radio radio = new Radio(entry.name(), Dbm.ofWatts(entry.powerW()), new Dbm(sensitivity), modulation);
        if (radio.isTooGoodToBeTrue())
            warnings.add("The sensitivity of " + entry.name() + ", " + number(sensitivity)
                    + " dBm, is better than a receiver without noise of its own could have; check the data sheet.");
        return radio;
    }

    private Antenna antenna(Equipment.AntennaEntry entry, boolean counterpoise) {
        Radiator radiator = entry.radiator();
        Burden burden = burden(entry, home.frequency());
        String name = counterpoise ? entry.name() + WITH_WIRE : entry.name();
        Antenna antenna = new Antenna(
                name,
                radiator,
                burden.lengthCm() / 100,
                counterpoise,
                burden,
                pattern(entry),
                entry.known().kind());
        for (String note : antenna.pattern(frequency, Carry.FACE).warnings()) warnOnce(entry.name() + ": " + note);
        return antenna;
    }

    /** What an antenna costs to carry: its length as stated, else that usual for its radiator; the rest only as stated. */
    static Burden burden(Equipment.AntennaEntry entry, Frequency frequency) {
        Equipment.Size size = entry.size();
        Radiator radiator = entry.radiator();
        double usualCm = 100 * radiator.usualLengthWavelengths() * frequency.wavelengthM();
        return new Burden(
                size.lengthCm().orElse(usualCm),
                size.lengthCm().isEmpty(),
                size.massG(),
                size.price(),
                size.stiffness());
    }

    private Optional<ElevationPattern> pattern(Equipment.AntennaEntry entry) {
        Optional<Path> stated = entry.known().pattern();
        if (stated.isEmpty()) return Optional.empty();
        return Optional.of(patterns.computeIfAbsent(
                entry.name(), name -> ElevationPattern.read(SourceText.readTable(stated.get()))));
    }

    private CarryLoss carry(Carry carry, Antenna worn) {
        for (Equipment.CarryEntry own : plan.equipment().carries()) {
            if (own.carry() != carry) continue;
            if (!isHomeBand()) {
                warnOnce("The carry loss measured at " + carry.word() + " holds for " + home.name() + " ("
                        + number(home.frequency().mhz()) + " MHz); at " + number(frequency.mhz())
                        + " MHz the default table is taken.");
                break;
            }
            return CarryLoss.stated(
                    carry,
                    frequency,
                    new Dbd(own.dipoleGainDbd()),
                    new Doubt(own.uncertaintyDb(), own.spreadDb()),
                    "measured by the user, as stated in the plan");
        }
        return CarryLoss.standard(carry, frequency).of(worn, frequency);
    }

    /** Whether what was measured on the first channel holds on this one. */
    private boolean isHomeBand() {
        return Band.of(home.frequency()) == band;
    }

    private AntennaGain gain(Equipment.AntennaEntry entry, Carried carried) {
        Equipment.LoadoutEntry loadout = carried.entry();
        if (plan.equipment().anchor().isPresent() && !isHomeBand())
            warnOnce("The [anchor] was measured on " + home.name() + " ("
                    + number(home.frequency().mhz()) + " MHz); at " + number(frequency.mhz())
                    + " MHz the default of its band is taken.");
        ControlAnchor anchor = anchor();
        OptionalDouble swr = entry.delta().swr();
        if (entry.known().gain().isPresent()) {
            Equipment.StatedGain stated = entry.known().gain().get();
            return new AntennaGain.Absolute(
                    new Dbi(stated.dbi()), Doubt.common(stated.uncertaintyDb()), stated.source(), swr);
        }
        if (entry.control() && !loadout.counterpoise()) return new AntennaGain.Control(anchor, swr);
        Optional<AntennaDelta> declared = declared(entry, loadout);
        if (declared.isPresent()) {
            AntennaDelta delta = declared.get();
            return new AntennaGain.OverControl(delta, move(delta, carried), anchor, swr);
        }
        Optional<AntennaDelta> measured = measured(entry, loadout);
        if (measured.isEmpty()) return unmeasured(entry, loadout, anchor, swr);
        AntennaDelta delta = measured.get();
        return new AntennaGain.OverControl(delta, move(delta, carried), anchor, swr);
    }

    private ControlAnchor anchor() {
        if (plan.equipment().anchor().isEmpty() || !isHomeBand()) return ControlAnchor.standard(band);
        Equipment.AnchorEntry own = plan.equipment().anchor().get();
        return ControlAnchor.measured(band, new Dbd(own.controlGainDbd()), own.uncertaintyDb(), own.source());
    }

    /** What the plan declares for this very channel, else what it declares of the antenna. */
    private Optional<AntennaDelta> declared(Equipment.AntennaEntry entry, Equipment.LoadoutEntry loadout) {
        String name = loadout.counterpoise() ? entry.name() + WITH_WIRE : entry.name();
        for (Equipment.ChannelDelta said : plan.equipment().deltas())
            if (said.antenna().equals(entry.name())
                    && said.channel().equals(plan.channel().name())
                    && isNear(said.channel()))
                return Optional.of(AntennaDelta.declared(
                        name,
                        new Db(said.deltaDb()),
                        Doubt.common(said.uncertaintyDb()),
                        said.mount(),
                        "declared in the plan for " + said.channel()));
        Equipment.DeltaEntry said = entry.delta();
        if (said.deltaDb().isEmpty()) return Optional.empty();
        AntennaDelta delta = AntennaDelta.declared(
                name,
                new Db(said.deltaDb().getAsDouble()),
                Doubt.common(said.uncertaintyDb().orElseThrow()),
                said.mount().orElseThrow(),
                "declared in the plan");
        return Optional.of(carriedOver(delta, entry.name(), home.frequency().mhz()));
    }

    /** A station may have put the channel's name on another frequency. */
    private boolean isNear(String channel) {
        return file.plan().channels().stream()
                .filter(one -> one.name().equals(channel))
                .anyMatch(one -> Math.abs(one.frequency().mhz() / frequency.mhz() - 1) <= SAME_DELTA);
    }

    /** A delta from another frequency: taken, with more doubt, and told. */
    private AntennaDelta carriedOver(AntennaDelta delta, String antenna, double fromMhz) {
        if (Math.abs(fromMhz / frequency.mhz() - 1) <= SAME_DELTA) return delta;
        warnOnce(antenna + " has no delta on " + plan.channel().name() + " (" + number(frequency.mhz())
                + " MHz): that of " + number(fromMhz) + " MHz is taken, with " + number(OTHER_BAND_DB)
                + " dB of further doubt (our suggestion). Measure it there, or add a [[delta]].");
        return delta.withFurtherDoubt(OTHER_BAND_DB);
    }

    private DeltaMove move(AntennaDelta delta, Carried carried) {
        return DeltaMove.of(delta, carried.antenna(), control(), carried.carry(), frequency);
    }

    private AntennaGain unmeasured(
            Equipment.AntennaEntry entry, Equipment.LoadoutEntry loadout, ControlAnchor anchor, OptionalDouble swr) {
        if (entry.control()) {
            warnOnce("The control was not read with the counterpoise wire: \"" + loadout.name()
                    + "\" is counted as the control without it.");
            return new AntennaGain.Control(anchor, swr);
        }
        String with = loadout.counterpoise() ? " with the counterpoise wire" : "";
        throw file.entryFault(
                "loadout",
                loadout.name(),
                "antenna",
                "antenna \"" + entry.name() + "\"" + with + " of loadout \"" + loadout.name()
                        + "\" has no delta over the control: neither received_level readings of it stand in the bench file, nor"
                        + " field_meter readings with a detector_law or meter_calibration declared. Add readings,"
                        + " name it with bench" + (loadout.counterpoise() ? "_with_counterpoise" : "")
                        + ", or declare delta_db, delta_uncertainty_db and delta_mount.");
    }

    /**
     * One antenna in one mounting of the bench, from levels or from a field meter of which the law is declared.
     *
     * @param law of the meter; none for levels
     */
    private record Found(
            Mounting mounting, OptionalDouble frequencyMhz, AntennaResult result, Optional<MeterScale.Basis> law) {}

    private List<Found> fromLevels(String name) {
        List<Found> all = new ArrayList<>();
        for (MountResult mount : bench.orElseThrow().mounts()) {
            Optional<AntennaResult> result = mount.antenna(name);
            if (result.isPresent())
                all.add(new Found(mount.mounting(), mount.frequencyMhz(), result.get(), Optional.empty()));
        }
        return all;
    }

    private List<Found> fromMeter(String name) {
        List<Found> all = new ArrayList<>();
        for (MeterResult meter : bench.orElseThrow().meters()) {
            Optional<AntennaResult> result = meter.antenna(name);
            if (result.isPresent())
                all.add(new Found(meter.mounting(), meter.frequencyMhz(), result.get(), Optional.of(meter.basis())));
        }
        return all;
    }

    /** From levels; from a field meter only where the antenna has none that would do. */
    private Optional<AntennaDelta> measured(Equipment.AntennaEntry entry, Equipment.LoadoutEntry loadout) {
        if (bench.isEmpty()) return Optional.empty();
        Optional<String> wired = entry.delta().withWire();
        String name = loadout.counterpoise()
                ? wired.orElse(entry.delta().benchName())
                : entry.delta().benchName();
        Found found = nearest(fromLevels(name), loadout, wired.isPresent());
        if (found == null) found = nearest(fromMeter(name), loadout, wired.isPresent());
        return found == null ? Optional.empty() : Optional.of(delta(found));
    }

    /** The first of those nearest to the way the loadout is carried; null where none will do. */
    private Found nearest(List<Found> all, Equipment.LoadoutEntry loadout, boolean isNamedWired) {
        Found nearest = null;
        for (Found found : all) {
            boolean isWired = found.mounting().withCounterpoise();
            boolean fits = loadout.counterpoise() ? isWired || isNamedWired : !isWired;
            if (fits && (nearest == null || isNearer(found, nearest, loadout.carry()))) nearest = found;
        }
        return nearest;
    }

    private boolean isNearer(Found one, Found other, Carry carry) {
        if (isWished(one) != isWished(other)) return isWished(one);
        int further = carry.distance(one.mounting().kind())
                - carry.distance(other.mounting().kind());
        return further < 0 || further == 0 && frequencyGap(one) < frequencyGap(other);
    }

    private boolean isWished(Found found) {
        Optional<Equipment.Bench> named = plan.equipment().bench();
        return named.isPresent()
                && found.mounting().name().equalsIgnoreCase(named.get().mount());
    }

    private double frequencyGap(Found found) {
        if (found.frequencyMhz().isEmpty()) return 0;
        return Math.abs(found.frequencyMhz().getAsDouble() / frequency.mhz() - 1);
    }

    private AntennaDelta delta(Found found) {
        requireBelieved(found);
        AntennaResult result = found.result();
        String mount = found.mounting().name();
        if (found.frequencyMhz().isEmpty())
            warnOnce("The bench does not say at which frequency " + result.antenna() + " was read (" + mount
                    + "): it is taken as read at " + number(home.frequency().mhz())
                    + " MHz. Fill in its column frequency_mhz.");
        if (result.delta().standardUncertaintyDb().isEmpty())
            warnOnce(result.antenna() + " was read once in " + mount
                    + ": its scatter is unknown, 2 dB of doubt are taken (our suggestion).");
        if (result.finding() == AntennaResult.Finding.TOO_FEW_TRIALS)
            warnOnce("The bench gives no verdict on " + result.antenna() + " (" + mount + "): " + result.n()
                    + " turns are too few. Its delta is taken all the same, with the doubt of its 95 % interval.");
        double db = result.delta().db();
        String read = result.n() + " readings, mounting \"" + mount + "\"" + widened(result);
        double fromMhz = found.frequencyMhz().orElse(home.frequency().mhz());
        if (found.law().isEmpty())
            return carriedOver(
                    AntennaDelta.of(result.delta(), result.n(), "bench, " + read), result.antenna(), fromMhz);
        double lawDb = found.law().get().lawDoubtDb(db);
        String source = "bench, field meter, " + found.law().get().words() + ", " + read
                + (lawDb > 0
                        ? "; doubt of the law " + number(Math.round(100 * lawDb) / 100.0)
                                + " dB, half of the way to the other law (our suggestion)"
                        : "");
        return carriedOver(
                AntennaDelta.of(result.delta(), result.n(), source).withFurtherDoubt(lawDb), result.antenna(), fromMhz);
    }

    /** By how much the doubt is wider than the scatter of the readings says, where that shows. */
    private static String widened(AntennaResult result) {
        double factor = result.delta().estimate().map(Estimate::normalFactor).orElse(1.0);
        return factor < LEAST_TOLD_FACTOR ? "" : ", doubt times " + Decibels.number(factor, 2) + " for so few";
    }

    private void requireBelieved(Found found) {
        double db = found.result().delta().delta().db();
        if (Math.abs(db) <= AntennaDelta.LARGEST_DB) return;
        String file = plan.equipment()
                .bench()
                .map(named -> String.valueOf(named.file().getFileName()))
                .orElse("bench");
        throw new InputFault(
                file,
                0,
                "\"" + found.result().antenna() + "\" in mounting \""
                        + found.mounting().name() + "\" lies " + number(db)
                        + " dB over the control, allowed is -" + number(AntennaDelta.LARGEST_DB) + " to "
                        + number(AntennaDelta.LARGEST_DB)
                        + " dB. Check its readings: their sign, and that all are in one unit.");
    }

    private void warnOnce(String warning) {
        if (!warnings.contains(warning)) warnings.add(warning);
    }

    private static String number(double value) {
        return new java.math.BigDecimal(Double.toString(value))
                .setScale(3, java.math.RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }
}
