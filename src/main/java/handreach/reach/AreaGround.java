package handreach.reach;

import handreach.geodesy.Position;
import handreach.profile.CutSettings;
import handreach.terrain.Cover;
import handreach.terrain.Elevation;
import handreach.terrain.GroundWindow;
import handreach.terrain.LandCover;
import handreach.terrain.TileFolder;

/**
 * The ground of an area as engines read it: the same three that a single path is cut from.
 *
 * @param elevation heights, or honest voids
 * @param landCover what stands on the ground
 * @param settings how high it stands, and how much of it the heights already hold
 */
public record AreaGround(Elevation elevation, LandCover landCover, CutSettings settings) {
    private static final LandCover ALL_OPEN = LandCover.uniform(Cover.OPEN);

    public AreaGround {
        if (elevation == null || landCover == null || settings == null)
            throw new IllegalArgumentException("an area has elevation, land cover and settings");
    }

    /** Bare, open ground. */
    public AreaGround(Elevation elevation) {
        this(elevation, ALL_OPEN, CutSettings.DEFAULT);
    }

    /** The same, with the posts of a disc at hand where they come from tiles. */
    public AreaGround near(Position centre, double radiusM) {
        return elevation instanceof TileFolder folder ? over(GroundWindow.over(folder, centre, radiusM)) : this;
    }

    AreaGround over(Elevation other) {
        return new AreaGround(other, landCover, settings);
    }
}
