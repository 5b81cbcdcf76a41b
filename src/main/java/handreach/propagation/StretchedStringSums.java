package handreach.propagation;

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
}
