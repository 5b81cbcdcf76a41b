package handreach.reach;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.propagation.radial.RadialWalker;
import handreach.terrain.Cover;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Losses at every sample along one bearing, from 50 m on; with the angles at both ends, and where known ground ends. Immutable.
 */
public final class RadialLosses {
    private static final Cover[] COVERS = Cover.values();

    private final double bearingDeg;
    private final double[] distanceM;
    /** What each sample stands for, as {@link RadialReach#rings} has it; 0 for ground outside the drawn area, which does not count. */
    private final double[] ringM2;

    private final float[][] figure;
    private final byte[] cover;
    private final int known;
    private final Map<String, ModelNote.Met> warnings = new LinkedHashMap<>();
    private final boolean endsAtSteepGround;

    /** Rooms for n samples; filled by {@link #put} before it is handed out. */
    RadialLosses(double bearingDeg, double[] distanceM, double[] ringM2, int known, boolean endsAtSteepGround) {
        this.bearingDeg = bearingDeg;
        this.distanceM = distanceM;
        this.ringM2 = ringM2;
        this.known = known;
        this.endsAtSteepGround = endsAtSteepGround;
        this.figure = new float[3][known];
        this.cover = new byte[known];
    }

    private RadialLosses(RadialLosses all, double[] ringM2) {
        this.bearingDeg = all.bearingDeg;
        this.distanceM = all.distanceM;
        this.known = all.known;
        this.endsAtSteepGround = all.endsAtSteepGround;
        this.figure = all.figure;
        this.cover = all.cover;
        this.warnings.putAll(all.warnings);
        this.ringM2 = ringM2;
    }

    /** The same with the ground of those samples counted that lie within a drawn area. */
    RadialLosses within(DrawnArea drawn, Position source) {
        double[] inside = ringM2.clone();
        for (int i = 0; i < known; i++)
            if (!drawn.holds(GeodesicLine.destination(source, bearingDeg, distanceM[i]))) inside[i] = 0;
        return new RadialLosses(this, inside);
    }

    void put(int i, double lossDb, RadialWalker at, int coverOrdinal) {
        if (!Double.isFinite(lossDb))
            throw new IllegalStateException("loss at sample " + i + " is not a finite number");
        figure[0][i] = (float) lossDb;
        figure[1][i] = (float) at.departureDeg();
        figure[2][i] = (float) at.arrivalDeg();
        cover[i] = (byte) coverOrdinal;
    }

    /** Whether the ground of a sample is counted. */
    boolean counts(int i) {
        return ringM2[i] > 0;
    }

    /** What the model says of paths between two distances, m; distances do not fall from call to call. */
    void warn(double fromM, double toM, List<String> sentences, ModelNote.Kinds kinds) {
        for (String sentence : sentences) {
            String kind = kinds.of(sentence);
            ModelNote.Met before = warnings.get(kind);
            warnings.put(kind, before == null ? new ModelNote.Met(sentence, kind, fromM, toM) : before.reaching(toM));
        }
    }

    /** Each warning of the model on this bearing once, as the nearest looked-at path has it. */
    List<ModelNote.Met> warnings() {
        return List.copyOf(warnings.values());
    }

    /** Bearing, degrees from true north. */
    public double bearingDeg() {
        return bearingDeg;
    }

    /** Number of samples, known or not. */
    int count() {
        return distanceM.length;
    }

    /** Number of known samples; those from here on lie at or beyond ground that no tile knows, or behind ground too steep. */
    public int knownCount() {
        return known;
    }

    /** The known samples end before ground too steep for the model, which has no answer behind it, and not before a void. */
    public boolean endsAtSteepGround() {
        return endsAtSteepGround;
    }

    public double distanceM(int i) {
        return distanceM[i];
    }

    /** Basic transmission loss to a known sample, dB. */
    double lossDb(int i) {
        return figure[0][i];
    }

    /** Elevation angle at the source, degrees. */
    double departureDeg(int i) {
        return figure[1][i];
    }

    /** Elevation angle at the sample, degrees. */
    double arrivalDeg(int i) {
        return figure[2][i];
    }

    /** Where the first void or tile edge lies, m; empty when all ground is known. */
    OptionalDouble unknownBeyondM() {
        return known < distanceM.length ? OptionalDouble.of(distanceM[known]) : OptionalDouble.empty();
    }

    /** Margins of a link at the known samples, dB. */
    double[] marginsDb(ReachLink link) {
        double[] margin = new double[distanceM.length];
        double turnedDb = link.turnedDb(bearingDeg);
        for (int i = 0; i < known; i++)
            margin[i] = link.marginDb(figure[0][i], figure[1][i], figure[2][i], COVERS[cover[i]]) + turnedDb;
        return margin;
    }

    /** Ground that a sample stands for, as {@link RadialReach#rings} has it. */
    double ringM2(int i) {
        return ringM2[i];
    }

    /** What margins along this bearing make of the reach. */
    RadialReach reach(double[] marginDb, double thresholdDb) {
        return RadialReach.of(distanceM, ringM2, marginDb, known, thresholdDb);
    }
}
