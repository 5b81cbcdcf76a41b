package handreach.bench.match;

import handreach.bench.SessionKey;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;

/** What a sweep of reflection says about an antenna: where it is tuned, how wide, how it does on the channels, how to trim. */
public final class MatchAnalysis {
    /** Return loss that is usually wished for (common practice, no source). */
    public static final double WISHED_RETURN_LOSS_DB = 10;

    /** A dip that is no better tells nothing of a length: an open, a short, a cable without an antenna (our suggestion). */
    private static final double MOST_SWR_TO_TRIM = 20;

    private final Touchstone file;
    private final double systemOhm;
    private final ReflectionCurve curve;
    private final List<Dip> dips;
    private final List<ChannelMatch> channels;
    private final List<String> warnings;

    private MatchAnalysis(Touchstone file, List<Double> channelsMhz, double systemOhm) {
        this.file = file;
        this.systemOhm = systemOhm;
        curve = ReflectionCurve.of(file, systemOhm);
        dips = new DipSearch(curve, systemOhm).dips();
        List<String> told = new ArrayList<>(file.warnings());
        channels = channels(channelsMhz, told);
        warn(told);
        warnings = List.copyOf(told);
    }

    /**
     * Looks at a sweep over the file's own reference impedance.
     *
     * @shape  n rows and m channels in, one analysis out; O(n log n + m d) with d dips, pure
     * @unit   channels MHz; impedance of the radio, over which the sweep is restated, ohms
     * @valid  channels above 0 MHz; those outside the sweep are told and left out
     * @error  resonance and 3:1 bandwidth of a series resonant circuit within 0.1 % as long as the 3:1 band is no narrower than
     *     a quarter of the step of the sweep; the instrument's own error is usually larger
     * @source zeros of the reactance and edges of |Γ| on an interpolated curve; no published source
     */
    public static MatchAnalysis of(Touchstone file, List<Double> channelsMhz, double systemOhm) {
        if (!(systemOhm > 0) || Double.isInfinite(systemOhm)) throw new IllegalArgumentException("system " + systemOhm);
        return new MatchAnalysis(file, channelsMhz, systemOhm);
    }

    private List<ChannelMatch> channels(List<Double> channelsMhz, List<String> told) {
        List<ChannelMatch> found = new ArrayList<>();
        for (double mhz : channelsMhz) {
            if (!(mhz > 0)) throw new IllegalArgumentException("channel " + mhz + " MHz");
            if (!curve.covers(mhz)) {
                told.add(String.format(
                        Locale.ROOT,
                        "The channel %s MHz lies outside the sweep (%s to %s MHz): nothing is known there. Sweep wider.",
                        SessionKey.plain(mhz),
                        SessionKey.plain(curve.lowestMhz()),
                        SessionKey.plain(curve.highestMhz())));
                continue;
            }
            Complex impedance = curve.impedance(mhz).multiply(systemOhm);
            found.add(new ChannelMatch(
                    mhz,
                    curve.match(mhz),
                    Math.max(0, impedance.getReal()),
                    impedance.getImaginary(),
                    trim(nearest(mhz), mhz)));
        }
        return List.copyOf(found);
    }

    private static Optional<Trim> trim(Dip dip, double mhz) {
        return dip.match().swr() > MOST_SWR_TO_TRIM ? Optional.empty() : Optional.of(new Trim(dip.tunedMhz(), mhz));
    }

    private Dip nearest(double mhz) {
        return dips.stream()
                .min(Comparator.comparingDouble(d -> Math.abs(Math.log(d.tunedMhz() / mhz))))
                .orElseThrow();
    }

