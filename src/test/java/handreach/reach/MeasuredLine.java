package handreach.reach;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.NoAnswer;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.propagation.march.FieldMarch;
import handreach.propagation.march.FullWaveRadial;
import handreach.units.Frequency;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Loss measured along a straight line over known ground, from a mast to a vehicle; posts every 50 m from 100 m on. */
final class MeasuredLine {
    static final List<String> SITES = List.of("hjorring", "jerslev", "ravnstru");
    /** Antennas above ground, from memory of the papers that use the set. */
    private static final Terminals ENDS = new Terminals(10.4, 2.4);

    private static final double FIRST_POST_M = 100;
    /** A post stands for the mean power of the rows from so far before it to so far behind it, m. */
    private static final double BEFORE_M = 35;

    private static final double BEHIND_M = 25;

    final String site;
    final double mhz;
    final double[] distanceM;
    final double[] measuredDb;
    private final Profile ground;
    private final int[] sample;

    private MeasuredLine(String site, double mhz, Profile ground, List<double[]> rows, int column) {
        this.site = site;
        this.mhz = mhz;
        this.ground = ground;
        List<double[]> posts = new ArrayList<>();
        for (int i = 1; i < ground.count(); i++) {
            double atM = 1000 * ground.distanceKm(i);
            double[] near = rows.stream()
                    .filter(row -> row[0] >= atM - BEFORE_M - 1e-6 && row[0] <= atM + BEHIND_M + 1e-6)
                    .mapToDouble(row -> row[column])
                    .toArray();
            if (atM < FIRST_POST_M || near.length == 0) continue;
            double power = Arrays.stream(near)
                    .map(db -> Math.pow(10, -db / 10))
                    .average()
                    .orElseThrow();
            posts.add(new double[] {i, atM, -10 * Math.log10(power)});
        }
        this.sample = posts.stream().mapToInt(post -> (int) post[0]).toArray();
        this.distanceM = posts.stream().mapToDouble(post -> post[1]).toArray();
        this.measuredDb = posts.stream().mapToDouble(post -> post[2]).toArray();
    }

    static MeasuredLine read(Path folder, String site, int column, double mhz) throws IOException {
        List<double[]> ground = rows(folder.resolve(site + "-ground.csv"));
        Profile profile = Profiles.of(
                ground.stream().mapToDouble(row -> row[0] / 1000).toArray(),
                ground.stream().mapToDouble(row -> row[1]).toArray());
        return new MeasuredLine(site, mhz, profile, rows(folder.resolve(site + "-measured.csv")), column);
    }

    static List<double[]> rows(Path file) throws IOException {
        List<double[]> rows = new ArrayList<>();
        for (String line : Files.readAllLines(file).stream().skip(1).toList()) {
            String[] cells = line.split(",");
            double[] row = new double[cells.length];
            for (int i = 0; i < row.length; i++) row[i] = Double.parseDouble(cells[i]);
            rows.add(row);
        }
        return rows;
    }

    /** Loss by a model at every post, dB; not a number where it does not apply. Isotropic antennas, average ground. */
    double[] predictedDb(LossModel model) {
        PathConditions conditions = UsualConditions.at(new Frequency(mhz));
        double[] loss = new double[sample.length];
        FullWaveRadial marched = model == LossModels.FULL_WAVE
                ? FieldMarch.along(ground, ENDS.txHeightM(), new double[] {ENDS.rxHeightM()}, conditions, share -> true)
                        .get(0)
                : null;
        for (int i = 0; i < loss.length; i++)
            try {
                loss[i] = marched != null
                        ? marched.meanLossDb(sample[i])
                        : model.loss(ground.upTo(sample[i]), ENDS, conditions).lossDb();
            } catch (NoAnswer refused) {
                loss[i] = Double.NaN;
            }
        return loss;
    }
}
