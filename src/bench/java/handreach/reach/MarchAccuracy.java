package handreach.reach;

import handreach.geodesy.Position;
import handreach.propagation.FreeSpace;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.propagation.march.CoveredMarch;
import handreach.terrain.TileFolder;
import handreach.units.Frequency;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * How far a map by the march is from one exact path per cell, and what it takes: {@code GROUND MHZ RADIUS_KM CELLS} (a sample's folder, cells
 * looked at). Cells of 30 m, ends 1.5 m up; cells that the map gives up by far, or that their own path says are lost, are left out. Three maps are
 * timed, of which the first is cold.
 */
public final class MarchAccuracy {
    private static final double CELL_M = 30;
    private static final Terminals FACE = new Terminals(1.5, 1.5);
    private static final int MAPS = 3;
    /** Of a cell that is not lost a map would have to be wrong by so much here, dB. */
    private static final double GIVEN_UP_DB = CoveredMarch.LOST_DB + 15;

    private MarchAccuracy() {}

    public static void main(String[] args) {
        String sample = args[0];
        PathConditions conditions = UsualConditions.at(new Frequency(Double.parseDouble(args[1])));
        double radiusM = 1000 * Double.parseDouble(args[2]);
        Position source = Areas.source(sample);
        AreaGround ground = new AreaGround(TileFolder.open(Path.of("elevation-samples", sample, "tiles")));
        AreaRequest request = Areas.around(source, radiusM, CELL_M, FACE, conditions, LossModels.FULL_WAVE);
        int threads = Runtime.getRuntime().availableProcessors();
        MarchArea engine = new MarchArea(threads, MarchArea.arcOfAMapM(radiusM, CELL_M)).withoutMeasuring();
        LossGrid map = null;
        for (int i = 0; i < MAPS; i++) {
            long from = System.nanoTime();
            map = engine.losses(request, List.of(FACE), ground, Progress.SILENT).get(0);
            System.out.printf(Locale.ROOT, "map %d: %.1f s%n", i + 1, (System.nanoTime() - from) / 1e9);
        }
        double[] off = offDb(map, request, ground, Integer.parseInt(args[3]), new Workers(threads));
        double squares = Arrays.stream(off).map(d -> d * d).sum();
        double[] largest = Arrays.stream(off).map(Math::abs).sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "%s, %s MHz, %s km: %d cells, mean %+.2f, rms %.2f, 99 %% within %.2f, all within %.2f dB%n",
                sample,
                args[1],
                args[2],
                off.length,
                Arrays.stream(off).average().orElseThrow(),
                Math.sqrt(squares / off.length),
                largest[(int) Math.ceil(0.99 * off.length) - 1],
                largest[off.length - 1]);
    }

    /** Map less exact path on the cells that are not lost, of so many looked at. */
    private static double[] offDb(LossGrid map, AreaRequest request, AreaGround ground, int looked, Workers workers) {
        AreaSetting setting = AreaSetting.of(request, ground);
        SubProgress silent = new SubProgress(Progress.SILENT, "cells", 0, 1);
        CellsByRadial cells = CellsByRadial.of(request.grid(), setting.frame(), 720, workers, silent);
        double[] freeDb = new double[looked];
        int[] slots = IntStream.range(0, looked)
                .map(pick -> SamplingCheck.slot(pick, cells.count()))
                .toArray();
        for (int i = 0; i < looked; i++) {
            double distanceM = Math.max(CellsByRadial.NEAREST_M, cells.distanceM(slots[i]));
            freeDb[i] = FreeSpace.lossDb(request.conditions().frequency(), distanceM / 1000);
        }
        double[] off = new double[looked];
        Arrays.fill(off, Double.NaN);
        workers.run(
                looked,
                () -> new Reader(setting, request),
                (reader, i) -> {
                    int cell = cells.cell(slots[i]);
                    if (!map.isKnown(cell) || map.lossDb(cell) - freeDb[i] > GIVEN_UP_DB) return;
                    double exactDb = reader.lossDb(cell);
                    if (exactDb - freeDb[i] <= CoveredMarch.LOST_DB) off[i] = map.lossDb(cell) - exactDb;
                },
                silent);
        return Arrays.stream(off).filter(d -> !Double.isNaN(d)).toArray();
    }

    /** One thread's exact paths. */
    private static final class Reader implements CellSink {
        private final ExactWorker exact;
        private double lossDb;

        Reader(AreaSetting setting, AreaRequest request) {
            this.exact = new ExactWorker(
                    setting,
                    request.model(),
                    new Terminals[] {FACE},
                    request.grid(),
                    new CellSink[] {this},
                    Progress.SILENT);
        }

        double lossDb(int cell) {
            exact.cell(cell);
            return lossDb;
        }

        @Override
        public void put(int cell, double loss, double departureDeg, double arrivalDeg, boolean inSight, int cover) {
            lossDb = loss;
        }

        @Override
        public void putUnknown(int cell) {
            lossDb = Double.NaN;
        }
    }
}
