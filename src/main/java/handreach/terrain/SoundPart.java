package handreach.terrain;

import java.awt.Rectangle;
import java.awt.image.Raster;
import java.util.List;
import java.util.Optional;

/**
 * A part of an image of which some blocks may be damaged.
 *
 * @param values with the upper left corner at 0, 0
 * @param lost where there are none, by the same count
 * @param told one line that tells what was lost, if anything was
 */
record SoundPart(Raster values, List<Rectangle> lost, Optional<String> told) {
    SoundPart {
        lost = List.copyOf(lost);
    }

    /** Nothing is lost. */
    static SoundPart whole(Raster values) {
        return new SoundPart(values, List.of(), Optional.empty());
    }
}
