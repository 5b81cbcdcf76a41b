package handreach.propagation.march;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.profile.CutSettings;
import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.propagation.PathConditions;
import handreach.propagation.UsualConditions;
import handreach.reach.Areas;
import handreach.terrain.TileFolder;
import handreach.units.Frequency;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Sixteen neighbouring radials of a map over the bare ground of three samples, one thread: each marched by itself, and all in lockstep with
 * vectors. Both figures are times a radial, of the same radials. The goals are 300 ms at 146 MHz and 1 s at 446 MHz for one by itself, and a
 * quarter of that in lockstep.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(value = 1, jvmArgs = "--add-modules=jdk.incubator.vector")
public class FullWaveBenchmark {
    private static final double[] FACE_M = {1.5};
    /** Neighbours of a map are so far apart. */
    private static final double GAP_DEG = 5.0 / 13;

    private static final int SECTORS = 24;

    @Param({"invented-valley", "high-mountains", "forest-hills"})
    String ground;

    @Param({"146", "446"})
    double mhz;

    @Param({"5", "10"})
    double radiusKm;

    private List<Profile> radials;
    private PathConditions conditions;

    /** Takes the first of the sectors all round in which every radial is answered for up to the rim. */
    @Setup
    public void lay() {
        conditions = UsualConditions.at(new Frequency(mhz));
        Position source = Areas.source(ground);
        TileFolder tiles = TileFolder.open(Path.of("elevation-samples", ground, "tiles"));
        for (int sector = 0; sector < SECTORS; sector++) {
            radials = new ArrayList<>();
            for (int i = 0; i < LaneMath.LANES; i++)
                radials.add(cut(tiles, source, 360.0 * sector / SECTORS + i * GAP_DEG));
            if (radials.stream().allMatch(radial -> FieldMarch.answered(radial, conditions) == radial.count())) return;
        }
        throw new IllegalStateException("no sector of " + ground + " is without steep ground");
    }

    /** Samples at half the distance of the posts and heights between them, as a map has them, at the same distances for all. */
    private Profile cut(TileFolder tiles, Position source, double azimuthDeg) {
        double postM =
                tiles.postSpacingM(source.latitudeDeg(), source.longitudeDeg(), CutSettings.USUAL_POST_M);
        int intervals = (int) Math.ceil(2000 * radiusKm / postM);
        int n = intervals * CutSettings.PARTS + 1;
        double[] latitudeDeg = new double[n];
        double[] longitudeDeg = new double[n];
        GeodesicLine.between(source, GeodesicLine.destination(source, azimuthDeg, 1000 * radiusKm))
                .fill(n, latitudeDeg, longitudeDeg);
        double[] heightM = new double[n];
        boolean[] isVoid = new boolean[n];
        tiles.heights(latitudeDeg, longitudeDeg, n, heightM, isVoid);
        for (boolean is : isVoid) if (is) throw new IllegalStateException("unknown ground in " + ground);
        double[] distanceKm = new double[intervals + 1];
        double[] atM = new double[intervals + 1];
        for (int i = 0; i <= intervals; i++) {
            distanceKm[i] = radiusKm * i / intervals;
            atM[i] = heightM[i * CutSettings.PARTS];
        }
        return Profiles.of(distanceKm, atM).divided(CutSettings.PARTS, heightM::clone);
    }

    @Benchmark
    @OperationsPerInvocation(LaneMath.LANES)
    public double oneByOne() {
        double sum = 0;
        for (Profile radial : radials) sum += last(FieldMarch.along(radial, FACE_M[0], FACE_M[0], conditions));
        return sum;
    }

    @Benchmark
    @OperationsPerInvocation(LaneMath.LANES)
    public double inLockstep() {
        double sum = 0;
        for (List<FullWaveRadial> radial : FieldMarch.bundle(radials, FACE_M[0], FACE_M, conditions, share -> true))
            sum += last(radial.get(0));
        return sum;
    }

    private static double last(FullWaveRadial radial) {
        return radial.meanLossDb(radial.count() - 1);
    }
}
