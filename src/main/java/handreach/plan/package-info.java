/**
 * The project file: what a person wrote down about radios, antennas, loadouts, ground and questions; read, checked and saved.
 *
 * <p>What it is not: no arithmetic and no radio. Values stand here as the person gave them, with units in the key names; the
 * {@code study} room turns them into loadouts and budgets. The format is documented in {@code docs/plan-file.md}. Open problem:
 * a value that spans several lines is replaced as a whole on saving, comments inside it are lost.
 */
package handreach.plan;
