/**
 * The two-way ledger: every decibel of a link is a line with its source and its doubt, and none is counted twice.
 *
 * <p>What it is not: no path loss is computed here, and no odds over an area. Lines are signed, positive strengthens. Terms:
 * margin, allowed loss, received level. Open problem: both ends' spreads are taken as independent of each other and of the ground.
 */
package handreach.budget;
