package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.propagation.march.CoveredMarch;
import handreach.propagation.march.FullWaveRadial;
import handreach.propagation.radial.Radial;
import handreach.propagation.radial.RadialMarch;
import handreach.terrain.TileFolder;
import handreach.units.Frequency;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Shadows of the sample tiles where sixteen radials in lockstep were seen to read far off each of them by itself: up to 35 dB too well behind a
 * crest of 38°, and 3 to 10 dB off behind crests that a mean over 15 m had blunted.
 */
class LockstepShadowTest {
    private static final List<Terminals> FACE = List.of(new Terminals(1.5, 1.5));
    private static final PathConditions CHANNEL = UsualConditions.at(new Frequency(446));
    private static final int RADIALS_ALL_ROUND = 936;
    private static final int LANES = 16;
    /** Of the way a radial goes by itself, whose corners lie closer: over all samples of these ends 1.5 dB at most were seen. */
    private static final double NEAR_DB = 2.5;

    @Test
    void behindASteepCrestNothingReadsTooWell() {
        holdsAgainstItself("forest-hills", 56.844, 4500, Map.of(8, 4100, 9, 4100));
    }

    @Test
    void behindACrestThatIsSharpALossIsNotThatOfABluntOne() {
        holdsAgainstItself("invented-valley", 13.531, 6900, Map.of(8, 6600));
    }

    /** Lanes against themselves from a distance on, m, below 65 dB of excess. */
    private static void holdsAgainstItself(
            String sample, double azimuthDeg, double radiusM, Map<Integer, Integer> fromM) {
        AreaGround ground = new AreaGround(TileFolder.open(Path.of("elevation-samples", sample, "tiles")));
        AreaSetting setting = AreaSetting.of(
                Areas.around(Areas.source(sample), radiusM, 500, FACE.get(0), CHANNEL, LossModels.FULL_WAVE), ground);
        double[] azimuthRad = new double[LANES];
        List<Radial> radials = new ArrayList<>();
        for (int i = 0; i < LANES; i++) {
            azimuthRad[i] = Math.toRadians(azimuthDeg) + 2 * Math.PI * (i - LANES / 2) / RADIALS_ALL_ROUND;
            radials.add(new Radial());
        }
        setting.cutAlike(setting.sampler(), azimuthRad, radiusM, radials);
        for (Radial radial : radials) RadialMarch.endAtSteepGround(radial, CHANNEL);
        List<List<CoveredMarch>> together = RadialMarch.together(radials, FACE, CHANNEL, share -> true);
        for (int lane : fromM.keySet()) {
            Radial radial = radials.get(lane);
            FullWaveRadial alone = RadialMarch.along(radial, FACE, CHANNEL, share -> true)
                    .get(0)
                    .field();
            int held = 0;
            for (int i = 1; i < radial.known(); i++) {
                double atM = 1000 * radial.distancesKm()[i];
                if (atM < fromM.get(lane) || alone.excessDb(i) > CoveredMarch.LOST_DB) continue;
                double byDb = together.get(lane).get(0).field().excessDb(i) - alone.excessDb(i);
                assertTrue(
                        Math.abs(byDb) < NEAR_DB,
                        sample + ", lane " + lane + ", " + atM + " m: off by " + byDb + " dB");
                held++;
            }
            assertTrue(held > 5, held + " samples of lane " + lane + " held");
        }
    }
}
