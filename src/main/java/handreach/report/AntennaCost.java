package handreach.report;

import handreach.loadout.Burden;

/**
 * What an antenna costs to carry.
 *
 * @param antenna its name as in the bench file
 * @param burden length, mass, price, stiffness
 */
public record AntennaCost(String antenna, Burden burden) {}
