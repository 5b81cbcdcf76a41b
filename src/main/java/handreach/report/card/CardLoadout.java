package handreach.report.card;

import handreach.cartography.LoadoutMark;
import java.util.Optional;

/**
 * What people carry, and how far it reaches.
 *
 * @param mark its line on the rose; empty where it has none
 * @param loadout what the user calls it
 * @param reach how far, in words
 */
public record CardLoadout(Optional<LoadoutMark> mark, String loadout, String reach) {}
