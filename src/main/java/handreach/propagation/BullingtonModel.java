package handreach.propagation;

import handreach.profile.Profile;

/** The Bullington construction over bare ground, without the smooth-earth part. */
final class BullingtonModel implements LossModel {
    @Override
    public String name() {
        return "bullington";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        PathArrays path = PathArrays.of(profile, terminals);
        double earthKm = conditions.atmosphere().effectiveRadiusKm();
        double nu = Bullington.nu(
                path.dKm(),
                path.hM(),
                path.txTipM(),
                path.rxTipM(),
                earthKm,
                conditions.frequency().wavelengthM());
        double edge = KnifeEdge.lossDb(nu);
        account.part("diffraction", Bullington.corrected(edge, path.lengthKm()), "Rec. ITU-R P.526-15 section 4.5.1");
        account.step("a_e", earthKm, "km");
        if (Double.isFinite(nu)) account.step("ν", nu, "");
        return account.step("L_uc", edge, "dB").warnOfClutter(profile).close();
    }
}
