/**
 * Runs a plan through the stream: the only room that knows all of it. Opens what a plan names, builds loadouts and budgets, cuts
 * profiles, and hands whole answers to the faces, so that command line, report and window say the same.
 *
 * <p>What it is not: no formula of its own, no printing, no drawing.
 */
package handreach.study;
