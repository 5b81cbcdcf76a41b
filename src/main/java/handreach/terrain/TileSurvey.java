package handreach.terrain;

import java.util.OptionalDouble;

/**
 * What is known of a tile after reading all its heights.
 *
 * @param tile the tile
 * @param posts how many posts it has
 * @param voidPosts how many of them have no height
 * @param filledPosts how many were void in the file and were filled from their neighbours; not counted among the void ones
 * @param lowestM lowest height, m; empty if there is none
 * @param highestM highest height, m; empty if there is none
 */
public record TileSurvey(
        TileSummary tile,
        long posts,
        long voidPosts,
        long filledPosts,
        OptionalDouble lowestM,
        OptionalDouble highestM) {}
