package handreach.reach;

import handreach.geodesy.Position;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.terrain.TileFolder;
import handreach.units.Frequency;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * Our half of {@code src/bench/viewshed-compare.sh}: says over which cells to compare, then times the sweep warm and sets its
 * line-of-sight mask against the mask of a general GIS viewshed, resampled to the same cells.
 */
public final class ViewshedCompare {
    private static final double CELL_M = 30;
    private static final double HEIGHT_M = 1.5;
    private static final int WARM_UP = 20;
    private static final int TIMED = 9;

    private ViewshedCompare() {}

    /** {@code grid TILES LAT LON RADIUS_M} or {@code compare TILES LAT LON RADIUS_M MASK SECONDS}. */
    public static void main(String[] args) throws IOException {
        Position source = new Position(Double.parseDouble(args[2]), Double.parseDouble(args[3]));
        double radiusM = Double.parseDouble(args[4]);
        CellGrid grid = CellGrid.around(source, radiusM, CELL_M);
        if (args[0].equals("grid")) {
            System.out.printf(
                    Locale.ROOT,
                    "-te %.12f %.12f %.12f %.12f -ts %d %d%n",
                    grid.westDeg(),
                    grid.southDeg(),
                    grid.eastDeg(),
                    grid.northDeg(),
                    grid.columns(),
                    grid.rows());
            return;
        }
        AreaGround ground = new AreaGround(TileFolder.open(Path.of(args[1])));
        int threads = Runtime.getRuntime().availableProcessors();
        SweepArea engine = new SweepArea(threads).withoutMeasuring();
        double viewshedMs = 1000 * Double.parseDouble(args[6]);
        LossGrid sight = null;
        for (LossModel model : List.of(LossModels.FREE_SPACE, LossModels.HANDHELD)) {
            AreaRequest request = new AreaRequest(
                    source,
                    grid,
                    radiusM,
                    new Terminals(HEIGHT_M, HEIGHT_M),
                    UsualConditions.at(new Frequency(146)),
                    model);
            double[] bestMs = {Double.POSITIVE_INFINITY};
            LossGrid swept = best(() -> engine.losses(request, ground, Progress.SILENT), bestMs);
            if (sight == null) sight = swept;
            System.out.printf(
                    Locale.ROOT,
                    "sweep, %s, warm, %d threads: %.0f ms; viewshed, whole process: %.0f ms; ratio %.2f%n",
                    model.name(),
                    threads,
                    bestMs[0],
                    viewshedMs,
                    bestMs[0] / viewshedMs);
        }
        LossGrid exact = new ExactArea(threads).losses(sight.request(), ground, Progress.SILENT);
        agreement(sight, exact, Files.readAllBytes(Path.of(args[5])));
    }

    private static LossGrid best(Supplier<LossGrid> run, double[] bestMs) {
        LossGrid last = null;
        for (int i = 0; i < WARM_UP + TIMED; i++) {
            long start = System.nanoTime();
            last = run.get();
            if (i >= WARM_UP) bestMs[0] = Math.min(bestMs[0], (System.nanoTime() - start) / 1e6);
        }
        return last;
    }

    private static void agreement(LossGrid sight, LossGrid exact, byte[] mask) {
        if (mask.length != sight.grid().count())
            throw new IllegalArgumentException(mask.length + " cells in the mask, " + sight.grid().count() + " in the grid");
        int known = 0;
        int seen = 0;
        int same = 0;
        int sides = 0;
        int asExact = 0;
        for (int cell = 0; cell < mask.length; cell++) {
            if (!sight.isKnown(cell)) continue;
            known++;
            boolean theirs = mask[cell] != 0;
            if (theirs) seen++;
            if (theirs == sight.inSight(cell)) same++;
            else if (exact.inSight(cell) == sight.inSight(cell)) sides++;
            if (exact.inSight(cell) == sight.inSight(cell)) asExact++;
        }
        System.out.printf(
                Locale.ROOT,
                "line of sight: the masks agree on %.2f %% of %d cells; the viewshed sees %.2f %%%n"
                        + "one exact line per cell: as the sweep on %.2f %% of all, and on %.1f %% of those where the masks differ%n",
                100.0 * same / known,
                known,
                100.0 * seen / known,
                100.0 * asExact / known,
                100.0 * sides / Math.max(1, known - same));
    }
}
