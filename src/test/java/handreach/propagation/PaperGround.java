package handreach.propagation;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.profile.Zone;
import handreach.terrain.Cover;
import java.util.Arrays;
import java.util.Random;

/** Ground made on paper for the tests of this room. */
final class PaperGround {
    private PaperGround() {}

    static Profile flat(double lengthKm, int samples) {
        double[] d = new double[samples];
        for (int i = 0; i < samples; i++) d[i] = lengthKm * i / (samples - 1);
        return Profiles.of(d, new double[samples]);
    }

    /** The ten-kilometre profile of the check rows for the general path. */
    static Profile tenKilometres(boolean clutter) {
        double[] d = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
        double[] h = {100, 110, 130, 180, 150, 140, 160, 200, 150, 120, 110};
        double[] c = {0, 0, 0, 15, 15, 0, 0, 0, 10, 10, 0};
        Cover[] cover = new Cover[11];
        Arrays.fill(cover, Cover.OPEN);
        Zone[] zone = new Zone[11];
        Arrays.fill(zone, Zone.INLAND);
        return Profile.of(d, h, clutter ? c : new double[11], cover, zone);
    }

    /** Rolling ground: a few sines of random height and length on a random slope, uneven spacing, zones and cover in runs. */
    static Profile rolling(Random random) {
        int n = 3 + random.nextInt(120);
        double[] d = new double[n];
        for (int i = 1; i < n; i++) d[i] = d[i - 1] + 0.02 + random.nextDouble() * 0.2;
        double stretch = Math.max(0.06, random.nextDouble() * 30) / d[n - 1];
        for (int i = 0; i < n; i++) d[i] *= stretch;
        double[] h = new double[n];
        double[] c = new double[n];
        Cover[] cover = new Cover[n];
        Zone[] zone = new Zone[n];
        double slope = (random.nextDouble() - 0.5) * 20;
        double level = random.nextDouble() * 500 - 50;
        double relief = Math.pow(10, random.nextDouble() * 2.5);
        double[] wave = random.doubles(4, 0.5, 12).toArray();
        double[] phase = random.doubles(4, 0, 2 * Math.PI).toArray();
        Cover nowCover = Cover.OPEN;
        Zone nowZone = Zone.INLAND;
        for (int i = 0; i < n; i++) {
            h[i] = level + slope * d[i];
            for (int k = 0; k < 4; k++) h[i] += relief / wave[k] * Math.sin(phase[k] + wave[k] * d[i]);
            if (random.nextInt(10) == 0) nowCover = Cover.values()[random.nextInt(Cover.values().length)];
            if (random.nextInt(15) == 0) nowZone = Zone.values()[random.nextInt(3)];
            cover[i] = nowCover;
            zone[i] = nowZone;
            c[i] = nowCover.representativeHeightM();
        }
        return Profile.of(d, h, c, cover, zone);
    }

    static double[] list(String text) {
        return Arrays.stream(text.split("\\|")).mapToDouble(Double::parseDouble).toArray();
    }
}
