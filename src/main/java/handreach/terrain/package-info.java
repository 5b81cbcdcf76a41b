/**
 * Elevation and cover tiles: a height, or an honest void, at a position.
 *
 * <p>What it is not: no paths, no radio, no painting. Heights are metres above the tile's own vertical datum (a geoid near mean
 * sea level), positions WGS 84.
 */
package handreach.terrain;
