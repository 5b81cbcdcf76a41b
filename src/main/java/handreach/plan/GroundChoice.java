package handreach.plan;

import handreach.propagation.Atmosphere;
import handreach.propagation.Ground;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;

/** The ground of the plan: tiles, constants, cover, noise. */
public record GroundChoice(Path tiles, Ground ground, Atmosphere atmosphere, CoverChoice cover, String noise) {

    /**
     * What stands on the ground.
     *
     * @param surface what the tiles describe: {@code bare-earth}, {@code radar} or {@code surface-model}
     * @param everywhere cover word where nothing else says otherwise
     * @param raster land-cover raster, if any
     * @param legend legend of the raster
     * @param polygons GeoJSON polygons with a cover each, if any
     * @param heights canopy and roof heights
     */
    public record CoverChoice(
            String surface,
            String everywhere,
            Optional<Path> raster,
            String legend,
            Optional<Path> polygons,
            CoverHeights heights) {}

    /** Heights of canopy and roofs in metres where the person knows them. */
    public record CoverHeights(OptionalDouble canopyM, OptionalDouble roofM) {}
}
