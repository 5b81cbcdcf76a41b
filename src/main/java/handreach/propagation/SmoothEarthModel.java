package handreach.propagation;

import handreach.profile.Profile;

/** Spherical earth without relief, antennas at their height over the smooth surface. */
final class SmoothEarthModel implements LossModel {
    @Override
    public String name() {
        return "smooth-earth";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        PathArrays path = PathArrays.of(profile, terminals);
        double earthKm = conditions.atmosphere().effectiveRadiusKm();
        SmoothSurface surface = SmoothSurface.of(path.dKm(), path.hM(), path.txTipM(), path.rxTipM());
        double h1 = path.txTipM() - surface.txM();
        double h2 = path.rxTipM() - surface.rxM();
        double d = path.lengthKm();
        double loss = SphericalEarth.lossDb(
                d, h1, h2, conditions.frequency(), earthKm, conditions.ground(), conditions.polarization());
        SphericalEarth.FirstTerm first = SphericalEarth.firstTerm(
                d, h1, h2, conditions.frequency(), earthKm, conditions.ground(), conditions.polarization());
        account.part("diffraction", loss, "Rec. ITU-R P.526-15 section 3");
        return account.step("a_e", earthKm, "km")
                .step("h1", h1, "m")
                .step("h2", h2, "m")
                .step("d_los", SphericalEarth.horizonKm(h1, h2, earthKm), "km")
                .step("K", first.k(), "")
                .step("β", first.beta(), "")
                .step("X", first.x(), "")
                .step("Y1", first.y1(), "")
                .step("Y2", first.y2(), "")
                .step("first term", first.lossDb(), "dB")
                .overSphere(conditions)
                .warnOfClutter(profile)
                .close();
    }
}
