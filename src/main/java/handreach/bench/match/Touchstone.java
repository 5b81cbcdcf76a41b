package handreach.bench.match;

import handreach.input.SourceText;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * Reflection over frequency as a network analyser saves it: Touchstone, version 1 or 2, of which the first port is used.
 *
 * <p>Versions 1 and 2.0, S, Y or Z parameters, as real and imaginary, magnitude and angle, or decibels and angle; one port, or
 * the first of two. Formats as in the IBIS Open Forum's Touchstone specifications 1.1 and 2.0 (from memory).
 */
public final class Touchstone {
    private final String name;
    private final double[] frequenciesMhz;
    private final Complex[] reflections;
    private final double referenceOhm;
    private final List<String> warnings;

    Touchstone(
            String name, double[] frequenciesMhz, Complex[] reflections, double referenceOhm, List<String> warnings) {
        if (frequenciesMhz.length != reflections.length || frequenciesMhz.length == 0)
            throw new IllegalArgumentException(
                    frequenciesMhz.length + " frequencies, " + reflections.length + " values");
        if (!(referenceOhm > 0)) throw new IllegalArgumentException("reference " + referenceOhm);
        this.name = name;
        this.frequenciesMhz = frequenciesMhz.clone();
        this.reflections = reflections.clone();
        this.referenceOhm = referenceOhm;
        this.warnings = List.copyOf(warnings);
    }

    /** Reads a file; all faults are collected into one {@link handreach.input.InputFault}. */
    public static Touchstone read(Path file) {
        return of(SourceText.read(file));
    }

    /** Reads a file already in memory; the number of ports of a version 1 file is taken from the name's extension. */
    public static Touchstone of(SourceText source) {
        return new TouchstoneReader(source).read();
    }

    public String name() {
        return name;
    }

    public int count() {
        return frequenciesMhz.length;
    }

    /** Frequency of a row; strictly rising with the row. */
    public double frequencyMhz(int row) {
        return frequenciesMhz[row];
    }

    /** Reflection coefficient of a row, over {@link #referenceOhm}, as the file has it: its magnitude may be a little above 1. */
    public Complex reflection(int row) {
        return reflections[row];
    }

    /** Impedance to which the reflection coefficients belong. */
    public double referenceOhm() {
        return referenceOhm;
    }

    public List<String> warnings() {
        return warnings;
    }
}
