package handreach.walk;

import handreach.geodesy.Position;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One recorded position.
 *
 * @param at where
 * @param heightM height the receiver logged, above the ellipsoid or the sea, which GPX does not say; never used as ground
 * @param time when, if logged
 * @param segment number of the unbroken stretch it belongs to, from 0
 * @param name name of a waypoint, empty for points of a track
 * @param words name, comment and description of a waypoint
 */
public record TrackPoint(
        Position at, OptionalDouble heightM, Optional<Instant> time, int segment, String name, String words) {}
