package handreach.bench.match;

/**
 * Where an antenna's reactance passes through zero.
 *
 * @param frequencyMhz where
 * @param resistanceOhm resistance there
 * @param quality quality factor from the slope of the reactance
 * @param isSeries whether reactance rises through zero, as in a whip; falling, as behind some networks, it is parallel
 */
public record Resonance(double frequencyMhz, double resistanceOhm, double quality, boolean isSeries) {}
