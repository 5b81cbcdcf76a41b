package handreach.propagation.radial;

import handreach.terrain.Cover;

/** Unbroken woodland from either end of the paths that end along one radial; its edges lie half-way between two samples. */
final class WoodRuns {
    private static final int WOOD = Cover.WOODLAND.ordinal();

    private Radial radial;
    private int firstOpen;
    private int lastOpen;

    void start(Radial onto) {
        radial = onto;
        firstOpen = radial.cover[0] == WOOD ? -1 : 0;
        lastOpen = firstOpen;
    }

    /** Takes in the next sample between the ends. */
    void pass(int sample) {
        if (radial.cover[sample] == WOOD) return;
        lastOpen = sample;
        if (firstOpen < 0) firstOpen = sample;
    }

    /** The samples up to this one are known to be open. */
    void passOpen(int sample) {
        lastOpen = sample;
    }

    /** From the source, m, on the path to a receiver behind the sample taken in last. */
    double nearM(int taken, double distanceKm, int cover) {
        if (radial.cover[0] != WOOD) return 0;
        if (firstOpen >= 0) return 500 * (radial.xKm[firstOpen - 1] + radial.xKm[firstOpen]);
        return cover == WOOD ? 1000 * distanceKm : 500 * (radial.xKm[taken] + distanceKm);
    }

    /** Back from the receiver, m. */
    double farM(int taken, double distanceKm, int cover) {
        if (cover != WOOD) return 0;
        if (lastOpen < 0) return 1000 * distanceKm;
        double insideKm = lastOpen == taken ? distanceKm : radial.xKm[lastOpen + 1];
        return 1000 * distanceKm - 500 * (radial.xKm[lastOpen] + insideKm);
    }
}
