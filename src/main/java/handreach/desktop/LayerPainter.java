package handreach.desktop;

import handreach.cartography.DifferenceMarks;
import handreach.cartography.Hatch;
import handreach.cartography.LoadoutMark;
import handreach.cartography.OddsRamp;
import handreach.loadout.Loadout;
import handreach.reach.CellGrid;
import handreach.reach.LeastLoadout;
import handreach.reach.LoadoutDifference;
import handreach.reach.LossGrid;
import handreach.reach.OddsGrid;
import handreach.reach.OneWayGround;
import handreach.reach.ReachOutline;
import handreach.report.ModelsComposer;
import handreach.study.Scene;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.MultiPolygon;

/** Turns losses into the colours of a layer. Pure; called away from the screen thread. */
final class LayerPainter {
    private static final int OPAQUE = 0xFF000000;
    private static final int CLEAR = 0;
    private static final int SIGHT_RGB = 0xE3C06B;
    private static final int UNKNOWN_RGB = 0x8C8C88;
    private static final Hatch UNKNOWN_HATCH = Hatch.RISING;
    private static final double THIN = 0.42;
    private static final double THICK = 0.85;

    private final Scene scene;
    private final LiveReach.Losses losses;
    private final Palette palette;
    private final double target;

    /** An area of a mark: its colour thinned, with lines of its pattern. */
    private record Area(int solidArgb, int lineArgb, Hatch hatch) {
        static Area of(LoadoutMark mark, Palette palette) {
            return new Area(
                    OPAQUE | palette.area(mark.rgb(), THIN), OPAQUE | palette.area(mark.rgb(), THICK), mark.hatch());
        }

        int argb(CellGrid grid, int cell) {
            return hatch.inks(grid.columnOf(cell), grid.rowOf(cell)) ? lineArgb : solidArgb;
        }

        LayerRaster.KeyEntry entry(String words) {
            return new LayerRaster.KeyEntry(solidArgb, lineArgb, hatch, Optional.empty(), words);
        }
    }

    LayerPainter(Scene scene, LiveReach.Losses losses, Palette palette) {
        this.scene = scene;
        this.losses = losses;
        this.palette = palette;
        this.target = scene.plan().channel().wish().odds();
    }

    /** The layer, or empty where it needs what is not there: two loadouts, or losses for these antenna heights. */
    Optional<LayerRaster> paint(Layer layer, Loadout carried, Loadout compared) {
        return switch (layer) {
            case ODDS -> odds(carried).map(this::paintOdds);
            case LEAST -> paintLeast();
            case DIFFERENCE ->
                odds(compared).flatMap(first -> odds(carried).map(second -> paintDifference(first, second)));
            case ONE_WAY -> odds(carried).map(this::paintOneWay);
            case SIGHT -> odds(carried).map(odds -> paintSight(odds.losses(), carried));
            case RELAY, WALK, ATLAS_MEDIAN, ATLAS_LEAST, ATLAS_HEARD, ATLAS_SHADOW, NONE -> Optional.empty();
        };
    }

    private Optional<OddsGrid> odds(Loadout loadout) {
        return losses.odds(scene.link(loadout));
    }

