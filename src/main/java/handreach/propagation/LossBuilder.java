package handreach.propagation;

import handreach.profile.Profile;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A loss while it is being added up: free space first, then parts, steps and warnings as a model finds them. */
public final class LossBuilder {
    /** No model of this room is meant for less, km. */
    public static final double SHORTEST_KM = 0.05;

    /** Part of the loss: what antennas among trees or houses gain less by their height. */
    public static final String HEIGHT_IN_COVER = "height in cover";

    public static final String HEIGHT_SOURCE = "measured at 868 MHz (DOI 10.5281/zenodo.1560654), carried on by us";

    /** Said by models that count cover at the ends, of paths with some between. */
    public static final String ENDS_ONLY =
            "Trees and buildings count at the two ends only; those between are left out.";

    /** That a march through and over what stands between the ends counts it, and how little that is known to be right. */
    public static final String ON_THE_WAY =
            "Trees and buildings between the ends count: woods as a layer of even trees, towns as ground as"
                    + " high as their roofs. On trial: over one measured town the march lost some 55 dB too much (docs/full-wave.md).";

    private static final double HALF_WAY_ROUND_KM = 20_038;

    private final String model;
    private final double freeSpaceDb;
    private double lossDb;
    private final List<LossPart> parts = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();

    /** Opens the account with the free-space loss of the straight line; refuses what no model can answer. */
    public LossBuilder(String model, Profile profile, Terminals terminals, PathConditions conditions) {
        refuse(profile, conditions);
        this.model = model;
        freeSpaceDb = FreeSpace.lossDb(conditions.frequency(), FreeSpace.slantKm(profile, terminals));
        part("free space", freeSpaceDb, "Rec. ITU-R P.525-4");
    }

    /** Refuses a path that is too short or not on this earth, with a sentence fit for the user. */
    static void refuse(Profile profile, PathConditions conditions) {
        double lengthKm = profile.lengthKm();
        if (lengthKm < SHORTEST_KM)
            throw new NoAnswer(String.format(
                    Locale.ROOT,
                    "the path is %.4g m long; the loss models hold from 50 m up. Move the ends apart.",
                    lengthKm * 1000));
        if (lengthKm > HALF_WAY_ROUND_KM)
            throw new NoAnswer(String.format(
                    Locale.ROOT,
                    "the path is %.4g km long; no path on this earth exceeds 20 038 km. Check the unit.",
                    lengthKm));
        for (int i = 0; i < profile.count(); i++)
            if (Math.abs(profile.heightM(i)) > 12_000)
                throw new NoAnswer(String.format(
                        Locale.ROOT,
                        "the ground at %.4g km is %.6g m high; heights lie within 12 000 m of sea level. Check the unit.",
                        profile.distanceKm(i),
                        profile.heightM(i)));
        double mhz = conditions.frequency().mhz();
        if (!PathConditions.FREQUENCY.accepts(mhz))
            throw new NoAnswer(String.format(
                    Locale.ROOT,
                    "the frequency is %.6g MHz; the loss models answer for %s.",
                    mhz,
                    PathConditions.FREQUENCY.words()));
    }

    public double freeSpaceDb() {
        return freeSpaceDb;
    }

    public LossBuilder part(String name, double db, String source) {
        parts.add(new LossPart(name, db, source));
        lossDb += db;
        return this;
    }

    public LossBuilder step(String symbol, double value, String unit) {
        steps.add(new Step(symbol, value, unit));
        return this;
    }

    public LossBuilder warn(String sentence) {
        warnings.add(sentence);
        return this;
    }

    /** Warns when a value lies outside a document's range. */
    public LossBuilder within(String what, double value, double low, double high, String unit, String document) {
        if (value < low || value > high)
            warn(String.format(
                    Locale.ROOT,
                    "%s is %.4g %s, outside the %s to %s %s of %s.",
                    what,
                    value,
                    unit,
                    plain(low),
                    plain(high),
                    unit,
                    document));
        return this;
    }

    /** Warns of a frequency at which diffraction over a sphere is not given. */
    LossBuilder overSphere(PathConditions conditions) {
        double mhz = conditions.frequency().mhz();
        return within("The frequency", mhz, 10, 1e9, "MHz", "Rec. ITU-R P.526-15 section 3.2");
    }

    /** Says that what stands on the ground was left out, if the profile has any. */
    LossBuilder warnOfClutter(Profile profile) {
        for (int i = 0; i < profile.count(); i++)
            if (profile.clutterM(i) > 0)
                return warn(model + ": over bare ground; the clutter heights of the profile are left out.");
        return this;
    }

    /** What was warned of so far. */
    public List<String> warnings() {
        return List.copyOf(warnings);
    }

    public PathLoss close() {
        return new PathLoss(model, lossDb, freeSpaceDb, parts, steps, warnings);
    }

    private static String plain(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%s", value);
    }
}
