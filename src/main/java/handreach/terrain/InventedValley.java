package handreach.terrain;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * An invented island in mid-ocean: a valley between two ranges, spurs that reach into it, a lake, a pass, coasts. It is nowhere on
 * earth and made for examples and tests, always the same.
 *
 * <p>It fills the one-degree tile whose south-west corner is 44 N 30 W with posts every arc-second. Only operations with one exact
 * result on every machine are used ({@link StrictMath}).
 */
public final class InventedValley implements Elevation {
    public static final String TILE_NAME = "N44W030";
    private static final int SOUTH_DEG = 44;
    private static final int WEST_DEG = -30;
    private static final int SIDE = 3601;
    private static final double CENTRE_LATITUDE_DEG = 44.5;
    private static final double COLUMN_KM = 0.02205;
    private static final double ROW_KM = 0.03087;
    private static final double AXIS_EAST = 0.8;
    private static final double AXIS_NORTH = 0.6;
    private static final double REACH_KM = 27;

    /** Valley floor: kilometres along the axis, metres; the pass stands at 12. */
    private static final double[][] FLOOR = {
        {-27, -60},
        {-22, 20},
        {-15, 205},
        {-10, 236},
        {-6, 245},
        {0, 330},
        {5, 480},
        {9, 690},
        {12, 965},
        {15, 700},
        {19, 260},
        {23, 20},
        {27, -60}
    };

    private static final double FLAT_KM = 0.38;
    private static final double LAKE_AT_KM = -8;
    private static final double LAKE_LENGTH_KM = 1.7;
    private static final double LAKE_WIDTH_KM = 0.45;
    private static final double LAKE_M = 238;

    private final Lattice.Seat seat;
    private final ShortPosts posts;

    private InventedValley() {
        GridFit fit = new GridFit(Frame.DEGREES, WEST_DEG, SOUTH_DEG + 1.0, SIDE - 1, SIDE - 1);
        seat = new Lattice.Book().seat(fit, SIDE, SIDE);
        short[] heightM = new short[SIDE * SIDE];
        IntStream.range(0, SIDE).parallel().forEach(row -> {
            for (int column = 0; column < SIDE; column++) heightM[row * SIDE + column] = postM(row, column);
        });
        posts = ShortPosts.asTheyAre(SIDE, SIDE, heightM);
    }

    /** Builds it anew; takes a few seconds. */
    public static InventedValley build() {
        return new InventedValley();
    }

    /** Height of one post; row 0 is the northernmost. */
    static short postM(int row, int column) {
        return (short) StrictMath.rint(groundM(row, column));
    }

    private static double groundM(int row, int column) {
        double x = (column - SIDE / 2) * COLUMN_KM;
        double y = (SIDE / 2 - row) * ROW_KM;
        if (x * x + y * y > REACH_KM * REACH_KM) return 0;
        double bentX = x + 0.9 * ValleyNoise.layered(x / 5.2, y / 5.2, 3, 11);
        double bentY = y + 0.9 * ValleyNoise.layered(x / 5.2, y / 5.2, 3, 12);
        double along = bentX * AXIS_EAST + bentY * AXIS_NORTH;
        double across = bentY * AXIS_EAST - bentX * AXIS_NORTH;
        double offAxis = across - axisKm(along);
        double shape = shapeM(along, offAxis);
        double rough = ValleyNoise.layered(x / 3.1, y / 3.1, 7, 13);
        double rib = 1 - 2 * Math.abs(ValleyNoise.layered(x / 2.3 + 40, y / 2.3, 5, 16));
        double steep = smooth((Math.abs(offAxis) - 0.35) / 1.2);
        double heightM = shape
                + rough * (5 + 0.105 * Math.max(0, shape) * (0.15 + 0.85 * steep))
                + rib * 0.075 * Math.max(0, shape) * steep;
        heightM = lake(along, offAxis, heightM);
        double shore = 1 - smooth((StrictMath.sqrt(x * x + y * y) - 20) / (REACH_KM - 20));
        return Math.max(0, heightM * shore - 12 * (1 - shore));
    }

    private static double axisKm(double along) {
        return 0.85 * StrictMath.sin(along * 0.52 + 0.4) + 0.25 * StrictMath.sin(along * 1.3);
    }

