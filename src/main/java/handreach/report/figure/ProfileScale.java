package handreach.report.figure;

import handreach.profile.Profile;
import handreach.propagation.PathGeometry;
import handreach.units.Lengths;

/** Where the samples of a profile and heights stand on its figure, and which sample stands at a place; immutable. */
public final class ProfileScale {
    private final Profile profile;
    private final PathGeometry geometry;
    private final Axis across;
    private final Axis up;
    private final Lengths lengths;

    ProfileScale(Profile profile, PathGeometry geometry, Axis across, Axis up, Lengths lengths) {
        this.profile = profile;
        this.geometry = geometry;
        this.across = across;
        this.up = up;
        this.lengths = lengths;
    }

    Axis across() {
        return across;
    }

    Axis up() {
        return up;
    }

    public double topPx() {
        return up.endPx();
    }

    public double bottomPx() {
        return up.startPx();
    }

    public double xPx(int sample) {
        return across.px(1000 * profile.distanceKm(sample) / lengths.longUnitM());
    }

    public double yPx(double heightM) {
        return up.px(heightM / lengths.shortUnitM());
    }

    /** Ground as the ray sees it, m: height plus earth bulge. */
    public double groundM(int sample) {
        return profile.heightM(sample) + geometry.bulgeM(sample);
    }

    /** The sample nearest to a pixel across. */
    public int sampleAt(double xPx) {
        int best = 0;
        for (int i = 1; i < profile.count(); i++) if (Math.abs(xPx(i) - xPx) < Math.abs(xPx(best) - xPx)) best = i;
        return best;
    }
}
