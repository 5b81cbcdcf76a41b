/**
 * Walked tracks and copy reports against the prediction, and what they teach: a {@link handreach.reach.SiteCalibration}.
 *
 * <p>What it is not: it knows no plan and opens no tiles; whoever calls it brings the predictions. Terms: <em>error</em> is predicted
 * minus walked, positive where the prediction was too hopeful; a <em>false hope</em> is copy promised and not found, a <em>false
 * fear</em> copy found and not promised. Open problems: reports of different loadouts at one place share their weight although
 * what tells the loadouts apart is independent; one spread serves all covers.
 */
package handreach.walk;
