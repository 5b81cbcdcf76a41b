/**
 * The vertical cut between two terminals: distances, heights, cover. All that propagation ever sees of the ground.
 *
 * <p>What it is not: no antennas, no earth curvature, no loss. Heights are bare ground: where tiles are a surface model, the part of
 * trees and roofs that they hold has been taken off ({@link handreach.profile.CutSettings}); clutter stands on top as a height of
 * its own.
 *
 * <p>Terms: a <em>gap</em> is a stretch without known ground; a path with a gap has no profile.
 */
package handreach.profile;
