package handreach.cartography;

import handreach.terrain.Elevation;
import java.util.stream.IntStream;

/** Relief of a map as light and shade, one byte a pixel: 0 black to 255 fully lit. Immutable. */
public final class Hillshade {
    private static final double[] SIDES_DEG = {225, 270, 315, 360};

    private final MapFrame frame;
    private final byte[] shade;
    private final boolean[] isVoid;

    private Hillshade(MapFrame frame) {
        this.frame = frame;
        this.shade = new byte[frame.widthPx() * frame.heightPx()];
        this.isVoid = new boolean[shade.length];
    }

    /**
     * Shade of every pixel under four suns from the west half, each weighted by how much it grazes the slope, so that no
     * side of the relief drowns in black.
     *
     * @shape  as {@link #shaded}; about twice its cost
     * @unit   as {@link #shaded}
     * @valid  as {@link #shaded}
     * @error  half a step of 255 against the formula
     * @source Mark, Multidirectional, oblique-weighted, shaded-relief image of the Island of Hawaii, USGS OFR 92-422 (1992),
     *         weights sin² of aspect minus azimuth, sun at 30°; from memory
     */
    public static Hillshade fromManySides(Elevation elevation, MapFrame frame, double exaggeration) {
        return shaded(elevation, frame, exaggeration, new ManyLights());
    }

    /**
     * Shade of every pixel under this light.
     *
     * @shape  one value a pixel; linear in pixels, pure
     * @unit   exaggeration multiplies heights, dimensionless; result 0 to 255, the cosine between ground normal and sun where the light is one sun, below
     *         the horizon of the slope 0
     * @valid  everywhere; a void pixel has no shade; next to a void the slope towards it counts as level
     * @error  half a step of 255 against the formula; where pixels are finer than posts the slope is taken over one post spacing,
     *         so that the facets between posts do not show
     * @source Horn, Hill shading and the reflectance map, Proc. IEEE 69 (1981), eight-neighbour slope and Lambert's cosine law
     */
    static Hillshade shaded(Elevation elevation, MapFrame frame, double exaggeration, Lighting lighting) {
        if (!(exaggeration > 0)) throw new IllegalArgumentException("exaggeration " + exaggeration);
        double spacingM = elevation.postSpacingM(
                frame.centre().latitudeDeg(), frame.centre().longitudeDeg(), frame.metresPerPx());
        int reach = (int) Math.max(1, Math.min(64, Math.round(spacingM / frame.metresPerPx())));
        HeightLattice lattice = HeightLattice.over(elevation, frame, 1, reach);
        Hillshade result = new Hillshade(frame);
        double perMetre = exaggeration / (8 * reach * frame.metresPerPx());
        IntStream.range(0, frame.heightPx())
                .parallel()
                .forEach(y -> result.shadeRow(lattice, y, reach, perMetre, lighting));
        return result;
    }

    private void shadeRow(HeightLattice ground, int y, int reach, double perMetre, Lighting lighting) {
        int row = y + reach;
        for (int x = 0; x < frame.widthPx(); x++) {
            int column = x + reach;
            int at = y * frame.widthPx() + x;
            if (ground.isVoid(column, row)) {
                isVoid[at] = true;
                continue;
            }
            float here = ground.heightM(column, row);
            int w = column - reach;
            int e = column + reach;
            int n = row - reach;
            int s = row + reach;
            float nw = near(ground, w, n, here);
            float ne = near(ground, e, n, here);
            float sw = near(ground, w, s, here);
            float se = near(ground, e, s, here);
            double east = (ne + 2 * near(ground, e, row, here) + se) - (nw + 2 * near(ground, w, row, here) + sw);
            double north =
                    (nw + 2 * near(ground, column, n, here) + ne) - (sw + 2 * near(ground, column, s, here) + se);
            double light = lighting.of(east * perMetre, north * perMetre);
            shade[at] = (byte) Math.round(255 * Math.max(0, Math.min(1, light)));
        }
    }

    private static float near(HeightLattice ground, int column, int row, float otherwise) {
        return ground.isVoid(column, row) ? otherwise : ground.heightM(column, row);
    }

    public MapFrame frame() {
        return frame;
    }

    /** Light on a pixel, 0 to 255; 0 where void. */
    public int shade(int xPx, int yPx) {
        return shade[yPx * frame.widthPx() + xPx] & 0xFF;
    }

    public boolean isVoid(int xPx, int yPx) {
        return isVoid[yPx * frame.widthPx() + xPx];
    }

    /** Light on ground that rises by these tangents to the east and to the north, 0 to 1 before clipping. */
    interface Lighting {
        double of(double riseEast, double riseNorth);
    }

    /** One sun. */
    static final class Light implements Lighting {
        private final double east;
        private final double north;
        private final double up;

        Light(Sun sun) {
            double altitude = Math.toRadians(sun.altitudeDeg());
            double azimuth = Math.toRadians(sun.azimuthDeg());
            east = Math.cos(altitude) * Math.sin(azimuth);
            north = Math.cos(altitude) * Math.cos(azimuth);
            up = Math.sin(altitude);
        }

        @Override
        public double of(double riseEast, double riseNorth) {
            return across(riseEast, riseNorth) / Math.sqrt(1 + riseEast * riseEast + riseNorth * riseNorth);
        }

        /** The light before it is shared out over the length of the slope. */
        private double across(double riseEast, double riseNorth) {
            return up - east * riseEast - north * riseNorth;
        }
    }

    private static final class ManyLights implements Lighting {
        private final Light[] lights = new Light[SIDES_DEG.length];
        private final double[] sine = new double[SIDES_DEG.length];
        private final double[] cosine = new double[SIDES_DEG.length];

        ManyLights() {
            for (int i = 0; i < lights.length; i++) {
                lights[i] = new Light(new Sun(SIDES_DEG[i], 30));
                sine[i] = Math.sin(Math.toRadians(SIDES_DEG[i]));
                cosine[i] = Math.cos(Math.toRadians(SIDES_DEG[i]));
            }
        }

        @Override
        public double of(double riseEast, double riseNorth) {
            double steepness2 = riseEast * riseEast + riseNorth * riseNorth;
            if (steepness2 < 1e-18) return lights[0].up;
            double sum = 0;
            for (int i = 0; i < lights.length; i++) {
                double light = lights[i].across(riseEast, riseNorth);
                double grazed = riseEast * cosine[i] - riseNorth * sine[i];
                if (light > 0) sum += grazed * grazed * light;
            }
            return sum / (2 * steepness2 * Math.sqrt(1 + steepness2));
        }
    }
}
