package handreach.loadout;

import handreach.bench.Effect;
import handreach.bench.MountKind;
import handreach.bench.Mounting;
import handreach.units.Decibels;
import handreach.units.Frequency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What becomes of a delta over the control when it is used at another place than it was measured at: the body loads a short helical
 * most, so that a delta of the bare box is too small in the hand.
 *
 * @param isKnown whether our computation has columns for both places and both antennas; if not, the delta stays as it is, with the
 *     doubt of {@link AntennaDelta#transferDoubtDb}
 * @param shiftDb what is added to the delta, dB
 * @param controlDoubtDb doubt that all deltas so moved share, for it is the control's, dB
 * @param kindDoubtDb doubt of this kind of antenna, dB
 * @param words from where to where, or why it is not known; empty where nothing is to be said
 */
public record DeltaMove(boolean isKnown, double shiftDb, double controlDoubtDb, double kindDoubtDb, String words) {
    /** Whose figures these are. */
    public static final String SOURCE = BodyRow.COMPUTED;

    /** A delta whose move was never asked for. */
    static final DeltaMove UNASKED = new DeltaMove(false, 0, 0, 0, "");
    /**
     * Doubt of a difference of columns, dB; our suggestion, from the doubts of the coil (1.5 and 0.4), body and posture (1 and 0.7). From
     * the box on VHF also what the control, which is tuned in use, loses there: the columns are of matched antennas.
     */
    private static final double VHF_FROM_BOX_DB = 3;

    private static final double VHF_AT_BODY_DB = 1.5;
    private static final double UHF_DB = 1.2;
    /** An instrument has another case than a radio; our suggestion. */
    private static final double INSTRUMENT_DB = 3;
    /** Share of the move that is doubted of a kind; our suggestion. */
    static final double KIND_SHARE = 0.25;

    /**
     * The move of a delta to the place where the antenna is carried.
     *
     * @shape  scalars in, one record out; pure
     * @unit   dB
     * @valid  known kinds of whips of their usual length from 100 to 600 MHz, from a bare radio, an instrument, the hand or a named place at the
     *     body to a place at the body whose carry figure is the default; elsewhere not known, with the reason
     * @error  its two doubts, our suggestion; no measurement
     * @source difference of the columns of {@link WhipGain}, computed for this project
     */
    public static DeltaMove of(
            AntennaDelta delta, Antenna antenna, Antenna control, CarryLoss carry, Frequency frequency) {
        if (!carry.carry().isAtBody() || !delta.isMoved(carry.carry()) && isSameWire(delta, antenna)) return UNASKED;
        Optional<Radiator> kind = antenna.kind(frequency);
        Optional<Radiator> reference = control.kind(frequency);
        Optional<WhipGain.Place> from = place(delta.mounting(), carry.carry());
        if (!WhipGain.covers(frequency)) return unknown("there are no columns for this frequency");
        if (from.isEmpty()) return unknown("\"" + delta.mounting().name() + "\" names no place known here");
        if (kind.isEmpty() || reference.isEmpty())
            return unknown("the kind of " + (kind.isEmpty() ? "this antenna" : "the control")
                    + " is not known: name its radiator, of a length usual for it");
        WhipGain.Place to = WhipGain.Place.of(carry.carry());
        OptionalDouble shift = shiftDb(delta, antenna, List.of(kind.get(), reference.get()), from.get(), to, frequency);
        if (shift.isEmpty()) return unknown("this kind of antenna was not computed there");
        String way = from.get().words() + ", used " + to.words();
        if (!carry.isStandard())
            return unknown(String.format(
                    Locale.ROOT,
                    "the plan's own figure of this position stands alone; by our computation %s dB would be added (measured %s)",
                    Decibels.signed(shift.getAsDouble(), 1),
                    way));
        double columnsDb = WhipGain.isVhf(frequency)
                ? from.get() == WhipGain.Place.BOX ? VHF_FROM_BOX_DB : VHF_AT_BODY_DB
                : UHF_DB;
        double controlDb =
                delta.mounting().kind() == MountKind.INSTRUMENT ? Math.hypot(columnsDb, INSTRUMENT_DB) : columnsDb;
        return new DeltaMove(
                true, shift.getAsDouble(), controlDb, KIND_SHARE * Math.abs(shift.getAsDouble()), "measured " + way);
    }

    private static DeltaMove unknown(String why) {
        return new DeltaMove(false, 0, 0, 0, "not corrected for the body: " + why);
    }

    /** Whether the wire hung where it was measured as it does where it is used, and not from the control alone. */
    private static boolean isSameWire(AntennaDelta delta, Antenna antenna) {
        return !delta.mounting().withCounterpoise() && (antenna.counterpoise() || !delta.holds(Effect.COUNTERPOISE));
    }

    private static OptionalDouble shiftDb(
            AntennaDelta delta,
            Antenna antenna,
            List<Radiator> kinds,
            WhipGain.Place from,
            WhipGain.Place to,
            Frequency frequency) {
        boolean wireThen = delta.holds(Effect.COUNTERPOISE);
        boolean wireNow = wireThen && antenna.counterpoise();
        OptionalDouble[] gains = {
            WhipGain.overHelicalDb(kinds.get(0), wireNow, to, frequency),
            WhipGain.overHelicalDb(kinds.get(1), false, to, frequency),
            WhipGain.overHelicalDb(kinds.get(0), wireThen, from, frequency),
            WhipGain.overHelicalDb(kinds.get(1), delta.mounting().withCounterpoise(), from, frequency)
        };
        for (OptionalDouble gain : gains) if (gain.isEmpty()) return OptionalDouble.empty();
        return OptionalDouble.of(
                gains[0].getAsDouble() - gains[1].getAsDouble() - (gains[2].getAsDouble() - gains[3].getAsDouble()));
    }

    private static Optional<WhipGain.Place> place(Mounting mounting, Carry carry) {
        if (!mounting.known()) return Optional.empty();
        return switch (mounting.kind()) {
            case INSTRUMENT, CHASSIS, COUNTERPOISE -> Optional.of(WhipGain.Place.BOX);
            case HAND -> Optional.of(WhipGain.Place.FACE);
            case BODY -> worn(AntennaDelta.words(mounting), carry);
        };
    }

    private static Optional<WhipGain.Place> worn(List<String> words, Carry carry) {
        if (words.contains("chest") || words.contains("vest")) return Optional.of(WhipGain.Place.CHEST);
        if (words.contains("shoulder")) return Optional.of(WhipGain.Place.SHOULDER_MIC);
        if (words.stream().noneMatch(List.of("hip", "belt", "waist")::contains)) return Optional.empty();
        if (words.contains("tight")) return Optional.of(WhipGain.Place.HIP_TIGHT);
        return Optional.of(carry == Carry.HIP_TIGHT ? WhipGain.Place.HIP_TIGHT : WhipGain.Place.HIP_SWIVEL);
    }
}
