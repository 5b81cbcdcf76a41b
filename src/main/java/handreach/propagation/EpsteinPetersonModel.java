package handreach.propagation;

import handreach.profile.Profile;

/** The edges under the stretched string, one after the other; in sight, the single worst edge. */
final class EpsteinPetersonModel implements LossModel {
    @Override
    public String name() {
        return "epstein-peterson";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        PathArrays path = PathArrays.of(profile, terminals);
        double[] dKm = path.dKm();
        double[] y = path.outline(conditions.atmosphere().effectiveRadiusKm());
        double wavelengthM = conditions.frequency().wavelengthM();
        int[] edges = EpsteinPeterson.edges(dKm, y, wavelengthM);
        if (edges.length == 2) {
            int worst = EdgeSearch.worst(dKm, y, 0, path.last(), wavelengthM);
            if (worst > 0) edges = new int[] {0, worst, path.last()};
        }
        account.part(
                "diffraction",
                EpsteinPeterson.lossDb(dKm, y, edges, wavelengthM),
                "Epstein and Peterson (1953), spreading of Rec. ITU-R P.526-15 section 4.3");
        for (int i = 1; i < edges.length - 1; i++) {
            double nu = EdgeSearch.nu(dKm, y, edges[i - 1], edges[i], edges[i + 1], wavelengthM);
            account.step("edge at", dKm[edges[i]], "km").step("ν", nu, "").step("J", KnifeEdge.lossDb(nu), "dB");
        }
        return account.warnOfClutter(profile).close();
    }
}
