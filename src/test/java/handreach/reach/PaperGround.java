package handreach.reach;

import handreach.terrain.Elevation;
import java.util.Random;

/** Invented ground for tests: posts on a lattice in degrees, bilinear between, with voids where asked for. */
final class PaperGround implements Elevation {
    private final double northDeg;
    private final double westDeg;
    private final double stepDeg;
    private final int side;
    private final float[] postM;

    private PaperGround(double northDeg, double westDeg, double stepDeg, int side, float[] postM) {
        this.northDeg = northDeg;
        this.westDeg = westDeg;
        this.stepDeg = stepDeg;
        this.side = side;
        this.postM = postM;
    }

    /** Broken ground by repeated halving: {@code side} must be a power of two plus one. */
    static PaperGround rough(
            long seed, double middleLat, double middleLon, double stepDeg, int side, double reliefM, double fall) {
        Random random = new Random(seed);
        float[] h = new float[side * side];
        double size = reliefM;
        for (int step = side - 1; step > 1; step /= 2, size *= fall) {
            int half = step / 2;
            for (int r = half; r < side; r += step)
                for (int c = half; c < side; c += step)
                    h[r * side + c] = (float) ((h[(r - half) * side + c - half]
                                            + h[(r - half) * side + c + half]
                                            + h[(r + half) * side + c - half]
                                            + h[(r + half) * side + c + half])
                                    / 4
                            + size * random.nextGaussian());
            for (int r = 0; r < side; r += half)
                for (int c = (r / half & 1) == 0 ? half : 0; c < side; c += step) {
                    double sum = 0;
                    int n = 0;
                    if (r >= half) {
                        sum += h[(r - half) * side + c];
                        n++;
                    }
                    if (r + half < side) {
                        sum += h[(r + half) * side + c];
                        n++;
                    }
                    if (c >= half) {
                        sum += h[r * side + c - half];
                        n++;
                    }
                    if (c + half < side) {
                        sum += h[r * side + c + half];
                        n++;
                    }
                    h[r * side + c] = (float) (sum / n + size * random.nextGaussian());
                }
        }
        for (int i = 0; i < h.length; i++) h[i] = Math.max(0, h[i] + 300);
        double span = (side - 1) * stepDeg;
        return new PaperGround(middleLat + span / 2, middleLon - span / 2, stepDeg, side, h);
    }

    /** The same ground with a round hole in it. */
    PaperGround withVoid(double lat, double lon, double radiusDeg) {
        float[] holed = postM.clone();
        for (int r = 0; r < side; r++)
            for (int c = 0; c < side; c++)
                if (Math.hypot(northDeg - r * stepDeg - lat, westDeg + c * stepDeg - lon) < radiusDeg)
                    holed[r * side + c] = Float.NaN;
        return new PaperGround(northDeg, westDeg, stepDeg, side, holed);
    }

    /** The same ground with everything north of a latitude raised at once. */
    PaperGround withCliff(double lat, double upM) {
        float[] raised = postM.clone();
        for (int r = 0; r < side; r++)
            if (northDeg - r * stepDeg > lat) for (int c = 0; c < side; c++) raised[r * side + c] += (float) upM;
        return new PaperGround(northDeg, westDeg, stepDeg, side, raised);
    }

    @Override
    public void heights(double[] latitudeDeg, double[] longitudeDeg, int count, double[] heightM, boolean[] isVoid) {
        for (int i = 0; i < count; i++) {
            double east = longitudeDeg[i] - westDeg;
            if (east < -180) east += 360;
            double y = (northDeg - latitudeDeg[i]) / stepDeg;
            double x = east / stepDeg;
            int r = (int) y;
            int c = (int) x;
            if (!(y >= 0 && x >= 0 && r < side - 1 && c < side - 1)) {
                isVoid[i] = true;
                heightM[i] = 0;
                continue;
            }
            double v = y - r;
            double u = x - c;
            int at = r * side + c;
            double h = (1 - v) * ((1 - u) * postM[at] + u * postM[at + 1])
                    + v * ((1 - u) * postM[at + side] + u * postM[at + side + 1]);
            isVoid[i] = Double.isNaN(h);
            heightM[i] = isVoid[i] ? 0 : h;
        }
    }

    @Override
    public double postSpacingM(double latitudeDeg, double longitudeDeg, double defaultM) {
        return stepDeg * 111_200 * Math.cos(Math.toRadians(latitudeDeg));
    }
}
