/**
 * Estimates, standard uncertainty, intervals, tests and odds, in the terms of JCGM 100:2008 (GUM), over a statistics library.
 *
 * <p>What it is not: it knows nothing of antennas or places. Open problems: odds assume a normal law in decibels; effective
 * degrees of freedom are those of Welch and Satterthwaite, themselves an approximation.
 */
package handreach.uncertainty;
