package handreach.report;

import handreach.cartography.LoadoutMark;

/**
 * Who carries what.
 *
 * @param mark how its line is told from the others
 * @param who person or party, may be empty
 * @param loadout what the user calls it
 * @param reach how far, in words
 */
public record CardLoadout(LoadoutMark mark, String who, String loadout, String reach) {}
