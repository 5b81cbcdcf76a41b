/**
 * What a person carries: radio, antenna with its pattern, carry position with the body's loss, and the burden of it.
 *
 * <p>What it is not: no path, no margin. Terms: <em>control</em>, the factory antenna all others are compared with; <em>delta</em>,
 * a level over the control in one mounting; <em>anchor</em>, the control's own gain over a dipole. Open problems: the default
 * table of carry positions is computed, and no measurement stands behind it; the patterns over elevation have no hand and no body.
 */
package handreach.loadout;
