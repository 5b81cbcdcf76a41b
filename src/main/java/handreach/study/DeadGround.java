package handreach.study;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.profile.PathCut;
import handreach.propagation.PathGeometry;
import handreach.reach.LoadoutReach;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A direction in which copy ends early, and the ground that ends it.
 *
 * @param azimuthDeg middle of the sector of 45 degrees, from true north
 * @param beyondM copy ends here in the middle of that sector's bearings, m
 * @param edge the ground that stands highest into the ray to a place just beyond, if any does
 */
public record DeadGround(double azimuthDeg, double beyondM, Optional<Edge> edge) {
    private static final double SECTOR_DEG = 45;
    /** A sector counts as dead when its reach is below this share of the radius. */
    private static final double DEAD_SHARE = 0.6;
    /** How far beyond the end of copy the path that shows the edge ends, m. */
    private static final double LOOK_BEYOND_M = 400;

    /**
     * Ground in the way.
     *
     * @param distanceM from the middle
     * @param heightM above sea level
     */
    public record Edge(double distanceM, double heightM) {}

    /** The sectors in which this loadout's copy ends early, the shortest first, at most so many. */
    public static List<DeadGround> of(ReachAnswer answer, LoadoutReach reach, int most) {
        double radiusM = 1000 * answer.scene().plan().places().area().radiusKm();
        List<DeadGround> dead = new ArrayList<>();
        for (double azimuth = 0; azimuth < 360; azimuth += SECTOR_DEG) {
            double middle = azimuth;
            int[] bearings = java.util.stream.IntStream.range(0, reach.bearings())
                    .filter(i -> gap(reach.bearingDeg(i), middle) <= SECTOR_DEG / 2)
                    .boxed()
                    .sorted(Comparator.comparingDouble(i -> reach.radial(i).continuousM()))
                    .mapToInt(i -> i)
                    .toArray();
            if (bearings.length == 0) continue;
            int typical = bearings[bearings.length / 2];
            double beyond = reach.radial(typical).continuousM();
            if (reach.radial(typical).openEnded() || beyond > DEAD_SHARE * radiusM) continue;
            dead.add(new DeadGround(azimuth, beyond, edge(answer, reach, reach.bearingDeg(typical), beyond)));
        }
        dead.sort(Comparator.comparingDouble(DeadGround::beyondM));
        return dead.stream().limit(most).toList();
    }

    private static double gap(double bearingDeg, double azimuthDeg) {
        double gap = Math.abs(bearingDeg - azimuthDeg) % 360;
        return Math.min(gap, 360 - gap);
    }

    private static Optional<Edge> edge(ReachAnswer answer, LoadoutReach reach, double bearingDeg, double beyondM) {
        Scene scene = answer.scene();
        Loadout far = scene.loadout(reach.link().name());
        Position end = GeodesicLine.destination(answer.middle(), bearingDeg, beyondM + LOOK_BEYOND_M);
        PathCut cut = PathCut.between(scene.tiles(), scene.cover(), answer.middle(), end, scene.cut());
        if (cut.profile().isEmpty()) return Optional.empty();
        PathGeometry geometry = PathGeometry.of(
                cut.profile().get(),
                Scene.terminals(scene.middleLoadout(far), far),
                scene.conditions(answer.middle()).atmosphere(),
                scene.plan().channel().frequency());
        return geometry.obstacles().stream()
                .max(Comparator.comparingDouble(PathGeometry.Obstacle::nu))
                .map(obstacle -> new Edge(1000 * obstacle.distanceKm(), obstacle.heightM()));
    }
}
