package handreach.plan;

import handreach.geodesy.Position;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Where: the area of operation, people's positions, routes and sectors. */
public record Places(Area area, List<PositionEntry> positions, List<RouteEntry> routes, List<SectorEntry> sectors) {

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
    public record RouteEntry(String name, Path file, Optional<String> loadout, double weight) {}

    /** People who move within a polygon. */
    public record SectorEntry(
            String name, Path polygon, Optional<String> loadout, double weight, OptionalDouble spacingM) {}
}
