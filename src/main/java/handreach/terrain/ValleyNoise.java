package handreach.terrain;

/** Smooth noise over the plane, the same on every machine. */
final class ValleyNoise {
    private static final double GAIN = 0.48;
    private static final double TURN_COS = 0.8;
    private static final double TURN_SIN = 0.6;

    private ValleyNoise() {}

    /** Layers of half the wavelength and about half the height each, turned against each other; about −1 to 1. */
    static double layered(double x, double y, int layers, int seed) {
        double sum = 0;
        double gain = 1;
        double px = x;
        double py = y;
        for (int layer = 0; layer < layers; layer++) {
            sum += gain * at(px, py, seed * 31 + layer);
            double nextX = 2 * (px * TURN_COS - py * TURN_SIN);
            py = 2 * (px * TURN_SIN + py * TURN_COS);
            px = nextX;
            gain *= GAIN;
        }
        return sum;
    }

    /** Slopes of pseudo-random direction at whole coordinates, blended between them. */
    private static double at(double x, double y, int seed) {
        int column = (int) Math.floor(x);
        int row = (int) Math.floor(y);
        double fx = x - column;
        double fy = y - row;
        double u = fx * fx * fx * (fx * (fx * 6 - 15) + 10);
        double v = fy * fy * fy * (fy * (fy * 6 - 15) + 10);
        double top = slope(column, row, seed, fx, fy) * (1 - u) + slope(column + 1, row, seed, fx - 1, fy) * u;
        double below = slope(column, row + 1, seed, fx, fy - 1) * (1 - u)
                + slope(column + 1, row + 1, seed, fx - 1, fy - 1) * u;
        return 1.6 * (top * (1 - v) + below * v);
    }

    private static double slope(int column, int row, int seed, double dx, double dy) {
        int bits = column * 0x9E3779B1 ^ row * 0x85EBCA77 ^ seed * 0xC2B2AE3D;
        bits = (bits ^ bits >>> 15) * 0x2C1B3C6D;
        bits = (bits ^ bits >>> 12) * 0x297A2D39;
        bits ^= bits >>> 15;
        double gx = (bits & 0xFFFF) / 32768.0 - 1;
        double gy = (bits >>> 16) / 32768.0 - 1;
        return gx * dx + gy * dy;
    }
}
