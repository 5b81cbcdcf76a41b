/**
 * A user's file as numbered lines, the words and numbers in it, and the one kind of fault that says file, line, what is wrong and what
 * to do.
 *
 * <p>What it is not: it knows no format; a format lives with the data it carries.
 */
package handreach.input;
