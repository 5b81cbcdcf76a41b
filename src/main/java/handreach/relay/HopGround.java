package handreach.relay;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.profile.PathCut;
import handreach.profile.Profile;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import handreach.propagation.Terminals;
import java.util.Optional;

/**
 * A path between two places before it is known what is carried there: its ground, and what the antenna heights make of it.
 *
 * @param line over the ground
 * @param profile heights and cover along it
 * @param geometry clearance, obstacles, angles
 * @param loss by the chosen model
 */
record HopGround(GeodesicLine line, Profile profile, PathGeometry geometry, PathLoss loss) {
    private static final double NEAREST_M = 50;

    /** The cut from one place to another; ends nearer than 50 m count as 50 m apart. */
    static PathCut cut(RelayRequest.Setting setting, Position from, Position to) {
        Position end = to;
        if (GeodesicLine.distanceM(from, to) < NEAREST_M) {
            double azimuth = GeodesicLine.distanceM(from, to) < 0.01
                    ? 0
                    : GeodesicLine.between(from, to).azimuthDeg();
            end = GeodesicLine.destination(from, azimuth, NEAREST_M + 0.001);
        }
        return PathCut.between(
                setting.ground().elevation(),
                setting.ground().landCover(),
                from,
                end,
                setting.ground().settings());
    }

    /** Loss and angles over a cut; empty where the ground is unknown. */
    static Optional<HopGround> of(RelayRequest.Setting setting, PathCut cut, Terminals terminals) {
        return cut.profile().map(profile -> {
            PathGeometry geometry = PathGeometry.of(
                    profile,
                    terminals,
                    setting.conditions().atmosphere(),
                    setting.conditions().frequency());
            PathLoss loss = setting.model().loss(profile, terminals, setting.conditions());
            return new HopGround(cut.line(), profile, geometry, loss);
        });
    }
}
