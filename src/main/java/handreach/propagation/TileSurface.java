package handreach.propagation;

import handreach.profile.Profile;
import handreach.terrain.Cover;
import java.util.Locale;

/**
 * Which surface elevation tiles describe, so that trees and roofs are counted once.
 *
 * <p>A surface model already carries part of what stands on the ground. {@link #bareGround} takes that part off again, the ends
 * included (a person stands on the ground, not in the tree tops); the clutter heights then stand on the result in full.
 */
public enum TileSurface {
    /** Bare earth, such as lidar terrain models. */
    BARE_EARTH(0),
    /** Between ground and tree tops, such as C-band radar; about half of the height (common rule, from memory). */
    PART_WAY_UP(0.5),
    /** Near the tree tops, such as X-band radar; about 0.7 of the height (ours). */
    NEAR_THE_TOPS(0.7);

    private final double share;

    TileSurface(double share) {
        this.share = share;
    }

    /** Part of the height of trees and buildings that the tiles already hold, 0 to 1. */
    public double share() {
        return share;
    }

    /** Name as written in plans and options, such as {@code part-way-up}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The profile with the part of its clutter that the tiles already hold taken off the heights.
     *
     * @shape  n samples in, n out; O(n), pure
     * @unit   heights m
     * @valid  profiles whose heights come from tiles of this surface
     * @error  30 % of the clutter height: stands and seasons differ
     * @source shares: common practice for radar elevation models, no source; the step itself is ours
     */
    public Profile bareGround(Profile tiles) {
        if (share == 0) return tiles;
        int n = tiles.count();
        double[] heightM = tiles.heightsM();
        Cover[] cover = new Cover[n];
        var zone = new handreach.profile.Zone[n];
        for (int i = 0; i < n; i++) {
            heightM[i] -= share * tiles.clutterM(i);
            cover[i] = tiles.cover(i);
            zone[i] = tiles.zone(i);
        }
        return Profile.of(tiles.distancesKm(), heightM, tiles.cluttersM(), cover, zone);
    }

    /** What was done, in one sentence for the reader of a result. */
    public String sentence() {
        return share == 0
                ? "The elevation tiles describe bare earth; trees and buildings stand on them in full."
                : String.format(
                        Locale.ROOT,
                        "The elevation tiles already hold about %.0f %% of the height of trees and buildings; that part was taken off"
                                + " the ground, so that it is counted once.",
                        100 * share);
    }
}
