package handreach.terrain;

import handreach.input.Keyword;
import java.util.List;
import java.util.Locale;

/**
 * What the heights of a tile stand for. A surface model already holds part of the trees and roofs; adding their whole height on
 * top of it would count them twice.
 *
 * <p>The shares are our suggestion. For the C-band radar of the year 2000 about half of the canopy is held (penetration into 44 %
 * of it measured in the Sierra Nevada, IGARSS 2007); for the X-band radar of 2011 to 2015 more.
 */
public enum Surface {
    BARE_EARTH(0),
    RADAR(0.5),
    SURFACE_MODEL(0.7);

    /** How files and options name them. */
    public static final Keyword<Surface> KEYWORD = Keyword.of(List.of(values()), Surface::word);

    private final double heldShare;

    Surface(double heldShare) {
        this.heldShare = heldShare;
    }

    /** Share of the height of trees and roofs that the tile's heights already hold, 0 to 1. */
    public double heldShare() {
        return heldShare;
    }

    /** Name as written in plans and options, such as {@code bare-earth}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
