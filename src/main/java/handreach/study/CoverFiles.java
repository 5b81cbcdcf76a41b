package handreach.study;

import handreach.plan.GroundChoice;
import handreach.plan.Plan;
import handreach.terrain.Cover;
import handreach.terrain.CoverPolygons;
import handreach.terrain.CoverRaster;
import handreach.terrain.LandCover;
import handreach.terrain.TileBounds;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a plan says about cover, opened: polygons first, then the raster, then the same everywhere.
 *
 * @param cover all of it
 * @param raster the class maps, if the plan names any
 * @param polygons the polygons, likewise
 */
record CoverFiles(LandCover cover, Optional<CoverRaster> raster, Optional<CoverPolygons> polygons) {
    static CoverFiles of(GroundChoice.CoverChoice choice) {
        Cover everywhere = choice.everywhere();
        Optional<CoverRaster> raster = choice.raster().isPresent()
                ? Optional.of(CoverRaster.open(choice.raster().get(), choice.legend(), everywhere))
                : Optional.empty();
        LandCover base = raster.isPresent() ? raster.get() : LandCover.uniform(everywhere);
        Optional<CoverPolygons> polygons = choice.polygons().isPresent()
                ? Optional.of(CoverPolygons.read(choice.polygons().get(), base))
                : Optional.empty();
        return new CoverFiles(polygons.isPresent() ? polygons.get() : base, raster, polygons);
    }

    /** Whether raster or polygons say anything about the area of a plan; without it, the plan is as one without land cover. */
    boolean tellsAnythingIn(Plan plan) {
        TileBounds area = area(plan);
        return raster.isPresent() && raster.get().holdsAny(area)
                || polygons.isPresent() && polygons.get().holdsAny(area);
    }

    /** What was doubtful: files and codes, and what covers none of the area. */
    List<String> warnings(Plan plan) {
        List<String> all = new ArrayList<>();
        GroundChoice.CoverChoice choice = plan.ground().cover();
        TileBounds area = area(plan);
        if (raster.isPresent() && !raster.get().holdsAny(area))
            all.add(coversNothing(choice.raster(), "land_cover", plan));
        if (polygons.isPresent() && !polygons.get().holdsAny(area))
            all.add(coversNothing(choice.polygons(), "cover_areas", plan));
        if (raster.isPresent()) all.addAll(raster.get().warnings());
        return all;
    }

    private static String coversNothing(Optional<Path> file, String key, Plan plan) {
        return file.map(Path::getFileName).orElseThrow()
                + ": covers none of the plan's area, so it changes nothing: all ground is "
                + plan.ground().cover().everywhere().word()
                + ", with the doubt of a plan without land cover. Name a map of this area, or take "
                + key + " out of the plan.";
    }

    private static TileBounds area(Plan plan) {
        return TileBounds.around(
                plan.places().area().centre(), 1000 * plan.places().area().radiusKm());
    }
}
