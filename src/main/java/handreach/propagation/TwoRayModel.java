package handreach.propagation;

import handreach.profile.Profile;
import java.util.Locale;

/** Direct ray, reflected ray and surface wave over the plane that fits the ground best; no curvature, no obstacles. */
final class TwoRayModel implements LossModel {
    @Override
    public String name() {
        return "two-ray";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        PathArrays path = PathArrays.of(profile, terminals);
        // The fitted plane, not the lowered one: an obstacle is no reason to take the ground away.
        GroundFit plane = GroundFit.of(path.dKm(), path.hM());
        double h1 = path.txTipM() - plane.underTxM();
        double h2 = path.rxTipM() - plane.underRxM();
        double distanceM = path.lengthKm() * 1000;
        double excess = TwoRay.excessDb(
                distanceM, h1, h2, conditions.frequency(), conditions.polarization(), conditions.ground());
        account.part(
                "excess", excess, "Norton (1937), Bullington (1957): reflection and surface wave over flat ground");
        double sinGrazing = (h1 + h2) / Math.hypot(distanceM, h1 + h2);
        account.step("h1", h1, "m")
                .step("h2", h2, "m")
                .step("ψ", Math.toDegrees(Math.asin(sinGrazing)), "°")
                .step("|R|", reflection(conditions, sinGrazing), "")
                .step(
                        "h0",
                        SurfaceWave.effectiveHeightM(
                                conditions.frequency(), conditions.polarization(), conditions.ground()),
                        "m")
                .step("excess without surface wave", TwoRay.plainExcessDb(distanceM, h1, h2, conditions, 0), "dB");
        warn(account, profile, terminals, conditions);
        return account.warnOfClutter(profile).close();
    }

    private static double reflection(PathConditions conditions, double sinGrazing) {
        return Reflection.coefficient(
                        conditions.frequency(), conditions.polarization(), conditions.ground(), sinGrazing)
                .abs();
    }

    private static void warn(LossBuilder account, Profile profile, Terminals terminals, PathConditions conditions) {
        double limitKm = TwoRay.flatEarthLimitKm(conditions.frequency());
        if (profile.lengthKm() > limitKm)
            account.warn(String.format(
                    Locale.ROOT,
                    "The path is %.4g km long; flat ground stands for the earth only up to about %.3g km at this frequency.",
                    profile.lengthKm(),
                    limitKm));
        if (!PathGeometry.of(profile, terminals, conditions.atmosphere(), conditions.frequency())
                .lineOfSight())
            account.warn("The ground blocks the line of sight; two-ray knows no obstacles and loses too little here.");
    }
}
