/**
 * Estimates, standard uncertainty, intervals and odds, in the terms of JCGM 100:2008 (GUM), over a statistics library.
 *
 * <p>What it is not: it knows nothing of antennas or places. Open problem: odds assume a normal law in decibels.
 */
package handreach.uncertainty;
