/**
 * Who can talk to whom without a relay and what must be carried for it; whether a relay is needed and where it should stand.
 *
 * <p>A path loses the same both ways, so one area sweep from each place that must be served gives the loss to every cell a relay
 * could stand in; the best cell is then looked up, not guessed.
 *
 * <p>What it is not: no physics and no ledger of its own, no plan, no files. Terms: a <em>demand</em> is somebody at a place with a
 * loadout; a <em>talk</em> is two demands that must understand one another; a <em>hop</em> is a demand and a relay; a
 * <em>standing</em> is a margin over the spread between places, so that the weaker of two hops is the one with the lower standing.
 * Open problems: demands that move are a row of points; odds of the two hops are taken as the weaker one, their product stands
 * beside it.
 */
package handreach.relay;
