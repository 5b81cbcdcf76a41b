package handreach.reach;

import handreach.propagation.Terminals;
import handreach.propagation.march.FieldMarchCost;
import handreach.propagation.radial.Radial;
import handreach.propagation.radial.RadialMarch;
import java.util.ArrayList;
import java.util.List;

/** Paths of an area as a march would take them: cut and counted, and marched only when told. One per thread. */
final class MarchProbe {
    private static final int PROBED = 24;
    /** Two fifths of a degree. */
    private static final double ASIDE_RAD = Math.PI / 450;

    private final AreaSetting setting;
    private final List<Terminals> heights;
    private final RaySampler sampler;
    private final Radial radial = new Radial();
    /** The radial and those marched with it. */
    private final List<Radial> all = new ArrayList<>();
    /** Whether ground too steep for the march ended the path last cut, or one beside it. */
    private boolean endsAtSteepGround;

    /**
     * @param together radials marched in lockstep
     */
    MarchProbe(AreaSetting setting, List<Terminals> heights, int together) {
        all.add(radial);
        while (all.size() < together) all.add(new Radial());
        this.setting = setting;
        this.heights = heights;
        this.sampler = setting.sampler();
    }

    double radiusM() {
        return setting.radiusM();
    }

    /** Cuts the ground along an azimuth; false where too little of it is known, or not too steep, to march at all. */
    boolean cut(double azimuthRad, double lengthM) {
        double[] azimuth = new double[all.size()];
        for (int i = 0; i < azimuth.length; i++) azimuth[i] = azimuthRad + i * ASIDE_RAD;
        setting.cutAlike(sampler, azimuth, lengthM, all);
        endsAtSteepGround = false;
        for (Radial cut : all) endsAtSteepGround |= RadialMarch.endAtSteepGround(cut, setting.conditions());
        return radial.known() >= 2;
    }

    /** Counted seconds of the path last cut, all heights together. */
    double countedS() {
        return known().stream()
                .flatMap(cut -> costs(cut).stream())
                .mapToDouble(FieldMarchCost::seconds)
                .sum();
    }

    /** Working memory of the path last cut, bytes. */
    long bytes() {
        return costs(radial).stream().mapToLong(FieldMarchCost::bytes).max().orElse(0);
    }

    /** Whether one of so many paths to the rim, all round, ends at ground too steep for the march. */
    boolean meetsSteepGround(int paths) {
        for (int i = 0; i < paths; i++) {
            cut(2 * Math.PI * i / paths, radiusM());
            if (endsAtSteepGround) return true;
        }
        return false;
    }

    private List<Radial> known() {
        return all.stream().filter(cut -> cut.known() >= 2).toList();
    }

    private List<FieldMarchCost> costs(Radial cut) {
        return RadialMarch.costs(cut, heights, setting.conditions());
    }

    void march() {
        if (all.size() > 1) RadialMarch.together(known(), heights, setting.conditions(), share -> true);
        else RadialMarch.along(radial, heights, setting.conditions(), share -> true);
    }

    /** Mean counted seconds of paths of a length all round. */
    double meanS(double lengthM) {
        double sum = 0;
        for (int i = 0; i < PROBED; i++) if (cut(azimuthRad(i), lengthM)) sum += countedS();
        return sum / PROBED;
    }

    /** Mean counted seconds of paths to cells spread evenly over the area. */
    double meanOfCellsS() {
        double sum = 0;
        for (int i = 0; i < PROBED; i++) {
            double lengthM = Math.max(CellsByRadial.NEAREST_M, radiusM() * Math.sqrt((i + 0.5) / PROBED));
            // Seven steps on and round, so that near and far cells lie on all sides.
            if (cut(azimuthRad(7 * i), lengthM)) sum += countedS();
        }
        return sum / PROBED;
    }

    /** Most memory of a path to the rim, bytes. */
    long mostBytes() {
        long most = 0;
        for (int i = 0; i < PROBED; i++) if (cut(azimuthRad(i), radiusM())) most = Math.max(most, bytes());
        return most;
    }

    private static double azimuthRad(int number) {
        return 2 * Math.PI * number / PROBED;
    }
}
