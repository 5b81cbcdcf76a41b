package handreach.plan;

import handreach.propagation.Atmosphere;
import handreach.propagation.Foliage;
import handreach.propagation.Ground;
import handreach.terrain.Cover;
import handreach.terrain.CoverLegend;
import handreach.terrain.Surface;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;

/** The ground of the plan: tiles, constants, cover, noise, and which of them it states itself. */
public record GroundChoice(
        Path tiles, Ground ground, Atmosphere atmosphere, CoverChoice cover, NoiseChoice noise, Stated stated) {

    /** What the plan states; the rest are our defaults. */
    public record Stated(boolean constants, boolean refraction, boolean cover) {}

    /**
     * What stands on the ground.
     *
     * @param surface what the heights of the tiles stand for
     * @param everywhere cover where nothing else says otherwise
     * @param raster land-cover raster, if any
     * @param legend legend of the raster
     * @param polygons GeoJSON polygons with a cover each, if any
     * @param heights canopy and roof heights
     * @param foliage state of the trees
     */
    public record CoverChoice(
            Surface surface,
            Cover everywhere,
            Optional<Path> raster,
            CoverLegend legend,
            Optional<Path> polygons,
            CoverHeights heights,
            Foliage foliage) {}

    /** Heights of canopy and roofs in metres where the person knows them. */
    public record CoverHeights(OptionalDouble canopyM, OptionalDouble roofM) {}
}
