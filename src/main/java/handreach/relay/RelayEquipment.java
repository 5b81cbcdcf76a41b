package handreach.relay;

import handreach.budget.ExtraLine;
import handreach.budget.Isolation;
import handreach.budget.LinkEnd;
import handreach.budget.Posture;
import handreach.budget.SiteNoise;
import handreach.loadout.Antenna;
import handreach.loadout.AntennaGain;
import handreach.loadout.Band;
import handreach.loadout.Burden;
import handreach.loadout.Carry;
import handreach.loadout.CarryLoss;
import handreach.loadout.Loadout;
import handreach.loadout.Radiator;
import handreach.loadout.Radio;
import handreach.uncertainty.Doubt;
import handreach.units.Db;
import handreach.units.Dbd;
import handreach.units.Frequency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The relay: its radio and its antenna on a mast, apart from what people carry.
 *
 * @param end radio, antenna, mast height, feed loss, noise
 * @param mode how it passes speech on
 * @param chained whether several relays pass to one another; then they must hear one another
 * @param split what it hears and sends in the two-frequency mode where those are two frequencies
 */
public record RelayEquipment(LinkEnd end, RelayMode mode, boolean chained, Optional<Split> split) {
    /** On the channel's frequency. */
    public RelayEquipment(LinkEnd end, RelayMode mode, boolean chained) {
        this(end, mode, chained, Optional.empty());
    }

    /** The ways in and out, each with everything at its own frequency. */
    public record Split(Side in, Side out) {}

    /**
     * One of its frequencies.
     *
     * @param setting terms and conditions there
     * @param end the relay's own there
     * @param people the demands of the question, in its order, with what they carry taken there
     */
    public record Side(RelayRequest.Setting setting, LinkEnd end, List<Party> people) {
        public Side {
            people = List.copyOf(people);
        }
    }

    /** Its two frequencies, in the mode that uses them. */
    Optional<Split> twoWays() {
        return mode == RelayMode.TWO_FREQUENCY ? split : Optional.empty();
    }

    /** What it hears where that is another frequency than it sends. */
    public Optional<Double> receiveMhz() {
        return twoWays().map(ways -> mhz(ways.in()));
    }

    /** What it sends where that is another frequency than it hears. */
    public Optional<Double> transmitMhz() {
        return twoWays().map(ways -> mhz(ways.out()));
    }

    private static double mhz(Side side) {
        return side.setting().terms().frequency().mhz();
    }

    private RelayEquipment at(Side side) {
        return new RelayEquipment(side.end(), mode, chained);
    }

    /** The same on the frequency that it hears. */
    RelayEquipment hearing() {
        return split.map(ways -> at(ways.in())).orElse(this);
    }

    /** The same on the frequency that it sends. */
    RelayEquipment sending() {
        return split.map(ways -> at(ways.out())).orElse(this);
    }

    /** Blocking ratio of a receiver, dB: class figure of EN 300 086, from memory. */
    public static final double BLOCKING_RATIO_DB = 84;
    /** Doubt of a stated antenna gain, dB; our suggestion. */
    private static final double GAIN_DOUBT_DB = 1;

    /** Source of a figure that the plan states itself. */
    public static final String STATED = "stated in the plan";

    /**
     * A half-wave dipole or the like on a mast.
     *
     * @param gainSource where its gain is from
     */
    public static RelayEquipment onMast(
            Radio radio,
            Dbd gain,
            String gainSource,
            Mast mast,
            SiteNoise noise,
            Frequency frequency,
            RelayMode mode,
            boolean chained) {
        AntennaGain stated =
                new AntennaGain.Absolute(gain.toDbi(), Doubt.common(GAIN_DOUBT_DB), gainSource, OptionalDouble.empty());
        return new RelayEquipment(end("relay", radio, stated, mast, noise, frequency), mode, chained);
    }

