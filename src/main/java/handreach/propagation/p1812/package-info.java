/** Rec. ITU-R P.1812 by parts. */
package handreach.propagation.p1812;
