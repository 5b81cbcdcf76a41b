package handreach.propagation.march;

import java.util.Arrays;

/** Draws the columns of a march into a picture, cell by cell between one column and the next. */
final class FieldMarchSketch {
    private final FieldPicture picture;
    private final double earthRadiusM;
    private final double sourceM;
    private final double[] lastX;
    private final double[] lastPower;

    FieldMarchSketch(FieldPicture picture, double earthRadiusM, double sourceM) {
        this.picture = picture;
        this.earthRadiusM = earthRadiusM;
        this.sourceM = sourceM;
        this.lastX = new double[picture.rows()];
        this.lastPower = new double[picture.rows()];
        Arrays.fill(lastX, Double.NaN);
    }

    /** Takes the column standing at a foot, in axes where rays are straight. */
    void look(FieldMarchColumn column, double footM, double footHeightM, double slopeRad) {
        double c = Math.cos(slopeRad);
        double s = Math.sin(slopeRad);
        double bulgeM = footM * footM / (2 * earthRadiusM);
        double widthM = 1000 * (picture.distanceKm(1) - picture.distanceKm(0));
        for (int row = 0; row < picture.rows(); row++) {
            double z = picture.heightM(row) - bulgeM;
            double eta = (z - footHeightM) / c;
            if (eta < 0 || eta > column.usableM()) {
                lastX[row] = Double.NaN;
                continue;
            }
            double x = footM - eta * s;
            double power = column.power(eta) * Math.hypot(x, z - sourceM);
            double from = Double.isNaN(lastX[row]) ? x - 0.5 * widthM : lastX[row];
            double fromPower = Double.isNaN(lastX[row]) ? power : lastPower[row];
            fill(row, from, fromPower, x, power, widthM);
            if (!(x <= lastX[row])) {
                lastX[row] = x;
                lastPower[row] = power;
            }
        }
    }

    private void fill(int row, double x0, double p0, double x1, double p1, double widthM) {
        int first = Math.max(0, (int) Math.ceil(x0 / widthM - 0.5));
        int last = Math.min(picture.columns() - 1, (int) Math.floor(x1 / widthM - 0.5));
        for (int column = first; column <= last; column++) {
            double share = x1 > x0 ? ((column + 0.5) * widthM - x0) / (x1 - x0) : 1;
            double p = Math.max(1e-25, p0 + share * (p1 - p0));
            picture.set(column, row, 10 * Math.log10(p));
        }
    }
}
