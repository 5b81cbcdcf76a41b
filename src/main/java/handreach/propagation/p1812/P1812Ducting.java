package handreach.propagation.p1812;

import handreach.propagation.Climate;
import handreach.propagation.LossBuilder;

/**
 * Step 7 of Rec. ITU-R P.1812-6: ducting and layer reflection, equations (46) to (56).
 *
 * @param couplingDb A_f, losses of coupling into the layer
 * @param distanceDb A_d(p), losses along the layer
 */
record P1812Ducting(double couplingDb, double distanceDb) {
    static P1812Ducting of(P1812Path path, Climate climate) {
        return new P1812Ducting(coupling(path, climate), distance(path, climate.timePercent()));
    }

    /** L_ba, equation (46). */
    double lossDb() {
        return couplingDb + distanceDb;
    }

    private static double coupling(P1812Path path, Climate climate) {
        double f = path.fGhz;
        double low = f < 0.5 ? 45.375 - 137 * f + 92.5 * f * f : 0;
        return 102.45
                + 20 * Math.log10(f)
                + 20 * Math.log10(path.dlt + path.dlr)
                + low
                + shielding(path.thetaT, path.dlt, f)
                + shielding(path.thetaR, path.dlr, f)
                + coast(path, climate.coastTxKm(), path.dlt, path.hts)
                + coast(path, climate.coastRxKm(), path.dlr, path.hrs);
    }

    /** A_st or A_sr, site shielding. */
    private static double shielding(double thetaMrad, double horizonKm, double f) {
        double angle = thetaMrad - 0.1 * horizonKm;
        if (angle <= 0) return 0;
        return 20 * Math.log10(1 + 0.361 * angle * Math.sqrt(f * horizonKm)) + 0.264 * angle * Math.cbrt(f);
    }

    /** A_ct or A_cr, coupling to a duct over the sea. */
    private static double coast(P1812Path path, double coastKm, double horizonKm, double tipM) {
        if (path.zones.seaShare() < 0.75 || coastKm > horizonKm || coastKm > 5) return 0;
        return -3 * Math.exp(-0.25 * coastKm * coastKm) * (1 + Math.tanh(0.07 * (50 - tipM)));
    }

    private static double distance(P1812Path path, double p) {
        double gamma = 5e-5 * path.ae * Math.cbrt(path.fGhz);
        double angle =
                1000 * path.d / path.ae + Math.min(path.thetaT, 0.1 * path.dlt) + Math.min(path.thetaR, 0.1 * path.dlr);
        return gamma * angle + time(path, p);
    }

    /** A(p), equations (53) to (56). */
    private static double time(P1812Path path, double p) {
        double alpha = Math.max(-3.4, -0.6 - 3.5e-9 * Math.pow(path.d, 3.1) * path.tau);
        double heights = Math.sqrt(path.hte) + Math.sqrt(path.hre);
        double mu2 = Math.min(1, Math.pow(500 * path.d * path.d / (path.ae * heights * heights), alpha));
        double di = Math.max(0, Math.min(path.d - path.dlt - path.dlr, 40));
        double mu3 = path.hm <= 10 ? 1 : Math.exp(-4.6e-5 * (path.hm - 10) * (43 + 6 * di));
        double beta = Math.max(path.beta0 * mu2 * mu3, 1e-100);
        double lb = Math.log10(beta);
        double exponent = 1.076
                / Math.pow(2.0058 - lb, 1.012)
                * Math.exp(-(9.51 - 4.8 * lb + 0.198 * lb * lb) * 1e-6 * Math.pow(path.d, 1.13));
        return -12 + (1.2 + 3.7e-3 * path.d) * Math.log10(p / beta) + 12 * Math.pow(p / beta, exponent);
    }

    void tell(LossBuilder account) {
        account.step("A_f", couplingDb, "dB").step("A_d", distanceDb, "dB").step("L_ba", lossDb(), "dB");
    }
}
