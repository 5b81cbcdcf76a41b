package handreach.desktop;

import handreach.cartography.LoadoutMark;
import handreach.cartography.OddsRamp;
import handreach.reach.CellGrid;
import handreach.report.AtlasSight;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;

/** Turns an atlas into the colours of a layer. Pure; called away from the screen thread. */
final class AtlasPainter {
    private static final int OPAQUE = 0xFF000000;
    /** Steps between classes, as shares of the radius or of the most that any place has. */
    private static final double[] STEPS = {0.05, 0.1, 0.25, 0.5, 0.75};

    private static final double AREA = 0.5;

    private final AtlasSight atlas;
    private final Palette palette;
    private final Lengths lengths;

    AtlasPainter(AtlasSight atlas, Palette palette, Lengths lengths) {
        this.atlas = atlas;
        this.palette = palette;
        this.lengths = lengths;
    }

    /** The layer, the loadout by its name where it shows one; of a loadout that the atlas does not have only words. */
    LayerRaster paint(Layer layer, String carried) {
        int loadout = atlas.loadouts().indexOf(carried);
        return switch (layer) {
            case ATLAS_LEAST ->
                least(
                        "Least loadout that serves, atlas",
                        "none serves",
                        atlas.positions(),
                        atlas::leastServing,
                        "A median reach of " + lengths.text(atlas.servesM()) + " or more.");
            case ATLAS_SHADOW ->
                least(
                        "Least loadout that anybody hears, atlas",
                        "nobody hears",
                        atlas.targets(),
                        atlas::leastHeard,
                        "Heard by somebody at any position of the atlas.");
            case ATLAS_HEARD -> loadout < 0 ? lacking(layer, carried) : heard(loadout);
            default -> loadout < 0 ? lacking(layer, carried) : median(loadout);
        };
    }

    private LayerRaster lacking(Layer layer, String carried) {
        return new LayerRaster(
                atlas.positions(),
                new int[atlas.positions().count()],
                new LayerRaster.Key(
                        layer.words(),
                        List.of(),
                        "The atlas was made without " + carried + ". Choose another loadout."),
                Optional.empty());
    }

    private LayerRaster median(int loadout) {
        double[] breaks = IntStream.range(0, STEPS.length)
                .mapToDouble(i -> STEPS[i] * atlas.radiusM())
                .toArray();
        return classes(
                "Median reach, atlas, " + atlas.loadouts().get(loadout),
                atlas.positions(),
                cell -> atlas.medianM(cell, loadout).orElse(Double.NaN),
                breaks,
                IntStream.range(0, breaks.length)
                        .mapToObj(i -> lengths.text(breaks[i]))
                        .toList());
    }

    private LayerRaster heard(int loadout) {
        int cells = atlas.targets().count();
        int most = IntStream.range(0, cells)
                .map(target -> atlas.heardBy(target, loadout))
                .max()
                .orElse(0);
        double[] breaks = IntStream.range(0, STEPS.length)
                .mapToDouble(i -> Math.max(i + 1, Math.ceil(STEPS[i] * most)))
                .toArray();
        return classes(
                "Heard by positions, atlas, " + atlas.loadouts().get(loadout),
                atlas.targets(),
                target -> {
                    int count = atlas.heardBy(target, loadout);
                    return count < 0 ? Double.NaN : count;
                },
                breaks,
                IntStream.range(0, breaks.length)
                        .mapToObj(i -> Long.toString((long) breaks[i]))
                        .toList());
    }

    private LayerRaster classes(
            String title, CellGrid grid, IntToDoubleFunction value, double[] breaks, List<String> words) {
        int[] argb = new int[grid.count()];
        for (int cell = 0; cell < argb.length; cell++) {
            int k = 0;
            while (k < breaks.length && value.applyAsDouble(cell) >= breaks[k]) k++;
            argb[cell] = k == 0 ? 0 : OPAQUE | palette.odds(k);
        }
        List<LayerRaster.KeyEntry> entries = new ArrayList<>();
        for (int k = OddsRamp.BREAKS.size(); k >= 1; k--)
            entries.add(LayerRaster.KeyEntry.area(palette.odds(k), words.get(k - 1) + " and more"));
        entries.add(LayerRaster.KeyEntry.clear("less, or outside the region"));
        return new LayerRaster(grid, argb, new LayerRaster.Key(title, entries, note()), Optional.empty());
    }

    private LayerRaster least(String title, String none, CellGrid grid, IntUnaryOperator least, String meaning) {
        int[] argb = new int[grid.count()];
        boolean[] isThere = new boolean[atlas.loadouts().size()];
        boolean isNowhere = false;
        for (int cell = 0; cell < argb.length; cell++) {
            int loadout = least.applyAsInt(cell);
            isNowhere |= loadout == AtlasSight.NOBODY;
            if (loadout < 0) continue;
            isThere[loadout] = true;
            argb[cell] = OPAQUE | rgb(loadout);
        }
        List<LayerRaster.KeyEntry> entries = new ArrayList<>();
        for (int loadout : atlas.byBurden())
            if (isThere[loadout])
                entries.add(
                        LayerRaster.KeyEntry.area(rgb(loadout), atlas.loadouts().get(loadout)));
        entries.add(LayerRaster.KeyEntry.clear(isNowhere ? none + ", or outside the region" : "outside the region"));
        return new LayerRaster(
                grid, argb, new LayerRaster.Key(title, entries, meaning + " " + note()), Optional.empty());
    }

    private int rgb(int loadout) {
        return palette.area(LoadoutMark.of(loadout).rgb(), AREA);
    }

    private static String note() {
        return "Click a place for its figures.";
    }
}
