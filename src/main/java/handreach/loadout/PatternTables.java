package handreach.loadout;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Power patterns tabulated over frequency and length, from a method-of-moments code.
 *
 * <p>Interpolated in power, which is smooth where decibels have cusps: cubic in angle, in length and in the
 * logarithm of frequency.
 */
final class PatternTables {
    private final double[] logMhz;
    private final double[] lengths;
    private final double[] elevations;
    private final double[] power;

    private PatternTables(double[] logMhz, double[] lengths, double[] elevations, double[] power) {
        this.logMhz = logMhz;
        this.lengths = lengths;
        this.elevations = elevations;
        this.power = power;
    }

    /** The tables that come with the program, each read when first asked for. */
    enum Shipped {
        /** Straight wire on perfect ground. */
        WIRE("pattern-wire.csv", false),
        /** The whip on the bare box. */
        CHASSIS("pattern-chassis.csv", true),
        CHASSIS_COUNTERPOISE("pattern-chassis-counterpoise.csv", true),
        /** Coil-loaded whips. */
        HELICAL("pattern-helical.csv", true),
        HELICAL_COUNTERPOISE("pattern-helical-counterpoise.csv", true);

        private final String resource;
        private final boolean hasFrequency;
        private PatternTables table;

        Shipped(String resource, boolean hasFrequency) {
            this.resource = resource;
            this.hasFrequency = hasFrequency;
        }

        synchronized PatternTables table() {
            if (table == null) table = read(resource, hasFrequency);
            return table;
        }
    }

    private static PatternTables read(String resource, boolean hasFrequency) {
        List<double[]> rows = new ArrayList<>();
        double[] elevations = {};
        for (String line : lines(resource)) {
            String[] cells = line.split(",");
            int keys = hasFrequency ? 2 : 1;
            if (cells[0].startsWith("frequency") || cells[0].startsWith("length")) {
                elevations = new double[cells.length - keys];
                for (int i = 0; i < elevations.length; i++)
                    elevations[i] = Double.parseDouble(cells[keys + i].substring(1));
                continue;
            }
            double[] row = Arrays.stream(cells).mapToDouble(Double::parseDouble).toArray();
            rows.add(hasFrequency ? row : withFrequency(row));
        }
        double[] logMhz =
                rows.stream().mapToDouble(r -> Math.log(r[0])).distinct().toArray();
        double[] lengths = rows.stream().mapToDouble(r -> r[1]).distinct().toArray();
        int n = elevations.length;
        if (rows.size() != logMhz.length * lengths.length) throw new IllegalStateException(resource + " has gaps");
        double[] power = new double[rows.size() * n];
        for (int r = 0; r < rows.size(); r++)
            for (int i = 0; i < n; i++) power[r * n + i] = Math.pow(10, rows.get(r)[2 + i] / 10);
        return new PatternTables(logMhz, lengths, elevations, power);
    }

    private static double[] withFrequency(double[] row) {
        double[] r = new double[row.length + 1];
        r[0] = 1;
        System.arraycopy(row, 0, r, 1, row.length);
        return r;
    }

    private static List<String> lines(String resource) {
        try (InputStream in = PatternTables.class.getResourceAsStream(resource)) {
            if (in == null) throw new IllegalStateException("the program lacks its file " + resource);
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            return reader.lines()
                    .filter(l -> !l.startsWith("#") && !l.isBlank())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    double minLength() {
        return lengths[0];
    }

    double maxLength() {
        return lengths[lengths.length - 1];
    }

    double minMhz() {
        return Math.exp(logMhz[0]);
    }

    double maxMhz() {
        return Math.exp(logMhz[logMhz.length - 1]);
    }

    boolean coversMhz(double f) {
        double log = Math.log(f);
        return log >= logMhz[0] && log <= logMhz[logMhz.length - 1];
    }

    /** Power gain at the given elevation; frequency and length are held to the table's ends. */
    double power(double frequencyMhz, double length, double elevationDeg) {
        if (logMhz.length == 1) return Math.max(atFrequency(0, length, elevationDeg), 0);
        double last = logMhz[logMhz.length - 1];
        double f = Math.min(Math.max(Math.log(frequencyMhz), logMhz[0]), last);
        int first = firstNode(logMhz, f);
        double sum = 0;
        for (int k = first; k < first + 4; k++)
            sum += weight(logMhz, first, k, f) * atFrequency(k, length, elevationDeg);
        return Math.max(sum, 0);
    }

    private double atFrequency(int k, double length, double elevationDeg) {
        double l = Math.min(Math.max(length, lengths[0]), maxLength());
        int first = firstNode(lengths, l);
        double sum = 0;
        for (int m = first; m < first + 4; m++) sum += weight(lengths, first, m, l) * atLength(k, m, elevationDeg);
        return sum;
    }

    private double atLength(int k, int m, double elevationDeg) {
        int offset = (k * lengths.length + m) * elevations.length;
        double e = elevationDeg;
        double last = elevations[elevations.length - 1];
        if (e > last) return power[offset + elevations.length - 1] * towardsZenith(e, last);
        if (e < elevations[0]) return power[offset] * towardsZenith(e, elevations[0]);
        int first = firstNode(elevations, e);
        double sum = 0;
        for (int p = first; p < first + 4; p++) sum += weight(elevations, first, p, e) * power[offset + p];
        return sum;
    }

    /** Near the axis the field of any vertical current goes as the cosine of elevation. */
    private static double towardsZenith(double elevationDeg, double lastDeg) {
        double ratio = Math.cos(Math.toRadians(elevationDeg)) / Math.cos(Math.toRadians(lastDeg));
        return ratio * ratio;
    }

    /** First of the four nodes around x, or of the four at the end. */
    private static int firstNode(double[] axis, double x) {
        int i = Arrays.binarySearch(axis, x);
        if (i < 0) i = -i - 2;
        return Math.min(Math.max(i - 1, 0), axis.length - 4);
    }

    /** Weight of node m in the cubic through the four nodes from {@code first} on. */
    private static double weight(double[] axis, int first, int m, double x) {
        double w = 1;
        for (int q = first; q < first + 4; q++) if (q != m) w *= (x - axis[q]) / (axis[m] - axis[q]);
        return w;
    }
}
