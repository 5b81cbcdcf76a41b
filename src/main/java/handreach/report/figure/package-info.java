/** Figures of answers: maps, roses, profiles, charts. Each is drawn by any pen and says in words what it shows. */
package handreach.report.figure;
