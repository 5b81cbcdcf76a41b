package handreach.propagation;

import handreach.profile.Profile;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The field march as a model of one path: what the wave equation says over bare ground. */
public final class FullWave implements LossModel {
    /** Beyond this excess other ways through the air and round the hill decide. */
    private static final double LOST_DB = 65;

    private static final double SHORTEST_KM = 0.05;

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
        if (profile.lengthKm() < SHORTEST_KM)
            throw new IllegalArgumentException("full-wave needs at least 0.05 km, not " + profile.lengthKm());
        FullWaveRadial radial = FieldMarch.along(profile, terminals.txHeightM(), terminals.rxHeightM(), conditions);
        FieldMarchCost cost = FieldMarch.cost(profile, terminals.txHeightM(), terminals.rxHeightM(), conditions);
        int last = radial.count() - 1;
        double free = radial.freeSpaceDb(last);
        double mean = radial.meanLossDb(last);
        double point = radial.pointLossDb(last);
        List<LossPart> parts = List.of(
                new LossPart("free space", free, "Rec. ITU-R P.525, slant distance"),
                new LossPart("ground and relief", mean - free, "full-wave field march, docs/full-wave.md"));
        List<Step> steps = List.of(
                new Step("loss at the point itself", point, "dB"),
                new Step("loss of the local mean", mean, "dB"),
                new Step("range steps", cost.steps(), ""),
                new Step("nodes of the column", cost.nodes(), ""));
        return new PathLoss(name(), mean, free, parts, steps, warnings(profile, radial, mean - free));
    }

    private static List<String> warnings(Profile profile, FullWaveRadial radial, double excessDb) {
        List<String> warnings = new ArrayList<>(radial.warnings());
        if (excessDb > LOST_DB)
            warnings.add(String.format(
                    Locale.ROOT,
                    "Lost: the excess over free space is %.0f dB; beyond 65 dB the march over bare ground no longer describes the place (docs/full-wave.md).",
                    excessDb));
        for (int i = 0; i < profile.count(); i++) {
            if (profile.clutterM(i) > 0) {
                warnings.add("The field march goes over bare ground: trees and houses of the profile are left out.");
                break;
            }
        }
        return warnings;
    }
}