    private LayerRaster paintOdds(OddsGrid odds) {
        CellGrid grid = odds.grid();
        int[] argb = new int[grid.count()];
        double[] breaks = OddsRamp.BREAKS.stream()
                .mapToDouble(share -> odds.link().thresholdDb(share))
                .toArray();
        double wantedDb = odds.link().thresholdDb(target);
        BitSet reached = new BitSet(argb.length);
        for (int cell = 0; cell < argb.length; cell++) {
            if (!odds.isKnown(cell)) {
                argb[cell] = unknown(odds.losses(), cell);
                continue;
            }
            double marginDb = odds.marginDb(cell);
            if (marginDb >= wantedDb) reached.set(cell);
            int oddsClass = classOf(marginDb, breaks);
            argb[cell] = oddsClass == 0 ? CLEAR : OPAQUE | palette.odds(oddsClass);
        }
        List<LayerRaster.KeyEntry> entries = new ArrayList<>();
        for (int i = OddsRamp.BREAKS.size(); i >= 1; i--)
            entries.add(LayerRaster.KeyEntry.area(palette.odds(i), OddsRamp.label(i)));
        entries.add(LayerRaster.KeyEntry.clear(OddsRamp.label(0)));
        tellUnknown(odds.losses(), entries);
        int known = odds.losses().knownCount();
        String note = losses.isCoarse()
                ? "Coarse; the full picture follows."
                : Shares.share(known == 0 ? 0 : (double) reached.cardinality() / known) + " of the ground reaches "
                        + Shares.wanted(target) + " or better (line).";
        Optional<MultiPolygon> outline =
                losses.isCoarse() ? Optional.empty() : Optional.of(ReachOutline.of(grid, reached::get));
        return new LayerRaster(
                grid,
                argb,
                new LayerRaster.Key("Odds of copy, " + odds.link().name(), entries, note + byModel()),
                outline);
    }

    /** The class of {@link OddsRamp} by the margins at which the odds cross its breaks; odds grow with the margin. */
    private static int classOf(double marginDb, double[] breaks) {
        int k = 0;
        while (k < breaks.length && marginDb >= breaks[k]) k++;
        return k;
    }

    private String byModel() {
        double cellM = losses.grids().get(0).grid().cellM();
        boolean isOwnCell = cellM == scene.plan().questions().reach().cellM();
        return ModelsComposer.seen(scene, losses.model(), isOwnCell || losses.isCoarse());
    }

    private static int unknown(LossGrid grid, int cell) {
        if (grid.state(cell) != LossGrid.State.UNKNOWN) return CLEAR;
        boolean isLine =
                UNKNOWN_HATCH.inks(grid.grid().columnOf(cell), grid.grid().rowOf(cell));
        return isLine ? OPAQUE | UNKNOWN_RGB : CLEAR;
    }

    /** A line of the key for ground of which nothing is known, where there is any. */
    private static void tellUnknown(LossGrid grid, List<LayerRaster.KeyEntry> entries) {
        for (int cell = 0; cell < grid.grid().count(); cell++)
            if (grid.state(cell) == LossGrid.State.UNKNOWN) {
                entries.add(
                        LayerRaster.KeyEntry.pattern(UNKNOWN_RGB, UNKNOWN_HATCH, "nothing known: no heights there"));
                return;
            }
    }

    private Optional<LayerRaster> paintLeast() {
        List<Loadout> byBurden =
                scene.loadouts().stream().sorted(scene.leastFirst()).toList();
        List<OddsGrid> grids = new ArrayList<>();
        for (Loadout loadout : byBurden) odds(loadout).ifPresent(grids::add);
        if (grids.isEmpty()) return Optional.empty();
        LeastLoadout least = LeastLoadout.of(grids, target);
        CellGrid grid = least.grid();
        List<Area> areas = new ArrayList<>();
        List<LayerRaster.KeyEntry> entries = new ArrayList<>();
        for (int i = 0; i < grids.size(); i++) {
            LoadoutMark mark = LoadoutMark.of(number(grids.get(i).link().name()));
            Area area = Area.of(mark, palette);
            areas.add(area);
            if (least.shareBoughtBy(i) > 0)
                entries.add(area.entry(mark.letter() + "  "
                        + grids.get(i).link().name() + ", " + Shares.share(least.shareBoughtBy(i))));
        }
        int[] argb = new int[grid.count()];
        for (int cell = 0; cell < argb.length; cell++) {
            int at = least.at(cell);
            argb[cell] = at >= 0
                    ? areas.get(at).argb(grid, cell)
                    : unknown(grids.get(0).losses(), cell);
        }
        entries.add(LayerRaster.KeyEntry.clear("none of them, " + Shares.share(least.shareOfNone())));
        tellUnknown(grids.get(0).losses(), entries);
        String note =
                "The least burdensome that reaches " + Shares.wanted(target) + "; share of the ground." + byModel();
        return Optional.of(new LayerRaster(
                grid, argb, new LayerRaster.Key("Least loadout that does the job", entries, note), Optional.empty()));
    }

