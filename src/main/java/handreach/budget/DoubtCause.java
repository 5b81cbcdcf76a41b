package handreach.budget;

import handreach.loadout.AntennaDelta;
import handreach.loadout.Band;
import handreach.loadout.Carry;
import java.util.List;

/**
 * What a common doubt comes from. Two causes are the same, and their doubts stand and fall together, where they compare as equal;
 * squares are added in this order, so that a sum does not hang on which end comes first. Nothing asks for a record's generated
 * equality here, which costs a cold start.
 */
sealed interface DoubtCause extends Comparable<DoubtCause> {
    /** Where this kind of cause stands among the others. */
    int rank();

    /** What tells causes of this kind apart. */
    List<String> names();

    @Override
    default int compareTo(DoubtCause other) {
        if (rank() != other.rank()) return Integer.compare(rank(), other.rank());
        for (int i = 0; i < names().size(); i++) {
            int order = names().get(i).compareTo(other.names().get(i));
            if (order != 0) return order;
        }
        return 0;
    }

    /** Absolute gain of the control on its chassis, on which all deltas stand. */
    record Anchor(String source) implements DoubtCause {
        @Override
        public int rank() {
            return 0;
        }

        @Override
        public List<String> names() {
            return List.of(source);
        }
    }

    /** What the body does in a carry position. */
    record Body(Carry carry, Band band, String origin) implements DoubtCause {
        @Override
        public int rank() {
            return 1;
        }

        @Override
        public List<String> names() {
            return List.of(carry.name(), band.name(), origin);
        }
    }

    /** A counterpoise that was never measured. */
    record Counterpoise(String antenna) implements DoubtCause {
        @Override
        public int rank() {
            return 2;
        }

        @Override
        public List<String> names() {
            return List.of(antenna);
        }
    }

    /** One delta over the control; another reading of the same antenna is another cause. */
    record Delta(String antenna, AntennaDelta delta) implements DoubtCause {
        @Override
        public int rank() {
            return 3;
        }

        @Override
        public List<String> names() {
            return List.of(antenna, delta.mounting().name(), delta.source());
        }

        @Override
        public int compareTo(DoubtCause other) {
            int order = DoubtCause.super.compareTo(other);
            if (order != 0 || !(other instanceof Delta that)) return order;
            double[] mine = numbers();
            double[] others = that.numbers();
            for (int i = 0; order == 0 && i < mine.length; i++) order = Double.compare(mine[i], others[i]);
            return order;
        }

        private double[] numbers() {
            return new double[] {
                delta.delta().db(), delta.doubt().commonDb(), delta.doubt().spreadDb(), delta.readings()
            };
        }
    }

    /** What a transmitter beside a receiver takes from it. */
    record Desense() implements DoubtCause {
        @Override
        public int rank() {
            return 4;
        }

        @Override
        public List<String> names() {
            return List.of();
        }
    }

    /** A further line of an end. */
    record Extra(String label) implements DoubtCause {
        @Override
        public int rank() {
            return 5;
        }

        @Override
        public List<String> names() {
            return List.of(label);
        }
    }

    /** The stated gain of an antenna. */
    record Gain(String antenna) implements DoubtCause {
        @Override
        public int rank() {
            return 6;
        }

        @Override
        public List<String> names() {
            return List.of(antenna);
        }
    }

    /** Gain with a full counterpoise on a mast. */
    record Mast(String origin) implements DoubtCause {
        @Override
        public int rank() {
            return 7;
        }

        @Override
        public List<String> names() {
            return List.of(origin);
        }
    }

    /** An antenna on a mast whose delta was measured in the hand and is not used. */
    record MastUse(String antenna) implements DoubtCause {
        @Override
        public int rank() {
            return 8;
        }

        @Override
        public List<String> names() {
            return List.of(antenna);
        }
    }

    /** The path model. */
    record Model() implements DoubtCause {
        @Override
        public int rank() {
            return 9;
        }

        @Override
        public List<String> names() {
            return List.of();
        }
    }

    /** A further line of the path. */
    record PathExtra(String label) implements DoubtCause {
        @Override
        public int rank() {
            return 10;
        }

        @Override
        public List<String> names() {
            return List.of(label);
        }
    }

    /**
     * A delta used elsewhere than it was measured.
     *
     * @param kind of antenna; empty for what the control does, which all deltas of such a move share
     * @param way from where to where
     */
    record Move(String kind, String way) implements DoubtCause {
        @Override
        public int rank() {
            return 11;
        }

        @Override
        public List<String> names() {
            return List.of(kind, way);
        }
    }
}
