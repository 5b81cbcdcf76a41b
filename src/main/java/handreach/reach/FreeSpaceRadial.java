package handreach.reach;

import handreach.propagation.PathConditions;

/** Free space along a radial: nothing but the slant distance between the antennas. */
final class FreeSpaceRadial implements RadialModel {
    private final double constantDb;

    FreeSpaceRadial(PathConditions conditions) {
        constantDb = 20 * Math.log10(4 * Math.PI * 1000 / conditions.frequency().wavelengthM());
    }

    @Override
    public void start(Standpoint at) {
        // nothing of the ground is carried along
    }

    @Override
    public double lossDb(Standpoint at) {
        double riseKm = (at.tipM() - at.sourceTipM()) / 1000;
        return constantDb + 10 * Math.log10(at.xKm() * at.xKm() + riseKm * riseKm);
    }
}
