package handreach.bench;

import handreach.uncertainty.UncertaintyPart;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One antenna in one mounting, compared with the control.
 *
 * @param level its readings taken together
 * @param delta how much stronger than the control, with doubt
 * @param method how the two were compared
 * @param parts where the doubt comes from
 * @param verdict whether the two can be told apart; none without a known scatter
 * @param detection what the session could have shown; none without a known scatter
 */
public record AntennaResult(
        LevelSummary level,
        DeltaOverControl delta,
        ComparisonMethod method,
        List<UncertaintyPart> parts,
        Optional<Verdict> verdict,
        Optional<DetectionLimit> detection) {
    /**
     * Told apart, or not.
     *
     * @param p odds of such a difference by chance alone, this comparison on its own
     * @param adjustedP the same made stricter for all antennas of the mounting together (Holm)
     * @param toldApart whether the adjusted odds are below 5 %
     */
    public record Verdict(double p, double adjustedP, boolean toldApart) {}

    public AntennaResult {
        Objects.requireNonNull(level);
        Objects.requireNonNull(delta);
        Objects.requireNonNull(method);
        Objects.requireNonNull(verdict);
        Objects.requireNonNull(detection);
        parts = List.copyOf(parts);
    }

    public String antenna() {
        return delta.antenna();
    }

    public int n() {
        return level.n();
    }

    /** Whether antenna and control are surely different; false as long as nothing is known about scatter. */
    public boolean toldApart() {
        return verdict.map(Verdict::toldApart).orElse(false);
    }
}
