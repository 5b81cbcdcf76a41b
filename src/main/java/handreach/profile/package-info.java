/**
 * The vertical cut between two terminals: distances, heights, cover. All that propagation ever sees of the ground.
 *
 * <p>What it is not: no antennas, no earth curvature, no loss. Heights are bare ground as the tile gives it; clutter stands on
 * top as a height of its own.
 */
package handreach.profile;
