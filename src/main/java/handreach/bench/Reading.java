package handreach.bench;

import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One row of a bench file.
 *
 * @param antenna name, blanks tidied
 * @param mounting what it stood on
 * @param measured what was measured, and how much
 * @param frequencyMhz where the row gives it
 * @param trial number of the trial where the row gives it
 * @param row where it came from
 */
public record Reading(
        String antenna, Mounting mounting, Measured measured, OptionalDouble frequencyMhz, OptionalInt trial, Row row) {
    /**
     * A quantity and its value in the quantity's own unit.
     *
     * @param quantity what
     * @param value how much, in {@link Quantity#unit}
     * @param step the step in which it was written: 0.1 for "-41.8"
     */
    public record Measured(Quantity quantity, double value, double step) {
        public Measured {
            Objects.requireNonNull(quantity);
            if (!Double.isFinite(value)) throw new IllegalArgumentException("value " + value);
            if (!(step > 0)) throw new IllegalArgumentException("step " + step);
        }
    }

    /**
     * Where a reading stands in its file.
     *
     * @param line line number from 1
     * @param note the user's remark, perhaps empty
     */
    public record Row(int line, String note) {
        public Row {
            Objects.requireNonNull(note);
        }
    }

    public Reading {
        Objects.requireNonNull(mounting);
        Objects.requireNonNull(measured);
        Objects.requireNonNull(frequencyMhz);
        Objects.requireNonNull(trial);
        Objects.requireNonNull(row);
        if (antenna.isBlank()) throw new IllegalArgumentException("a reading without an antenna");
    }

    public Quantity quantity() {
        return measured.quantity();
    }

    public double value() {
        return measured.value();
    }

    public int line() {
        return row.line();
    }
}
