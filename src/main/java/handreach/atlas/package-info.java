/**
 * Every place of a region: figures of reach for each position of a grid, which targets each one reaches, and what follows for the region
 * as a whole: who is heard by how many, where nobody is heard, which few places serve the most, where the region falls apart.
 *
 * <p>What it is not: it reads no plan, writes no file and starts no thread; a block of positions is reckoned by whoever has the ground
 * at hand, and the same block gives the same figures wherever that is. The physics is that of {@link handreach.reach}.
 *
 * <p>Terms. <i>Position</i>: a cell of the grid at whose centre somebody stands. <i>Target</i>: a cell of a grid of its own at whose
 * centre somebody should hear. <i>Block</i>: up to 8 x 8 positions over one window of ground. <i>Pair</i>: two positions with the same loadout; a block reckons
 * those whose first position is its own, and what the other end hears of them is added once all blocks are there.
 */
package handreach.atlas;
