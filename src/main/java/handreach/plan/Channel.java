package handreach.plan;

import handreach.units.Frequency;
import handreach.units.Polarization;

/** The channel and what counts as copy on it; words as in the plan file. */
public record Channel(String name, Frequency frequency, Polarization polarization, String modulation, CopyWish wish) {

    /**
     * What counts as copy.
     *
     * @param quality delivered audio quality word
     * @param fading {@code walking} or {@code standing}
     * @param odds wanted share of places with copy, 0 to 1
     */
    public record CopyWish(String quality, String fading, double odds) {}
}
