package handreach.cartography;

/** Area patterns that stay apart in black and white. */
public enum Hatch {
    NONE,
    RISING,
    FALLING,
    LEVEL,
    UPRIGHT,
    CROSSED,
    DOTS,
    GRID,
    ZIGZAG,
    DASHED;

    /** Distance of the lines, px. */
    public static final int SPACING_PX = 7;

    /** Whether the pattern puts ink on a pixel. */
    public boolean inks(int xPx, int yPx) {
        return switch (this) {
            case NONE -> false;
            case RISING -> Math.floorMod(xPx + yPx, SPACING_PX) == 0;
            case FALLING -> Math.floorMod(xPx - yPx, SPACING_PX) == 0;
            case LEVEL -> Math.floorMod(yPx, SPACING_PX) == 0;
            case UPRIGHT -> Math.floorMod(xPx, SPACING_PX) == 0;
            case CROSSED -> RISING.inks(xPx, yPx) || FALLING.inks(xPx, yPx);
            case DOTS -> Math.floorMod(xPx, SPACING_PX) < 2 && Math.floorMod(yPx, SPACING_PX) < 2;
            case GRID -> LEVEL.inks(xPx, yPx) || UPRIGHT.inks(xPx, yPx);
            case ZIGZAG ->
                Math.floorMod(yPx, SPACING_PX) == Math.abs(Math.floorMod(xPx, SPACING_PX - 1) - SPACING_PX / 2);
            case DASHED ->
                LEVEL.inks(xPx, yPx)
                        && Math.floorMod(xPx + SPACING_PX * Math.floorMod(yPx / SPACING_PX, 2), 2 * SPACING_PX)
                                < SPACING_PX + 1;
        };
    }
}
