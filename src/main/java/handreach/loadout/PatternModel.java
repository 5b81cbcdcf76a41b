package handreach.loadout;

import handreach.units.Decibels;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.DoubleUnaryOperator;

/** Patterns by radiator and mounting: which table, or which formula where the tables end, and what has to be said about it. */
final class PatternModel {
    /** A null is filled in by all that a model leaves out; never shown deeper than this below the maximum, our suggestion. */
    private static final double FLOOR_DB = 15;

    /** From this much less at the horizon than at the maximum on, a whip is said to squint. */
    private static final double SQUINT_DB = 3;

    private static final double LONGEST_WAVELENGTHS = 4;

    /** Patterns asked for of late, by their hash: every link between two loadouts asks for those of both ends. */
    private static final AtomicReferenceArray<Known> RECENT = new AtomicReferenceArray<>(64);

    private PatternModel() {}

    private record Known(
            Radiator radiator, double length, PatternMount mount, Frequency frequency, ElevationPattern is) {
        boolean isOf(Radiator aRadiator, double aLength, PatternMount aMount, Frequency aFrequency) {
            return radiator == aRadiator && length == aLength && mount == aMount && frequency.equals(aFrequency);
        }
    }

    static ElevationPattern pattern(
            Radiator radiator, double lengthWavelengths, PatternMount mount, Frequency frequency) {
        int hash = 31 * (31 * radiator.ordinal() + mount.ordinal())
                + Double.hashCode(lengthWavelengths)
                + 7 * frequency.hashCode();
        int slot = Math.floorMod(hash ^ hash >>> 16, RECENT.length());
        Known known = RECENT.get(slot);
        if (known != null && known.isOf(radiator, lengthWavelengths, mount, frequency)) return known.is();
        ElevationPattern found = computed(radiator, lengthWavelengths, mount, frequency);
        RECENT.set(slot, new Known(radiator, lengthWavelengths, mount, frequency, found));
        return found;
    }

    private static ElevationPattern computed(
            Radiator radiator, double lengthWavelengths, PatternMount mount, Frequency frequency) {
        if (!(lengthWavelengths > 0 && lengthWavelengths <= LONGEST_WAVELENGTHS))
            throw new IllegalArgumentException("radiator length " + lengthWavelengths + " wavelengths");
        List<PatternNote> notes = new ArrayList<>();
        boolean centreFed = radiator == Radiator.HALF_WAVE_DIPOLE
                || radiator == Radiator.HALF_WAVE_END_FED && mount == PatternMount.FREE_SPACE;
        DoubleUnaryOperator power = mount == PatternMount.PERFECT_GROUND
                ? straight(lengthWavelengths, 1, notes)
                : mount == PatternMount.FREE_SPACE || centreFed
                        ? straight(centreFed ? lengthWavelengths / 2 : lengthWavelengths, 0.5, notes)
                        : onChassis(radiator, lengthWavelengths, mount, frequency, notes);
        ElevationPattern found =
                ElevationPattern.sampled(name(radiator, lengthWavelengths, mount, frequency), gains(power), notes);
        String squint = squint(found, radiator, lengthWavelengths);
        if (squint.isEmpty()) return found;
        notes.add(PatternNote.warning(squint));
        return found.with(notes);
    }

    private static String name(Radiator radiator, double length, PatternMount mount, Frequency frequency) {
        return radiator.word() + ", " + Decibels.number(length, 3) + " wavelengths, " + mount.word() + ", "
                + Decibels.number(frequency.mhz(), 1) + " MHz";
    }

    /** Wire of this arm on perfect ground, or, with half the power gain, two such arms fed in the middle in free space. */
    private static DoubleUnaryOperator straight(double arm, double scale, List<PatternNote> notes) {
        notes.add(PatternNote.basis("Gain without losses and without mismatch."));
        PatternTables table = PatternTables.Shipped.WIRE.table();
        if (arm <= table.maxLength()) {
            DoubleUnaryOperator above = table.power(1, arm);
            return e -> scale * above.applyAsDouble(Math.abs(e));
        }
        notes.add(PatternNote.warning(
                "Longer than the tables: sinusoidal current, off by 1 to 2 dB and more near nulls."));
        double[] formula = SinusoidalWire.gainDbi(arm, true);
        return e -> scale * Math.pow(10, formula[(int) Math.round(e) + 90] / 10);
    }

    private static DoubleUnaryOperator onChassis(
            Radiator radiator, double length, PatternMount mount, Frequency frequency, List<PatternNote> notes) {
        boolean wire = mount == PatternMount.CHASSIS_COUNTERPOISE;
        if (radiator == Radiator.SHORT_HELICAL) {
            PatternTables loaded =
                    (wire ? PatternTables.Shipped.HELICAL_COUNTERPOISE : PatternTables.Shipped.HELICAL).table();
            if (length <= loaded.maxLength()) {
                noteBand(loaded, frequency, notes);
                notes.add(PatternNote.basis(
                        "Gain with the loss of a coil of quality 100, tuned in this mounting, without mismatch."));
                if (length < loaded.minLength())
                    notes.add(PatternNote.warning("Shorter than the tables: the true gain is lower still."));
                return loaded.power(frequency.mhz(), length);
            }
        }
        PatternTables table =
                (wire ? PatternTables.Shipped.CHASSIS_COUNTERPOISE : PatternTables.Shipped.CHASSIS).table();
        noteBand(table, frequency, notes);
        if (length > table.maxLength()) return straight(length, 0.5, notes);
        notes.add(PatternNote.basis("Gain without losses and without mismatch."));
        return table.power(frequency.mhz(), length);
    }

    private static void noteBand(PatternTables table, Frequency frequency, List<PatternNote> notes) {
        if (!table.coversMhz(frequency.mhz()))
            notes.add(PatternNote.warning(String.format(
                    Locale.ROOT,
                    "The tables cover %.0f to %.0f MHz; %.1f MHz takes their end.",
                    table.minMhz(),
                    table.maxMhz(),
                    frequency.mhz())));
    }

    private static double[] gains(DoubleUnaryOperator power) {
        double[] g = new double[181];
        double max = 0;
        for (int i = 0; i < g.length; i++) {
            g[i] = power.applyAsDouble(i - 90);
            max = Math.max(max, g[i]);
        }
        double floor = max * Math.pow(10, -FLOOR_DB / 10);
        for (int i = 0; i < g.length; i++) g[i] = 10 * Math.log10(Math.max(g[i], floor));
        return g;
    }

    private static String squint(ElevationPattern pattern, Radiator radiator, double length) {
        double missing = pattern.maxGainDbi() - pattern.gainDbi(0);
        boolean threeQuarters = radiator != Radiator.HALF_WAVE_DIPOLE && length >= 0.68 && length <= 0.86;
        if (missing < SQUINT_DB && !threeQuarters) return "";
        String how = threeQuarters
                ? "This whip is about three quarters of a wavelength here: it squints up."
                : String.format(Locale.ROOT, "This radiator squints: it is %.2f wavelengths long here.", length);
        return how
                + String.format(
                        Locale.ROOT,
                        " Its maximum is at %.0f°, and the horizon gets %.1f dB less.",
                        pattern.maxElevationDeg(),
                        missing);
    }
}
