package handreach.propagation;

import handreach.profile.Profile;
import java.util.Locale;

/** The field march as a model of one path: what the wave equation says over bare ground. */
public final class FullWave implements LossModel {
    /** Beyond this excess other ways through the air and round the hill decide. */
    private static final double LOST_DB = 65;

    /** A wait that the user should know of. */
    private static final double LONG_S = 10;

    @Override
    public String name() {
        return "full-wave";
    }

    /**
     * Basic transmission loss as the local mean at the far end of the profile.
     *
     * @shape  profile in, loss in two parts out; one march, cost as {@link FieldMarch#cost}; pure
     * @unit   dB, positive weakens
     * @valid  0.05 km on; else as {@link FieldMarch#along(Profile, double, double, PathConditions)}; beyond 65 dB of excess it warns
     * @error  as {@link FieldMarch#along(Profile, double, double, PathConditions)}
     * @source as {@link FieldMarch#along(Profile, double, double, PathConditions)}
     */
    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossAccount account = new LossAccount(name(), profile, terminals, conditions);
        double tx = terminals.txHeightM();
        double rx = terminals.rxHeightM();
        FieldMarchCost cost = FieldMarch.cost(profile, tx, rx, conditions);
        FullWaveRadial radial = FieldMarch.along(profile, tx, rx, conditions);
        int last = radial.count() - 1;
        double mean = radial.meanLossDb(last);
        double excess = mean - account.freeSpaceDb();
        account.part("ground and relief", excess, "field march along the profile, docs/full-wave.md");
        account.step("loss at the point itself", radial.pointLossDb(last), "dB");
        account.step("loss of the local mean", mean, "dB");
        account.step("a_e", conditions.atmosphere().effectiveRadiusKm(), "km");
        account.step("range steps", cost.steps(), "");
        account.step("nodes of the column", cost.nodes(), "");
        for (String warning : radial.warnings()) account.warn(warning);
        if (excess > LOST_DB)
            account.warn(String.format(
                    Locale.ROOT,
                    "Lost: the excess over free space is %.0f dB; beyond 65 dB bare ground no longer describes the place"
                            + " (docs/full-wave.md).",
                    excess));
        if (cost.seconds() > LONG_S)
            account.warn(String.format(
                    Locale.ROOT, "This march takes some %.0f s on one core (docs/full-wave.md).", cost.seconds()));
        return account.warnOfClutter(profile).close();
    }
}
