package handreach.desktop;

import handreach.relay.HopPath;
import java.util.List;

/** How sure a hop is, told by the pattern of its line. */
enum HopStrength {
    SURE("wanted odds, also if all common doubt turns out badly", 3.2, List.of()),
    WANTED("wanted odds", 1.7, List.of()),
    EVEN("an even chance or better", 2, List.of(9.0, 6.0)),
    WEAK("less than an even chance", 2, List.of(1.0, 6.0));

    private final String words;
    private final double widthPx;
    private final List<Double> dashPx;

    HopStrength(String words, double widthPx, List<Double> dashPx) {
        this.words = words;
        this.widthPx = widthPx;
        this.dashPx = dashPx;
    }

    static HopStrength of(HopPath.HopOdds odds, double wanted) {
        if (odds.pessimistic() >= wanted) return SURE;
        if (odds.weaker() >= wanted) return WANTED;
        return odds.weaker() >= 0.5 ? EVEN : WEAK;
    }

    String words() {
        return words;
    }

    void draw(MapPen pen, double x1, double y1, double x2, double y2) {
        pen.line(pen.palette().ink(), widthPx, true, dashPx, x1, y1, x2, y2);
    }
}
