package handreach.loadout;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.DoubleUnaryOperator;

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
    /** Columns before the gains. */
    private final int keys;

    private final List<String> rows;
    private final AtomicReferenceArray<double[]> power;

    private PatternTables(double[] logMhz, double[] lengths, double[] elevations, int keys, List<String> rows) {
        this.logMhz = logMhz;
        this.lengths = lengths;
        this.elevations = elevations;
        this.keys = keys;
        this.rows = rows;
        this.power = new AtomicReferenceArray<>(rows.size());
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
        int keys = hasFrequency ? 2 : 1;
        List<String> lines = lines(resource);
        double[] elevations = Arrays.stream(lines.get(0).split(","))
                .skip(keys)
                .mapToDouble(angle -> Double.parseDouble(angle.substring(1)))
                .toArray();
        List<String> rows = lines.subList(1, lines.size());
        double[] logMhz =
                hasFrequency ? Arrays.stream(keys(rows, 0)).map(Math::log).toArray() : new double[1];
        double[] lengths = keys(rows, keys - 1);
        if (rows.size() != logMhz.length * lengths.length) throw new IllegalStateException(resource + " has gaps");
        return new PatternTables(logMhz, lengths, elevations, keys, List.copyOf(rows));
    }

    /** The values of a key column, each once. */
    private static double[] keys(List<String> rows, int column) {
        return rows.stream()
                .map(row -> row.split(",", column + 2)[column])
                .distinct()
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static List<String> lines(String resource) {
        try (InputStream in = PatternTables.class.getResourceAsStream(resource)) {
            if (in == null) throw new IllegalStateException("the program lacks its file " + resource);
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(l -> !l.startsWith("#") && !l.isBlank())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Power gains of one row of the table. A pattern needs sixteen rows of hundreds, so a row is read when it is asked for. */
    private double[] power(int k, int m) {
        int number = k * lengths.length + m;
        double[] known = power.get(number);
        if (known != null) return known;
        double[] row = Arrays.stream(rows.get(number).split(","))
                .skip(keys)
                .mapToDouble(dbi -> Math.pow(10, Double.parseDouble(dbi) / 10))
                .toArray();
        power.set(number, row);
        return row;
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

    /** Power gain by elevation; frequency and length are held to the table's ends. */
    DoubleUnaryOperator power(double frequencyMhz, double length) {
        double[] blend = new double[elevations.length];
        if (logMhz.length == 1) {
            blend(0, length, 1, blend);
        } else {
            double last = logMhz[logMhz.length - 1];
            double f = Math.min(Math.max(Math.log(frequencyMhz), logMhz[0]), last);
            int first = firstNode(logMhz, f);
            for (int k = first; k < first + 4; k++) blend(k, length, weight(logMhz, first, k, f), blend);
        }
        return elevationDeg -> Math.max(at(blend, elevationDeg), 0);
    }

    /** Adds the rows of one frequency around a length, weighted. */
    private void blend(int k, double length, double weight, double[] sum) {
        double l = Math.min(Math.max(length, lengths[0]), maxLength());
        int first = firstNode(lengths, l);
        for (int m = first; m < first + 4; m++) {
            double[] row = power(k, m);
            double share = weight * weight(lengths, first, m, l);
            for (int i = 0; i < sum.length; i++) sum[i] += share * row[i];
        }
    }

    private double at(double[] power, double elevationDeg) {
        double e = elevationDeg;
        double last = elevations[elevations.length - 1];
        if (e > last) return power[elevations.length - 1] * towardsZenith(e, last);
        if (e < elevations[0]) return power[0] * towardsZenith(e, elevations[0]);
        int first = firstNode(elevations, e);
        double sum = 0;
        for (int p = first; p < first + 4; p++) sum += weight(elevations, first, p, e) * power[p];
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
