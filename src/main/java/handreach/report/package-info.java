/**
 * What leaves the program: table, JSON, figures, HTML, PDF, GeoTIFF, GeoJSON, KML, GPX, CSV, and the cautions, written once.
 *
 * <p>What it is not: it computes nothing that a decision rests on; it shows what others computed, with unit and doubt. Terms: a
 * {@link handreach.report.draw.Figure} is drawn once and goes through a {@link handreach.report.draw.Pen} to SVG, PDF or PNG. Open problems:
 * no shaping of right-to-left scripts on paper; characters the embedded font lacks print as a question mark.
 */
package handreach.report;
