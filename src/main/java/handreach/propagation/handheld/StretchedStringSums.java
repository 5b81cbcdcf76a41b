package handreach.propagation.handheld;

/** Running integrals of a broken line h(x): ∫ h xᵏ dx for k = 0 to 3, and ∫ h² dx. Exact for straight runs. */
final class StretchedStringSums {
    double order0;
    double order1;
    double order2;
    double order3;
    double square;

    void clear() {
        order0 = order1 = order2 = order3 = square = 0;
    }

    void take(StretchedStringSums other) {
        order0 = other.order0;
        order1 = other.order1;
        order2 = other.order2;
        order3 = other.order3;
        square = other.square;
    }

    /** Adds the straight run from one point to the next. */
    void run(double fromX, double fromH, double toX, double toH) {
        double half = 0.5 * (toX - fromX);
        double x = 0.5 * (toX + fromX);
        double h = 0.5 * (toH + fromH);
        double rise = toH - fromH;
        double width = 2 * half;
        double third = half * half / 3;
        // about the middle of the run, ∫ t² dt = width · third; the slope times ∫ t⁴ dt gives rise · half⁴/5
        order0 += width * h;
        order1 += width * h * x + rise * third;
        order2 += width * h * (x * x + third) + 2 * rise * third * x;
        order3 += width * h * x * (x * x + 3 * third) + rise * third * (3 * x * x + 1.8 * third);
        square += width * (h * h + rise * rise / 12);
    }

    /**
     * The same four integrals at once, for equal steps from a first height of 0: every sample carries a hat of two steps' width,
     * the last one the near half of it.
     *
     * @param sum0 sum of the inner samples' heights, {@code sum1} to {@code sum3} the same times the first to third power of their
     *     number
     */
    void hats(double step, int last, double sum0, double sum1, double sum2, double sum3, double end) {
        double s2 = step * step;
        double d = last * step;
        order0 = step * sum0 + end * step / 2;
        order1 = s2 * sum1 + end * (d * step / 2 - s2 / 6);
        order2 = s2 * step * (sum2 + sum0 / 6) + end * (d * d * step / 2 - d * s2 / 3 + s2 * step / 12);
        order3 = s2 * s2 * (sum3 + sum1 / 2)
                + end * (d * d * d * step / 2 - d * d * s2 / 2 + d * s2 * step / 4 - s2 * s2 / 20);
    }
}
