package handreach.propagation;

import handreach.profile.Profile;

/** The one sample that rises highest into the ray, as a knife edge. */
final class SingleEdgeModel implements LossModel {
    @Override
    public String name() {
        return "single-edge";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        PathArrays path = PathArrays.of(profile, terminals);
        double[] y = path.outline(conditions.atmosphere().effectiveRadiusKm());
        double wavelengthM = conditions.frequency().wavelengthM();
        int edge = EdgeSearch.worst(path.dKm(), y, 0, path.last(), wavelengthM);
        double nu =
                edge < 0 ? Double.NEGATIVE_INFINITY : EdgeSearch.nu(path.dKm(), y, 0, edge, path.last(), wavelengthM);
        account.part("diffraction", KnifeEdge.lossDb(nu), "Rec. ITU-R P.526-15 section 4.1");
        if (edge >= 0)
            account.step("d1", path.dKm()[edge], "km")
                    .step("h", EdgeSearch.aboveLineM(path.dKm(), y, 0, edge, path.last()), "m")
                    .step("ν", nu, "")
                    .step("exact J", KnifeEdge.exactLossDb(nu), "dB");
        return account.warnOfClutter(profile).close();
    }
}
