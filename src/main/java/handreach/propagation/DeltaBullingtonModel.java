package handreach.propagation;

import handreach.profile.Profile;

/** General path of Rec. ITU-R P.526: Bullington edge and smooth earth, over bare ground with the given constants. */
final class DeltaBullingtonModel implements LossModel {
    @Override
    public String name() {
        return "delta-bullington";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        PathArrays path = PathArrays.of(profile, terminals);
        double earthKm = conditions.atmosphere().effectiveRadiusKm();
        DeltaBullington result =
                DeltaBullington.of(path.dKm(), path.hM(), path.txTipM(), path.rxTipM(), earthKm, conditions);
        SmoothSurface surface = result.surface();
        return account.part("diffraction", result.lossDb(), "Rec. ITU-R P.526-15 section 4.5")
                .step("a_e", earthKm, "km")
                .step("h_st", surface.fitTxM(), "m")
                .step("h_sr", surface.fitRxM(), "m")
                .step("h_std", surface.txM(), "m")
                .step("h_srd", surface.rxM(), "m")
                .step("L_bulla", result.profileDb(), "dB")
                .step("L_bulls", result.smoothDb(), "dB")
                .step("L_sph", result.sphereDb(), "dB")
                .overSphere(conditions)
                .warnOfClutter(profile)
                .close();
    }
}
