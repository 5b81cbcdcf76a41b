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
        UNDECLARED("no law declared: any ratio is something between 10 log and 20 log"),
        /** Small signal: current follows power. */
        SQUARE_LAW("declared law square: current follows power"),
        /** Large signal: current follows voltage. */
        LINEAR_LAW("declared law linear: current follows voltage"),
        CALIBRATED("declared calibration");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        /**
         * What a detector that keeps its declared law but in part may do to a difference: up to half of the way to the other law,
         * anywhere alike. It grows with the difference and never changes its sign, so it has no part in a verdict.
         *
         * @shape  scalar in, scalar out; pure
         * @unit   difference dB; result dB, one standard uncertainty
         * @valid  every finite difference; 0 under a calibration, which has no law to be kept
         * @error  the half-way is our suggestion; the two laws themselves: detector theory (from memory)
         * @source rectangular half-width, JCGM 100:2008 (GUM) 4.3.7; the half-width is our suggestion
         */
        public double lawDoubtDb(double differenceDb) {
            double toTheOther = switch (this) {
                case SQUARE_LAW -> Math.abs(differenceDb);
                case LINEAR_LAW -> Math.abs(differenceDb) / 2;
                case UNDECLARED, CALIBRATED -> 0;
            };
            return toTheOther / 2 / Math.sqrt(3);
        }
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
