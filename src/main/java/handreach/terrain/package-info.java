/**
 * Elevation and cover tiles: a height, or an honest void, at a position.
 *
 * <p>What it is not: no paths, no radio, no painting. Heights are metres above the tile's own vertical datum (a geoid near mean
 * sea level), positions WGS 84.
 *
 * <p>Terms: a <em>post</em> is a point with a height; a pixel counts as the post at its centre. A <em>lattice</em> is the endless
 * grid of posts that tiles of one kind share. A <em>void</em> is ground without a known height.
 *
 * <p>A {@link handreach.terrain.GroundPicture} is a map out of the user's own file, to look at: its place is known as that of a tile is,
 * its colours mean nothing here.
 *
 * <p>Known limits: grids turned against north, several bands and LERC packing are refused; datum shifts that need a grid file are
 * replaced by the best published shift of the region (5 to 10 m); vertical datums are told, not converted.
 */
package handreach.terrain;
