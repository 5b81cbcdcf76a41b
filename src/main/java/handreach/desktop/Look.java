package handreach.desktop;

import javafx.scene.paint.Color;

/** Day and night: colours of the map that no style sheet reaches. */
enum Look {
    DAY(Relief.Paper.DAY, "#1e2a2e", "#fffdf7", "#a8461b", "#3a5a63", true),
    NIGHT(Relief.Paper.NIGHT, "#f1eee4", "#14191c", "#ff9a5c", "#a9c3c9", false);

    private final Relief.Paper paper;
    private final Color ink;
    private final Color halo;
    private final Color accent;
    private final Color grid;
    private final boolean darkens;

    Look(Relief.Paper paper, String ink, String halo, String accent, String grid, boolean darkens) {
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
        return 0xCC000000
                | (int) Math.round(255 * ink.getRed()) << 16
                | (int) Math.round(255 * ink.getGreen()) << 8
                | (int) Math.round(255 * ink.getBlue());
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

    /** Whether a layer darkens the relief as ink does paper; else it covers it. */
    boolean layerDarkens() {
        return darkens;
    }
}
