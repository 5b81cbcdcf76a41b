/** An answer as blocks, sections and pages, and its renderers for paper and terminal. Words in it are plain text. */
package handreach.report.page;
