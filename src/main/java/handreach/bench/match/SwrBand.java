package handreach.bench.match;

/**
 * Stretch of frequencies in which the SWR stays at or below a limit.
 *
 * @param lowMhz lower edge
 * @param highMhz upper edge
 * @param isOpenBelow whether the sweep ends before the lower edge is reached
 * @param isOpenAbove whether the sweep ends before the upper edge is reached
 */
public record SwrBand(double lowMhz, double highMhz, boolean isOpenBelow, boolean isOpenAbove) {
    public SwrBand {
        if (!(lowMhz <= highMhz)) throw new IllegalArgumentException("band from " + lowMhz + " to " + highMhz);
    }

    /** Width; the least it can be when an edge lies outside the sweep. */
    public double widthMhz() {
        return highMhz - lowMhz;
    }

    public boolean isWhole() {
        return !isOpenBelow && !isOpenAbove;
    }

    public boolean contains(double frequencyMhz) {
        return lowMhz <= frequencyMhz && frequencyMhz <= highMhz;
    }
}
