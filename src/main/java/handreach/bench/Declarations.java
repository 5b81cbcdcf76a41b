package handreach.bench;

import handreach.uncertainty.UncertaintyPart;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a bench file says about its session in lines {@code # key = value} above the header. Nothing is taken for granted that
 * is not declared.
 *
 * @param control the antenna all others are compared with
 * @param order whether antennas were read in turns or one after the other, where the order of rows does not show it
 * @param doubts declared doubts of a difference between two antennas (type B)
 * @param meter what microamps mean
 * @param range geometry of the test range
 * @param instrument limits and known scatter of the instrument
 */
public record Declarations(
        Optional<String> control,
        Optional<TrialOrder> order,
        List<DeclaredDoubt> doubts,
        MeterScale meter,
        Optional<TestRange> range,
        Instrument instrument) {
    /** In what order trials were taken. */
    public enum TrialOrder {
        INTERLEAVED,
        BLOCKS
    }

    /**
     * A doubt that every delta carries, or only those of one antenna.
     *
     * @param antenna the only antenna it concerns; none for all
     * @param part the doubt
     */
    public record DeclaredDoubt(Optional<String> antenna, UncertaintyPart part) {
        public DeclaredDoubt {
            Objects.requireNonNull(antenna);
            Objects.requireNonNull(part);
        }

        boolean concerns(String name) {
            return antenna.isEmpty() || antenna.get().equalsIgnoreCase(name);
        }
    }

    /**
     * Limits of the level instrument.
     *
     * @param noiseFloorDbm what it reads with the transmitter off
     * @param overloadDbm where it stops being linear
     * @param earlierScatter scatter of single readings known from earlier sessions
     * @param resolutionDb step of its display
     */
    public record Instrument(
            OptionalDouble noiseFloorDbm,
            OptionalDouble overloadDbm,
            Optional<EarlierScatter> earlierScatter,
            OptionalDouble resolutionDb) {}

    /**
     * Scatter of single remounted readings found in earlier sessions (GUM 4.2.4), used where a comparison has one trial.
     *
     * @param db standard deviation
     * @param trials readings it was found from, at least two
     */
    public record EarlierScatter(double db, int trials) {
        public EarlierScatter {
            if (!(db > 0) || Double.isInfinite(db) || trials < 2)
                throw new IllegalArgumentException("scatter " + db + " from " + trials + " trials");
        }
    }

    public Declarations {
        doubts = List.copyOf(doubts);
        Objects.requireNonNull(control);
        Objects.requireNonNull(order);
        Objects.requireNonNull(meter);
        Objects.requireNonNull(range);
        Objects.requireNonNull(instrument);
    }

    /** Declared doubts of the difference between two antennas; one that both declare for themselves counts twice. */
    List<UncertaintyPart> doubtsOf(String antenna, String other) {
        return doubts.stream()
                .filter(d -> d.concerns(antenna) || d.concerns(other))
                .map(DeclaredDoubt::part)
                .toList();
    }
}
