package handreach.study;

import handreach.plan.GroundChoice;
import handreach.terrain.Cover;
import handreach.terrain.CoverPolygons;
import handreach.terrain.CoverRaster;
import handreach.terrain.LandCover;
import java.nio.file.Path;
import java.util.Optional;

/** Opens what a plan says about cover: polygons first, then the raster, then the same everywhere. */
final class CoverOpening {
    private CoverOpening() {}

    static LandCover of(GroundChoice.CoverChoice choice) {
        Cover everywhere = choice.everywhere();
        LandCover base = choice.raster()
                .<LandCover>map(file -> CoverRaster.open(file, choice.legend(), everywhere))
                .orElse(LandCover.uniform(everywhere));
        Optional<Path> polygons = choice.polygons();
        return polygons.<LandCover>map(file -> CoverPolygons.read(file, base)).orElse(base);
    }
}
