package handreach.propagation.p1812;

import handreach.propagation.LossBuilder;

/** Steps 4, 6, 8 of Rec. ITU-R P.1812-6: the part losses of one path and their combination at p % of time, 50 % of places. */
final class P1812Blend {
    private final P1812Path path;
    private final P1812Diffraction diffraction;
    private final P1812Ducting ducting;
    private final double p;
    private final double freeSpaceDb;
    private final double clearDb;
    private final double clearBetaDb;
    private final double scatterDb;

    P1812Blend(
            P1812Path path, P1812Diffraction diffraction, P1812Ducting ducting, double p, double surfaceRefractivity) {
        this.path = path;
        this.diffraction = diffraction;
        this.ducting = ducting;
        this.p = p;
        double slantKm = Math.hypot(path.d, (path.hts - path.hrs) / 1000);
        freeSpaceDb = 92.4 + 20 * Math.log10(path.fGhz) + 20 * Math.log10(slantKm);
        clearDb = freeSpaceDb + focusing(p);
        clearBetaDb = freeSpaceDb + focusing(path.beta0);
        scatterDb = scatter(surfaceRefractivity);
    }

    /** Multipath and focusing at q % of the time, equation (9). */
    private double focusing(double q) {
        return 2.6 * (1 - Math.exp(-0.1 * (path.dlt + path.dlr))) * Math.log10(q / 50);
    }

    /** L_bs, equations (44) and (45). */
    private double scatter(double surfaceRefractivity) {
        double half = Math.log10(path.fGhz / 2);
        double frequency = 25 * Math.log10(path.fGhz) - 2.5 * half * half;
        return 190.1
                + frequency
                + 20 * Math.log10(path.d)
                + 0.573 * path.theta
                - 0.15 * surfaceRefractivity
                - 10.125 * Math.pow(Math.log10(50 / p), 0.7);
    }

    /** L_b0p, the floor under the loss of any time share. */
    double clearDb() {
        return clearDb;
    }

    /** F_j, equation (57). */
    private double angleShare() {
        return 1 - 0.5 * (1 + Math.tanh(2.4 * (path.theta - 0.3) / 0.3));
    }

    /** F_k, equation (58). */
    private double distanceShare() {
        return 1 - 0.5 * (1 + Math.tanh(1.5 * (path.d - 20) / 20));
    }

    private double bd50() {
        return freeSpaceDb + diffraction.medianDb();
    }

    private double bd() {
        return clearDb + diffraction.lossDb();
    }

    /** L_min0, equation (59). */
    private double leastClear() {
        double overLand = (1 - path.zones.seaShare()) * diffraction.lossDb();
        if (p < path.beta0) return clearDb + overLand;
        return bd50() + (clearBetaDb + overLand - bd50()) * diffraction.share();
    }

    /** L_minba, equation (60). */
    private double leastDucted() {
        double least = Math.min(ducting.lossDb(), clearDb);
        double most = Math.max(ducting.lossDb(), clearDb);
        return most + 2.5 * Math.log1p(Math.exp((least - most) / 2.5));
    }

    /** L_bda, equation (61). */
    private double diffractedOrDucted() {
        double ducted = leastDucted();
        return ducted > bd() ? bd() : ducted + (bd() - ducted) * distanceShare();
    }

    /** L_bam, equation (62). */
    private double modified() {
        return diffractedOrDucted() + (leastClear() - diffractedOrDucted()) * angleShare();
    }

    /** L_bc, equation (63). */
    double lossDb() {
        double least = Math.min(scatterDb, modified());
        return least
                - 5 * Math.log10(Math.pow(10, -0.2 * (scatterDb - least)) + Math.pow(10, -0.2 * (modified() - least)));
    }

    void tell(LossBuilder account) {
        account.step("L_bfs", freeSpaceDb, "dB")
                .step("L_b0p", clearDb, "dB")
                .step("L_b0β", clearBetaDb, "dB")
                .step("L_bd50", bd50(), "dB")
                .step("L_bd", bd(), "dB")
                .step("L_bs", scatterDb, "dB")
                .step("F_j", angleShare(), "")
                .step("F_k", distanceShare(), "")
                .step("L_min0", leastClear(), "dB")
                .step("L_minba", leastDucted(), "dB")
                .step("L_bda", diffractedOrDucted(), "dB")
                .step("L_bam", modified(), "dB")
                .step("L_bc", lossDb(), "dB");
    }
}
