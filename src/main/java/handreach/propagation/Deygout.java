package handreach.propagation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;

/**
 * Several knife edges by the main-edge method: the edge with the greatest ν counts for the whole path, then the parts on either
 * side of it are treated alike.
 */
final class Deygout {
    /**
     * Up to this many samples a profile is read as an outline, every point of it an edge; a finer profile is sampled ground, on
     * which every sample of a rounded hill would count as an edge of its own, so that only three edges are taken.
     */
    static final int OUTLINE_SAMPLES = 32;

    /** Levels on sampled ground: the main edge, then one on either side. */
    static final int LEVELS_ON_SAMPLED_GROUND = 2;

    /** How the edges of a part are weighed. */
    public enum Rule {
        /** The plain sum of Deygout (1966). */
        PLAIN,
        /** Each secondary edge less the two-edge correction Tc. */
        CORRECTED,
        /** Each main edge seen from where the lines over the secondary edges meet the ends, Giovaneli (1984). */
        GIOVANELI
    }

    /**
     * One edge that was counted.
     *
     * @param sample index in the outline
     * @param nu its diffraction parameter within its part of the path
     * @param lossDb what it adds, dB
     */
    public record Edge(int sample, double nu, double lossDb) {}

    private Deygout() {}

    /** Levels to go down for a profile of so many samples. */
    static int levelsFor(int samples) {
        return samples <= OUTLINE_SAMPLES ? samples : LEVELS_ON_SAMPLED_GROUND;
    }

    /**
     * Edges and what each adds; the loss is their sum.
     *
     * @shape  outline of n samples in, edges out, the main edge first; at most 2^levels − 1 and at most n − 2 edges; O(n × levels) for
     *     edges that halve their part, O(n × edges) at worst; no recursion, pure
     * @unit   distances km, outline m (ground raised by the earth's bulge, antenna tips at the ends), wavelength m; levels from 1 up
     * @valid  separate sharp edges; edges close together or rounded hills are overestimated by the plain rule
     * @error  against repeated Fresnel integrals over 120 seeded paths of 2 to 4 edges, mean and standard deviation: plain +2.8 ± 3.7 dB,
     *     corrected +1.6 ± 3.4 dB, Giovaneli +1.7 ± 3.4 dB
     * @source Deygout (1966); two-edge correction: Rec. ITU-R P.526-15 section 4.3 (from memory, checked); Giovaneli (1984) (from memory)
     */
    public static List<Edge> edges(double[] dKm, double[] y, double wavelengthM, Rule rule, int levels) {
        ArrayDeque<Part> parts = new ArrayDeque<>();
        List<Edge> edges = new ArrayList<>();
        add(parts, Part.of(dKm, y, 0, dKm.length - 1, wavelengthM, null), levels);
        while (!parts.isEmpty()) {
            Part part = parts.poll();
            edges.add(new Edge(part.edge, part.nu, part.lossDb(dKm, y, wavelengthM, rule)));
            if (part.level == levels) continue;
            add(parts, Part.of(dKm, y, part.from, part.edge, wavelengthM, part), levels);
            add(parts, Part.of(dKm, y, part.edge, part.to, wavelengthM, part), levels);
        }
        return edges;
    }

    private static void add(ArrayDeque<Part> parts, Part part, int levels) {
        if (part.edge >= 0 && part.nu > KnifeEdge.CLEAR_NU && part.level <= levels) parts.add(part);
    }

    /** A stretch of the path between two ends, and its main edge. */
    private record Part(int from, int edge, int to, double nu, int level, Part parent) {
        static Part of(double[] dKm, double[] y, int from, int to, double wavelengthM, Part parent) {
            int edge = EdgeSearch.worst(dKm, y, from, to, wavelengthM);
            double nu = edge < 0 ? Double.NEGATIVE_INFINITY : EdgeSearch.nu(dKm, y, from, edge, to, wavelengthM);
            return new Part(from, edge, to, nu, parent == null ? 1 : parent.level + 1, parent);
        }

        double lossDb(double[] dKm, double[] y, double wavelengthM, Rule rule) {
            return switch (rule) {
                case PLAIN -> KnifeEdge.lossDb(nu);
                case CORRECTED -> KnifeEdge.lossDb(nu) - (parent == null ? 0 : correctionDb(dKm, y, wavelengthM));
                case GIOVANELI -> KnifeEdge.lossDb(imageNu(dKm, y, wavelengthM));
            };
        }

        /** Tc of the pair formed by the parent's main edge and this one, never more than this edge's loss. */
        private double correctionDb(double[] dKm, double[] y, double wavelengthM) {
            double a = Math.abs(dKm[edge] - dKm[edge < parent.edge ? parent.from : parent.to]);
            double b = Math.abs(dKm[parent.edge] - dKm[edge]);
            double c = dKm[parent.to] - dKm[parent.from] - a - b;
            double p = EdgeSearch.nu(dKm, y, parent.from, parent.edge, parent.to, wavelengthM);
            double q = EdgeSearch.nu(dKm, y, parent.from, edge, parent.to, wavelengthM);
            return Math.min(twoEdgeCorrectionDb(a, b, c, p, q), KnifeEdge.lossDb(nu));
        }

        /** ν over the line between the image heights at the two ends of the part. */
        private double imageNu(double[] dKm, double[] y, double wavelengthM) {
            double left = imageM(dKm, y, from);
            double right = imageM(dKm, y, to);
            double d1 = dKm[edge] - dKm[from];
            double d2 = dKm[to] - dKm[edge];
            double above = y[edge] - (left * d2 + right * d1) / (d1 + d2);
            return KnifeEdge.nu(above, d1, d2, wavelengthM);
        }

        /** Where the line from the main edge over the highest point towards an end meets that end. */
        private double imageM(double[] dKm, double[] y, int end) {
            double steepest = (y[end] - y[edge]) / Math.abs(dKm[end] - dKm[edge]);
            for (int i = Math.min(edge, end) + 1; i < Math.max(edge, end); i++)
                steepest = Math.max(steepest, (y[i] - y[edge]) / Math.abs(dKm[i] - dKm[edge]));
            return y[edge] + steepest * Math.abs(dKm[end] - dKm[edge]);
        }
    }

    /**
     * Two-edge correction Tc, to be taken from the sum of main and second edge.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distances end to second edge a, between the edges b, main edge to other end c, km; ν of main edge p and second edge q, both
     *     over the line between the ends; result dB
     * @valid  p above 0; at or below, or with the second edge at or below the line, 0
     * @error  the corrected sum is within 1.2 dB of the exact one on five pairs
     * @source Rec. ITU-R P.526-15, section 4.3, unequal edges (from memory, checked)
     */
    public static double twoEdgeCorrectionDb(double a, double b, double c, double p, double q) {
        if (p <= 0 || q <= 0) return 0;
        double alpha = Math.atan(Math.sqrt(b * (a + b + c) / (a * c)));
        return (12 - 20 * Math.log10(2 / (1 - alpha / Math.PI))) * Math.pow(Math.min(1, q / p), 2 * p);
    }
}
