package handreach.reach;

import handreach.terrain.Cover;

/** Unbroken woodland from either end of the paths that end along one ray; its edges lie half-way between two samples. */
final class WoodRuns {
    private static final int WOOD = Cover.WOODLAND.ordinal();

    private Ray ray;
    private int firstOpen;
    private int lastOpen;

    void start(Ray onto) {
        ray = onto;
        firstOpen = ray.cover[0] == WOOD ? -1 : 0;
        lastOpen = firstOpen;
    }

    /** Takes in the next sample between the ends. */
    void pass(int sample) {
        if (ray.cover[sample] == WOOD) return;
        lastOpen = sample;
        if (firstOpen < 0) firstOpen = sample;
    }

    /** The samples up to this one are known to be open. */
    void passOpen(int sample) {
        lastOpen = sample;
    }

    /** From the source, m, on the path to a receiver behind the sample taken in last. */
    double nearM(int taken, double distanceKm, int cover) {
        if (ray.cover[0] != WOOD) return 0;
        if (firstOpen >= 0) return 500 * (ray.xKm[firstOpen - 1] + ray.xKm[firstOpen]);
        return cover == WOOD ? 1000 * distanceKm : 500 * (ray.xKm[taken] + distanceKm);
    }

    /** Back from the receiver, m. */
    double farM(int taken, double distanceKm, int cover) {
        if (cover != WOOD) return 0;
        if (lastOpen < 0) return 1000 * distanceKm;
        double insideKm = lastOpen == taken ? distanceKm : ray.xKm[lastOpen + 1];
        return 1000 * distanceKm - 500 * (ray.xKm[lastOpen] + insideKm);
    }
}
