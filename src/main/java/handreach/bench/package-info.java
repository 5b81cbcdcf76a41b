/**
 * Readings and Touchstone files in; deltas over the control antenna, with their uncertainty, and the match out.
 *
 * <p>What it is not: it knows no radio link and no ground to be crossed, and it turns no delta into a gain: the control's own
 * gain is somebody else's question. Terms: <em>control</em>, the antenna all others are compared with; <em>mounting</em>, what
 * the antenna stood on while it was read; <em>delta</em>, received level of an antenna minus that of the control in the same
 * mounting at the same frequency; type A and type B as in JCGM 100:2008 (GUM). Open problems: one delta is one point of the
 * pattern; scatter is taken as normal in decibels; a mounting described in free words is mapped to the nearest kind.
 */
package handreach.bench;
