package handreach.bench;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What the microamps of a detector field meter mean in decibels: nothing, unless the file declares the detector's law or a
 * calibration.
 */
public final class MeterScale {
    /** Why microamps may or may not become decibels. */
    public enum Basis {
        UNDECLARED,
        /** Small signal: current follows power. */
        SQUARE_LAW,
        /** Large signal: current follows voltage. */
        LINEAR_LAW,
        CALIBRATED
    }

    private final Basis basis;
    private final TreeMap<Double, Double> dbByLogCurrent = new TreeMap<>();

    private MeterScale(Basis basis) {
        this.basis = basis;
    }

    static MeterScale undeclared() {
        return new MeterScale(Basis.UNDECLARED);
    }

    static MeterScale squareLaw() {
        return new MeterScale(Basis.SQUARE_LAW);
    }

    static MeterScale linearLaw() {
        return new MeterScale(Basis.LINEAR_LAW);
    }

    /** Calibration steps: microamps against decibels; at least two, both strictly rising together. */
    static MeterScale calibrated(Map<Double, Double> dbByMicroamps) {
        MeterScale scale = new MeterScale(Basis.CALIBRATED);
        dbByMicroamps.forEach((current, db) -> scale.dbByLogCurrent.put(Math.log10(current), db));
        List<Double> levels = List.copyOf(scale.dbByLogCurrent.values());
        if (levels.size() < 2) throw new IllegalArgumentException("a calibration of " + levels.size() + " steps");
        for (int i = 1; i < levels.size(); i++)
            if (!(levels.get(i) > levels.get(i - 1))) throw new IllegalArgumentException("a calibration that falls");
        return scale;
    }

    public Basis basis() {
        return basis;
    }

    public boolean isDeclared() {
        return basis != Basis.UNDECLARED;
    }

    /**
     * Level of a reading in decibels over an unknown but constant reference; only differences mean something, unless the
     * calibration was given in dBm.
     *
     * @shape  scalar in, scalar or nothing out; O(log n) of the calibration steps, pure
     * @unit   current µA; result dB
     * @valid  current above zero, and within the calibration where there is one; otherwise nothing comes back
     * @error  that of the declared law, which is an approximation: between small and large signal neither law holds
     * @source detector theory, any microwave measurement text (from memory): 10 log I for square law, 20 log I for linear law;
     *     between calibration steps straight lines over log I
     */
    public OptionalDouble levelDb(double microamps) {
        if (!(microamps > 0) || Double.isInfinite(microamps)) return OptionalDouble.empty();
        double log = Math.log10(microamps);
        return switch (basis) {
            case UNDECLARED -> OptionalDouble.empty();
            case SQUARE_LAW -> OptionalDouble.of(10 * log);
            case LINEAR_LAW -> OptionalDouble.of(20 * log);
            case CALIBRATED -> interpolated(log);
        };
    }

    private OptionalDouble interpolated(double log) {
        Map.Entry<Double, Double> below = dbByLogCurrent.floorEntry(log);
        Map.Entry<Double, Double> above = dbByLogCurrent.ceilingEntry(log);
        if (below == null || above == null) return OptionalDouble.empty();
        if (above.getKey().equals(below.getKey())) return OptionalDouble.of(below.getValue());
        double share = (log - below.getKey()) / (above.getKey() - below.getKey());
        return OptionalDouble.of(below.getValue() + share * (above.getValue() - below.getValue()));
    }
}
