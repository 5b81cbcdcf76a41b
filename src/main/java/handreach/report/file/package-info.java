/** Writers of files: whole or not at all, and each format once. */
package handreach.report.file;
