package handreach.desktop;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.text.TextAlignment;

/** What the lines and colours of a cut mean, under it, in as many rows as the width asks for. */
final class ProfileLegend {
    private static final double LEFT_PX = 10;
    private static final double ROW_PX = 18;
    private static final double SAMPLE_PX = 30;
    private static final double GAP_PX = 12;

    private final ChartInk ink;
    private final double widthPx;
    private final List<Entry> entries;

    private record Entry(String words, Sample sample) {}

    private enum Sample {
        RAY,
        ZONE,
        FREE,
        STRING,
        TREES,
        TOWN
    }

    ProfileLegend(PathView view, ChartInk ink, double widthPx) {
        this.ink = ink;
        this.widthPx = widthPx;
        this.entries = entries(view);
    }

    double heightPx() {
        return ROW_PX * rows();
    }

    private static List<Entry> entries(PathView view) {
        List<Entry> entries = new ArrayList<>();
        entries.add(new Entry("straight ray", Sample.RAY));
        entries.add(new Entry("first Fresnel zone", Sample.ZONE));
        entries.add(new Entry("0.6 of it", Sample.FREE));
        if (!view.answer().geometry().obstacles().isEmpty()) entries.add(new Entry("edges in the way", Sample.STRING));
        boolean hasTrees = false;
        boolean hasTown = false;
        for (int i = 0; i < view.answer().profile().count(); i++) {
            if (view.answer().profile().clutterM(i) <= 0) continue;
            if (view.answer().profile().cover(i).isTown()) hasTown = true;
            else hasTrees = true;
        }
        if (hasTrees) entries.add(new Entry("trees", Sample.TREES));
        if (hasTown) entries.add(new Entry("buildings", Sample.TOWN));
        return entries;
    }

    private int rows() {
        int rows = 1;
        double x = LEFT_PX;
        for (Entry entry : entries) {
            double width = SAMPLE_PX + ChartInk.widthOf(entry.words(), false) + GAP_PX;
            if (x > LEFT_PX && x + width > widthPx) {
                rows++;
                x = LEFT_PX;
            }
            x += width;
        }
        return rows;
    }

    void draw(double topPx) {
        double x = LEFT_PX;
        double y = topPx + ROW_PX / 2;
        for (Entry entry : entries) {
            double width = SAMPLE_PX + ChartInk.widthOf(entry.words(), false) + GAP_PX;
            if (x > LEFT_PX && x + width > widthPx) {
                x = LEFT_PX;
                y += ROW_PX;
            }
            sample(entry.sample(), x, y);
            ink.words(
                    entry.words(),
                    x + SAMPLE_PX - 2,
                    y,
                    TextAlignment.LEFT,
                    ink.look().ink(),
                    false);
            x += width;
        }
    }

    private void sample(Sample sample, double x, double y) {
        switch (sample) {
            case RAY -> ink.line(ink.colours().ray(), 1, 2, x, y, x + 23, y);
            case FREE, STRING -> {
                if (sample == Sample.FREE) ink.gc().setLineDashes(5, 4);
                else ink.gc().setLineDashes(2, 3);
                ink.line(
                        sample == Sample.FREE ? ink.colours().ray() : ink.look().ink(), 1, 1.3, x, y, x + 23, y);
                ink.gc().setLineDashes();
            }
            case ZONE, TREES, TOWN -> {
                ink.gc()
                        .setFill(
                                sample == Sample.ZONE
                                        ? ink.colours().ray()
                                        : sample == Sample.TREES
                                                ? ink.colours().trees()
                                                : ink.colours().town());
                ink.gc().setGlobalAlpha(sample == Sample.ZONE ? 0.2 : 1);
                ink.gc().fillRect(x, y - 6, 23, 12);
                ink.gc().setGlobalAlpha(1);
            }
        }
    }
}
