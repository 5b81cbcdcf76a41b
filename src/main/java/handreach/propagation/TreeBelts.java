package handreach.propagation;

import handreach.profile.Profile;
import handreach.terrain.Cover;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;

/**
 * Belts of trees that a path crosses between its ends.
 *
 * <p>The wave follows the string stretched over the bare ground from antenna to antenna. Where the string runs lower than the tree
 * tops the wave goes through the trees or over them, whichever powers add. Woods that reach an end of the path are not belts: they
 * are the terminal's ({@link Woodland#terminalDb}), so that no tree counts twice. Trees on a crest that the bare-ground model
 * already bends over add only what they raise the crest by.
 */
final class TreeBelts {
    private TreeBelts() {}

    /**
     * One belt.
     *
     * @param fromKm where the wave meets the trees, from the first terminal
     * @param toKm where it leaves them
     * @param thicknessM length of the string below the tree tops, m
     * @param lossDb what the belt adds, dB
     */
    public record Belt(double fromKm, double toKm, double thicknessM, double lossDb) {}

    /**
     * Belts along a path, from the first terminal to the last.
     *
     * @shape  n samples in; O(n), pure
     * @unit   as {@link Belt}; tree heights are the clutter heights of the profile
     * @valid  30 MHz to 1 GHz; cover sampled finer than the belts are thick
     * @error  a factor of 2 in dB through the trees, 3 dB over them
     * @source Rec. ITU-R P.833-9, section 3 (least of the ways); the string and adding the powers are ours
     */
    public static List<Belt> across(Profile profile, Terminals terminals, PathConditions conditions) {
        PathArrays path = PathArrays.of(profile, terminals);
        double[] y = path.outline(conditions.atmosphere().effectiveRadiusKm());
        int[] nodes = Hull.of(path.dKm(), y);
        double[] string = string(path.dKm(), y, nodes);
        int last = path.last();
        int first = 0;
        while (first <= last && profile.cover(first) == Cover.WOODLAND) first++;
        int end = last;
        while (end >= first && profile.cover(end) == Cover.WOODLAND) end--;
        List<Belt> belts = new ArrayList<>();
        for (int i = first; i <= end; i++) {
            if (!inTrees(profile, y, string, i)) continue;
            int to = i;
            while (to + 1 <= end && inTrees(profile, y, string, to + 1)) to++;
            belts.add(belt(profile, y, nodes, i, to, conditions));
            i = to;
        }
        return belts;
    }

    /**
     * What all belts of a path add together: their sum, but never more than the ceilings of two terminals in the trees, since the wave
     * then travels along the tree tops.
     *
     * @shape  belts in, scalar out; pure
     * @unit   dB
     * @valid  as {@link #across}
     * @error  as {@link #across}
     * @source ceiling: Rec. ITU-R P.833-9, section 2.1; applying it to belts is ours
     */
    public static double lossDb(List<Belt> belts, PathConditions conditions) {
        double sum = belts.stream().mapToDouble(Belt::lossDb).sum();
        return Math.min(sum, 2 * Woodland.ceilingDb(conditions.frequency(), conditions.polarization()));
    }

    private static boolean inTrees(Profile profile, double[] y, double[] string, int i) {
        return profile.cover(i) == Cover.WOODLAND && string[i] < y[i] + profile.clutterM(i);
    }

    private static Belt belt(Profile profile, double[] y, int[] nodes, int from, int to, PathConditions conditions) {
        // Borders lie half-way to the neighbours; a belt never touches the end samples, which are the terminals' own.
        double fromKm = (profile.distanceKm(from - 1) + profile.distanceKm(from)) / 2;
        double toKm = (profile.distanceKm(to) + profile.distanceKm(to + 1)) / 2;
        double thicknessM = 1000 * (toKm - fromKm);
        Frequency frequency = conditions.frequency();
        double through = thicknessM * Woodland.attenuationDbPerM(frequency, conditions.polarization());
        double over = overTopsDb(profile, y, nodes, from, to, frequency.wavelengthM());
        double loss = -10 * Math.log10(Math.pow(10, -through / 10) + Math.pow(10, -over / 10));
        return new Belt(fromKm, toKm, thicknessM, Math.max(0, loss));
    }

    /**
     * Loss of the way over the tops, less what the bare ground under them already costs, dB. Both are edges between the points where
     * the string last touches ground before the belt and first touches it behind.
     */
    private static double overTopsDb(Profile profile, double[] y, int[] nodes, int from, int to, double wavelengthM) {
        int before = 0;
        int behind = y.length - 1;
        for (int node : nodes) {
            if (node < from) before = node;
            if (node > to) behind = Math.min(behind, node);
        }
        double topNu = Double.NEGATIVE_INFINITY;
        double groundNu = Double.NEGATIVE_INFINITY;
        for (int i = from; i <= to; i++) {
            double d1 = profile.distanceKm(i) - profile.distanceKm(before);
            double d2 = profile.distanceKm(behind) - profile.distanceKm(i);
            double line = (y[before] * d2 + y[behind] * d1) / (d1 + d2);
            groundNu = Math.max(groundNu, KnifeEdge.nu(y[i] - line, d1, d2, wavelengthM));
            topNu = Math.max(topNu, KnifeEdge.nu(y[i] + profile.clutterM(i) - line, d1, d2, wavelengthM));
        }
        return KnifeEdge.lossDb(topNu) - KnifeEdge.lossDb(groundNu);
    }

    private static double[] string(double[] dKm, double[] y, int[] nodes) {
        double[] string = new double[y.length];
        for (int k = 1; k < nodes.length; k++) {
            int a = nodes[k - 1];
            int b = nodes[k];
            for (int i = a; i <= b; i++) string[i] = y[a] + (y[b] - y[a]) * (dKm[i] - dKm[a]) / (dKm[b] - dKm[a]);
        }
        return string;
    }
}
