package handreach.bench;

import handreach.uncertainty.Estimate;
import handreach.uncertainty.Interval;
import handreach.units.Db;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How much stronger an antenna was received than the control, in one mounting at one frequency. It is a measurement, not a
 * gain: without control and mounting it means nothing, so it carries both.
 *
 * @param antenna the antenna
 * @param control the antenna it is compared with
 * @param mounting what both stood on
 * @param frequencyMhz where the readings give it
 * @param delta positive when the antenna is stronger than the control
 * @param estimate the same with its doubt; none when there was one trial and nothing declared about scatter
 */
public record DeltaOverControl(
        String antenna,
        String control,
        Mounting mounting,
        OptionalDouble frequencyMhz,
        Db delta,
        Optional<Estimate> estimate) {
    public DeltaOverControl {
        Objects.requireNonNull(antenna);
        Objects.requireNonNull(control);
        Objects.requireNonNull(mounting);
        Objects.requireNonNull(frequencyMhz);
        Objects.requireNonNull(delta);
        Objects.requireNonNull(estimate);
        if (estimate.isPresent() && estimate.get().value() != delta.db())
            throw new IllegalArgumentException(
                    "delta " + delta.db() + " against " + estimate.get().value());
    }

    public double db() {
        return delta.db();
    }

    public OptionalDouble standardUncertaintyDb() {
        return estimate.map(e -> OptionalDouble.of(e.standardUncertainty())).orElse(OptionalDouble.empty());
    }

    public Optional<Interval> interval95() {
        return estimate.map(Estimate::interval95);
    }

    /** What the readings behind it already contain. */
    public EffectsHeld effects() {
        return EffectsHeld.of(antenna, mounting);
    }
}