    private int number(String name) {
        for (int i = 0; i < scene.loadouts().size(); i++)
            if (scene.loadouts().get(i).name().equals(name)) return i;
        throw new IllegalArgumentException("no loadout " + name);
    }

    private LayerRaster paintDifference(OddsGrid first, OddsGrid second) {
        LoadoutDifference difference = LoadoutDifference.of(first, second, target);
        String one = second.link().name();
        String other = first.link().name();
        String note = one.equals(other)
                ? "Both are the same: choose another to hold it against."
                : "Places at " + Shares.wanted(target) + " or better." + byModel();
        return paint(
                difference,
                second.losses(),
                new Words(
                        "only with " + one,
                        "with both",
                        "only with " + other,
                        "with neither",
                        one + " over " + other,
                        note));
    }

    private LayerRaster paintOneWay(OddsGrid odds) {
        String middle = scene.middlePosition().map(one -> one.name()).orElse("the middle");
        return paint(
                OneWayGround.places(odds, target),
                odds.losses(),
                new Words(
                        "hears " + middle + " only",
                        "both ways",
                        "heard at " + middle + " only",
                        "neither way",
                        "One way with " + odds.link().name(),
                        "Places at " + Shares.wanted(target) + " or better of that way alone." + byModel()));
    }

    /** What the colours of a difference mean. */
    private record Words(String bought, String both, String lost, String neither, String title, String note) {}

    private LayerRaster paint(LoadoutDifference difference, LossGrid losses, Words words) {
        CellGrid grid = difference.grid();
        int[] argb = new int[grid.count()];
        Area both = Area.of(DifferenceMarks.BOTH, palette);
        Area bought = Area.of(DifferenceMarks.BOUGHT, palette);
        Area lost = Area.of(DifferenceMarks.LOST, palette);
        for (int cell = 0; cell < argb.length; cell++)
            argb[cell] = switch (difference.at(cell)) {
                case BOTH -> both.argb(grid, cell);
                case BOUGHT -> bought.argb(grid, cell);
                case LOST -> lost.argb(grid, cell);
                case NEITHER -> CLEAR;
                case UNKNOWN -> unknown(losses, cell);
            };
        List<LayerRaster.KeyEntry> entries = new ArrayList<>(List.of(
                bought.entry(words.bought() + ", " + Shares.share(difference.share(LoadoutDifference.Place.BOUGHT))),
                both.entry(words.both() + ", " + Shares.share(difference.share(LoadoutDifference.Place.BOTH))),
                lost.entry(words.lost() + ", " + Shares.share(difference.share(LoadoutDifference.Place.LOST))),
                LayerRaster.KeyEntry.clear(words.neither())));
        tellUnknown(losses, entries);
        return new LayerRaster(grid, argb, new LayerRaster.Key(words.title(), entries, words.note()), Optional.empty());
    }

    private LayerRaster paintSight(LossGrid grid, Loadout carried) {
        int[] argb = new int[grid.grid().count()];
        int seen = 0;
        for (int cell = 0; cell < argb.length; cell++) {
            if (!grid.isKnown(cell)) {
                argb[cell] = unknown(grid, cell);
                continue;
            }
            if (!grid.inSight(cell)) continue;
            argb[cell] = OPAQUE | SIGHT_RGB;
            seen++;
        }
        String share = grid.knownCount() == 0 ? "" : ", " + Shares.share((double) seen / grid.knownCount());
        List<LayerRaster.KeyEntry> entries = new ArrayList<>(List.of(
                LayerRaster.KeyEntry.area(SIGHT_RGB, "in sight" + share), LayerRaster.KeyEntry.clear("out of sight")));
        tellUnknown(grid, entries);
        return new LayerRaster(
                grid.grid(),
                argb,
                new LayerRaster.Key(
                        "Line of sight at carry height",
                        entries,
                        "Over bent ground, for " + carried.name() + ". Sight is not copy: odds say more."),
                Optional.empty());
    }
}