    private void warn(List<String> told) {
        if (file.referenceOhm() != systemOhm)
            told.add("The file's reference is " + SessionKey.plain(file.referenceOhm()) + " ohms; SWR is restated over "
                    + SessionKey.plain(systemOhm) + " ohms.");
        if (file.referenceOhm() != 50 && systemOhm == file.referenceOhm())
            told.add("SWR is stated over the file's own " + SessionKey.plain(systemOhm)
                    + " ohms; a radio of 50 ohms sees another SWR.");
        Dip main = main();
        if (file.count() == 1) told.add("The sweep has one row: no resonance and no bandwidth can be found.");
        else if (main.frequencyMhz() <= curve.lowestMhz() || main.frequencyMhz() >= curve.highestMhz())
            told.add("The SWR is still falling at the end of the sweep: the resonance may lie outside. Sweep wider.");
        if (main.band3().isEmpty())
            told.add(String.format(
                    Locale.ROOT,
                    "The SWR never falls to 3; the least is %.1f.",
                    main.match().swr()));
        for (ChannelMatch channel : channels) warn(channel, told);
    }

    private static void warn(ChannelMatch channel, List<String> told) {
        if (channel.match().returnLossDb() < WISHED_RETURN_LOSS_DB)
            told.add(String.format(
                    Locale.ROOT,
                    "At %s MHz the return loss is %.1f dB (SWR %.1f), 10 dB or better is the usual wish; the mismatch costs"
                            + " %.2f dB. A delta read in this mounting already holds it.",
                    SessionKey.plain(channel.channelMhz()),
                    channel.match().returnLossDb(),
                    channel.match().swr(),
                    channel.match().mismatchLossDb()));
        channel.trim()
                .filter(trim -> Math.abs(trim.tooLongPercent()) > Trim.MOST_PERCENT)
                .ifPresent(trim -> told.add(String.format(
                        Locale.ROOT,
                        "The antenna is tuned to %.1f MHz, %.0f %% off %s MHz: that is not a matter of trimming. Look at the"
                                + " mounting, the counterpoise and the band the antenna was made for first.",
                        trim.tunedMhz(),
                        Math.abs(trim.tooLongPercent()),
                        SessionKey.plain(channel.channelMhz()))));
    }

    public String name() {
        return file.name();
    }

    /** Impedance over which SWR and reflection are stated. */
    public double systemOhm() {
        return systemOhm;
    }

    /** All dips of the sweep, by frequency; at least one. */
    public List<Dip> dips() {
        return dips;
    }

    /** The dip nearest to the first channel within the sweep, or the deepest when there is none. */
    public Dip main() {
        if (!channels.isEmpty()) return nearest(channels.get(0).channelMhz());
        return dips.stream()
                .min(Comparator.comparingDouble(d -> d.match().reflection()))
                .orElseThrow();
    }

    public List<ChannelMatch> channels() {
        return channels;
    }

    /**
     * Match at a frequency.
     *
     * @shape  scalar in, one match or nothing out; O(log n), pure
     * @unit   MHz
     * @valid  within the sweep; nothing outside
     * @error  as {@link #of}
     * @source interpolated reflection, see {@link #of}
     */
    public Optional<Match> matchAt(double frequencyMhz) {
        return curve.covers(frequencyMhz) ? Optional.of(curve.match(frequencyMhz)) : Optional.empty();
    }

    public double lowestMhz() {
        return curve.lowestMhz();
    }

    public double highestMhz() {
        return curve.highestMhz();
    }

    /**
     * Quality factor that belongs to the main dip's 3:1 band.
     *
     * @shape  scalar or nothing out; pure
     * @unit   none
     * @valid  both edges within the sweep, and resistance at resonance within a factor of 3 of the system's; else nothing
     * @error  as {@link SeriesResonance#quality}
     * @source {@link SeriesResonance#quality}
     */
    public OptionalDouble qualityFromBandwidth() {
        Dip main = main();
        if (main.band3().isEmpty() || !main.band3().get().isWhole()) return OptionalDouble.empty();
        double ratio = main.resonance().map(r -> r.resistanceOhm() / systemOhm).orElse(1.0);
        if (!(ratio > 1.0 / 3 && ratio < 3)) return OptionalDouble.empty();
        return OptionalDouble.of(
                SeriesResonance.quality(main.tunedMhz(), main.band3().get().widthMhz(), Match.ofSwr(3), ratio));
    }

    public List<String> warnings() {
        return warnings;
    }
}
