package handreach.terrain;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The ground at one position.
 *
 * @param heightM metres above the tile's datum; empty where void
 * @param tile file the height comes from; where void, the file that covers the position, or the empty word
 * @param isFilled whether a post it leans on was void in the file and was filled from its neighbours
 */
public record GroundHeight(OptionalDouble heightM, String tile, boolean isFilled) {
    public GroundHeight {
        Objects.requireNonNull(heightM);
        Objects.requireNonNull(tile);
    }

    public boolean isVoid() {
        return heightM.isEmpty();
    }
}
