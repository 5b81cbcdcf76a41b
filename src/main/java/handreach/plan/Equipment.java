package handreach.plan;

import handreach.loadout.Battery;
import handreach.loadout.Carry;
import handreach.loadout.Radiator;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What people carry, as written: bench file, radios, antennas, loadouts, carry losses measured by the user. */
public record Equipment(
        Optional<Bench> bench,
        List<RadioEntry> radios,
        List<AntennaEntry> antennas,
        List<ChannelDelta> deltas,
        List<LoadoutEntry> loadouts,
        List<CarryEntry> carries,
        Optional<AnchorEntry> anchor) {

    /** The antenna that all others are held against; the reader has seen that there is one. */
    public AntennaEntry control() {
        for (AntennaEntry entry : antennas) if (entry.control()) return entry;
        throw new IllegalStateException("a plan without a control");
    }

    /** Bench file, name of the control in it, and the mounting whose deltas go into the budget. */
    public record Bench(Path file, String control, String mount) {}

    /** A radio: output power, reference sensitivity, or a noise figure in its place; the powers it can be turned down to. */
    public record RadioEntry(
            String name,
            double powerW,
            OptionalDouble sensitivityDbm,
            OptionalDouble noiseFigureDb,
            List<PowerEntry> lowerPowers,
            Optional<BatteryEntry> battery) {}

    /** A power of a radio, and what it draws while sending at it. */
    public record PowerEntry(double powerW, OptionalDouble sendMa) {}

    /** Its battery, and what it draws while sending at full power. */
    public record BatteryEntry(Battery battery, double sendMa) {}

    /** An antenna: radiator, its size and burden, and where its delta comes from. */
    public record AntennaEntry(
            String name, boolean control, Radiator radiator, Size size, DeltaEntry delta, Known known) {}

    /** What is known of an antenna without the bench: a measured pattern, a stated gain, whether the plan says its kind. */
    public record Known(Optional<Path> pattern, Optional<StatedGain> gain, boolean kind) {}

    /** A stated gain over isotropic, with its standard uncertainty and who states it. */
    public record StatedGain(double dbi, double uncertaintyDb, String source) {}

    /** The control against a dipole, measured on the chassis, clear of any body. */
    public record AnchorEntry(double controlGainDbd, double uncertaintyDb, String source) {}

    /** Length, mass, price and how stiff it is; rank if the person wants an order of their own. */
    public record Size(
            OptionalDouble lengthCm,
            OptionalDouble massG,
            OptionalDouble price,
            OptionalDouble stiffness,
            OptionalInt burdenRank) {}

    /**
     * Where an antenna's delta over the control comes from.
     *
     * @param benchName its name in the bench file
     * @param withWire its name in the bench file with the counterpoise wire on
     * @param deltaDb declared delta in place of a bench file
     * @param uncertaintyDb standard uncertainty of the declared delta
     * @param mount mounting in which the declared delta was measured
     * @param swr standing-wave ratio, as an explanation only
     */
    public record DeltaEntry(
            String benchName,
            Optional<String> withWire,
            OptionalDouble deltaDb,
            OptionalDouble uncertaintyDb,
            Optional<String> mount,
            OptionalDouble swr) {}

    /**
     * A declared delta on one channel.
     *
     * @param antenna its name
     * @param channel name of the channel
     * @param deltaDb over the control there
     * @param uncertaintyDb standard uncertainty of it
     * @param mount in which it was measured
     */
    public record ChannelDelta(String antenna, String channel, double deltaDb, double uncertaintyDb, String mount) {}

    /** A loadout: which radio and antenna, with or without the wire, where carried, and the noise there if it is another. */
    public record LoadoutEntry(
            String name,
            String radio,
            String antenna,
            boolean counterpoise,
            Carry carry,
            Hold hold,
            Optional<NoiseChoice> noise) {}

    /**
     * How it is held.
     *
     * @param heightM antenna above ground if not the default of the carry
     * @param tiltDeg from the vertical
     * @param feedLossDb lost in the line between radio and antenna, both ways; 0 where the antenna stands on the radio
     */
    public record Hold(OptionalDouble heightM, double tiltDeg, double feedLossDb) {}

    /** The user's own carry loss: control relative to a dipole, its doubt and its spread. */
    public record CarryEntry(Carry carry, double dipoleGainDbd, double uncertaintyDb, double spreadDb) {}
}
