package handreach.propagation;

import handreach.profile.Profile;

/** Free space along the straight line between the antennas; the ground is ignored. */
final class FreeSpaceModel implements LossModel {
    @Override
    public String name() {
        return "free-space";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        return new LossBuilder(name(), profile, terminals, conditions)
                .step("d", FreeSpace.slantKm(profile, terminals), "km")
                .step("λ", conditions.frequency().wavelengthM(), "m")
                .close();
    }
}
