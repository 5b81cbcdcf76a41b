/**
 * The command line: one class a command. Options in, one study or room called, report out, exit code.
 *
 * <p>What it is not: no physics, no wiring of rooms. Exit codes: 0 done; 2 the input or usage is wrong; 1 anything else.
 * {@code --json} prints exactly one JSON object on standard output; everything else that is said goes to standard error.
 */
package handreach.cli;
