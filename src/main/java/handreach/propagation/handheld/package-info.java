/** The closed form for two people on foot: terms from a string stretched over the ground. */
package handreach.propagation.handheld;
