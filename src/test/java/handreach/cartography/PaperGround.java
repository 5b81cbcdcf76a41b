package handreach.cartography;

import handreach.terrain.Elevation;

/** Ground given by a formula, void where the formula gives NaN. */
public record PaperGround(Height height, double spacingM) implements Elevation {
    /** Height over the plane of degrees, m; NaN is void. */
    public interface Height {
        double m(double latitudeDeg, double longitudeDeg);
    }

    @Override
    public void heights(double[] latitudeDeg, double[] longitudeDeg, int count, double[] heightM, boolean[] isVoid) {
        for (int i = 0; i < count; i++) {
            double h = height.m(latitudeDeg[i], longitudeDeg[i]);
            isVoid[i] = Double.isNaN(h);
            heightM[i] = isVoid[i] ? 0 : h;
        }
    }

    @Override
    public double postSpacingM(double latitudeDeg, double longitudeDeg, double defaultM) {
        return spacingM;
    }
}
