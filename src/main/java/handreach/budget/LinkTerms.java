package handreach.budget;

import handreach.loadout.CopyQuality;
import handreach.loadout.Fading;
import handreach.uncertainty.Doubt;
import handreach.units.Frequency;
import java.util.List;

/**
 * What is asked of a link.
 *
 * @param frequency the channel
 * @param quality copy target
 * @param fading how people move
 * @param odds wanted odds of copy, 0 to 1, ends left out
 * @param model doubt of the path model: common to the area, and spread between places
 * @param extras further lines of the path, counted both ways
 */
public record LinkTerms(
        Frequency frequency, CopyQuality quality, Fading fading, double odds, Doubt model, List<ExtraLine> extras) {
    /**
     * Before any walk, in woods or town, where cover is known only by its kind. Common: town and valley without known ground between
     * the ends were +6 dB off as a whole, a wood and a town of known cover −7 and −4 dB; spread: 8 to 10 dB there, 8 to 10 dB on a
     * built-up campus (docs/field-comparison.md).
     */
    public static final Doubt MODEL_COVERED = new Doubt(6, 9);

    /**
     * Before any walk, over open ground with known terrain, by a model that was held against measured lines there. Common: whole
     * lines were off by −2 to +3 dB, and 95 % intervals of this doubt held 94 % of measured reaches; spread: errors within a line
     * of 3.2 dB (144 MHz) and 5.3 dB (435 MHz), and odds of this spread came true within 0.05 (docs/field-comparison.md).
     */
    public static final Doubt MODEL_OPEN = new Doubt(3, 4.5);

    /**
     * The same by another model. Common: on the same lines it held 96 to 100 % of measured reaches for two-ray, delta-Bullington and
     * P.1812; models of edges alone are farther off than that (docs/field-comparison.md). Spread: our suggestion.
     */
    public static final Doubt MODEL_OTHER = new Doubt(6, 7);

    public LinkTerms {
        if (!(odds > 0 && odds < 1)) throw new IllegalArgumentException("odds " + odds);
        extras = List.copyOf(extras);
    }
}
