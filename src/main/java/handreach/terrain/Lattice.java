package handreach.terrain;

import java.util.ArrayList;
import java.util.List;

/**
 * The endless lattice of posts that several tiles share. Because an index counts from the origin of the lattice and not from a
 * tile, the place of a position between its four posts does not depend on which tile holds them: seams have no step, and a window
 * cut from several tiles answers bit for bit as they do.
 */
final class Lattice {
    /** How far posts may lie off a lattice and still belong to it, in cells. */
    private static final double TOLERANCE = 1e-3;

    final Frame frame;
    final double originX;
    final double originY;
    final double perX;
    final double perY;
    /** Columns in a full turn of the earth; 0 where columns do not come round. */
    final int turn;

    private Lattice(Frame frame, double originX, double originY, double perX, double perY) {
        this.frame = frame;
        this.originX = originX;
        this.originY = originY;
        this.perX = perX;
        this.perY = perY;
        boolean comesRound = frame.isDegrees() && isWhole(360 * perX) && 360 * perX < 1e9;
        this.turn = comesRound ? (int) Math.rint(360 * perX) : 0;
    }

    /** A grid's place in a lattice: index of its first row and column. */
    record GridOffset(Lattice lattice, int row, int column) {}

    /** Gives every grid a seat, in an old lattice where it fits one. */
    static final class Registry {
        private final List<Lattice> known = new ArrayList<>();

        GridOffset seat(GridFit fit, int rows, int columns) {
            double perX = fit.frame().isDegrees() ? wholeIfNear(fit.postsPerX(), columns) : fit.postsPerX();
            double perY = fit.frame().isDegrees() ? wholeIfNear(fit.postsPerY(), rows) : fit.postsPerY();
            for (Lattice lattice : known) {
                if (!lattice.frame.key().equals(fit.frame().key())) continue;
                double column = (fit.westX() - lattice.originX) * lattice.perX;
                double row = (lattice.originY - fit.northY()) * lattice.perY;
                double drift =
                        Math.max(columns * Math.abs(lattice.perX / perX - 1), rows * Math.abs(lattice.perY / perY - 1));
                if (isWhole(column) && isWhole(row) && drift < TOLERANCE && Math.abs(column) + Math.abs(row) < 1e9)
                    return new GridOffset(lattice, (int) Math.rint(row), (int) Math.rint(column));
            }
            double originX = fit.westX();
            double originY = fit.northY();
            if (fit.frame().isDegrees() && isWhole(perX) && isWhole(perY)) {
                originX = -180 + phase((originX + 180) * perX) / perX;
                originY = 90 - phase((90 - originY) * perY) / perY;
            }
            Lattice lattice = new Lattice(fit.frame(), originX, originY, perX, perY);
            known.add(lattice);
            return new GridOffset(lattice, (int) Math.rint((originY - fit.northY()) * perY), (int)
                    Math.rint((fit.westX() - originX) * perX));
        }
    }

    private static boolean isWhole(double value) {
        return Math.abs(value - Math.rint(value)) < TOLERANCE;
    }

    private static double wholeIfNear(double perDegree, int count) {
        double whole = Math.rint(perDegree);
        return whole >= 1 && Math.abs(perDegree / whole - 1) * count < TOLERANCE ? whole : perDegree;
    }

    private static double phase(double posts) {
        double part = posts - Math.floor(posts);
        if (part < TOLERANCE || part > 1 - TOLERANCE) return 0;
        return Math.abs(part - 0.5) < TOLERANCE ? 0.5 : part;
    }

    double column(double x) {
        return (x - originX) * perX;
    }

    double row(double y) {
        return (originY - y) * perY;
    }

    double x(double column) {
        return originX + column / perX;
    }

    double y(double row) {
        return originY - row / perY;
    }

    /** Floor of a place in the lattice; until code is compiled in full, the library's is a call. */
    static int whole(double place) {
        int towardsZero = (int) place;
        return place < towardsZero ? towardsZero - 1 : towardsZero;
    }

    /** Height between four posts; the shares run from the north-west post eastward and southward. */
    static double bilinear(double nw, double ne, double sw, double se, double east, double south) {
        double north = nw + (ne - nw) * east;
        double below = sw + (se - sw) * east;
        return north + (below - north) * south;
    }
}
