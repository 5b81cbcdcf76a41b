package handreach.desktop;

import handreach.cartography.Hatch;
import handreach.cartography.OddsRamp;
import handreach.reach.CellGrid;
import handreach.relay.SiteMap;
import handreach.study.RelayAnswer;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Turns what one relay in each cell would do into colours. Pure; called away from the screen thread. */
final class RelayPainter {
    private static final int OPAQUE = 0xFF000000;
    private static final int FORBIDDEN_RGB = 0x8C8C88;
    private static final double ALL = 1 - 1e-6;

    private final RelayAnswer answer;
    private final boolean isStale;
    private final Palette palette;

    RelayPainter(RelayAnswer answer, boolean isStale, Palette palette) {
        this.palette = palette;
        this.answer = answer;
        this.isStale = isStale;
    }

    /** The picture; empty where no search was needed or no ground is allowed. */
    Optional<LayerRaster> paint() {
        return answer.found().flatMap(found -> found.search().map()).map(this::paint);
    }

    /** What the marks mean where there is no picture. */
    LayerRaster.Key key() {
        String why = answer.found().isEmpty()
                ? "No relay is needed as people are loaded, so none was looked for."
                : "There is no ground on which a relay may stand within the limits of the plan.";
        return new LayerRaster.Key("Where a relay would serve", List.of(), why + aged());
    }

    private LayerRaster paint(SiteMap map) {
        CellGrid grid = map.grid();
        double halfCells = 1000 * answer.scene().plan().places().area().radiusKm() / grid.cellM();
        int[] argb = new int[grid.count()];
        int[] count = new int[OddsRamp.BREAKS.size() + 1];
        for (int cell = 0; cell < argb.length; cell++) {
            int row = grid.rowOf(cell);
            int column = grid.columnOf(cell);
            if (!map.isAllowed(cell)) {
                double away = Math.hypot(row - 0.5 * (grid.rows() - 1), column - 0.5 * (grid.columns() - 1));
                boolean isInk = away <= halfCells && Hatch.DOTS.inks(column, row);
                argb[cell] = isInk ? OPAQUE | FORBIDDEN_RGB : 0;
                continue;
            }
            int rank = rank(map, cell);
            count[rank]++;
            argb[cell] = rank == 0 ? 0 : OPAQUE | palette.odds(rank);
        }
        return new LayerRaster(grid, argb, key(map, count), Optional.empty());
    }

    /** From 0, no better than none, to 5, everybody even at the pessimistic end. */
    private static int rank(SiteMap map, int cell) {
        double share = map.share(cell);
        if (map.pessimisticShare(cell) >= ALL) return 5;
        if (share >= ALL) return 4;
        if (share <= map.without().share() + 1e-6) return 0;
        if (share >= 2 / 3.0 - 1e-6) return 3;
        return share >= 1 / 3.0 - 1e-6 ? 2 : 1;
    }

    private LayerRaster.Key key(SiteMap map, int... count) {
        List<String> words = List.of(
                "no better than without",
                "under a third of the talks",
                "a third and more",
                "two thirds and more",
                "all talks",
                "all, also if all common doubt turns out badly");
        List<LayerRaster.KeyEntry> entries = new ArrayList<>();
        int allowed = answer.found().orElseThrow().search().allowed();
        for (int rank = words.size() - 1; rank >= 0; rank--)
            if (count[rank] > 0) {
                String share = words.get(rank) + ", " + Shares.share(count[rank] / (double) allowed);
                entries.add(
                        rank == 0
                                ? LayerRaster.KeyEntry.clear(share)
                                : LayerRaster.KeyEntry.area(palette.odds(rank), share));
            }
        boolean hasForbidden = allowed < answer.found().orElseThrow().search().cells();
        if (hasForbidden)
            entries.add(LayerRaster.KeyEntry.pattern(FORBIDDEN_RGB, Hatch.DOTS, "a relay may not stand there"));
        entries.add(LayerRaster.KeyEntry.of(
                (pen, x, y) -> RelayOverlay.mark(pen, pen.palette().accent(), x, y, 7), "relay that is advised"));
        entries.add(LayerRaster.KeyEntry.of(
                (pen, x, y) -> RelayOverlay.mark(pen, pen.palette().halo(), x, y, 6), "further site"));
        for (HopStrength strength : HopStrength.values())
            if (occurs(strength))
                entries.add(LayerRaster.KeyEntry.of(
                        (pen, x, y) -> strength.draw(pen, x - 12, y, x + 12, y), "hop at " + strength.words()));
        boolean hasChain = answer.equipment().chained()
                && answer.recommended()
                        .filter(check -> check.sites().size() > 1)
                        .isPresent();
        if (hasChain)
            entries.add(LayerRaster.KeyEntry.of(
                    (pen, x, y) -> RelayOverlay.chain(pen, x - 12, y, x + 12, y), "from relay to relay"));
        String several = answer.found().orElseThrow().together().isPresent()
                ? " The colours show what one relay alone would do."
                : "";
        return new LayerRaster.Key(
                "Talks served by one relay there",
                entries,
                String.format(
                                Locale.ROOT,
                                "Share of the ground where one may stand; without a relay %s of the talks are served.",
                                Shares.share(map.without().share()))
                        + several
                        + aged());
    }

    private boolean occurs(HopStrength strength) {
        double wanted = answer.scene().plan().channel().wish().odds();
        return answer.recommended().stream()
                .flatMap(check -> check.hops().stream())
                .flatMap(Optional::stream)
                .anyMatch(hop -> HopStrength.of(hop.path().odds(), wanted) == strength);
    }

    private String aged() {
        return isStale ? " The plan has been edited since: find out again." : "";
    }
}
