package handreach.propagation;

import handreach.profile.Profile;

/** A profile and its antenna tips unpacked for the loops of this room. Arrays are not to be changed. */
final class PathArrays {
    private final double[] dKm;
    private final double[] hM;
    private final double txTipM;
    private final double rxTipM;

    private PathArrays(double[] dKm, double[] hM, double txTipM, double rxTipM) {
        this.dKm = dKm;
        this.hM = hM;
        this.txTipM = txTipM;
        this.rxTipM = rxTipM;
    }

    /** Bare ground. */
    static PathArrays of(Profile profile, Terminals terminals) {
        double[] hM = profile.heightsM();
        return new PathArrays(
                profile.distancesKm(), hM, hM[0] + terminals.txHeightM(), hM[hM.length - 1] + terminals.rxHeightM());
    }

    double[] dKm() {
        return dKm;
    }

    double[] hM() {
        return hM;
    }

    double txTipM() {
        return txTipM;
    }

    double rxTipM() {
        return rxTipM;
    }

    int last() {
        return dKm.length - 1;
    }

    double lengthKm() {
        return dKm[last()];
    }

    /** Ground raised by the bulge of the effective earth; the ends stay. */
    double[] raised(double earthKm) {
        double[] raised = new double[dKm.length];
        double d = lengthKm();
        for (int i = 0; i < raised.length; i++) raised[i] = hM[i] + 500 * dKm[i] * (d - dKm[i]) / earthKm;
        return raised;
    }

    /** The same with the antenna tips in place of the ground at the ends: the points a ray may touch. */
    double[] outline(double earthKm) {
        double[] outline = raised(earthKm);
        outline[0] = txTipM;
        outline[last()] = rxTipM;
        return outline;
    }
}
