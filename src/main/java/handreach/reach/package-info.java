/**
 * Radials and areas: loss to every cell, odds of copy, how far each loadout reaches, the least loadout that does the job.
 *
 * <p>What it is not: no physics of its own (that is propagation) and no ledger (that is budget). It owns {@link
 * handreach.reach.SiteCalibration}, the one value that comes back from a walk, and {@link handreach.reach.Progress}.
 *
 * <p>Terms: a <em>source</em> is where the first antenna stands; a <em>cell</em> stands for its centre; <em>exact</em> is one
 * path per cell, <em>sweep</em> reads cells off radials, <em>march</em> steps the field along radials. Definitions of reach:
 * docs/definitions.md. Open problem: a cell is a point; what varies inside it is left to the spread between places.
 */
package handreach.reach;
