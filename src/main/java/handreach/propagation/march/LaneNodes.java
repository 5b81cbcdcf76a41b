package handreach.propagation.march;

/**
 * How the nodes of a column in lockstep stand for the second derivative: as D/(1 + share D), D the second difference. What comes out
 * wrong are waves at wide angles from the facet, which change fast from node to node.
 *
 * @param share of the second difference that a node takes from its neighbours
 */
record LaneNodes(double share) {
    /** Of fourth order: on nodes of λ/2.25 wrong by 0.004 rad a wavelength at 24°, by 0.027 at 33°. */
    static final LaneNodes LEVEL = new LaneNodes(1.0 / 12);

    /** Right for the level ray and the one at 26°; on nodes of λ/2.25 wrong by 0.001 rad a wavelength in between, by 0.010 at 33°. */
    static final LaneNodes WIDE = new LaneNodes(0.09);

    /** The operator X of a wave whose phase from node to node is given: less than 0, and −sin² of its angle where it is right. */
    double ofWave(double phaseOfNodes, double phaseOfSpacing) {
        double difference = 2 * Math.cos(phaseOfNodes) - 2;
        return difference / (1 + share * difference) / (phaseOfSpacing * phaseOfSpacing);
    }
}
