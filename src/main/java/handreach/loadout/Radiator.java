package handreach.loadout;

import handreach.input.Keyword;
import java.util.List;

/** Kinds of radiator that have a pattern here. */
public enum Radiator {
    SHORT_HELICAL("short-helical", 0.075),
    QUARTER_WAVE("quarter-wave", 0.25),
    HALF_WAVE_END_FED("half-wave-end-fed", 0.5),
    FIVE_EIGHTHS("five-eighths", 0.625),
    HALF_WAVE_DIPOLE("half-wave-dipole", 0.5),
    MONOPOLE("monopole", 0.25);

    /** How files and options name them. */
    public static final Keyword<Radiator> KEYWORD = Keyword.of(List.of(values()), Radiator::word);

    private final String word;
    private final double usualLengthWavelengths;

    Radiator(String word, double usualLengthWavelengths) {
        this.word = word;
        this.usualLengthWavelengths = usualLengthWavelengths;
    }

    /** The word for it in files and options. */
    public String word() {
        return word;
    }

    /** Length it has when nobody says otherwise, in wavelengths; end to end for the dipole. */
    public double usualLengthWavelengths() {
        return usualLengthWavelengths;
    }
}
