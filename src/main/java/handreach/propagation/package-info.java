/**
 * Pure functions from a profile to loss in parts, each from a published formula.
 *
 * <p>What it is not: no antennas' gains, no body, no odds. Terms as in Rec. ITU-R P.341. Models that carry a Recommendation's
 * name follow it to the letter; what is ours says so.
 */
package handreach.propagation;
