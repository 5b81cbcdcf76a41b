package handreach.propagation.p1812;

import handreach.profile.Profile;
import handreach.propagation.Atmosphere;
import handreach.propagation.LossBuilder;
import handreach.propagation.PathConditions;
import handreach.propagation.SmoothSurface;
import handreach.propagation.Terminals;
import handreach.propagation.ZoneMix;

/**
 * Steps 1 to 3 of Rec. ITU-R P.1812-6: profile, radio climate, horizons and effective heights. Symbols and units are those of the
 * document: distances km, heights m, angles mrad, frequency GHz.
 */
final class P1812Path {
    /** Effective earth radius exceeded for β0 % of the time, equation (7b), km. */
    static final double EARTH_BETA_KM = 3 * Atmosphere.EARTH_RADIUS_KM;

    final double[] dKm;
    final double[] bareM;
    final double[] coveredM;
    final int last;
    final double d;
    final double hts;
    final double hrs;
    final double fGhz;
    final double wavelengthM;
    final double ae;
    final ZoneMix zones;
    final SmoothSurface surface;

    double tau;
    double beta0;
    double thetaT;
    double thetaR;
    double theta;
    double dlt;
    double dlr;
    double hte;
    double hre;
    double hm;

    private P1812Path(Profile profile, Terminals terminals, PathConditions conditions) {
        dKm = withMiddle(profile.distancesKm());
        bareM = withMiddle(profile.heightsM());
        last = dKm.length - 1;
        coveredM = bareM.clone();
        if (profile.count() > 2) for (int i = 1; i < last; i++) coveredM[i] += profile.clutterM(i);
        d = dKm[last];
        hts = bareM[0] + terminals.txHeightM();
        hrs = bareM[last] + terminals.rxHeightM();
        fGhz = conditions.frequency().ghz();
        wavelengthM = 0.2998 / fGhz;
        ae = conditions.atmosphere().effectiveRadiusKm();
        zones = ZoneMix.of(profile);
        surface = SmoothSurface.of(dKm, bareM, hts, hrs);
    }

    static P1812Path of(Profile profile, Terminals terminals, PathConditions conditions) {
        P1812Path path = new P1812Path(profile, terminals, conditions);
        path.climate(conditions.climate().latitudeDeg());
        path.horizons();
        path.ductingHeights();
        return path;
    }

    /** The path analysis needs an inner point: two samples get a third half-way. */
    private static double[] withMiddle(double[] ends) {
        return ends.length > 2 ? ends : new double[] {ends[0], (ends[0] + ends[1]) / 2, ends[1]};
    }

    /** Time share β0 of anomalous propagation, equations (2) to (5). */
    private void climate(double latitudeDeg) {
        double phi = Math.abs(latitudeDeg);
        tau = 1 - Math.exp(-4.12e-4 * Math.pow(zones.longestInlandKm(), 2.41));
        double mu1 = Math.min(
                1,
                Math.pow(
                        Math.pow(10, -zones.longestLandKm() / (16 - 6.6 * tau))
                                + Math.pow(10, -5 * (0.496 + 0.354 * tau)),
                        0.2));
        beta0 = phi <= 70
                ? Math.pow(10, -0.015 * phi + 1.67) * mu1 * Math.pow(mu1, -0.935 + 0.0176 * phi)
                : 4.17 * mu1 * Math.pow(mu1, 0.3);
    }

    /** Horizon angles and distances, Attachment 1 sections 4.1 to 4.3. */
    private void horizons() {
        double steepTx = Double.NEGATIVE_INFINITY;
        double steepRx = Double.NEGATIVE_INFINITY;
        double worstNu = Double.NEGATIVE_INFINITY;
        int tx = 1;
        int rx = last - 1;
        int edge = 1;
        for (int i = 1; i < last; i++) {
            double fromTx = angle(bareM[i] - hts, dKm[i]);
            double fromRx = angle(bareM[i] - hrs, d - dKm[i]);
            double above = bareM[i] + 500 * dKm[i] * (d - dKm[i]) / ae - (hts * (d - dKm[i]) + hrs * dKm[i]) / d;
            double nu = above * Math.sqrt(0.002 * d / (wavelengthM * dKm[i] * (d - dKm[i])));
            if (fromTx > steepTx) {
                steepTx = fromTx;
                tx = i;
            }
            if (fromRx >= steepRx) {
                steepRx = fromRx;
                rx = i;
            }
            if (nu > worstNu) {
                worstNu = nu;
                edge = i;
            }
        }
        double direct = angle(hrs - hts, d);
        boolean beyondHorizon = steepTx > direct;
        thetaT = beyondHorizon ? steepTx : direct;
        thetaR = beyondHorizon ? steepRx : angle(hts - hrs, d);
        dlt = dKm[beyondHorizon ? tx : edge];
        dlr = d - dKm[beyondHorizon ? rx : edge];
        theta = 1000 * d / ae + thetaT + thetaR;
    }

    private double angle(double riseM, double runKm) {
        return 1000 * Math.atan(riseM / (1000 * runKm) - runKm / (2 * ae));
    }

    /** Effective heights and roughness for ducting, equations (92) and (93). */
    private void ductingHeights() {
        double hst = Math.min(surface.fitTxM(), bareM[0]);
        double hsr = Math.min(surface.fitRxM(), bareM[last]);
        double slope = (hsr - hst) / d;
        hte = hts - hst;
        hre = hrs - hsr;
        hm = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < last; i++)
            if (dKm[i] >= dlt - 1e-9 && dKm[i] <= d - dlr + 1e-9) hm = Math.max(hm, bareM[i] - (hst + slope * dKm[i]));
    }

    void tell(LossBuilder account) {
        account.step("ω", zones.seaShare(), "")
                .step("d_tm", zones.longestLandKm(), "km")
                .step("d_lm", zones.longestInlandKm(), "km")
                .step("a_e", ae, "km")
                .step("τ", tau, "")
                .step("β0", beta0, "%")
                .step("d_lt", dlt, "km")
                .step("d_lr", dlr, "km")
                .step("θ_t", thetaT, "mrad")
                .step("θ_r", thetaR, "mrad")
                .step("θ", theta, "mrad")
                .step("h_st", surface.fitTxM(), "m")
                .step("h_sr", surface.fitRxM(), "m")
                .step("h_std", surface.txM(), "m")
                .step("h_srd", surface.rxM(), "m")
                .step("h_te", hte, "m")
                .step("h_re", hre, "m")
                .step("h_m", hm, "m");
    }
}
