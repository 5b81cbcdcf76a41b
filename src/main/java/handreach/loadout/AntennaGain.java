package handreach.loadout;

import handreach.bench.Effect;
import handreach.uncertainty.Doubt;
import handreach.units.Dbi;
import java.util.OptionalDouble;

/** How the gain of an antenna is known. */
public sealed interface AntennaGain {
    /** Standing-wave ratio at the feed in this mounting, if known: an explanation, and a loss only where nothing holds it yet. */
    OptionalDouble swr();

    /** Whether this effect is already inside the figures of antenna and carry position. */
    boolean holds(Effect effect);

    /** What to print where something is not counted because it is in the figure. */
    String heldWords();

    /**
     * The control itself.
     *
     * @param anchor its gain on the box
     * @param swr as in {@link AntennaGain#swr}
     */
    record Control(ControlAnchor anchor, OptionalDouble swr) implements AntennaGain {
        public Control {
            check(swr);
        }

        @Override
        public boolean holds(Effect effect) {
            return effect != Effect.COUNTERPOISE;
        }

        @Override
        public String heldWords() {
            return "already in the control's figure";
        }
    }

    /**
     * An antenna that was compared with the control.
     *
     * @param delta level over the control
     * @param move what becomes of it where the antenna is carried
     * @param anchor the control's gain on the box
     * @param swr as in {@link AntennaGain#swr}
     */
    record OverControl(AntennaDelta delta, DeltaMove move, ControlAnchor anchor, OptionalDouble swr)
            implements AntennaGain {
        public OverControl {
            check(swr);
        }

        @Override
        public boolean holds(Effect effect) {
            return effect == Effect.BODY || effect == Effect.HAND || delta.holds(effect);
        }

        @Override
        public String heldWords() {
            return "already in the delta";
        }
    }

    /**
     * An antenna with a stated gain, such as that of a base station.
     *
     * @param gain matched gain at the horizon, clear of any body
     * @param doubt of it
     * @param source who states it
     * @param swr as in {@link AntennaGain#swr}
     */
    record Absolute(Dbi gain, Doubt doubt, String source, OptionalDouble swr) implements AntennaGain {
        public Absolute {
            if (!(Math.abs(gain.dbi()) <= 60)) throw new IllegalArgumentException("gain " + gain);
            check(swr);
        }

        @Override
        public boolean holds(Effect effect) {
            return effect != Effect.MISMATCH && effect != Effect.CHASSIS;
        }

        @Override
        public String heldWords() {
            return "already in the stated gain";
        }
    }

    private static void check(OptionalDouble swr) {
        if (swr.isPresent() && !(swr.getAsDouble() >= 1)) throw new IllegalArgumentException("SWR below 1: " + swr);
    }

    /**
     * Loss by mismatch of a standing-wave ratio.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   ratio from 1 up; result dB, positive weakens
     * @valid  ratio 1 and above; below: IllegalArgumentException
     * @error  below 1e-12 dB for a transmitter that does not fold back
     * @source line theory: −10 log(1 − ((s − 1)/(s + 1))²)
     */
    static double mismatchLossDb(double swr) {
        check(OptionalDouble.of(swr));
        double reflection = (swr - 1) / (swr + 1);
        return -10 * Math.log10(1 - reflection * reflection);
    }
}
