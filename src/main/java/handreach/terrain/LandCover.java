package handreach.terrain;

import java.util.Arrays;
import java.util.Optional;

/** What stands on the ground of a region. Implementations are safe for several threads and give the same answer every time. */
public interface LandCover {
    /**
     * Covers at many positions at once.
     *
     * @param latitudeDeg degrees north, entries 0 to count − 1 are read
     * @param longitudeDeg degrees east, −180 to 180
     * @param cover receives the cover; the default of the implementation where it knows nothing
     */
    void covers(double[] latitudeDeg, double[] longitudeDeg, int count, Cover[] cover);

    default Cover coverAt(double latitudeDeg, double longitudeDeg) {
        Cover[] one = new Cover[1];
        covers(new double[] {latitudeDeg}, new double[] {longitudeDeg}, 1, one);
        return one[0];
    }

    /** The one cover of a region that has the same everywhere, so that nobody need look place by place. */
    default Optional<Cover> everywhere() {
        return Optional.empty();
    }

    /** The same cover everywhere. */
    static LandCover uniform(Cover cover) {
        return new LandCover() {
            @Override
            public void covers(double[] latitudeDeg, double[] longitudeDeg, int count, Cover[] out) {
                Arrays.fill(out, 0, count, cover);
            }

            @Override
            public Optional<Cover> everywhere() {
                return Optional.of(cover);
            }
        };
    }
}