    /** Floor, flanks with spurs, crests and outer slopes, without roughness. */
    private static double shapeM(double along, double offAxis) {
        int side = offAxis < 0 ? 5 : 9;
        double floorM = floorM(along);
        double wideKm = 4.3 + 0.9 * ValleyNoise.layered(along / 6, side, 2, 14);
        double taper = smooth((24 - Math.abs(along)) / 12);
        double crestM = taper * (1130 + 330 * ValleyNoise.layered(along / 3.4, side, 3, 15) + (side == 9 ? 90 : 0));
        double share = Math.max(0, Math.abs(offAxis) - FLAT_KM) / wideKm;
        double spur = 0.5 + 0.5 * StrictMath.cos(along * 2.35 + side + 1.1 * StrictMath.sin(along * 0.7 + side));
        if (share < 1) {
            double rise = 0.25 * share + 0.75 * smooth(share);
            double lift = 0.42 * (spur * spur - 0.3) * 4 * share * (1 - share);
            return floorM + Math.max(crestM - floorM, 40 * taper) * Math.min(1, rise + lift);
        }
        double out = Math.min(1, (share - 1) / 1.9);
        double fall = 1 - out + 0.14 * (spur - 0.4) * 4 * out * (1 - out);
        return Math.max(crestM, floorM + 40 * taper) * fall - 60 * out;
    }

    private static double floorM(double along) {
        for (int i = 1; i < FLOOR.length; i++) {
            if (along > FLOOR[i][0] && i < FLOOR.length - 1) continue;
            double share = (along - FLOOR[i - 1][0]) / (FLOOR[i][0] - FLOOR[i - 1][0]);
            return FLOOR[i - 1][1] + (FLOOR[i][1] - FLOOR[i - 1][1]) * Math.max(0, Math.min(1, share));
        }
        return -60;
    }

    private static double lake(double along, double offAxis, double heightM) {
        double a = (along - LAKE_AT_KM) / LAKE_LENGTH_KM;
        double b = offAxis / LAKE_WIDTH_KM;
        double out = a * a + b * b;
        if (out < 1) return LAKE_M;
        if (out < 2) return LAKE_M + Math.max(1, heightM - LAKE_M) * smooth(out - 1);
        return heightM;
    }

    private static double smooth(double share) {
        double t = Math.max(0, Math.min(1, share));
        return t * t * (3 - 2 * t);
    }

    /** The tile as a zipped file in SRTM layout. */
    public void writeTile(OutputStream out) throws IOException {
        ZipOutputStream zip = new ZipOutputStream(out);
        zip.setLevel(9);
        ZipEntry entry = new ZipEntry(TILE_NAME + ".hgt");
        entry.setTimeLocal(java.time.LocalDateTime.of(2026, 1, 1, 0, 0));
        zip.putNextEntry(entry);
        ByteBuffer line = ByteBuffer.allocate(2 * SIDE);
        for (int row = 0; row < SIDE; row++) {
            line.clear();
            for (int column = 0; column < SIDE; column++) line.putShort(posts.raw(row * SIDE + column));
            zip.write(line.array());
        }
        zip.closeEntry();
        zip.finish();
    }

    @Override
    public void heights(double[] latitudeDeg, double[] longitudeDeg, int count, double[] heightM, boolean[] isVoid) {
        int i = 0;
        while (i < count) {
            i = posts.run(
                    seat.lattice(), seat.row(), seat.column(), latitudeDeg, longitudeDeg, i, count, heightM, isVoid);
            if (i == count) return;
            heightM[i] = 0;
            isVoid[i++] = true;
        }
    }

    @Override
    public double postSpacingM(double latitudeDeg, double longitudeDeg, double defaultM) {
        boolean isInside = latitudeDeg >= SOUTH_DEG
                && latitudeDeg <= SOUTH_DEG + 1
                && longitudeDeg >= WEST_DEG
                && longitudeDeg <= WEST_DEG + 1;
        return isInside
                ? 111_412.88 / (SIDE - 1) * StrictMath.cos(StrictMath.toRadians(CENTRE_LATITUDE_DEG))
                : defaultM;
    }
}
