package handreach.reach;

import java.util.OptionalDouble;

/**
 * How far one loadout reaches along one bearing.
 *
 * @param continuousM from the source to the start of the first stretch longer than the allowed gap below the target odds, m
 * @param farthestM farthest place at all that reaches the target odds, m; 0 when there is none
 * @param openEnded true when the continuous reach ended at the radius or at unknown ground, not at a gap: it is at least this
 * @param unknownBeyondM where the first void or tile edge lies, m; empty when all ground is known
 * @param share share of the known ground that counts along the bearing that reaches the target odds, each metre weighted by its distance
 *     from the source as it stands for that much ground
 * @param shareBeyond the same of the ground beyond the continuous reach alone; 0 where none of it is known
 * @param knownGround known ground that counts and that this bearing stands for, m² per radian times two; a weight, no more
 */
public record RadialReach(
        double continuousM,
        double farthestM,
        boolean openEnded,
        OptionalDouble unknownBeyondM,
        double share,
        double shareBeyond,
        double knownGround) {
    /** A gap in copy longer than this ends the continuous reach, m. */
    public static final double LONGEST_GAP_M = 200;

    public RadialReach {
        if (!(continuousM >= 0)
                || !(farthestM >= continuousM)
                || !(share >= 0 && share <= 1)
                || !(shareBeyond >= 0 && shareBeyond <= 1))
            throw new IllegalArgumentException("reach " + continuousM + ", " + farthestM + " m, share " + share);
    }

    /**
     * Reads the reach off margins along a bearing.
     *
     * <p>Sample i stands for the ground from half-way to its inner neighbour to half-way to its outer one, the first from the
     * source on. Copy is kept from the source to the first sample; a stretch below the threshold runs from the last sample that
     * reached it to the next one that does.
     *
     * @shape  n samples in; O(n), pure
     * @unit   distances m, rings as {@link #rings} has them, margins and threshold dB
     * @valid  distances strictly increasing and above 0, at least one; a ring of 0 is ground that does not count; samples from {@code known} on are unknown
     * @error  the ends lie within one sample spacing
     * @source common practice, no source; see docs/definitions.md
     */
    static RadialReach of(double[] distanceM, double[] ringM2, double[] marginDb, int known, double thresholdDb) {
        int n = distanceM.length;
        if (n == 0 || ringM2.length != n || marginDb.length != n || known < 0 || known > n)
            throw new IllegalArgumentException(n + " distances, " + marginDb.length + " margins, " + known + " known");
        double lastGood = 0;
        double continuous = -1;
        double ground = 0;
        double good = 0;
        double groundToLast = 0;
        double goodBefore = 0;
        double groundBefore = 0;
        boolean inGap = false;
        for (int i = 0; i < known; i++) {
            ground += ringM2[i];
            boolean reaches = marginDb[i] >= thresholdDb;
            inGap |= !reaches;
            if (continuous < 0 && inGap && distanceM[i] - lastGood > LONGEST_GAP_M) {
                continuous = lastGood;
                goodBefore = good;
                groundBefore = groundToLast;
            }
            if (reaches) {
                good += ringM2[i];
                lastGood = distanceM[i];
                groundToLast = ground;
                inGap = false;
            }
        }
        boolean openEnded = continuous < 0;
        if (openEnded) continuous = lastGood;
        OptionalDouble unknown = known < n ? OptionalDouble.of(distanceM[known]) : OptionalDouble.empty();
        double beyond = openEnded ? 0 : share(good - goodBefore, ground - groundBefore);
        return new RadialReach(continuous, lastGood, openEnded, unknown, share(good, ground), beyond, ground);
    }

    private static double share(double good, double ground) {
        return ground > 0 ? Math.max(0, Math.min(1, good / ground)) : 0;
    }

    /** Ground that each sample stands for, m² per radian times two: from half-way to its inner neighbour to half-way to its outer one. */
    static double[] rings(double[] distanceM) {
        double[] rings = new double[distanceM.length];
        double inner = 0;
        for (int i = 0; i < rings.length; i++) {
            double outer = i + 1 < rings.length ? (distanceM[i] + distanceM[i + 1]) / 2 : distanceM[i];
            rings[i] = outer * outer - inner * inner;
            inner = outer;
        }
        return rings;
    }
}
