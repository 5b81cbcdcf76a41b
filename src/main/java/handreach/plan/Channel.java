package handreach.plan;

import handreach.input.Keyword;
import handreach.input.Range;
import handreach.loadout.CopyQuality;
import handreach.loadout.Fading;
import handreach.loadout.Modulation;
import handreach.loadout.NeededWays;
import handreach.units.Decibels;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The channel and what counts as copy on it.
 *
 * @param name what the crew calls it
 * @param frequency of straight talks
 * @param polarization of its waves
 * @param modulation of its radios
 * @param wish what counts as copy
 * @param split what a relay on it hears and sends where those are two frequencies
 */
public record Channel(
        String name,
        Frequency frequency,
        Polarization polarization,
        Modulation modulation,
        CopyWish wish,
        Optional<Split> split) {
    /** What a relay hears, and what it sends. */
    public record Split(Frequency receive, Frequency transmit) {}

    /** What the antennas, the body and the noise of this house are known for. */
    public static final Range FREQUENCY = new Range("frequency_mhz", 30, 1000, "MHz");
    /** Wanted share of places with copy; beyond, the tails of the spread are not known. */
    public static final Range ODDS = new Range("odds", 0.5, 0.99, "");
    /** How files and options name the planes. */
    public static final Keyword<Polarization> POLARIZATION =
            Keyword.of(List.of(Polarization.values()), plane -> plane.name().toLowerCase(Locale.ROOT));

    /** Its frequency as it is written everywhere: {@code 155.1600 MHz}. */
    public String mhzText() {
        return Decibels.number(frequency.mhz(), 4) + " MHz";
    }

    /** Name and frequency with that between them; the frequency alone where nobody gave it a name. */
    public String title(String between) {
        return name.equals(mhzText()) ? name : name + between + mhzText();
    }

    /** The same channel on another frequency. */
    public Channel at(Frequency other) {
        return new Channel(name, other, polarization, modulation, wish, Optional.empty());
    }

    /**
     * What counts as copy.
     *
     * @param quality delivered audio quality
     * @param fading how people move
     * @param odds wanted share of places with copy, 0 to 1
     * @param ways which ways of a talk with the base must work
     */
    public record CopyWish(CopyQuality quality, Fading fading, double odds, NeededWays ways) {
        /**
         * What people mean when they say that somebody answered: understood with many repeats, standing still, at every second place
         * (common practice, no source). Told beside what a plan wants, so that nobody takes one for the other.
         */
        public static final CopyWish SOME_COPY = new CopyWish(CopyQuality.DAQ_2, Fading.STANDING, 0.5, NeededWays.BOTH);
    }
}
