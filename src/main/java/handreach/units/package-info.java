/**
 * Quantities whose type is their reference, and how quantities are written.
 *
 * <p>What it is: {@code Db}, {@code Dbm}, {@code Dbi}, {@code Dbd}, {@code Frequency}, and how lengths, odds, shares and decibels are
 * written, once for all faces: {@code Lengths}, {@code Shares}, {@code Decibels}. What it is not: a delta over the
 * control, which is a measurement and lives in {@code bench}; and not a type for lengths or angles, which are plain numbers
 * with the unit in their name. Terms: ITU-R V.573 (from memory).
 */
package handreach.units;
