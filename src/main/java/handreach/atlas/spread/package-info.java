/**
 * The blocks of an atlas on many machines, or on one, by a distributed engine, and as columns for readers of tables. The only package that
 * sees the engine and its files of columns; neither travels with the program, so nothing here may be touched where they are not asked for.
 */
package handreach.atlas.spread;
