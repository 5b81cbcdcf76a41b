package handreach.propagation.march;

import handreach.profile.Profile;
import handreach.propagation.EndCover;
import handreach.propagation.LossBuilder;
import handreach.propagation.LossModel;
import handreach.propagation.PathConditions;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import handreach.propagation.Standing;
import handreach.propagation.Terminals;
import handreach.propagation.Woodland;
import handreach.propagation.handheld.HandheldWalk;
import handreach.terrain.Cover;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;

/** The field march as a model of one path: what the wave equation says over bare ground, and what stands at its ends. */
public final class FullWave implements LossModel {
    /** A wait that the user should know of. */
    private static final double LONG_S = 10;

    @Override
    public String name() {
        return "full-wave";
    }

    /** The same model, which says before a march of more than ten seconds how long it takes. */
    public LossModel sayingFirst(Consumer<String> told) {
        return new LossModel() {
            @Override
            public String name() {
                return FullWave.this.name();
            }

            @Override
            public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
                double seconds = seconds(costs(profile, terminals, conditions));
                if (seconds > LONG_S)
                    told.accept(String.format(
                            Locale.ROOT,
                            "Marching the field along this path takes some %.0f s on one core with nothing else to do.",
                            seconds));
                return FullWave.this.loss(profile, terminals, conditions);
            }
        };
    }

    private static List<FieldMarchCost> costs(Profile profile, Terminals terminals, PathConditions conditions) {
        int last = profile.count() - 1;
        double[] roofs = CoveredMarch.roofsM(profile.cover(last), profile.clutterM(last));
        double[] rx = {terminals.rxHeightM()};
        List<FieldMarchCost> costs = CoveredMarch.costs(profile, terminals.txHeightM(), rx, roofs, conditions);
        if (conditions.standing() == Standing.AT_ENDS) return costs;
        return List.of(
                costs.get(0), FieldMarch.cost(profile, terminals.txHeightM(), terminals.rxHeightM(), conditions));
    }

    private static double seconds(List<FieldMarchCost> costs) {
        return costs.stream().mapToDouble(FieldMarchCost::seconds).sum();
    }

    /**
     * Basic transmission loss as the local mean at the far end of the profile.
     *
     * @shape  profile in, loss in parts out; one march, two where the first end is in town or what stands on the way counts, cost as {@link FieldMarch#cost}; pure
     * @unit   dB, positive weakens
     * @valid  0.05 km on; else as {@link FieldMarch#along(Profile, double, double, PathConditions)}; beyond 65 dB of excess it warns
     * @error  bare ground as {@link FieldMarch#along(Profile, double, double, PathConditions)}; woodland 5 to 9 dB, town 6 dB standard
     *     deviation between places
     * @source as {@link FieldMarch#along(Profile, double, double, PathConditions)}; woodland Rec. ITU-R P.833-9, town Rec. ITU-R
     *     P.2108-1 ({@link CoveredMarch})
     */
    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        int last = profile.count() - 1;
        double tx = terminals.txHeightM();
        double[] rx = {terminals.rxHeightM()};
        Cover far = profile.cover(last);
        double farStandingM = profile.clutterM(last);
        double[] roofs = CoveredMarch.roofsM(far, farStandingM);
        List<FieldMarchCost> costs = costs(profile, terminals, conditions);
        CoveredMarch march = CoveredMarch.along(profile, tx, rx, roofs, conditions, share -> true)
                .get(0);
        FullWaveRadial radial = march.marched(far, farStandingM);
        double mean = radial.meanLossDb(last);
        boolean isOnTheWay = conditions.standing() == Standing.ON_THE_WAY;
        double ground = isOnTheWay ? bareDb(profile, terminals, conditions) : mean;
        PathGeometry angles = PathGeometry.of(profile, terminals, conditions.atmosphere(), conditions.frequency());
        double wood = march.woodDb(
                Woodland.runFromEndM(profile, true),
                Woodland.runFromEndM(profile, false),
                farStandingM,
                angles.departureDeg(),
                angles.arrivalDeg());
        double town = march.townDb(last, far, farStandingM);
        double cut = isOnTheWay ? 0 : Math.max(0, heightInCoverDb(profile, terminals, conditions) - town);
        account.part(
                "ground and relief",
                ground - account.freeSpaceDb(),
                "field march along the profile, docs/full-wave.md");
        if (isOnTheWay)
            account.part(
                    "on the way",
                    mean - ground,
                    "field march through woods (Rec. ITU-R P.833-9, dB/m) and over roofs, less that over bare ground");
        if (cut > 0) account.part(LossBuilder.HEIGHT_IN_COVER, cut, LossBuilder.HEIGHT_SOURCE);
        if (!isOnTheWay) account.part("woodland", wood, "Rec. ITU-R P.833-9 section 2.1, at the ends");
        account.part("town", town, "Rec. ITU-R P.2108-1 section 3.1, at the ends");
        account.step("loss at the point itself", radial.pointLossDb(last), "dB");
        account.step("loss of the local mean", mean, "dB");
        account.step("a_e", conditions.atmosphere().effectiveRadiusKm(), "km");
        account.step("range steps", costs.get(0).steps(), "");
        account.step("nodes of the column", costs.get(0).nodes(), "");
        radial.warnings().forEach(account::warn);
        march.warnings(last, far, farStandingM, wood).forEach(account::warn);
        double seconds = seconds(costs);
        if (seconds > LONG_S)
            account.warn(String.format(
                    Locale.ROOT, "This march takes some %.0f s on one core (docs/full-wave.md).", seconds));
        return account.close();
    }

    /** The same march over bare ground, to tell what stands on the way from it. */
    private static double bareDb(Profile profile, Terminals terminals, PathConditions conditions) {
        return FieldMarch.along(profile, terminals.txHeightM(), terminals.rxHeightM(), conditions)
                .meanLossDb(profile.count() - 1);
    }

    /** The closed form's: a march from or to another height would move its edges as well. */
    private static double heightInCoverDb(Profile profile, Terminals terminals, PathConditions conditions) {
        if (!EndCover.mayCutGain(terminals)) return 0;
        int last = profile.count() - 1;
        HandheldWalk walk = new HandheldWalk(conditions, terminals, profile.count());
        walk.start(profile.heightM(0), profile.cover(0), profile.clutterM(0), Woodland.runFromEndM(profile, true));
        for (int i = 1; i <= last; i++) walk.add(1000 * profile.distanceKm(i), profile.heightM(i));
        walk.excessDb(profile.cover(last), profile.clutterM(last), Woodland.runFromEndM(profile, false));
        return walk.heightInCoverDb();
    }
}
