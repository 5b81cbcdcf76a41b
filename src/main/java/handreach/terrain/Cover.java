package handreach.terrain;

import handreach.input.Keyword;
import handreach.input.Range;
import java.util.List;

/**
 * What stands on the ground, as far as a radio path cares.
 *
 * <p>The heights are the representative clutter heights added to a profile between its ends, Rec. ITU-R P.1812-6 Table 2
 * (water and open 0, suburban 10, urban and trees 15, dense urban 20 m). They are defaults without local knowledge.
 */
public enum Cover {
    OPEN(0),
    WATER(0),
    WOODLAND(15),
    SUBURBAN(10),
    URBAN(15),
    DENSE_URBAN(20);

    /** How files and options name them. */
    public static final Keyword<Cover> KEYWORD =
            Keyword.of(List.of(values()), Cover::word).also("forest", WOODLAND).also("woods", WOODLAND);
    /** Tallest trees and roofs that a person may state, m; the tallest trees known stand some 116 m (from memory). */
    public static final double TALLEST_M = 150;

    public static final Range CANOPY = new Range("canopy_height_m", 1, TALLEST_M, "m");
    public static final Range ROOF = new Range("roof_height_m", 1, TALLEST_M, "m");

    private final double representativeHeightM;

    Cover(double representativeHeightM) {
        this.representativeHeightM = representativeHeightM;
    }

    public double representativeHeightM() {
        return representativeHeightM;
    }

    public boolean isTown() {
        return this == SUBURBAN || this == URBAN || this == DENSE_URBAN;
    }

    /** Name as written in plans and options, such as {@code dense-urban}. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
}
