/**
 * What was walked: tracks and, in time, reports held against the prediction.
 *
 * <p>What it is not: no prediction of its own. Terms: a <em>track</em> is where somebody went, as a navigator recorded or a person
 * drew it.
 */
package handreach.walk;
