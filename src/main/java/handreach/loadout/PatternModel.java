package handreach.loadout;

import handreach.units.Frequency;
import java.util.List;

/** Patterns by radiator and mounting. */
final class PatternModel {
    private PatternModel() {}

    static ElevationPattern pattern(
            Radiator radiator, double lengthWavelengths, PatternMount mount, Frequency frequency) {
        if (!(lengthWavelengths > 0 && lengthWavelengths <= 2))
            throw new IllegalArgumentException("radiator length " + lengthWavelengths + " wavelengths");
        boolean centreFed = radiator == Radiator.HALF_WAVE_DIPOLE || mount != PatternMount.PERFECT_GROUND;
        double arm = radiator == Radiator.HALF_WAVE_DIPOLE ? lengthWavelengths / 2 : lengthWavelengths;
        double[] g = SinusoidalWire.gainDbi(arm, !centreFed);
        return ElevationPattern.sampled(radiator.word() + " on " + mount.word(), g, List.of());
    }
}
