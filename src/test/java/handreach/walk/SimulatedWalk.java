package handreach.walk;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.reach.SiteCalibration;
import handreach.terrain.Cover;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** An invented walk with known shifts, for tests: reports far enough apart to be independent. */
record SimulatedWalk(double biasDb, double[] coverDb, double[] carryDb, double spreadDb) {
    static final Cover[] COVERS = {Cover.OPEN, Cover.WOODLAND};
    static final String[] CARRIES = {"face", "hip-tight"};
    private static final Position START = new Position(36, -84);

    /** Truth drawn from what is believed before the walk, the ledger's spread being 8 dB. */
    static SimulatedWalk drawn(Random random, Priors priors) {
        return new SimulatedWalk(
                priors.biasDb() * random.nextGaussian(),
                new double[] {priors.coverDb() * random.nextGaussian(), priors.coverDb() * random.nextGaussian()},
                new double[] {priors.carryDb() * random.nextGaussian(), priors.carryDb() * random.nextGaussian()},
                8 * Math.exp(priors.spreadLog() * random.nextGaussian()));
    }

    double shiftDb(int cover, int carry) {
        return biasDb + coverDb[cover] + 2 * carryDb[carry];
    }

    List<WalkPair> walk(Random random, int count, boolean levels) {
        List<WalkPair> pairs = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int cover = random.nextInt(2);
            int carry = random.nextInt(2);
            double margin = -20 + 40 * random.nextDouble();
            double got = margin - shiftDb(cover, carry) + spreadDb * random.nextGaussian();
            Reception heard = !levels
                    ? Reception.copy(got >= 0)
                    : got - 110 < -122
                            ? new Reception(Reception.Kind.BELOW, -122)
                            : new Reception(Reception.Kind.LEVEL, got - 110);
            pairs.add(pair(i, COVERS[cover], CARRIES[carry], margin, heard, got >= 0));
        }
        return pairs;
    }

    static WalkPair pair(int i, Cover cover, String carry, double marginDb, Reception heard, boolean copied) {
        Position at = GeodesicLine.destination(START, 90, 1000.0 * i);
        WalkPair.Spot spot = new WalkPair.Spot(i + 2, at, 1000.0 * i, 90, 1000.0 * i, cover);
        WalkPair.Link link = new WalkPair.Link("l", Direction.TO_WALKER, carry, carry, -110, 8);
        return new WalkPair(spot, link, marginDb, heard, copied);
    }

    /** Shift of the loss for a link with one end in this cover, with what is not known about it. */
    static SiteCalibration.Shift shift(Calibration calibration, Cover cover, String carryA, String carryB) {
        ShiftTerms terms = calibration.terms();
        return calibration.combined(terms.row(terms.of(cover, carryA, carryB)));
    }
}
