package handreach.propagation.march;

import org.apache.commons.math3.complex.Complex;

/**
 * A layer of trees over a facet of the ground: of a wave it takes so much a metre of its way, and holds it back by so much phase.
 *
 * @param topM height of the tops over the facet, along its normal, m
 * @param nepersPerM what the layer takes of the amplitude, 1/m
 * @param radiansPerM how far the phase lags behind that in air, 1/m
 */
record FieldMarchLayer(double topM, double nepersPerM, double radiansPerM) {
    static final FieldMarchLayer NONE = new FieldMarchLayer(0, 0, 0);

    boolean isThere() {
        return topM > 0;
    }

    /** What is left of a straight ray between two heights over the facet. */
    Complex direct(double lengthM, double fromM, double toM) {
        double low = Math.min(fromM, toM);
        double high = Math.max(fromM, toM);
        if (high - low < 1e-9) return left(low < topM ? lengthM : 0);
        return left(lengthM * Math.max(0, Math.min(high, topM) - low) / (high - low));
    }

    /** The same of the ray mirrored by the facet. */
    Complex mirrored(double lengthM, double fromM, double toM) {
        double both = fromM + toM;
        return left(both < 1e-9 ? lengthM : lengthM * (Math.min(fromM, topM) + Math.min(toM, topM)) / both);
    }

    /** What is left of the field on a node after so far along the facet; the node stands for half a spacing up and down. */
    Complex onNode(int node, double spacingM, double alongM) {
        return left(alongM * Math.max(0, Math.min(1, topM / spacingM + 0.5 - node)));
    }

    /** Number of nodes from the ground up that the layer touches. */
    int nodes(double spacingM, int most) {
        return Math.min(most, (int) Math.ceil(topM / spacingM + 0.5));
    }

    private Complex left(double lengthM) {
        double amplitude = Math.exp(-nepersPerM * lengthM);
        double lag = radiansPerM * lengthM;
        return new Complex(amplitude * Math.cos(lag), -amplitude * Math.sin(lag));
    }
}
