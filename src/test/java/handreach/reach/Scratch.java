package handreach.reach;

import handreach.geodesy.Position;
import handreach.propagation.*;
import handreach.units.Frequency;
import java.util.*;

public class Scratch {
    static long cpu() { return ((com.sun.management.OperatingSystemMXBean) java.lang.management.ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime(); }
    public static void main(String[] a) {
        Position at = new Position(46.5, 8.1);
        double radius = Double.parseDouble(a[0]);
        String model = a[1];
        int threads = Integer.parseInt(a[2]);
        boolean exact = a[3].equals("exact");
        double fall = Double.parseDouble(a[4]);
        int side = radius > 20000 ? 8193 : 4097;
        PaperGround ground = PaperGround.rough(7, 46.5, 8.1, 1 / 3600.0, side, 600, fall);
        AreaRequest request = AreaRequest.around(at, radius, 30, new Terminals(1.5, 1.5),
                PathConditions.standard(new Frequency(Double.parseDouble(a[5]))), model);
        for (int i = 0; i < (radius > 20000 ? 4 : 12); i++) {
            long t0 = System.nanoTime(); long c0 = cpu();
            LossGrid g = new SweepArea(threads).losses(request, new AreaGround(ground), Progress.SILENT);
            long t1 = System.nanoTime();
            System.out.printf("sweep %.0f ms cpu %.0f %s%n", (t1 - t0) / 1e6, (cpu() - c0) / 1e6, g.difference().get().sentence());
            if (i < 9) continue;
            if (exact) {
            t0 = System.nanoTime(); c0 = cpu();
            LossGrid e = new ExactArea(threads).losses(request, new AreaGround(ground), Progress.SILENT);
            t1 = System.nanoTime();
            double[] d = new double[e.knownCount()];
            int n = 0; int sight = 0, same = 0;
            for (int c = 0; c < e.grid().count(); c++) if (e.isKnown(c)) {
                d[n++] = g.lossDb(c) - e.lossDb(c);
                if (g.inSight(c) == e.inSight(c)) same++;
                if (e.inSight(c)) sight++;
            }
            System.out.printf("exact %.0f ms, cpu %.0f all cells %s sight %.3f same %.4f%n", (t1 - t0) / 1e6, (cpu() - c0) / 1e6, SamplingDifference.of(d), sight / (double) n, same / (double) n);
            }
        }
    }
}
