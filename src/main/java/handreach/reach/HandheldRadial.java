package handreach.reach;

import handreach.propagation.HandheldTerms;
import handreach.propagation.PathConditions;
import handreach.propagation.StretchedString;
import handreach.propagation.Terminals;

/** The {@code handheld} model along a radial: its string is walked outwards once. */
final class HandheldRadial implements RadialModel {
    private final HandheldTerms terms;
    private final FreeSpaceRadial freeSpace;
    private StretchedString string = new StretchedString(1024);
    private Ray ray;
    private int taken;
    private boolean endsAtReceiver;

    HandheldRadial(Terminals terminals, PathConditions conditions) {
        terms = HandheldTerms.of(conditions, terminals);
        freeSpace = new FreeSpaceRadial(conditions);
    }

    @Override
    public void start(Standpoint at) {
        ray = at.ray();
        if (string.capacity() < ray.count + 2) string = new StretchedString(ray.count + ray.count / 4 + 2);
        string.start(terms.effectiveRadiusM(), ray.groundM[0], at.txHeightM());
        taken = 0;
        endsAtReceiver = false;
    }

    @Override
    public double lossDb(Standpoint at) {
        while (taken < at.last()) {
            taken++;
            end(1000 * ray.xKm[taken], ray.groundM[taken]);
            endsAtReceiver = false;
        }
        end(1000 * at.xKm(), at.groundM());
        endsAtReceiver = true;
        return freeSpace.lossDb(at) + terms.excessDb(string);
    }

    /** Lets the path end here: in place of a receiver that stood behind the samples, or beyond the last sample. */
    private void end(double distanceM, double groundM) {
        if (endsAtReceiver) string.moveEnd(distanceM, groundM);
        else string.add(distanceM, groundM);
    }
}
