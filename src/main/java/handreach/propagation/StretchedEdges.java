package handreach.propagation;

import java.util.Arrays;

/** The edges that a string stretched over an outline touches. */
final class StretchedEdges {
    private StretchedEdges() {}

    /**
     * Samples on the upper hull of the outline, both ends included, in order; O(n).
     *
     * <p>A sample exactly on the string counts: edges in line each weaken the field.
     */
    static int[] hull(double[] dKm, double[] y) {
        int[] stack = new int[dKm.length];
        int size = 0;
        for (int i = 0; i < dKm.length; i++) {
            while (size >= 2 && EdgeSearch.aboveLineM(dKm, y, stack[size - 2], stack[size - 1], i) < -1e-9) size--;
            stack[size++] = i;
        }
        return Arrays.copyOf(stack, size);
    }

    /**
     * Leaves out of a hull, smallest first, the samples that stand on their neighbours' line by less than a given ν, so that a
     * rounded top counts once. O(n log n). At least one inner sample stays if there was one.
     */
    static int[] separated(int[] hull, double[] dKm, double[] y, double wavelengthM, double leastNu) {
        int n = hull.length;
        if (n <= 3) return hull;
        int[] before = new int[n];
        int[] after = new int[n];
        boolean[] gone = new boolean[n];
        int[] version = new int[n];
        for (int i = 0; i < n; i++) {
            before[i] = i - 1;
            after[i] = i + 1;
        }
        var queue = new java.util.PriorityQueue<Candidate>();
        for (int i = 1; i < n - 1; i++) queue.add(candidate(hull, dKm, y, wavelengthM, before, after, i, 0));
        int inner = n - 2;
        while (!queue.isEmpty() && inner > 1) {
            Candidate least = queue.poll();
            if (gone[least.at()] || version[least.at()] != least.version()) continue;
            if (least.nu() >= leastNu) break;
            gone[least.at()] = true;
            inner--;
            int left = before[least.at()];
            int right = after[least.at()];
            after[left] = right;
            before[right] = left;
            for (int side : new int[] {left, right})
                if (side > 0 && side < n - 1)
                    queue.add(candidate(hull, dKm, y, wavelengthM, before, after, side, ++version[side]));
        }
        int[] kept = new int[inner + 2];
        int size = 0;
        for (int i = 0; i < n; i++) if (!gone[i]) kept[size++] = hull[i];
        return kept;
    }

    private static Candidate candidate(
            int[] hull, double[] dKm, double[] y, double wavelengthM, int[] before, int[] after, int at, int version) {
        double nu = EdgeSearch.nu(dKm, y, hull[before[at]], hull[at], hull[after[at]], wavelengthM);
        return new Candidate(nu, at, version);
    }

    private record Candidate(double nu, int at, int version) implements Comparable<Candidate> {
        @Override
        public int compareTo(Candidate other) {
            int order = Double.compare(nu, other.nu);
            return order != 0 ? order : Integer.compare(at, other.at);
        }
    }
}
