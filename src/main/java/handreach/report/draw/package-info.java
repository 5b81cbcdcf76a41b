/** Drawing without a screen: a pen with the ink it uses, and its writers for SVG, PDF and rasters. Knows nothing of radios. */
package handreach.report.draw;
