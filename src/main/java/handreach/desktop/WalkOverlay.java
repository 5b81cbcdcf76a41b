package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.report.figure.WalkMark;
import handreach.study.WalkAnswer;
import handreach.study.WalkNextAnswer;
import handreach.walk.WalkPair;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javafx.scene.paint.Color;

/** Reports of walks by how they stand to their prediction, told by shape and by light and dark; stops of a proposed walk. */
final class WalkOverlay implements MapOverlay {
    private static final Color WORSE = Color.web("#a33b00");
    private static final Color BETTER = Color.web("#0072b2");

    private final Session session;

    WalkOverlay(Session session) {
        this.session = session;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        if (session.layer().get() != Layer.WALK) return;
        session.walked()
                .get()
                .ifPresent(answer -> answer.pairs().stream()
                        .sorted(Comparator.comparing(WalkMark::of))
                        .forEach(pair -> mark(
                                WalkMark.of(pair),
                                pen,
                                pen.x(pair.spot().at()),
                                pen.y(pair.spot().at()))));
        session.nextWalk().get().ifPresent(answer -> stops(pen, answer));
    }

    private static void stops(MapPen pen, WalkNextAnswer answer) {
        for (WalkNextAnswer.Stop proposed : answer.stops()) {
            double x = pen.x(proposed.spot().at());
            double y = pen.y(proposed.spot().at());
            stop(pen, x, y);
            pen.name("stop " + proposed.number(), x, y - 8, 8, true);
        }
    }

    private static void stop(MapPen pen, double x, double y) {
        pen.shape(pen.palette().accent(), x, y, x + 8, y - 8, x, y - 16, x - 8, y - 8);
    }

    private static void mark(WalkMark mark, MapPen pen, double x, double y) {
        switch (mark) {
            case AS_TOLD_COPY -> pen.disc(Color.WHITE, x, y, 4);
            case AS_TOLD_NONE -> pen.disc(Color.web("#1e2a2e"), x, y, 3.6);
            case BETTER -> pen.shape(Color.WHITE.interpolate(BETTER, 0.35), triangle(x, y, -6));
            case FAR_BETTER -> pen.shape(BETTER, triangle(x, y, -9));
            case WORSE -> pen.shape(Color.WHITE.interpolate(WORSE, 0.55), triangle(x, y, 6));
            case FAR_WORSE -> pen.shape(WORSE, triangle(x, y, 9));
        }
    }

    /** Points down for a size above zero, up below it. */
    private static double[] triangle(double x, double y, double size) {
        double half = Math.abs(size);
        return new double[] {x, y + size, x + half, y - 0.75 * size, x - half, y - 0.75 * size};
    }

    /** What the marks mean, with how many there are. */
    static LayerRaster.Key key(WalkAnswer answer) {
        List<LayerRaster.KeyEntry> entries = new ArrayList<>();
        List<WalkPair> pairs = answer.pairs();
        for (int i = WalkMark.values().length - 1; i >= 0; i--) {
            WalkMark mark = WalkMark.values()[i];
            long count =
                    pairs.stream().filter(pair -> WalkMark.of(pair) == mark).count();
            if (count > 0)
                entries.add(LayerRaster.KeyEntry.of(
                        (pen, x, y) -> mark(mark, pen, x, y), mark.label() + " (" + count + ")"));
        }
        return new LayerRaster.Key(
                "Walked: heard against predicted", entries, "One mark a report or local mean of a level.");
    }
}
