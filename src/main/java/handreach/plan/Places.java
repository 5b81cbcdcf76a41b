package handreach.plan;

import handreach.geodesy.Position;
import handreach.loadout.Carry;
import handreach.relay.RelayMode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Where: the area of operation, people's positions, routes and sectors, and the stations that stand there. */
public record Places(
        Area area,
        List<PositionEntry> positions,
        List<RouteEntry> routes,
        List<SectorEntry> sectors,
        List<StationEntry> stations) {

    /** Centre and radius; a polygon, if given, narrows it. */
    public record Area(Position centre, double radiusKm, Optional<Path> polygon) {}

    /** A person or the base at a known place, and which way they face where the plan says so. */
    public record PositionEntry(
            String name, Position at, Optional<String> loadout, boolean base, double weight, Optional<Facing> facing) {}

    /**
     * Which way somebody faces: a bearing, or towards another position.
     *
     * @param headingDeg clockwise from true north
     * @param towards name of a position
     */
    public record Facing(OptionalDouble headingDeg, Optional<String> towards) {}

    /** People who move along a track. */
    public record RouteEntry(
            String name, Path file, Optional<String> loadout, double weight, Optional<Schedule> schedule) {}

    /**
     * When people go along a route.
     *
     * @param startS s after midnight by the crew's clock; empty where the track has times of its own
     * @param paceKmh how fast from there, km/h
     */
    public record Schedule(OptionalDouble startS, double paceKmh) {}

    /** People who move within a polygon. */
    public record SectorEntry(
            String name, Path polygon, Optional<String> loadout, double weight, OptionalDouble spacingM) {}

    /**
     * What stands already: a base, a vehicle with an antenna on its roof, or a relay.
     *
     * @param name what the crew calls it
     * @param at where
     * @param gear radio, antenna, feed line
     * @param tuning frequencies where they are others than the channel's
     * @param relay how it passes speech on; empty for one that does not
     * @param base whether everybody who must talk with the base must talk with it
     */
    public record StationEntry(
            String name, Position at, StationGear gear, Tuning tuning, Optional<RelayMode> relay, boolean base) {
        /** Whether it can be an end of a straight talk: no relay, and on the channel's frequency. */
        public boolean talks() {
            return relay.isEmpty()
                    && tuning.receiveMhz().isEmpty()
                    && tuning.transmitMhz().isEmpty();
        }
    }

    /**
     * Radio and antenna of a station.
     *
     * @param powerW at the transmitter's socket
     * @param sensitivityDbm for 12 dB SINAD, or the digital reference sensitivity
     * @param gain of the antenna where it stands
     * @param stand a mast or the roof of a vehicle; outside in either case
     * @param heightM antenna above ground
     * @param feedLossDb lost in the line on transmit and on receive
     * @param feedIsStated whether the plan states that loss itself
     * @param noise there, where it is another than the ground's
     */
    public record StationGear(
            double powerW,
            double sensitivityDbm,
            Equipment.StatedGain gain,
            Carry stand,
            double heightM,
            double feedLossDb,
            boolean feedIsStated,
            Optional<NoiseChoice> noise) {}

    /** What a station hears and sends on; empty for the channel's frequency. */
    public record Tuning(OptionalDouble receiveMhz, OptionalDouble transmitMhz) {}
}
