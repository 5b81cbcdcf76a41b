package handreach.propagation.p1812;

import handreach.propagation.DeltaBullington;
import handreach.propagation.Ground;
import handreach.propagation.InverseNormal;
import handreach.propagation.LossBuilder;
import handreach.propagation.SphericalEarth;
import handreach.units.Frequency;
import handreach.units.Polarization;

/**
 * Step 5 of Rec. ITU-R P.1812-6: diffraction at the median and at p % of the time, over land and sea of fixed constants.
 *
 * @param median the parts at the median earth radius
 * @param betaDb L_dβ, loss at the earth radius exceeded β0 % of the time; the median loss when p is 50
 * @param share F_i, interpolation factor between the two
 */
record P1812Diffraction(DeltaBullington median, double betaDb, double share) {
    private static final Ground LAND = new Ground(22, 0.003);
    private static final Ground SEA = new Ground(80, 5);

    static P1812Diffraction of(P1812Path path, Frequency frequency, Polarization polarization, double timePercent) {
        DeltaBullington median = at(path, frequency, polarization, path.ae);
        if (timePercent >= 50) return new P1812Diffraction(median, median.lossDb(), 0);
        double share =
                timePercent > path.beta0 ? InverseNormal.of(timePercent / 100) / InverseNormal.of(path.beta0 / 100) : 1;
        return new P1812Diffraction(
                median,
                at(path, frequency, polarization, P1812Path.EARTH_BETA_KM).lossDb(),
                share);
    }

    private static DeltaBullington at(P1812Path path, Frequency frequency, Polarization polarization, double earthKm) {
        double h1 = path.hts - path.surface.txM();
        double h2 = path.hrs - path.surface.rxM();
        double sea = path.zones.seaShare();
        return DeltaBullington.of(
                path.dKm, path.coveredM, path.hts, path.hrs, path.surface, earthKm, path.wavelengthM, a -> {
                    double db = 0;
                    if (sea < 1)
                        db += (1 - sea)
                                * SphericalEarth.firstTerm(path.d, h1, h2, frequency, a, LAND, polarization)
                                        .lossDb();
                    if (sea > 0)
                        db += sea
                                * SphericalEarth.firstTerm(path.d, h1, h2, frequency, a, SEA, polarization)
                                        .lossDb();
                    return db;
                });
    }

    double medianDb() {
        return median.lossDb();
    }

    /** L_dp, equation (41). */
    double lossDb() {
        return medianDb() + share * (betaDb - medianDb());
    }

    void tell(LossBuilder account) {
        account.step("L_bulla", median.profileDb(), "dB")
                .step("L_bulls", median.smoothDb(), "dB")
                .step("L_dsph", median.sphereDb(), "dB")
                .step("L_d50", medianDb(), "dB")
                .step("L_dβ", betaDb, "dB")
                .step("F_i", share, "")
                .step("L_dp", lossDb(), "dB");
    }
}
