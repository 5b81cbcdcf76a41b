package handreach.desktop;

import handreach.cartography.NightColours;
import handreach.cartography.OddsRamp;
import handreach.cartography.Srgb;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import javafx.scene.paint.Color;

/** Day and night: colours of map and figures that no style sheet reaches. */
enum Palette {
    DAY(Relief.Paper.DAY, "#1e2a2e", "#fffdf7", "#a8461b", "#3a5a63", true),
    NIGHT(Relief.Paper.NIGHT, "#f1eee4", "#14191c", "#ff9a5c", "#a9c3c9", false);

    private static final int NIGHT_SHEET = 0x22292D;
    /** White paper becomes the sheet of the night, the ink of figures its words: {@code -hr-sheet} and {@code -hr-ink}. */
    private static final NightColours NIGHT_INK = new NightColours(NIGHT_SHEET, 0xECE8DD);

    private final Relief.Paper paper;
    private final Color ink;
    private final Color halo;
    private final Color accent;
    private final Color grid;
    private final boolean darkens;
    private final Map<Integer, Color> inks = new ConcurrentHashMap<>();

    Palette(Relief.Paper paper, String ink, String halo, String accent, String grid, boolean darkens) {
        this.paper = paper;
        this.ink = Color.web(ink);
        this.halo = Color.web(halo);
        this.accent = Color.web(accent);
        this.grid = Color.web(grid);
        this.darkens = darkens;
    }

    Relief.Paper paper() {
        return paper;
    }

    /** Lines and words on the map. */
    Color ink() {
        return ink;
    }

    /** Outline of a layer: the ink, a little thinned. */
    int edgeArgb() {
        return 0xCC000000 | rgb(ink);
    }

    static int rgb(Color colour) {
        return (int) Math.round(255 * colour.getRed()) << 16
                | (int) Math.round(255 * colour.getGreen()) << 8
                | (int) Math.round(255 * colour.getBlue());
    }

    /** Edge that keeps ink readable on any ground. */
    Color halo() {
        return halo;
    }

    /** What the hand moves. */
    Color accent() {
        return accent;
    }

    Color grid() {
        return grid;
    }

    /** An ink of the report's figures, 0xRRGGBB, made for white paper: as it is by day, turned round by night. */
    Color ink(int rgb) {
        return inks.computeIfAbsent(rgb, each -> colour(this == DAY ? each : NIGHT_INK.of(each)));
    }

    /** Colour of a class of odds, 0xRRGGBB: the best is what the eye meets first, on dark ground as on light. */
    int odds(int oddsClass) {
        return this == DAY ? OddsRamp.rgb(oddsClass) : OddsRamp.nightRgb(oddsClass);
    }

    /** The colour of a mark thinned to an area, 0xRRGGBB: with the white of paper by day, with the dark of the sheet by night. */
    int area(int rgb, double share) {
        return this == DAY ? Srgb.mix(0xFFFFFF, rgb, share) : Srgb.mix(NIGHT_SHEET, rgb(ink(rgb)), share);
    }

    private static Color colour(int rgb) {
        return Color.rgb(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF);
    }

    /** Whether a layer darkens the relief as ink does paper; else it covers it. */
    boolean layerDarkens() {
        return darkens;
    }
}
