package handreach.bench;

import handreach.uncertainty.Interval;
import handreach.uncertainty.RankAgreement;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a field meter said in one mounting at one frequency: an order, and decibels only where the file declares the law.
 *
 * @param mounting what the antennas stood on
 * @param frequencyMhz where the readings give it
 * @param basis what the file declares of the meter
 * @param ranks strongest first
 * @param agreement how far the order agrees with that of the received levels; none with fewer than three antennas in both
 * @param deltas decibels over the control; empty unless a detector law or a calibration is declared
 */
public record MeterResult(
        Mounting mounting,
        OptionalDouble frequencyMhz,
        MeterScale.Basis basis,
        List<Rank> ranks,
        Optional<RankAgreement> agreement,
        List<AntennaResult> deltas) {
    /**
     * Place of one antenna.
     *
     * @param antenna which
     * @param n readings
     * @param medianMicroamps their median
     * @param rank 1 for the strongest; equal medians share the better place
     * @param bracketDb between 10 log and 20 log of the ratio to the control: the widest that can be said without a law; none
     *     where a law or a calibration is declared
     */
    public record Rank(String antenna, int n, double medianMicroamps, int rank, Optional<Interval> bracketDb) {}

    public MeterResult {
        Objects.requireNonNull(mounting);
        Objects.requireNonNull(frequencyMhz);
        Objects.requireNonNull(basis);
        Objects.requireNonNull(agreement);
        ranks = List.copyOf(ranks);
        deltas = List.copyOf(deltas);
    }

    /** The antenna against the control; none where its microamps gave no decibels. */
    public Optional<AntennaResult> antenna(String name) {
        return deltas.stream().filter(a -> a.antenna().equalsIgnoreCase(name)).findFirst();
    }
}
