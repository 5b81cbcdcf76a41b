package handreach.bench.match;

import java.util.Objects;
import java.util.Optional;

/**
 * A place in a sweep where the antenna takes power best.
 *
 * @param frequencyMhz of least SWR
 * @param match there
 * @param resonance nearest zero of the reactance; none when the sweep has none
 * @param band2 where SWR is 2 or less; none when it never is
 * @param band3 where SWR is 3 or less; none when it never is
 */
public record Dip(
        double frequencyMhz,
        Match match,
        Optional<Resonance> resonance,
        Optional<SwrBand> band2,
        Optional<SwrBand> band3) {
    public Dip {
        Objects.requireNonNull(match);
        Objects.requireNonNull(resonance);
        Objects.requireNonNull(band2);
        Objects.requireNonNull(band3);
    }

    /** What the antenna is tuned to: the reactance zero if it lies in the 3:1 band, else the least SWR. */
    public double tunedMhz() {
        return resonance
                .map(Resonance::frequencyMhz)
                .filter(f -> band3.isPresent() && band3.get().contains(f))
                .orElse(frequencyMhz);
    }
}
