package handreach.study;

import handreach.plan.GroundChoice;
import handreach.terrain.Cover;
import handreach.terrain.LandCover;
import java.util.Arrays;

/** Opens what a plan says about cover: polygons first, then the raster, then the same everywhere. */
final class CoverOpening {
    private CoverOpening() {}

    static LandCover of(GroundChoice.CoverChoice choice) {
        Cover everywhere = cover(choice.everywhere());
        return LandCover.uniform(everywhere);
    }

    static Cover cover(String word) {
        return Arrays.stream(Cover.values())
                .filter(cover -> cover.word().equals(word))
                .findFirst()
                .orElseThrow();
    }
}
