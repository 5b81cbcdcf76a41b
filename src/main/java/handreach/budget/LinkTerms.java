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
    /** Before any walk, in hills and forest; our suggestion. */
    public static final Doubt MODEL_HILLS = new Doubt(6, 9);
    /** Before any walk, in open country; our suggestion. */
    public static final Doubt MODEL_OPEN = new Doubt(6, 7);

    public LinkTerms {
        if (!(odds > 0 && odds < 1)) throw new IllegalArgumentException("odds " + odds);
        extras = List.copyOf(extras);
    }
}
