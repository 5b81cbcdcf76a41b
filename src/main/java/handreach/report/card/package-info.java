/** The field card: one page for the pocket, as a sheet or folded. */
package handreach.report.card;
