package handreach.propagation;

import handreach.profile.Profile;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The default model: two antennas near the ground, over bare terrain, in closed form. */
public final class Handheld implements LossModel {
    /** Excess over free space beyond which bare-ground theory no longer describes the place, dB. */
    public static final double LOST_DB = 65;

    @Override
    public String name() {
        return "handheld";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        int n = profile.count();
        double[] distanceM = new double[n];
        for (int i = 0; i < n; i++) distanceM[i] = 1000 * profile.distanceKm(i);
        double excess = HandheldTerms.of(conditions, terminals)
                .excessDb(distanceM, profile.heightsM(), n - 1, new StretchedString(n));
        double rise = profile.heightM(n - 1) + terminals.rxHeightM() - profile.heightM(0) - terminals.txHeightM();
        double freeSpace = freeSpaceDb(Math.hypot(distanceM[n - 1], rise), conditions.frequency());
        List<String> warnings = new ArrayList<>();
        if (excess > LOST_DB)
            warnings.add(String.format(
                    Locale.ROOT,
                    "lost: %.0f dB over free space; beyond %.0f dB bare-ground theory no longer describes the place",
                    excess,
                    LOST_DB));
        return new PathLoss(
                name(),
                freeSpace + excess,
                freeSpace,
                List.of(
                        new LossPart("free space", freeSpace, "Rec. ITU-R P.525"),
                        new LossPart("edges and ground", excess, "ours")),
                List.of(),
                warnings);
    }

    private static double freeSpaceDb(double distanceM, Frequency frequency) {
        return 20 * Math.log10(4 * Math.PI * distanceM / frequency.wavelengthM());
    }
}
