package handreach.atlas;

/**
 * Positions next to one another, reckoned over one window of ground.
 *
 * @param number along the curve, from 0
 * @param row first row of the grid
 * @param column first column
 * @param rows how many
 * @param columns how many
 */
public record AtlasBlock(int number, int row, int column, int rows, int columns) {}
