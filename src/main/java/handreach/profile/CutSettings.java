package handreach.profile;

import handreach.terrain.Cover;
import handreach.terrain.Surface;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What stands on the ground, and how much of it the tile's heights already hold.
 *
 * <p>A surface model runs through the crowns and over the roofs. The ground under them is therefore taken as the tile's height less
 * the share it holds, and what stands on it has its whole height: the tops lie where they would if the remaining share were put on
 * top of the model, and a person in the wood stands on the ground instead of floating in the crowns.
 *
 * @param surface what the tile's heights stand for
 * @param canopyHeightM height of the trees, m; empty for the representative height
 * @param roofHeightM height of the roofs in every kind of town, m; empty for the representative heights
 */
public record CutSettings(Surface surface, OptionalDouble canopyHeightM, OptionalDouble roofHeightM) {
    /** Spacing of posts where no tile is, m: as one arc-second. */
    public static final double USUAL_POST_M = 30;
    /**
     * Into how many parts an interval between samples, half a post long, is divided for a model that goes along every face of the ground:
     * docs/full-wave.md says what fewer would miss.
     */
    public static final int PARTS = 4;
    /** Most samples of one cut. */
    public static final int MOST_SAMPLES = 400_000;

    public static final CutSettings DEFAULT = of(Surface.BARE_EARTH);

    public CutSettings {
        Objects.requireNonNull(surface);
        check("canopy", canopyHeightM);
        check("roof", roofHeightM);
    }

    public static CutSettings of(Surface surface) {
        return new CutSettings(surface, OptionalDouble.empty(), OptionalDouble.empty());
    }

    private static void check(String what, OptionalDouble heightM) {
        if (heightM.isPresent() && !(heightM.getAsDouble() >= 0 && heightM.getAsDouble() <= Cover.TALLEST_M))
            throw new IllegalArgumentException(
                    what + " height " + heightM.getAsDouble() + " m is not between 0 and " + Cover.TALLEST_M);
    }

    /**
     * Height of what stands on ground of this cover.
     *
     * @shape  one cover in, scalar out; pure
     * @unit   m above the ground
     * @valid  every cover
     * @error  that of the plan's figure; a representative height stands in for local knowledge, single woods and towns differ
     * @source the plan, else Rec. ITU-R P.1812 by {@link Cover#representativeHeightM}
     */
    public double clutterM(Cover cover) {
        if (cover == Cover.WOODLAND) return canopyHeightM.orElse(cover.representativeHeightM());
        if (cover.isTown()) return roofHeightM.orElse(cover.representativeHeightM());
        return cover.representativeHeightM();
    }

    /**
     * How far the tile's height lies above the ground under this cover.
     *
     * @shape  one cover in, scalar out; pure
     * @unit   m
     * @valid  every cover
     * @error  as {@link #clutterM}; the share that a radar sees of trees and roofs differs from place to place
     * @source share by {@link handreach.terrain.Surface#heldShare}
     */
    public double heldM(Cover cover) {
        return surface.heldShare() * clutterM(cover);
    }
}