    /**
     * One end of a link that stands by itself, its antenna clear of any body.
     *
     * @param name of the station
     * @param gain stated, of the antenna where it stands
     */
    public static LinkEnd end(
            String name, Radio radio, AntennaGain gain, Mast mast, SiteNoise noise, Frequency frequency) {
        Radiator radiator = Radiator.HALF_WAVE_DIPOLE;
        Antenna antenna = new Antenna(
                name + " antenna",
                radiator,
                radiator.usualLengthWavelengths() * frequency.wavelengthM(),
                false,
                new Burden(0, 0, 0, 0),
                Optional.empty());
        Loadout loadout = new Loadout(
                name, radio, antenna, CarryLoss.standard(mast.stand(), Band.of(frequency)), mast.heightM(), gain);
        return new LinkEnd(loadout, noise, Posture.UPRIGHT, feedLine(mast.feedLossDb(), mast.feedSource()));
    }

    /** The line between a radio and its antenna as a line of the ledger with its source; none where it loses nothing. */
    public static List<ExtraLine> feedLine(double lossDb, String source) {
        return lossDb == 0
                ? List.of()
                : List.of(new ExtraLine("feed line", new Db(-lossDb), Doubt.NONE, source, Optional.empty()));
    }

    /**
     * What the antenna stands on.
     *
     * @param stand a mast, or the roof of a vehicle: clear of any body
     * @param heightM antenna above ground, m
     * @param feedLossDb loss of the line, dB, on transmit and on receive
     * @param feedSource where that loss is from
     */
    public record Mast(Carry stand, double heightM, double feedLossDb, String feedSource) {
        public Mast {
            if (stand.isAtBody()) throw new IllegalArgumentException("an antenna " + stand.meaning());
        }

        public Mast(double heightM, double feedLossDb, String feedSource) {
            this(Carry.MAST, heightM, feedLossDb, feedSource);
        }
    }

    /**
     * What keeps the relay's transmitter out of its own receiver, as a margin.
     *
     * @param neededDb isolation that avoids blocking
     * @param verticalM spacing one above the other that would give it, m
     * @param onThisMastDb what two antennas one above the other on the mast can be counted on to give, at most
     * @param marginDb the latter less the former; negative: filters must make it up
     */
    public record IsolationMargin(double neededDb, double verticalM, double onThisMastDb, double marginDb) {}

    /** The end at work: its own transmitter deafens it a little where it sends and hears at once. */
    LinkEnd atWork() {
        if (mode.desenseDb() == 0) return end;
        return end.desensed(new ExtraLine(
                "desense by its own transmitter",
                new Db(-mode.desenseDb()),
                Doubt.NONE,
                "our suggestion, with the isolation it needs",
                Optional.empty()));
    }

    public double mastM() {
        return end.loadout().heightM();
    }

    public RelayEquipment inMode(RelayMode other) {
        return new RelayEquipment(end, other, chained, split);
    }

    /**
     * Isolation that two frequencies on one mast need, and what spacing on that mast gives.
     *
     * @shape  scalars in, one record out; pure
     * @unit   dB and m
     * @valid  antennas one above the other, the lower half a wavelength above ground
     * @error  3 dB or so, as {@link Isolation}
     * @source {@link Isolation#neededAgainstBlockingDb} and {@link Isolation#verticalDb}
     */
    public IsolationMargin isolation(Frequency frequency) {
        Radio radio = end.loadout().radio();
        double needed = Isolation.neededAgainstBlockingDb(radio.power(), radio.sensitivity(), BLOCKING_RATIO_DB);
        double room = mastM() - frequency.wavelengthM() / 2;
        double given = room < frequency.wavelengthM() / 2
                ? 0
                : Math.min(Isolation.SPACING_LIMIT_DB, Isolation.verticalDb(room, frequency));
        return new IsolationMargin(needed, Isolation.verticalSpacingM(needed, frequency), given, given - needed);
    }
}
