package handreach.loadout;

import handreach.input.Keyword;
import java.util.List;

/** Kinds of radiator that have a pattern here. */
public enum Radiator {
    SHORT_HELICAL("short-helical", 0.075, 0, 0.18),
    QUARTER_WAVE("quarter-wave", 0.25, 0.19, 0.31),
    HALF_WAVE_END_FED("half-wave-end-fed", 0.5, 0.42, 0.56),
    FIVE_EIGHTHS("five-eighths", 0.625, 0.56, 0.69),
    HALF_WAVE_DIPOLE("half-wave-dipole", 0.5, 0.42, 0.56),
    MONOPOLE("monopole", 0.25, 0, 0.69);

    /** How files and options name them. */
    public static final Keyword<Radiator> KEYWORD = Keyword.of(List.of(values()), Radiator::word);

    private final String word;
    private final double usualLengthWavelengths;
    private final double shortestWavelengths;
    private final double longestWavelengths;

    Radiator(String word, double usualLengthWavelengths, double shortestWavelengths, double longestWavelengths) {
        this.word = word;
        this.usualLengthWavelengths = usualLengthWavelengths;
        this.shortestWavelengths = shortestWavelengths;
        this.longestWavelengths = longestWavelengths;
    }

    /** The word for it in files and options. */
    public String word() {
        return word;
    }

    /** Length it has when nobody says otherwise, in wavelengths; end to end for the dipole. */
    public double usualLengthWavelengths() {
        return usualLengthWavelengths;
    }

    /** Whether a radiator of this length still works as this kind; the limits are our suggestion. */
    boolean isUsual(double lengthWavelengths) {
        return lengthWavelengths >= shortestWavelengths && lengthWavelengths <= longestWavelengths;
    }
}
